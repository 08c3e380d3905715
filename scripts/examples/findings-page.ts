import { brokenFindings } from "./broken-plan";

/** Writes the page that lists what the checks have to find in the broken plan, and nothing else. */
export function findingsPage(): string {
  const lines = brokenFindings.map(({ rule, cell, what }) => `| ${cell} | ${rule} | ${what} |`);
  return [
    "# The plan that is broken on purpose",
    "",
    "`thornmere-broken.xlsx` is the sample plan with a fault for every rule of the checks. The checks find exactly these, and `npm run check` holds it.",
    "The password in it is invented.",
    "",
    "| cell | rule | what is wrong |",
    "|---|---|---|",
    ...lines,
    "",
  ].join("\n");
}
