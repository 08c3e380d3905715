import { subjectFault } from "../../../commissioning/job";
import { gather, orNull } from "../../../plan/model";
import { remarkAt, type Remark, type Rule } from "../../finding";

export const jobWithoutSubject: Rule = {
  name: "job-without-subject",
  family: "intent",
  weight: "stop",
  meaning: "A job of a procedure about one controller, shelf or drive names its array and that part, as the plan has them; one that erases arrays, or joins them to a cluster that exists, names them.",
  check: (model) =>
    gather(model.rows("jobs"), (job): Remark[] => {
      const fault = job.state === "closed" ? null : orNull(() => subjectFault(model, job));
      return fault === null ? [] : [remarkAt(model, "jobs", job, "subject", fault)];
    }),
};
