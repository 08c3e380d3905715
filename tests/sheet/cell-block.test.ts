import { changedRows, type Cell, type SheetPlan } from "../../src/sheet";

const plan = (...rows: Cell[][]): SheetPlan => ({ name: "Tab", rows, styles: {}, columnWidths: [] });

describe("the rows in which two plans of a sheet differ", () => {
  test.each<[string, Cell[][], Cell[][], unknown[]]>([
    ["are none where both say the same", [[{ value: 1 }, {}]], [[{ value: 1, style: "other" }, { value: null }]], []],
    ["take an empty cell for one that was never filled", [[{ value: null }]], [[{}]], []],
    ["hold the cells that changed, and null where nothing did", [[{ value: 1 }, { value: 2 }]], [[{ value: 1 }, { value: 3 }]], [{ row: 0, column: 0, cells: [[null, { value: 3 }]] }]],
    ["clear a cell that is gone", [[{ value: 1 }, { value: 2 }]], [[{ value: 1 }]], [{ row: 0, column: 0, cells: [[null, {}]] }]],
    ["bring rows that are new", [], [[{ value: 1 }], []], [{ row: 0, column: 0, cells: [[{ value: 1 }]] }]],
    ["clear rows that are gone", [[], [{ value: 1 }]], [], [{ row: 1, column: 0, cells: [[{}]] }]],
    ["compare formulas by their text, whatever they are known to answer", [[{ formula: "=A1", value: 1 }]], [[{ formula: "=A1" }]], []],
    ["see another formula", [[{ formula: "=A1" }]], [[{ formula: "=A2" }]], [{ row: 0, column: 0, cells: [[{ formula: "=A2" }]] }]],
    ["see a value in place of a formula", [[{ formula: "=A1", value: 1 }]], [[{ value: 1 }]], [{ row: 0, column: 0, cells: [[{ value: 1 }]] }]],
    ["tell a number from its text", [[{ value: 1 }]], [[{ value: "1" }]], [{ row: 0, column: 0, cells: [[{ value: "1" }]] }]],
  ])("%s", (_, earlier, later, blocks) => {
    expect(changedRows(plan(...earlier), plan(...later))).toEqual(blocks);
  });
});
