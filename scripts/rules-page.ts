// `npm run rules` writes docs/rules.md out of the rules themselves; `--check` only says whether it is stale.
import { rules, type Weight } from "../src/planning/checks";
import { settingRules } from "../src/planning/plan/read";
import { keepFiles } from "./keep-files";

const weights: Readonly<Record<Weight, string>> = {
  stop: "built like this it will not work, or people or data are at risk",
  warn: "it may go wrong",
  note: "worth knowing",
};

/** Writes the page of rules: every rule by family, and the thresholds that steer them. */
function rulesPage(): string {
  const families = [...new Set(rules.map(({ family }) => family))];
  return [
    "# The rules of the checks",
    "",
    "Generated from the rules by `npm run rules`. Load, weight, lift and cooling are planning figures: local codes and",
    "licensed practice decide.",
    "",
    ...Object.entries(weights).map(([weight, meaning]) => `- **${weight}**: ${meaning}`),
    ...families.flatMap((family) => [
      "",
      `## ${family.charAt(0).toUpperCase()}${family.slice(1)}`,
      "",
      "| rule | weight | what a plan keeps to | mend |",
      "|---|---|---|---|",
      ...rules.filter((rule) => rule.family === family).map(({ name, weight, meaning, mends = "" }) => `| ${name} | ${weight} | ${cell(meaning)} | ${cell(mends)} |`),
    ]),
    "",
    "## Settings",
    "",
    "Rows of the Settings table that change what the rules ask for. A row that is missing or blank means its initial value.",
    "",
    "| setting | initial value | meaning |",
    "|---|---|---|",
    ...Object.values(settingRules).map(({ name, initial, meaning }) => `| ${name} | ${initial} | ${cell(meaning)} |`),
    "",
  ].join("\n");
}

function cell(text: string): string {
  return text.replaceAll("|", "\\|").replaceAll("{{", "`{{").replaceAll("}}", "}}`");
}

keepFiles({ "docs/rules.md": rulesPage() }, "npm run rules");
