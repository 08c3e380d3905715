import { columnsOf, tableKeys, tables, type TableKey, type TableRows } from "../../../../src/planning/plan/schema";
import { planSetUp } from "../../../../src/planning/plan/set-up";
import type { Cell, SheetPlan } from "../../../../src/sheet";
import { workbookOf } from "../../../support/plain-workbook";
import { lookFaults, lookOf } from "../../../support/sheet-look";

const rows: TableRows = {
  sites: [{ site: "Mill", access: "x".repeat(51) }, { site: "A site of a name that is far longer than a column may become" }],
  jobs: [{ job: "Install", plannedDate: "2026-10-06" }],
  quote: [{ item: "Array", quantity: 2, margin: 0.22 }],
};
const plans = planSetUp({ sheets: [] }, rows);
const planOf = (key: TableKey): SheetPlan => plans.find(({ name }) => name === tables[key].name)!;
const at = (key: TableKey, column: string): number => columnsOf(key).findIndex(([name]) => name === column);
const cellOf = (key: TableKey, row: number, column: string): Cell => planOf(key).rows[row]![at(key, column)]!;
const ruleOf = (key: TableKey, column: string) => planOf(key).validations!.find(({ area }) => area.column === at(key, column));

describe("the sheet of a planning table", () => {
  test("can be read: every style is there and no text is faint", () => {
    expect(plans.flatMap(lookFaults)).toEqual([]);
    expect(Object.entries(planOf("racks").styles).map(([name, style]) => `${name}: ${lookOf(style)}`)).toEqual([
      "marker: 9 pt #5c5c5c",
      "note: italic #404040",
      "header: bold on #dfe7e4, middle, frame bottom #4d6b63",
      "headerCentred: bold on #dfe7e4, center, middle, frame bottom #4d6b63",
      "text: top, as @",
      "prose: wrapped, top, as @",
      "size: center, top",
      "plain: center, top",
      "share: center, top, as 0.0%",
      "date: center, top, as yyyy-mm-dd",
      "formula: #34524a, center, top, as #,##0.00",
    ]);
  });

  test("begins with its marker, what a row of it is, and its headers, those of numbers in the middle", () => {
    const { rows: lines } = planOf("racks");
    expect(lines.slice(0, 3)).toEqual([
      [{ value: "Table: Racks", style: "marker" }],
      [{ value: "One row a rack. Positions count rack units from the end named in Numbered from.", style: "note" }],
      [],
    ]);
    expect(lines[3]!.slice(0, 8).map(({ value, style }) => [value, style])).toEqual([
      ["Rack", "header"], ["Site", "header"], ["Units", "headerCentred"], ["Numbered from", "header"],
      ["Depth mm", "headerCentred"], ["Limit kg", "headerCentred"], ["Cooling W", "headerCentred"], ["Outlets", "header"],
    ]);
  });

  test("formats each cell by what its column holds, whether it is filled or blank", () => {
    const quoteSince5 = ["text", "plain", "share", "share", "text", "plain", "text", "text", "date", "formula", "formula", "formula", "formula"];
    const styles = (key: TableKey, row: number) => planOf(key).rows[row]!.map(({ style }) => style);
    for (const row of [4, 5]) {
      expect(styles("quote", row)).toEqual(["text", "text", "plain", "plain", "share", "text", "date", "formula", "formula", "formula", "text", "formula", ...quoteSince5]);
      expect(styles("jobs", row).slice(6)).toEqual(["date", "text", "text", "plain", "text", "text", "plain"]);
      expect(cellOf("sites", row, "access").style).toBe("prose");
      expect(cellOf("arrays", row, "scheme").style).toBe("text");
      expect(cellOf("arrays", row, "driveSize").style).toBe("size");
      expect(cellOf("steps", row, "required").style).toBe("text");
    }
    expect(cellOf("quote", 4, "margin").value).toBe(0.22);
    expect(cellOf("quote", 5, "margin")).toEqual({ style: "share" });
  });

  test("writes dates as days of the sheet's calendar", () => {
    // 2026-10-06 is 46,173 (2026-05-31) and 30 + 31 + 31 + 30 + 6 days; 2026-05-31 as the calendar counts it (ECMA-376: 2006-02-01 is 38,749).
    expect(cellOf("jobs", 4, "plannedDate").value).toBe(46_173 + 128);
    const [jobs] = planSetUp({ sheets: [] }, { jobs: [{ job: "Install", plannedDate: "next year" }] }).filter(({ name }) => name === "Jobs");
    expect(jobs!.rows[4]![at("jobs", "plannedDate")]!.value).toBe("next year");
  });

  test("is 40 rows long, or 10 longer than what stands there", () => {
    expect(planOf("racks").rows).toHaveLength(4 + 40);
    const thirty = Array.from({ length: 31 }, (_, index) => ({ rack: `R${index}` }));
    const [racks] = planSetUp({ sheets: [] }, { racks: thirty }).filter(({ name }) => name === "Racks");
    expect(racks!.rows).toHaveLength(4 + 41);
    expect(racks!.tables![0]!.area.rows).toBe(1 + 41);
    expect(racks!.validations![0]!.area).toMatchObject({ row: 4, rows: 41, columns: 1 });
  });

  test("makes rows of long texts high enough, 15 points a line, and leaves the others", () => {
    // The column is 50 characters wide: 51 are two lines.
    expect(planOf("sites").rowHeights).toEqual({ 4: 30 });
    expect(planOf("racks").rowHeights).toEqual({});
  });

  test("makes columns as wide as their longest text, or their header with its arrow, and 3 more, from 9 to 36, and those of prose as wide as the schema says", () => {
    const widths = (key: TableKey, ...columns: string[]) => columns.map((column) => planOf(key).columnWidths[at(key, column)]);
    expect(widths("sites", "site", "room", "timeServers", "access")).toEqual([36, 9, 17, 50]);
    expect(widths("jobs", "job", "plannedDate", "state")).toEqual([10, 17, 10]);
    expect(widths("quote", "validUntil", "usable")).toEqual([16, 14]);
  });

  test("stops its headers, and prints across the page with them on each", () => {
    expect(planOf("racks").freeze).toEqual({ rows: 4, columns: 0 });
    expect(planOf("racks").print).toEqual({ orientation: "landscape", fitToWidth: true, titleRows: { row: 3, rows: 1 }, footer: "Racks", breaksBefore: [] });
  });
});

