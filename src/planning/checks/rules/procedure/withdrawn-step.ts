import { withdrawnSteps } from "../../../commissioning/procedure";
import { gather } from "../../../plan/model";
import { foldName } from "../../../text";
import { remarkAt, type Remark, type Rule } from "../../finding";

const byId = new Map(Object.entries(withdrawnSteps).map(([id, what]) => [foldName(id), what]));

export const withdrawnStep: Rule = {
  name: "withdrawn-step",
  family: "procedure",
  weight: "stop",
  meaning: "No job that is not closed follows a procedure with a built-in step that was withdrawn because it is unsafe.",
  check: (model) => {
    const followed = new Set(gather(model.rows("jobs"), ({ state, procedure }) => (state === "closed" ? [] : [foldName(procedure)])));
    return gather(model.rows("steps"), (step): Remark[] => {
      const what = byId.get(foldName(step.stepId));
      if (what === undefined || !followed.has(foldName(step.procedure))) return [];
      return [remarkAt(model, "steps", step, "stepId", `${step.stepId} was withdrawn: it ${what}. Delete it, or follow the built-in steps.`)];
    });
  },
};
