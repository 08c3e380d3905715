import { planPreview } from "../../../../src/planning/commissioning/reports";
import { readTab } from "../../../../src/planning/commissioning/tab";
import type { TableRows } from "../../../../src/planning/plan/schema";
import { tabSheet } from "../../../support/tab-workbook";
import { modelOf } from "../../../support/plan-model";
import { problemOf } from "../../../support/sentence";

const rows: TableRows = {
  sites: [{ site: "Mill" }],
  arrays: [{ id: "A1", array: "a1", site: "Mill", serial: "S-1" }, { id: "A2", array: "a2", site: "Mill", serial: "S-2" }],
  procedures: [{ procedure: "Own", section: "Look", forEach: "array", visit: "One" }, { procedure: "Own", section: "Leave", forEach: "site", visit: "Two" }],
  steps: [
    { stepId: "OWN-1", procedure: "Own", section: "Look", do: "Read {{Array}}.", expect: "{{Array.Serial}}", record: "serial", required: "yes", minutes: 2 },
    { stepId: "OWN-2", procedure: "Own", section: "Look", do: "Pull it.", caution: "It is heavy.", record: "number", unit: "s", sign: "two", holdPoint: "yes", required: "yes", minutes: 5 },
    { stepId: "OWN-3", procedure: "Own", section: "Leave", do: "Lock the door.", record: "choice:locked|open", required: "yes", sign: "none" },
  ],
  jobs: [{ id: "J1", job: "Other work", site: "Mill", procedure: "Nothing" }, { id: "J2", job: "Mill", site: "Mill", procedure: "own" }],
};
const linesOf = (more: TableRows = {}, procedure = "Own") => planPreview(modelOf({ ...rows, ...more }), procedure, "2026-03-02").rows.map((line) => line.map(({ value = null }) => value));

describe("the preview of a procedure", () => {
  test("shows every step for the first array of a job that follows it, by section and visit", () => {
    expect(linesOf().slice(4)).toEqual([
      ["Visit 1 of 2: One", null, null, null, null, null, null],
      ["Look", null, null, null, null, null, null],
      ["OWN-1", "a1", "Read a1.", "S-1", "serial", "one name", 2],
      ["OWN-2", "a1", "HOLD POINT: nothing further before this is signed by two.\nCAUTION: It is heavy.\nPull it.", "", "number in s", "two names", 5],
      ["Visit 2 of 2: Two", null, null, null, null, null, null],
      ["Leave", null, null, null, null, null, null],
      ["OWN-3", "Mill", "Lock the door.", "", "locked | open", "nobody", 0],
    ]);
    expect(String(linesOf()[1]![0])).toContain("as job Mill would show it for a1 at Mill");
  });

  test("takes the array that a job names, and any job where none follows the procedure", () => {
    expect(linesOf({ jobs: [{ job: "Second", site: "Mill", procedure: "Other", arrays: "a2, a1" }] })[6]).toEqual(["OWN-1", "a2", "Read a2.", "S-2", "serial", "one name", 2]);
  });

  test("shows a procedure about one part for the first one that the array has, where no job names one", () => {
    const about = (forEach: "controller" | "drive" | "shelf"): TableRows => ({
      arrays: [{ id: "A1", array: "a1", site: "Mill", controllers: "A,B", drives: 3 }],
      shelves: [{ array: "a1", shelf: "S1" }, { array: "a1", shelf: "S2" }],
      procedures: [{ procedure: "Own", section: "Look", forEach, when: "Is subject = yes" }],
      steps: [{ stepId: "OWN-1", procedure: "Own", section: "Look", do: "Point at it." }],
    });
    expect((["controller", "drive", "shelf"] as const).map((kind) => linesOf(about(kind)).slice(5).map(([, label]) => label))).toEqual([["a1 A"], ["a1 bay 1"], ["a1 S1"]]);
  });

  test("is no tab of a job", () => {
    expect(readTab(tabSheet(planPreview(modelOf(rows), "Own", "2026-03-02"), "Preview"))).toBeNull();
  });

  test("has no answer without a job, and says what is wrong with a step", () => {
    expect(problemOf(() => linesOf({ jobs: [] })).sentence).toBe("No job stands in the plan, so there is no site to show a procedure for. Write a job first.");
    expect(problemOf(() => linesOf({ steps: [{ stepId: "OWN-1", procedure: "Own", section: "Look", do: "Paint it {{Paint}}." }] })).sentence).toContain('names "Paint"');
  });
});
