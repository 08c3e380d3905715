import { areaOfFilter, literally, moveFilter, testOf, withCondition } from "../../../src/workbook/document/sheet-filter";
import type { Comparison, SheetFilter } from "../../../src/workbook/document/workbook-document";

const of = (value: string | number | boolean | null, text = value === null ? "" : String(value)) => ({ value, text });
const compare = (operator: Comparison["operator"], value: string) => testOf({ kind: "compare", joins: false, comparisons: [{ operator, value }] });

describe("comparisons of a filter, ECMA-376 part 1, section 18.3.2.1", () => {
  test.each([
    ["equal", "*rail*", "Top rail 2", true], ["equal", "*rail*", "raid", false], ["equal", "rail?", "rails", true], ["equal", "rail?", "rail", false],
    ["equal", "50~*", "50*", true], ["equal", "50~*", "500", false], ["equal", "(a+b)", "(a+b)", true], ["equal", "RAIL", "rail", true], ["equal", "a*b", "a\nb", true],
    ["equal", "*rr-*", "rr-array-1", true], ["equal", "*rr-*", "rrarray", false], ["equal", "!\"#$%&'()+,-./:;<=>@[\\]^_`{|}", "!\"#$%&'()+,-./:;<=>@[\\]^_`{|}", true],
    ["equal", " ", null, true], ["equal", " ", "x", false], ["notEqual", " ", null, false], ["notEqual", " ", 0, true],
    ["equal", "7", 7, true], ["equal", "7", "7", true], ["equal", "7", 7.5, false], ["notEqual", "x", null, true], ["notEqual", "*x*", "axb", false],
    ["greaterThan", "7", 7, false], ["greaterThan", "7", 8, true], ["greaterThanOrEqual", "7", 7, true], ["lessThan", "7", null, false], ["lessThanOrEqual", "7", 7, true],
    ["greaterThan", "7", "8 drives", false], ["greaterThan", "b", "c", true], ["greaterThan", "b", "B", false], ["lessThan", "b", 5, false],
  ] as const)("%s %s of %p is %p", (operator, wanted, value, holds) => {
    expect(compare(operator, wanted)(of(value))).toBe(holds);
  });

  test("two comparisons must both hold, or one of them", () => {
    const comparisons = [{ operator: "greaterThan", value: "3" }, { operator: "lessThan", value: "8" }] as const;
    expect([2, 5, 9].map((value) => testOf({ kind: "compare", joins: true, comparisons })(of(value)))).toEqual([false, true, false]);
    expect([2, 5, 9].map((value) => testOf({ kind: "compare", joins: false, comparisons })(of(value)))).toEqual([true, true, true]);
  });

  test("a text that is meant letter by letter holds no letters that stand for others", () => {
    expect(compare("equal", literally("50~*?"))(of("50~*?"))).toBe(true);
    expect(compare("equal", literally("5*"))(of("55"))).toBe(false);
  });
});

test("a list asks for what cells show, whatever their capitals and the format of a number, and for nothing where it says so", () => {
  const test = testOf({ kind: "list", texts: ["Metal", "1,200.00", "0.5"], blank: false });
  expect([of("metal"), of(1200, "1,200.00"), of(0.5, "50%"), of(null), of("wood")].map(test)).toEqual([true, true, true, false, false]);
  expect([of(null), of("  "), of("a")].map(testOf({ kind: "list", texts: [], blank: true }))).toEqual([true, true, false]);
});

describe("a filter goes along with rows and columns", () => {
  const own: SheetFilter = { area: { row: 2, column: 1, rows: 5, columns: 3 }, columns: [{ column: 1, condition: { kind: "list", texts: ["a"], blank: false } }] };
  const where = (filter: SheetFilter | null) => filter && [filter.area!.row, filter.area!.column, filter.area!.rows, filter.area!.columns, ...filter.columns.map(({ column }) => column)];

  test.each([
    ["a row before it", { axis: "row", at: 0, by: 1 }, [3, 1, 5, 3, 1]], ["a row within", { axis: "row", at: 4, by: 2 }, [2, 1, 7, 3, 1]],
    ["a column before it", { axis: "column", at: 0, by: 2 }, [2, 3, 5, 3, 1]], ["a column within", { axis: "column", at: 2, by: 1 }, [2, 1, 5, 4, 2]],
    ["its first column away", { axis: "column", at: 1, by: -1 }, [2, 1, 5, 2, 0]], ["its column with a condition away", { axis: "column", at: 2, by: -1 }, [2, 1, 5, 2]],
    ["its row of arrows away", { axis: "row", at: 2, by: -1 }, null], ["all of it away", { axis: "column", at: 0, by: -6 }, null],
  ] as const)("%s", (_what, move, wanted) => {
    expect(where(moveFilter(own, [], move))).toEqual(wanted);
  });

  test("that of a table is where its table is, without totals, and nowhere where it has no header", () => {
    const table = { name: "Racks", area: { row: 0, column: 0, rows: 5, columns: 2 }, totalRows: 1 };
    expect(areaOfFilter({ table: "Racks", columns: [] }, [table])).toEqual({ row: 0, column: 0, rows: 4, columns: 2 });
    expect(areaOfFilter({ table: "Racks", columns: [] }, [{ ...table, isHeadless: true }])).toBeNull();
    expect(areaOfFilter({ table: "Sites", columns: [] }, [table])).toBeNull();
    expect(moveFilter({ table: "Racks", columns: [{ column: 1 }] }, [table], { axis: "column", at: 1, by: 1 })).toEqual({ table: "Racks", columns: [{ column: 2 }] });
  });

  test("a column without a condition is said only where it hides its arrow", () => {
    expect(withCondition(own, 1, undefined).columns).toEqual([]);
    expect(withCondition({ ...own, columns: [{ column: 0, hidesArrow: true }] }, 0, undefined).columns).toEqual([{ column: 0, hidesArrow: true, condition: undefined }]);
  });
});
