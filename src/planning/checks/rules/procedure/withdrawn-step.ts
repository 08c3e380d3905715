import { withdrawnFault } from "../../../commissioning/procedure";
import { gather } from "../../../plan/model";
import { foldName } from "../../../text";
import { remarkAt, type Remark, type Rule } from "../../finding";

export const withdrawnStep: Rule = {
  name: "withdrawn-step",
  family: "procedure",
  weight: "stop",
  meaning: "No job that is not closed follows a procedure with a built-in step that was withdrawn because it is unsafe.",
  check: (model) => {
    const followed = new Set(gather(model.rows("jobs"), ({ state, procedure }) => (state === "closed" ? [] : [foldName(procedure)])));
    return gather(model.rows("steps"), (step): Remark[] => {
      const fault = followed.has(foldName(step.procedure)) ? withdrawnFault(step.stepId) : null;
      return fault === null ? [] : [remarkAt(model, "steps", step, "stepId", fault)];
    });
  },
};
