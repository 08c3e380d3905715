import { buildJob, jobsOf, readCommissioningPlan } from "../../../../src/planning/commissioning/build";
import { readTab, refuseFaulty } from "../../../../src/planning/commissioning/tab";
import { at, tabColumnKeys, tabColumns } from "../../../../src/planning/commissioning/tab/tab-columns";
import type { CellValue, SheetSnapshot } from "../../../../src/sheet";
import { jobName, moment, planWorkbook, smallPlan } from "../../../support/commissioning-plan";
import { tabSheet } from "../../../support/tab-workbook";

const source = readCommissioningPlan(planWorkbook(smallPlan()));
const built = tabSheet(buildJob(source, jobsOf(source)[0]!, () => "new", moment).tab, jobName);
const header = 1;
const steps = readTab(built)!.steps;

/** Writes cells of the built tab: row, column, value. */
function withCells(...cells: readonly (readonly [number, number, CellValue])[]): SheetSnapshot {
  const values = built.values.map((line) => [...line]);
  for (const [row, column, value] of cells) values[row]![column] = value;
  return { ...built, values };
}
const faultsOf = (sheet: SheetSnapshot): readonly string[] => readTab(sheet)?.faults ?? ["no tab"];

describe("a tab that can be read as it was built", () => {
  test("has no faults, with columns and rows that people added", () => {
    expect(faultsOf(built)).toEqual([]);
    const wider = built.values.map((line, row) => [...line.slice(0, 3), row === header ? "Mine" : "x", ...line.slice(3)]);
    expect(faultsOf({ ...built, values: wider })).toEqual([]);
    const longer = [...built.values.slice(0, steps[2]!.row), built.values[0]!.map((_, column) => (column === 0 ? 7 : column === 2 ? "mine" : null)), ...built.values.slice(steps[2]!.row)];
    expect(faultsOf({ ...built, values: longer })).toEqual([]);
  });
});

describe("a header", () => {
  const others = tabColumnKeys.filter((key) => key !== "key");

  test.each(others)("that is emptied or renamed is named: %s", (key) => {
    for (const value of [null, "Renamed"]) expect(faultsOf(withCells([header, at[key], value]))[0]).toMatch(`The header "${tabColumns[key].header}" of "North hall" is gone.`);
  });

  test.each(others)("that stands over another column is named: %s", (key) => {
    const other = key === "no" ? "note" : "no";
    const swapped = withCells([header, at[key], tabColumns[other].header], [header, at[other], tabColumns[key].header]);
    expect(faultsOf(swapped).join(" ")).toMatch(/The header ".*" of "North hall" is not where it was\./);
  });
});

describe("the hidden key of a step", () => {
  test("is named by its row where it is emptied, renamed, or another's", () => {
    const [first, second] = [steps[0]!, steps[1]!];
    const lost = `Row ${first.row + 1} of "North hall" has lost its hidden key. Undo that, or move what was typed to another row and delete this one.`;
    const foreign = `Row ${first.row + 1} of "North hall" has a hidden key that is not that of its step. Undo that, or move what was typed to another row and delete this one.`;
    expect(faultsOf(withCells([first.row, at.key, null]))).toEqual([lost]);
    for (const key of ["x", second.key, first.key.replace("J0001", "J0002")]) expect(faultsOf(withCells([first.row, at.key, key]))).toEqual([foreign]);
  });
});

test("a tab with a fault is refused by its first one, in at most 160 characters", () => {
  expect(() => { refuseFaulty({ sheet: "T", faults: [] }); }).not.toThrow();
  const { faults } = readTab(withCells([header, at.found, null]))!;
  expect(() => { refuseFaulty({ sheet: "T", faults }); }).toThrow(faults[0]);
  for (const fault of [...faults, ...faultsOf(withCells([steps[0]!.row, at.key, "x"]))]) expect(fault.length).toBeLessThanOrEqual(160);
});
