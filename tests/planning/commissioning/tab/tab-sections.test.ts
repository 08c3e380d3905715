import { readSections, readTab } from "../../../../src/planning/commissioning/tab";
import { gridPlan } from "../../../support/commissioning-plan";
import { builtTab, withCells } from "../../../support/filled-tab";

const plan = gridPlan();
const sheet = builtTab({ ...plan, procedures: plan.procedures!.map((row) => (row.section === "Cluster" || row.section === "Start" ? { ...row, visit: `To the ${row.section}` } : row)) });
const tab = readTab(sheet)!;
const told = (of = sheet) => readSections(of, readTab(of)!).map(({ visit, title, rows }) => [visit, title, rows.map(({ no }) => Number(no))] as const);

describe("the sections of a tab", () => {
  test("are those that a reader sees, with the heading of the visit that begins with one", () => {
    expect(told()).toEqual([
      ["Visit 1 of 2: To the Start", "Start", [1]],
      ["", "Arrays", [2, 3, 4, 5, 6, 7, 8]],
      ["", "Ports", [9, 10, 11, 12, 13]],
      ["Visit 2 of 2: To the Cluster", "Cluster", [14]],
      ["", "End", [15]],
      ["", "Drives", [16, 17, 18, 19, 20]],
    ]);
  });

  test("hold every row once, whatever was typed over a heading", () => {
    const heading = tab.steps.find(({ stepId }) => stepId === "T-30")!.row - 1;
    const without = withCells(sheet, [heading, tab.places.columns.no!, null], [heading - 1, tab.places.columns.no!, null]);
    expect(told(without).flatMap(([, , rows]) => rows)).toEqual(told().flatMap(([, , rows]) => rows));
    expect(told(without).map(([, title]) => title)).toEqual(["Start", "Arrays", "Ports", "End", "Drives"]);
  });
});
