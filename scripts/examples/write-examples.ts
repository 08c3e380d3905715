// `npm run examples` writes the example workbooks, with the results of their formulas, and the list of findings beside the broken one.
// `--check` only says which of them are stale: a workbook is, when a cell of it says another thing than its plan.
import { readFile, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { isDeepStrictEqual } from "node:util";
import { openHeadless } from "../../src/headless/open-headless";
import type { SheetPlan, WorkbookSnapshot } from "../../src/sheet";
import { keepFiles, reportStale } from "../keep-files";
import { brokenPlan, samplePlan } from "./broken-plan";
import { findingsPage } from "./findings-page";
import { cellsInFile, plannedCells } from "./written-cells";

const folder = join(__dirname, "..", "..", "examples");
const command = "npm run examples";
const examples: Readonly<Record<string, () => readonly SheetPlan[]>> = { "thornmere.xlsx": samplePlan, "thornmere-broken.xlsx": brokenPlan };

async function writeExample(file: string, plans: readonly SheetPlan[]): Promise<void> {
  const workbook = await openHeadless();
  const empty = (await workbook.port.read()).sheets.map(({ name }) => name);
  await workbook.port.apply([
    ...plans.map((plan) => ({ kind: "add-sheet", plan }) as const),
    ...empty.map((sheet) => ({ kind: "delete-sheet", sheet }) as const),
    { kind: "select", sheet: "Sites", area: { row: 4, column: 0, rows: 1, columns: 1 } },
  ]);
  await writeFile(join(folder, file), await workbook.close());
}

async function readExample(file: string): Promise<WorkbookSnapshot> {
  const workbook = await openHeadless(await readFile(join(folder, file)));
  await workbook.settle();
  const snapshot = await workbook.port.read();
  workbook.dispose();
  return snapshot;
}

async function main(): Promise<void> {
  for (const [file, plan] of Object.entries(examples)) {
    if (!process.argv.includes("--check")) await writeExample(file, plan());
    else if (!isDeepStrictEqual(cellsInFile(await readExample(file)), plannedCells(plan()))) reportStale([`examples/${file}`], command);
  }
  keepFiles({ "examples/thornmere-broken.md": findingsPage() }, command);
}

void main();
