import { describeWrites } from "../../../src/taskpane/elements/describe-writes";
import { workbookOf } from "../../support/plain-workbook";

const workbook = workbookOf({ Sites: [["Mill"]], Ports: [["Array", "Controller", "Port", "Network", "Address"], ["one", "A", "", "data-1", { error: "#N/A" }]] });

describe("describing changes", () => {
  test("names the cell, what the row is about, and what stands there now and then", () => {
    const write = { sheet: "Ports", row: 1, column: 4, before: { error: "#N/A" }, value: "10.0.0.1" };
    expect(describeWrites(workbook, [write], 9)).toEqual([{ cell: "Ports E2", of: "one · A · data-1", before: "#N/A", after: "10.0.0.1" }]);
  });

  test("names a new row by what is written into it", () => {
    const write = (column: number, value: string) => ({ sheet: "Ports", row: 2, column, before: null, value });
    expect(describeWrites(workbook, [write(0, "two"), write(4, "10.0.0.2")], 9).map(({ of, before }) => [of, before])).toEqual([["", "–"], ["two", "–"]]);
  });

  test("goes through the sheets in tab order and down the rows, and no further than asked", () => {
    const write = (sheet: string, row: number) => ({ sheet, row, column: 0, before: null, value: 1 });
    expect(describeWrites(workbook, [write("Ports", 5), write("Ports", 3), write("Sites", 9)], 2).map(({ cell }) => cell)).toEqual(["Sites A10", "Ports A4"]);
  });
});
