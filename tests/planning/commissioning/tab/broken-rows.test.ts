import { buildJob, jobsOf, readCommissioningPlan } from "../../../../src/planning/commissioning/build";
import { readTab } from "../../../../src/planning/commissioning/tab";
import { showCell, type SheetSnapshot } from "../../../../src/sheet";
import { gridPlan, jobName, moment, planWorkbook } from "../../../support/commissioning-plan";
import { builtTab, columnsOf, computed, withCells } from "../../../support/filled-tab";
import { tabSheet } from "../../../support/tab-workbook";

const sheet = builtTab(gridPlan());
const tab = readTab(sheet)!;
const columns = columnsOf(tab);
const slot = tab.steps.find((step) => step.slot !== null)!;
const faultsOf = (on: SheetSnapshot): readonly string[] => readTab(on)!.faults;

test("slots of a row whose hidden Rule was emptied have no step id but the one that is shown", () => {
  const { steps } = readTab(withCells(sheet, [slot.row, columns.rule!, null]))!;
  expect(steps.filter(({ row }) => row === slot.row).map(({ stepId }) => stepId)).toEqual([slot.stepId, "", "", ""]);
});

test("a snag about the row of a grid is about its first slot that is done and not as expected, else about its first", () => {
  const snag = tab.places.snagsRow + 2;
  const about = (first: string | null = null, second: string | null = null) => {
    const found = [[slot.row, columns.found!, first], [slot.row, columns.expectedBefore!, second]] as const;
    return readTab(withCells(sheet, ...found, [snag, columns.stepId!, Number(slot.no)], [snag, columns.step!, "Dent"]))!.snags[0]!.stepId;
  };
  expect([about(), about("192.0.2.1", "many"), about("", "many"), about("203.0.113.1", "many"), about("192.0.2.1")]).toEqual(["T-20", "T-21", "T-21", "T-20", "T-20"]);
});

test("an emptied header of the keys is one fault, not one of every row", () => {
  expect(faultsOf(withCells(sheet, [tab.headerRow, columns.key!, null]))).toEqual(['The header "Key" of "North hall" is gone. Undo that, or write it back over its column in row 2.']);
});

test("an emptied key is told as lost in a row for snags too", () => {
  const row = tab.places.snagsRow + 2;
  const sentence = `Row ${row + 1} of "North hall" has lost its hidden key. Undo that, or move what was typed to another row and delete this one.`;
  expect(faultsOf(withCells(sheet, [row, columns.key!, null]))).toEqual([sentence]);
});

test("a record that a build has carried is found elsewhere once its row was moved above the headers", () => {
  const build = (on: SheetSnapshot) => {
    const source = readCommissioningPlan({ sheets: [...planWorkbook(gridPlan()).sheets, on] });
    return buildJob(source, jobsOf(source)[0]!, () => "new", moment).tab;
  };
  const carried = computed(tabSheet(build(withCells(sheet, [tab.steps[0]!.row, columns.found!, "x1001"], [slot.row, columns.note!, "x1002"])), jobName));
  for (const [row, text] of [[tab.steps[0]!.row, "x1001"], [slot.row, "x1002"]] as const) {
    const moved = <Cell>(cells: readonly (readonly Cell[])[]): (readonly Cell[])[] => [...cells.slice(0, 1), cells[row]!, ...cells.slice(1, row), ...cells.slice(row + 1)];
    const next = build({ ...carried, values: moved(carried.values), formulas: moved(carried.formulas) });
    expect(next.rows.flat().map(({ value = null }) => showCell(value))).toContain(text);
  }
});
