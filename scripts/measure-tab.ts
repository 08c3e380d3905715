// `npm run -s measure-tab` says what a tab costs whoever prints it and fills it in, a line a job: of the large site of the tests (`--cluster existing`,
// `--paper Letter`), or of a plan file that is named. `--pdf FOLDER` keeps what LibreOffice prints, where it is installed.
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { parseArgs } from "node:util";
import { buildJob, jobsOf, readCommissioningPlan } from "../src/planning/commissioning/build";
import { rowsOfSteps } from "../src/planning/commissioning/record";
import { readPlannedTab } from "../src/planning/commissioning/tab";
import { openHeadless } from "../src/headless/open-headless";
import { pageScale, type SheetPlan, type WorkbookSnapshot } from "../src/sheet";
import { hasLibreOffice, printInLibreOffice } from "../tests/support/libre-office";
import { largeSite } from "../tests/support/large-site";

const moment = { madeAt: "2026-03-02 09:15", instant: "2026-03-02T09:15:00.000Z", planName: "plan.xlsx" };

/** What is to be typed into a tab: besides hold points, which stop the work whatever they cost, and serial numbers of a grid, which are pasted as a list. */
function countCells(tab: SheetPlan) {
  const { steps } = readPlannedTab(tab);
  const count = { typed: 0, atHoldPoints: 0, pasted: 0 };
  for (const { slot, kind, sign, holdPoint } of steps) {
    // Names and day of a grid stand once, in the row that signs for it.
    const cells = 1 + (slot !== null || sign === "none" ? 0 : sign === "two" ? 3 : 2);
    if (holdPoint) count.atHoldPoints += cells;
    else if (slot !== null && kind === "serial") count.pasted += cells;
    else count.typed += cells;
  }
  return { rows: rowsOfSteps(steps).length, ...count };
}

/** Finds the smallest size, in points, in which anything that people see is printed. */
function smallestPoints({ rows, styles, columnWidths, hiddenColumns = [], print }: SheetPlan): number {
  const isSeen = (column: number): boolean => !hiddenColumns.includes(column);
  const used = new Set(rows.flatMap((row) => row.flatMap(({ value = null, formula, style }, column) => ((value === null && formula === undefined) || !isSeen(column) ? [] : [style]))));
  const sizes = [...used].map((style) => (style === undefined ? undefined : styles[style]?.fontSize) ?? 11);
  const scale = print?.fitToWidth === true ? pageScale(print.orientation, columnWidths.filter((_, column) => isSeen(column))) : (print?.scale ?? 100);
  return (Math.min(...sizes) * scale) / 100;
}

async function workbookOf(tab: SheetPlan): Promise<Uint8Array> {
  const { port, close } = await openHeadless();
  const empty = (await port.read()).sheets.map(({ name }) => name);
  await port.apply([{ kind: "add-sheet", plan: tab }, ...empty.map((sheet) => ({ kind: "delete-sheet", sheet }) as const)]);
  return close();
}

async function readPlan(file: string): Promise<WorkbookSnapshot> {
  const { port, settle, dispose } = await openHeadless(readFileSync(file));
  await settle();
  const plan = await port.read();
  dispose();
  return plan;
}

/** Says how many pages a tab takes: as planned, and in LibreOffice, which shows whether the plan holds. */
function pagesOf(tab: SheetPlan, file: string, folder: string): string {
  const planned = (tab.print?.breaksBefore.length ?? 0) + 1;
  if (!hasLibreOffice) return `${planned} pages planned`;
  const printed = printInLibreOffice(file, folder);
  return printed === planned ? `${planned} pages` : `${planned} pages planned, ${printed} in LibreOffice (columns are wider where a font of the width of Calibri, such as Carlito, is missing)`;
}

async function main(): Promise<void> {
  const { values, positionals: [plan] } = parseArgs({ options: { pdf: { type: "string" }, cluster: { type: "string" }, paper: { type: "string" } }, allowPositionals: true });
  const folder = values.pdf ?? mkdtempSync(join(tmpdir(), "measure-tab-"));
  mkdirSync(folder, { recursive: true });
  const source = readCommissioningPlan(plan === undefined ? largeSite(values) : await readPlan(plan));
  for (const job of jobsOf(source)) {
    const { tab } = buildJob(source, job, () => job.job, moment);
    const file = join(folder, `${job.job}.xlsx`);
    writeFileSync(file, await workbookOf(tab));
    const { rows, typed, atHoldPoints, pasted } = countCells(tab);
    console.log(`${job.job}: ${pagesOf(tab, file, folder)}, ${rows} rows, ${typed} cells to type, ${atHoldPoints} at hold points, ${pasted} pasted, smallest ${smallestPoints(tab)} points`);
  }
  if (values.pdf === undefined) rmSync(folder, { recursive: true });
}

void main();
