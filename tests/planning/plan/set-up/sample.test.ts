import { join } from "node:path";
import ExcelJS from "exceljs";
import { tableKeys, tables } from "../../../../src/planning/plan/schema";
import { planSetUp, sampleRows } from "../../../../src/planning/plan/set-up";
import type { Scalar } from "../../../../src/sheet";

const example = join(__dirname, "..", "..", "..", "..", "examples", "thornmere.xlsx");

/** Reads what is typed on a sheet row by row with a reader of others; blank cells, formulas and blank rows at the end are left out. */
async function typedIn(file: string): Promise<Map<string, Scalar[][]>> {
  const workbook = new ExcelJS.Workbook();
  await workbook.xlsx.readFile(file);
  return new Map(workbook.worksheets.map((sheet) => [sheet.name, Array.from({ length: sheet.rowCount }, (_, row) => lineOf(sheet.getRow(row + 1)))]));
}

function lineOf(row: ExcelJS.Row): Scalar[] {
  return Array.from({ length: row.cellCount }, (_, column): Scalar => {
    const { value } = row.getCell(column + 1);
    if (value instanceof Date) return value.getTime() / 86_400_000 + 25_569; // 1970-01-01 is day 25,569 of the sheet's calendar.
    return typeof value === "object" || value === undefined ? null : value;
  });
}

/** Leaves out what is empty at the end of a list. */
function trimmed<Item>(items: readonly Item[], isEmpty: (item: Item) => boolean): Item[] {
  const filled = items.flatMap((item, at) => (isEmpty(item) ? [] : [at]));
  return items.slice(0, (filled.at(-1) ?? -1) + 1);
}

function trimmedLines(lines: readonly (readonly Scalar[])[]): Scalar[][] {
  return trimmed(lines.map((line) => trimmed(line, (value) => value === null)), (line) => line.length === 0);
}

test("the sample plan that the button fills in is the one of the example file, cell by cell", async () => {
  const file = await typedIn(example);
  const filled = new Set(tableKeys.filter((key) => key in sampleRows()).map((key) => tables[key].name));
  for (const { name, rows } of planSetUp({ sheets: [] }, sampleRows()).filter((plan) => filled.has(plan.name))) {
    const typed = rows.map((line) => line.map(({ value, formula }) => (formula === undefined ? (value ?? null) : null)));
    expect([name, trimmedLines(file.get(name) ?? [])]).toEqual([name, trimmedLines(typed)]);
  }
});
