// `npm run -s measure-tab` says what a tab costs whoever prints it and fills it in, a line a job: of the large site of the tests (`--cluster existing`,
// `--paper Letter`), or of a plan file that is named. `--pdf FOLDER` keeps what LibreOffice prints, where it is installed.
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { parseArgs } from "node:util";
import { buildJob, jobsOf, readCommissioningPlan } from "../src/planning/commissioning/build";
import { openHeadless } from "../src/headless/open-headless";
import type { SheetPlan, WorkbookSnapshot } from "../src/sheet";
import { countCells, smallestPoints } from "../tests/support/count-cells";
import { hasLibreOffice, printInLibreOffice } from "../tests/support/libre-office";
import { largeSite } from "../tests/support/large-site";

const moment = { madeAt: "2026-03-02 09:15", instant: "2026-03-02T09:15:00.000Z", planName: "plan.xlsx" };

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
