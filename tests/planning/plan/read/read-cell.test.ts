import { locateTable, readPlan, rowsOf } from "../../../../src/planning/plan/read";
import { tables, type TableKey } from "../../../../src/planning/plan/schema";
import type { CellValue } from "../../../../src/sheet";
import { workbookOf } from "../../../support/plain-workbook";

/** Reads one column of a table, cell by cell; beside it stands the name of the row. */
function read(key: TableKey, [name, header]: readonly [string, string], ...cells: readonly CellValue[]) {
  const plan = readPlan(workbookOf({ S: [[`Table: ${tables[key].name}`], [name, header], ...cells.map((cell, index) => [`row ${index}`, cell])] }));
  return { rows: rowsOf(plan, key), sentences: plan.faults.map(({ problem }) => problem.sentence) };
}

describe("a cell of a planning table", () => {
  test("is ticked by the usual words and marks, without case, and by nothing else", () => {
    const required = (...cells: CellValue[]) => {
      const { rows } = read("steps", ["Step id", "Required"], ...cells);
      return (rows as readonly { readonly required?: unknown }[]).map((row) => row.required);
    };
    expect(required(true, "yes", "Y", " x ", "TRUE", "1", 1, "✓", "✔")).toEqual(new Array(9).fill(true));
    expect(required(false, "no", "yes!", "ox", 0, 2, "", null)).toEqual(new Array(8).fill(false));
  });

  test("of a few words is read without case, and one of no such word says which there are", () => {
    const { rows, sentences } = read("racks", ["Rack", "Numbered from"], " TOP ", "bottom", "left");
    expect(rows.map((row) => "numberedFrom" in row && row.numberedFrom)).toEqual(["top", "bottom", ""]);
    expect(sentences).toEqual(['Numbered from "left" is not known. Write bottom or top.']);
  });

  test("of a count takes whole numbers from 0, as digits in a text too", () => {
    const { rows, sentences } = read("racks", ["Rack", "Units"], 0, " 42 ", -1, 1.5, "many", "0x2A");
    expect(rows.map((row) => "units" in row && row.units)).toEqual([0, 42, null, null, null, null]);
    expect(sentences).toEqual([
      "Units -1 is no count. Write a whole number.",
      "Units 1.5 is no count. Write a whole number.",
      'Units "many" is not a number. Write digits, such as 42 or 0.5.',
      'Units "0x2A" is not a number. Write digits, such as 42 or 0.5.',
    ]);
  });

  // IEEE 802.1Q clause 9.6: a tag has 12 bits, 0 names no VLAN and 4095 (hexadecimal FFF) is kept back. From memory.
  test("of a VLAN takes 1 to 4094", () => {
    const { rows, sentences } = read("networks", ["Network", "VLAN"], 1, 4094, "100", null, 0, 4095);
    expect(rows.map((row) => "vlan" in row && row.vlan)).toEqual([1, 4094, 100, null, null, null]);
    expect(sentences).toEqual(["VLAN is 0. Write a whole number from 1 to 4094, such as 100.", "VLAN is 4095. Write a whole number from 1 to 4094, such as 100."]);
  });

  test.each<[TableKey, readonly [string, string], CellValue, CellValue]>([
    ["cables", ["Id", "Length m"], 0.5, -3],
    ["feeds", ["Feed", "Volts"], 400, -230],
    ["feeds", ["Feed", "Breaker A"], 16, 0],
    ["feeds", ["Feed", "Power factor"], 1, 1.2],
    ["models", ["Model", "Watts"], 0, -620],
    ["models", ["Model", "Weight kg"], 46, "-46"],
    ["racks", ["Rack", "Depth mm"], 1000, -1000],
    ["links", ["From", "Unavailability"], 0.999, 1],
    ["quote", ["Item", "Cost"], 0, -100],
    ["steps", ["Step id", "Minutes"], 5, -5],
  ])("of %s %j takes %j, and not %j, which nothing can be", (key, headers, taken, refused) => {
    expect(read(key, headers, taken).sentences).toEqual([]);
    expect(read(key, headers, refused).sentences).toEqual([expect.stringMatching(/^[A-Z].* is -?[\d.]+\. Write a number (?:from 0|above 0) .*, such as [\d.]+\.$/)]);
  });

  test("of a size, a share or a scheme is read as the functions read it", () => {
    const { rows } = read("pools", ["Pool", "Fill limit"], "80%", 0.5, "half");
    expect(rows.map((row) => "fillLimit" in row && row.fillLimit)).toEqual([0.8, 0.5, null]);
    expect(read("arrays", ["Array", "Drive size"], "4 TB", 0).sentences).toHaveLength(1);
    expect(read("arrays", ["Array", "Used"], "0 TB", 0).sentences).toEqual([]);
    expect(read("arrays", ["Array", "Scheme"], "RAID 6", "RAID 99").sentences).toHaveLength(1);
  });

  // ECMA-376, 1900 date base: 61 is 1900-03-01, 2,958,465 is 9999-12-31.
  test("of a date takes days that the sheet's calendar has, with or without a time, and ISO text of a day that is", () => {
    const none = [60.9, 2_958_466, "2023-02-29", "2024-2-29", "on 2024-02-29", "2024-02-29T10", "2024-13-01", "+012024-02"];
    const { rows, sentences } = read("jobs", ["Job", "Planned date"], 61, 2_958_465.9, " 2024-02-29 ", ...none);
    expect(rows.map((row) => "plannedDate" in row && row.plannedDate)).toEqual(["1900-03-01", "9999-12-31", "2024-02-29", ...none.map(() => null)]);
    expect(sentences).toHaveLength(none.length);
    expect(sentences[0]).toBe('Planned date "60.9" is no date. Write it as 2026-05-31.');
  });
});

