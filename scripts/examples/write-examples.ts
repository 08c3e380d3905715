// `npm run examples` writes the example workbooks, with the results of their formulas, and the list of findings beside the broken one.
import { writeFile } from "node:fs/promises";
import { join } from "node:path";
import { openHeadless } from "../../src/headless/open-headless";
import type { SheetPlan } from "../../src/sheet";
import { brokenPlan, samplePlan } from "./broken-plan";
import { findingsPage } from "./findings-page";

const folder = join(__dirname, "..", "..", "examples");

async function writeExample(file: string, plans: readonly SheetPlan[]): Promise<void> {
  const workbook = await openHeadless();
  try {
    const empty = (await workbook.port.read()).sheets.map(({ name }) => name);
    await workbook.port.apply([
      ...plans.map((plan) => ({ kind: "add-sheet", plan }) as const),
      ...empty.map((sheet) => ({ kind: "delete-sheet", sheet }) as const),
      { kind: "select", sheet: "Sites", area: { row: 4, column: 0, rows: 1, columns: 1 } },
    ]);
    await writeFile(join(folder, file), await workbook.save());
  } finally {
    workbook.dispose();
  }
}

async function main(): Promise<void> {
  await writeExample("thornmere.xlsx", samplePlan());
  await writeExample("thornmere-broken.xlsx", brokenPlan());
  await writeFile(join(folder, "thornmere-broken.md"), findingsPage());
}

main().then(
  () => process.exit(0),
  (fault: unknown) => {
    console.error(fault);
    process.exit(1);
  },
);
