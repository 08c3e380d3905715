import { gather, orNull } from "../../../plan/model";
import type { PlanRow } from "../../../plan/read";
import { cutSentence } from "../../../text";
import { remarkAt, type Remark, type Rule } from "../../finding";

export const plannedTwice: Rule = {
  name: "planned-twice",
  family: "intent",
  weight: "warn",
  meaning: "One open job alone creates or joins a cluster with an array: the second would empty the drives that the first has filled.",
  check: (model) => {
    const first = new Map<object, PlanRow<"jobs">>();
    return gather(model.rows("jobs"), (job): Remark[] => {
      if (job.state === "closed" || !model.places.emptiesDrives(job.procedure)) return [];
      const arrays = orNull(() => model.places.of(job))?.arrays ?? [];
      const twice = arrays.find((array) => first.has(array));
      const earlier = twice === undefined ? undefined : first.get(twice);
      for (const array of arrays) if (!first.has(array)) first.set(array, job);
      if (twice === undefined || earlier === undefined) return [];
      return [remarkAt(model, "jobs", job, "arrays", cutSentence(`${job.job} would install ${twice.array}, and so would ${earlier.job}. Name in each the arrays that it is about.`))];
    });
  },
};