describe("a planning table", () => {
  test("is found by its name on whichever sheet, as wide and as long as the host says", () => {
    const [notes, sheet] = workbookOf({ Notes: [["Rack", "Site"]], Ours: [[], [null, "Rack", "Site", "Units"], [null, "R1", "Mill", 3], [null, "R2", "Mill", 4]] }).sheets;
    const named = { ...sheet!, tables: [{ name: "Other", area: { row: 0, column: 0, rows: 1, columns: 1 } }, { name: "BAYRACKS", area: { row: 1, column: 1, rows: 2, columns: 2 } }] };
    const workbook = { sheets: [notes!, named] };
    expect(locateTable(workbook, "racks")).toMatchObject({ headerRow: 1, firstColumn: 1, lastColumn: 2, lastRow: 2 });
    expect(rowsOf(readPlan(workbook), "racks").map(({ rack, units }) => [rack, units])).toEqual([["R1", null]]);
  });

  test("without a name is as long as its sheet, and begins with the user's own columns beside it", () => {
    const workbook = workbookOf({ S: [["a note", "TABLE: RACKS"], ["Own", "Rack", "Site"], ["x", "R1", "Mill"], []] });
    expect(locateTable(workbook, "racks")).toMatchObject({ headerRow: 1, firstColumn: 0, lastColumn: 2, lastRow: 3 });
  });

  test("is looked for on the next sheet where below a marker nothing is like it", () => {
    const workbook = workbookOf({ First: [["Table: Racks"], ["nothing", "here"]], Second: [["Table: Racks"], ["Rack", "Site"], ["R1", "Mill"]] });
    expect(rowsOf(readPlan(workbook), "racks").map(({ rack }) => rack)).toEqual(["R1"]);
  });

  test("has no row by a formula alone: only what is typed makes one", () => {
    const plan = readPlan(workbookOf({ S: [["Table: Quote"], ["Item", "Usable TB"], ["", 5], ["Array", 4]] }));
    expect(rowsOf(plan, "quote").map(({ item, usable }) => [item, usable])).toEqual([["Array", null]]);
  });
});
