import { parseExpectation } from "../../../../src/planning/commissioning/procedure";
import { entryValidations, type PlacedStep } from "../../../../src/planning/commissioning/tab/entry-validations";
import { slotColumns } from "../../../../src/planning/commissioning/tab/tab-columns";

function steps(...records: readonly (string | null)[]): PlacedStep[] {
  return records.flatMap((record, index): PlacedStep[] => {
    if (record === null) return [];
    const expectation = parseExpectation({ record, tolerance: null, tolerancePercent: null, bound: "" }, "", "Step S-1");
    const words = { key: "", stepId: "", do: "", caution: "", makersGuide: "", subject: "" } as const;
    const step = { ...words, expectation, unit: "", required: true, sign: "one", holdPoint: false, minutes: 1, planCell: null, slot: null } as const;
    return [{ row: 10 + index, step, columns: null }];
  });
}

const stepRows = { first: 10, last: 18 };
const snagRows = { first: 22, last: 30 };
const validationsOf = (records: readonly (string | null)[]) => entryValidations(steps(...records), stepRows, snagRows);

const ticks = { rule: { kind: "list", items: ["Yes", "No", "Not applicable", "Waived"] }, message: "Choose one of the list.", strict: true };
const numbers = { rule: { kind: "number" }, message: "Type a number, or Not applicable or Waived.", strict: false };
const dates = { rule: { kind: "date" }, message: "Type a date, such as 2026-05-31, or Not applicable or Waived.", strict: false };
const found = (row: number, rows = 1) => ({ row, column: 6, rows, columns: 1 });

describe("what may be typed", () => {
  test("is said of Found by the kind of the record; texts, serial numbers and addresses may be anything", () => {
    const inFound = validationsOf(["tick", "text", "number", "address", "date", "serial", "choice:a|b"]).filter(({ area }) => area.column === 6);
    expect(inFound).toEqual([
      { area: found(10), ...ticks },
      { area: found(12), ...numbers },
      { area: found(14), ...dates },
      { area: found(16), rule: { kind: "list", items: ["a", "b", "Not applicable", "Waived"] }, message: "Choose one of the list.", strict: true },
    ]);
  });

  test("stands once for neighbouring rows that ask for the same, up to the last row", () => {
    const inFound = validationsOf(["tick", "tick", null, "tick", "number", "number", "text", "number", "number"]).filter(({ area }) => area.column === 6);
    expect(inFound).toEqual([
      { area: found(10, 2), ...ticks },
      { area: found(13), ...ticks },
      { area: found(14, 2), ...numbers },
      { area: found(17, 2), ...numbers },
    ]);
  });

  test("is a list as long as a sheet takes, and anything where it would be longer", () => {
    const choices = (length: number): string => `choice:a|${"b".repeat(length)}`;
    const lists = (record: string) => validationsOf([record]).filter(({ area }) => area.column === 6).length;
    // a, the long one, Not applicable and Waived with a comma between: 255 characters are the most.
    expect(lists(choices(255 - "a,,Not applicable,Waived".length))).toBe(1);
    expect(lists(choices(256 - "a,,Not applicable,Waived".length))).toBe(0);
  });

  test("is a unit beside a size, and a day or the end of a snag", () => {
    const rest = validationsOf(["size", "number", "size"]).filter(({ area }) => area.column !== 6);
    expect(rest).toEqual([
      { area: { row: 10, column: 7, rows: 1, columns: 1 }, rule: { kind: "list", items: ["TB", "TiB", "bytes"] }, message: "Choose the unit that was seen: TB, TiB or bytes.", strict: true },
      { area: { row: 12, column: 7, rows: 1, columns: 1 }, rule: { kind: "list", items: ["TB", "TiB", "bytes"] }, message: "Choose the unit that was seen: TB, TiB or bytes.", strict: true },
      { area: { row: 10, column: 12, rows: 9, columns: 1 }, rule: { kind: "date" }, message: "Type a date, such as 2026-05-31.", strict: false },
      { area: { row: 22, column: 8, rows: 9, columns: 1 }, rule: { kind: "list", items: ["Closed", "Accepted"] }, message: "Choose Closed once it is mended, or Accepted with a name.", strict: true },
      { area: { row: 22, column: 4, rows: 9, columns: 1 }, rule: { kind: "date" }, message: "Type a date, such as 2026-05-31.", strict: false },
    ]);
  });

  test("stands in the columns of a grid's pairs, in which no day and no name is asked for", () => {
    const [number, tick, list] = steps("number", "tick", "text");
    const grid = [{ ...number!, row: 12, columns: slotColumns[1]! }, { ...tick!, row: 12, columns: slotColumns[3]! }, { ...number!, row: 13, columns: slotColumns[1]! }];
    const may = entryValidations([{ ...list!, row: 10 }, ...grid, { ...tick!, row: 15 }], { first: 10, last: 15 }, snagRows).map(({ area, rule }) => [area.column, area.row, area.rows, rule.kind]);
    expect(may.slice(0, 5)).toEqual([[6, 15, 1, "list"], [8, 12, 2, "number"], [12, 12, 1, "list"], [12, 10, 2, "date"], [12, 14, 2, "date"]]);
  });
});
