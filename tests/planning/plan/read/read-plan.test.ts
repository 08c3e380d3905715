import fc from "fast-check";
import { locateTable, readPlan, requireTables, rowsOf } from "../../../../src/planning/plan/read";
import type { CellValue } from "../../../../src/sheet";
import { workbookOf } from "../../../support/plain-workbook";

function racks(...lines: readonly (readonly CellValue[])[]) {
  return workbookOf({ Ours: [["Table: Racks"], ["A note"], ["Rack", "Site", "Units", "Depth mm"], ...lines] });
}

describe("reading a planning table", () => {
  test("finds columns by their headers in any order and case, and leaves the user's own alone", () => {
    const plan = readPlan(workbookOf({ Ours: [[null, "table: racks"], [], [null, "Paint", "UNITS ", "rack", "Key"], [null, "grey", 42, "R1", "k7", "beside"]] }));
    expect(rowsOf(plan, "racks").map(({ rack, units, site, row }) => ({ rack, units, site, row }))).toEqual([{ rack: "R1", units: 42, site: "", row: 3 }]);
    expect({ ...rowsOf(plan, "racks")[0]!.shown }).toEqual({ Paint: "grey", UNITS: "42", rack: "R1", Key: "k7" });
  });

  test("finds a table by its name before any marker", () => {
    const { sheets } = racks(["R1"]);
    const named = { ...workbookOf({ Elsewhere: [["Rack", "Site"], ["R9", "Mill"]] }).sheets[0]!, tables: [{ name: "bayracks", area: { row: 0, column: 0, rows: 2, columns: 2 } }] };
    expect(rowsOf(readPlan({ sheets: [...sheets, named] }), "racks").map(({ rack }) => rack)).toEqual(["R9"]);
  });

  test("passes over blank rows in the middle, rows with nothing but spaces, and merged cells, of which only the first holds something", () => {
    const plan = readPlan(racks(["R1", "Mill"], [], [" ", null], ["R2", null], [null, null, 20]));
    expect(rowsOf(plan, "racks").map(({ rack, row }) => `${rack} ${row}`)).toEqual(["R1 3", "R2 6", " 7"]);
  });

  test("reads numbers typed as text, and keeps what it cannot read out of the row and among the faults", () => {
    const plan = readPlan(racks(["R1", "Mill", "42", "a metre"], ["R2", "Mill", 41.5, { error: "#DIV/0!" }]));
    expect(rowsOf(plan, "racks").map(({ units, depthMm }) => [units, depthMm])).toEqual([[42, null], [null, null]]);
    expect(plan.faults.map(({ header, row, problem }) => `${header} ${row}: ${problem.sentence}`)).toEqual([
      'Depth mm 3: Depth mm "a metre" is not a number. Write digits, such as 42 or 0.5.',
      "Units 4: Units 41.5 is no count. Write a whole number.",
      "Depth mm 4: Depth mm shows #DIV/0!. Mend that cell first.",
    ]);
  });

  test("says of a number with a comma what functions say of it", () => {
    const plan = readPlan(racks(["R1", "Mill", "42", "0,95"], ["R2", "Mill", 42, "1,200"]));
    expect(plan.faults.map(({ problem }) => [problem.sentence, problem.proposals])).toEqual([
      ['Depth mm "0,95" has a comma. Write 0.95.', [0.95]],
      ['Depth mm "1,200" has a comma: is it 1.2 or 1200? Write it without the comma.', []],
    ]);
  });

  test("shows a date as ISO text, as a cell of the calendar and as it was typed", () => {
    const plan = readPlan(workbookOf({ Jobs: [["Table: Jobs"], ["Job", "Planned date"], ["a", 46_173], ["b", "2026-05-31"], ["c", "2026-02-30"]] }));
    expect(rowsOf(plan, "jobs").map(({ plannedDate }) => plannedDate)).toEqual(["2026-05-31", "2026-05-31", null]);
    expect(rowsOf(plan, "jobs")[0]!.shown["Planned date"]).toBe("2026-05-31");
    expect(plan.faults.map(({ problem }) => problem.sentence)).toEqual(['Planned date "2026-02-30" is no date. Write it as 2026-05-31.']);
  });

  test("has no field of an object's prototype in what a row shows", () => {
    const { shown } = rowsOf(readPlan(racks(["R1"])), "racks")[0]!;
    expect(shown.constructor).toBeUndefined();
    expect(Object.getPrototypeOf(shown)).toBeNull();
  });

  test("never throws, whatever stands in the cells", () => {
    const cell = fc.oneof(fc.string(), fc.double(), fc.boolean(), fc.constant(null), fc.constantFrom("Rack", "Table: Racks", "Units", "8 TB", "50%"), fc.constant({ error: "#REF!" }));
    fc.assert(
      fc.property(fc.array(fc.array(cell, { maxLength: 6 }), { maxLength: 8 }), (lines) => {
        readPlan(workbookOf({ S: [["Table: Racks"], ["Rack", "Units", "Depth mm"], ...lines], T: [["Table: Arrays"], ["Array", "Scheme", "Drive size", "Reserve", "Warranty until"], ...lines] }));
      }),
      { seed: 6, numRuns: 300 },
    );
  });
});

describe("asking for tables that the work needs", () => {
  test("names the one that is missing, and how to add it", () => {
    expect(() => requireTables(readPlan({ sheets: [] }), ["racks"])).toThrow("The workbook has no table Racks. Choose Set up tables, or name the table BayRacks.");
  });

  test("names a column without which the rows say nothing", () => {
    const plan = readPlan(workbookOf({ Ours: [["Table: Racks"], ["Cabinet", "Site", "Units"], ["R1", "Mill", 42]] }));
    expect(() => requireTables(plan, ["racks"])).toThrow("Table Racks has no column Rack. Add a column with that header text.");
  });

  test("is content with a table that has no rows", () => {
    expect(() => requireTables(readPlan(racks()), ["racks"])).not.toThrow();
  });
});

describe("finding the header below a marker", () => {
  test("takes the first row with two known headers, from the first to the last cell in an unbroken run", () => {
    const workbook = workbookOf({ S: [["Table: Racks"], ["Rack notes"], [null, "Own", "Rack", "Site", "Paint", null, "Units"], []] });
    expect(locateTable(workbook, "racks")).toMatchObject({ headerRow: 2, firstColumn: 1, lastColumn: 6 });
  });

  test("finds nothing where no row has the headers", () => {
    expect(locateTable(workbookOf({ S: [["Table: Racks"], ["Rack"], ["Site"]] }), "racks")).toBeNull();
  });
});