describe("what may be typed on the sheet of a planning table", () => {
  test.each<[TableKey, string, unknown, string, boolean]>([
    ["racks", "numberedFrom", { kind: "list", items: ["bottom", "top"] }, "Write bottom or top.", true],
    ["racks", "units", { kind: "whole", least: 0 }, "Units is a whole number.", false],
    ["racks", "depthMm", { kind: "number" }, "Depth mm is a number.", false],
    ["jobs", "plannedDate", { kind: "date" }, 'Planned date is a date, such as "2026-05-31".', false],
    ["pools", "acrossArrays", { kind: "list", items: ["none", "2 copies", "3 copies", "2+1", "4+2"] }, "none, or the redundancy scheme laid over its arrays.", false],
    ["racks", "site", { kind: "list-of", formula: "=Sites!$A$5:$A$2004" }, "Choose a row of the table Sites.", false],
  ])("in %s, %s: %j", (key, column, rule, message, strict) => {
    expect(ruleOf(key, column)).toMatchObject({ rule, message, strict });
  });

  test("is anything in texts, and in a column that names several rows", () => {
    expect([ruleOf("racks", "rack"), ruleOf("jobs", "arrays"), ruleOf("quote", "usable")]).toEqual([undefined, undefined, undefined]);
  });

  test("is not offered from a table that lacks the column", () => {
    const racks = planSetUp(workbookOf({ Ours: [["Table: Sites"], ["Room", "Contact"]] })).find(({ name }) => name === "Racks")!;
    expect(racks.validations!.some(({ area }) => area.column === at("racks", "site"))).toBe(false);
  });
});

test("every table says what a row of it is, and every column what belongs there, in sentences", () => {
  const said = tableKeys.flatMap((key) => [tables[key].note, ...columnsOf(key).map(([, { meaning }]) => meaning)]);
  expect(said.filter((text) => !/^[\w{].{3,}\.$/.test(text))).toEqual([]);
});
