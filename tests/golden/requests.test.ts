import { readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { version } from "../../package.json";
import { buildTabs } from "../../src/actions/build-tabs";
import { loadSample } from "../../src/actions/load-sample";
import { buildJob, jobsOf, readCommissioningPlan } from "../../src/planning/commissioning/build";
import { builtInProcedures } from "../../src/planning/commissioning/procedure";
import type { TableRows } from "../../src/planning/plan/schema";
import { moment, planWorkbook } from "../support/commissioning-plan";
import { hostWorkbook, type HostWorkbook } from "../support/host-workbook/host-workbook";
import type { Exchange } from "../support/host-workbook/host-book";

// One file a release: every request that goes to the host, its size and its actions by kind. Write the release's file with UPDATE_GOLDEN=1,
// and read the difference: what makes it grow makes people wait, and above 5 MB the host refuses.
const file = join(__dirname, "requests", `${version}.txt`);
const tabs = join(__dirname, "tabs");

async function build(book: HostWorkbook): Promise<void> {
  for await (const { outcome } of buildTabs(book.port, moment)) if (!outcome.built) throw new Error(outcome.sentence);
}

/** What people ask for on the sample, one after the other, and each procedure's tab on its own. */
async function requestsOf(): Promise<string> {
  const book = hostWorkbook({ calculate: () => "" });
  const works: [string, HostWorkbook, () => Promise<unknown>][] = [
    ["Load the sample", book, () => loadSample(book.port)],
    ["Read the plan", book, () => book.port.read()],
    ["Build a tab for each job", book, () => build(book)],
    ["Build them again", book, () => build(book)],
    ...readdirSync(tabs).map((name): [string, HostWorkbook, () => Promise<unknown>] => {
      const rows = JSON.parse(readFileSync(join(tabs, name, "plan.json"), "utf8")) as TableRows;
      const source = readCommissioningPlan(planWorkbook({ ...rows, ...builtInProcedures }));
      const own = hostWorkbook({ calculate: () => "" });
      return [`Write the tab of ${name}`, own, () => own.port.apply([{ kind: "add-sheet", plan: buildJob(source, jobsOf(source)[0]!, () => "new", moment).tab }])];
    }),
  ];
  let text = "";
  for (const [what, at, work] of works) {
    const before = at.exchanges().length;
    await work();
    const requests = at.exchanges().slice(before);
    text += `${what}, ${requests.length} requests\n${requests.map(showExchange).join("")}`;
  }
  return text;
}

/** One line for the sizes and what was looked up and loaded, one for what was set and one for what was called. */
function showExchange({ bytes, answerBytes, kinds }: Exchange): string {
  const isOf = (verb: string) => Object.entries(kinds).filter(([kind]) => kind.startsWith(`${verb} `));
  const line = (verb: string) => {
    const members = isOf(verb).map(([kind, count]) => `${kind.slice(verb.length + 1)} ${count}`);
    return members.length === 0 ? "" : `    ${verb} ${members.join(", ")}\n`;
  };
  return `  ${kilobytes(bytes)}, answered with ${kilobytes(answerBytes)}: find ${kinds["find"] ?? 0}, load ${kinds["load"] ?? 0}\n${line("set")}${line("call")}`;
}

/** Whole kilobytes, so that a word more in a plan is no difference. */
function kilobytes(bytes: number): string {
  return bytes < 1000 ? "under 1 kB" : `${Math.round(bytes / 1000)} kB`;
}

test("what goes to the host is what was read and agreed for this release", async () => {
  const text = await requestsOf();
  if (process.env.UPDATE_GOLDEN === "1") writeFileSync(file, text);
  expect(text).toBe(readFileSync(file, "utf8"));
});
