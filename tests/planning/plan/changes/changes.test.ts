import { appendRows, writeCell } from "../../../../src/planning/plan/changes";
import { readPlan, type ReadTable } from "../../../../src/planning/plan/read";
import type { CellValue, WorkbookSnapshot } from "../../../../src/sheet";
import { workbookOf } from "../../../support/plain-workbook";

function racks(...lines: readonly (readonly CellValue[])[]) {
  return workbookOf({ Ours: [["Table: Racks"], ["A note"], ["Rack", "Site", "Units", "Depth mm"], ...lines] });
}

function tableOf(workbook: WorkbookSnapshot): ReadTable {
  const { racks: table } = readPlan(workbook);
  if (table === null) throw new Error("no table Racks");
  return { ...table, rows: [] };
}

describe("adding rows to a table", () => {
  const add = (workbook: ReturnType<typeof racks>) => appendRows(workbook, tableOf(workbook), "racks", [{ rack: "R8", units: 42 }, { rack: "R9" }]);

  test("writes below the last row in which anything stands, the user's own columns included", () => {
    const workbook = workbookOf({ Ours: [["Table: Racks"], ["Rack", "Units", "Own", "Other"], ["R1", 42], [null, null, null, "keep"], []] });
    expect(add(workbook).writes.map(({ row, column, value }) => [row, column, value])).toEqual([[4, 0, "R8"], [4, 1, 42], [5, 0, "R9"]]);
  });

  test("grows a named table only as far as it must", () => {
    const { sheets } = racks(["R1"], [], []);
    const named = (rows: number) => ({ sheets: [{ ...sheets[0]!, tables: [{ name: "BayRacks", area: { row: 2, column: 0, rows, columns: 4 } }] }] });
    expect(add(named(4)).growths).toEqual([]);
    expect(add(named(2)).growths).toEqual([{ sheet: "Ours", table: "BayRacks", area: { row: 2, column: 0, rows: 4, columns: 4 } }]);
  });

  test("grows a table that begins further right over its own columns", () => {
    const [sheet] = workbookOf({ Ours: [["", "Rack", "Site", "Total"], ["", "R1", "Mill", 9]] }).sheets;
    const workbook = { sheets: [{ ...sheet!, tables: [{ name: "BayRacks", area: { row: 0, column: 1, rows: 2, columns: 2 } }] }] };
    expect(add(workbook).growths).toEqual([{ sheet: "Ours", table: "BayRacks", area: { row: 0, column: 1, rows: 4, columns: 2 } }]);
  });

  test("refuses to write over what stands below a named table", () => {
    const { sheets } = racks(["R1"], [], ["Total", null, 99]);
    const workbook = { sheets: [{ ...sheets[0]!, tables: [{ name: "BayRacks", area: { row: 2, column: 0, rows: 2, columns: 4 } }] }] };
    expect(() => add(workbook)).toThrow("Table Racks has no room for 2 rows: something stands below it in row 6. Move that.");
  });

  test("changes nothing where there are none", () => {
    const workbook = racks(["R1"]);
    expect(appendRows(workbook, tableOf(workbook), "racks", [])).toEqual({ writes: [], growths: [] });
  });

  test("leaves out columns that the table lacks, blanks, and formulas", () => {
    const workbook = workbookOf({ Ours: [["Table: Arrays"], ["Array", "Usable", "Serial"], ["a", "", "1"], [null, "", null]] });
    const table = readPlan(workbook).arrays!;
    const { writes } = appendRows(workbook, { ...table, rows: [] }, "arrays", [{ array: "b", usable: 5, serial: null, model: "Elm" }]);
    expect(writes).toEqual([{ sheet: "Ours", row: 3, column: 0, before: null, value: "b" }]);
  });

  test("begins below the headers of an empty table", () => {
    expect(add(racks()).writes.map(({ row }) => row)).toEqual([3, 3, 4]);
    expect(add(racks([], [])).writes.map(({ row }) => row)).toEqual([3, 3, 4]);
  });
});

describe("changing one cell", () => {
  test("says what stands there now, blank where nothing does", () => {
    const workbook = racks(["R1", "Mill"]);
    expect(writeCell(workbook, tableOf(workbook), 3, "site", "Yard")).toEqual({ sheet: "Ours", row: 3, column: 1, before: "Mill", value: "Yard" });
    expect(writeCell(workbook, tableOf(workbook), 9, "site", "Yard")).toEqual({ sheet: "Ours", row: 9, column: 1, before: null, value: "Yard" });
    expect(writeCell({ sheets: [] }, tableOf(workbook), 3, "site", "Yard")).toMatchObject({ before: null });
  });

  test("is not possible in a column that the table lacks", () => {
    const workbook = racks(["R1"]);
    expect(writeCell(workbook, tableOf(workbook), 3, "outlets", "x")).toBeNull();
  });
});
