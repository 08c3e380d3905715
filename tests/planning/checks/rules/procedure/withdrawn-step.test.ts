import { withdrawnStep } from "../../../../../src/planning/checks/rules/procedure/withdrawn-step";
import { cells, found, sample } from "../../../../support/plan-rows";

function withStep(stepId: string) {
  const rows = sample();
  rows.steps[0]!.stepId = stepId;
  rows.steps[0]!.procedure = "Install a rack array";
  return rows;
}

test("finds a step that an earlier edition had and that is unsafe, in a procedure that an open job follows", () => {
  expect(found(withdrawnStep, withStep("ins-152"))).toEqual([
    "Steps 5 Step id: ins-152 was withdrawn: it puts capacity into a pool that may be live before the array was built and tested. Delete it, or follow the built-in steps.",
  ]);
});

test("takes it where every job that follows the procedure is closed, and takes any other id", () => {
  const rows = withStep("INS-152");
  for (const job of rows.jobs) job.state = "closed";
  expect(cells(withdrawnStep, rows)).toEqual([]);
  expect(cells(withdrawnStep, withStep("INS-1520"))).toEqual([]);
  expect(cells(withdrawnStep, sample())).toEqual([]);
});
