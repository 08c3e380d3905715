import { clusterStepFault } from "../../../commissioning/job";
import { gather, orNull } from "../../../plan/model";
import { remarkAt, type Remark, type Rule } from "../../finding";

export const noStepForCluster: Rule = {
  name: "no-step-for-cluster",
  family: "intent",
  weight: "stop",
  meaning: "A job that creates or joins clusters follows a procedure that says what each of its arrays does with its own: create it, join it while it is new, or join it live.",
  check: (model) =>
    gather(model.rows("jobs"), (job): Remark[] => {
      const fault = job.state === "closed" ? null : orNull(() => clusterStepFault(model, job));
      return fault === null ? [] : [remarkAt(model, "jobs", job, "procedure", fault)];
    }),
};
