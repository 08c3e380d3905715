import { addProcedures, builtInProcedures, describeOlder, procedureEditions } from "../../../../src/planning/commissioning/procedure";
import { PlanModel } from "../../../../src/planning/plan/model";
import type { TableRows } from "../../../../src/planning/plan/schema";
import { planWorkbook } from "../../../support/commissioning-plan";

const planOf = (rows: TableRows) => {
  const workbook = planWorkbook(rows);
  return { workbook, model: new PlanModel(workbook) };
};
const without = (name: string): TableRows => ({
  procedures: builtInProcedures.procedures.filter(({ procedure }) => procedure !== name),
  steps: builtInProcedures.steps.filter(({ procedure }) => procedure !== name),
});

describe("the built-in procedures of this edition, beside those of a plan", () => {
  test("are told of as they are where nothing was changed", () => {
    const editions = procedureEditions(planOf(builtInProcedures).model);
    expect(editions.every(({ isThere, differing }) => isThere && differing === 0)).toBe(true);
    expect(describeOlder(editions)).toBe("");
    const { model, workbook } = planOf(builtInProcedures);
    expect(addProcedures(model, workbook).writes).toEqual([]);
  });

  test("are counted where a step says something else, is gone, or stands in the plan alone; what the maker's guide says does not count", () => {
    const steps = builtInProcedures.steps
      .filter(({ stepId }) => stepId !== "RCV-020")
      .map((row) => (row.stepId === "RCV-021" ? { ...row, do: "Look at it." } : row.stepId === "RCV-022" ? { ...row, makersGuide: "Page 4." } : row));
    const { model } = planOf({ ...builtInProcedures, steps: [...steps, { stepId: "OWN-1", procedure: "Receiving", section: "Boxes", do: "Sing." }] });
    expect(procedureEditions(model).filter(({ differing }) => differing > 0)).toEqual([{ procedure: "Receiving", isThere: true, differing: 3 }]);
    expect(describeOlder(procedureEditions(model))).toContain("Receiving (3 of its steps)");
  });

  test("are added where the plan has none of that name, and change nothing that stands there", () => {
    const { model, workbook } = planOf(without("Replace a drive"));
    const { writes } = addProcedures(model, workbook);
    const [procedure, step] = [model.table("procedures")!, model.table("steps")!];
    expect(new Set(writes.map(({ before }) => before))).toEqual(new Set([null]));
    const added = (sheet: string, column: number | undefined) => new Set(writes.filter((one) => one.sheet === sheet && one.column === column).map(({ value }) => value));
    expect(added(procedure.sheet, procedure.columns.procedure)).toEqual(new Set(["Replace a drive"]));
    expect([...added(step.sheet, step.columns.stepId)]).toEqual(builtInProcedures.steps.filter(({ procedure: name }) => name === "Replace a drive").map(({ stepId }) => stepId));
  });
});
