import { comesAfter, gather, oncePer } from "../../../plan/model";
import type { PlanRow } from "../../../plan/read";
import { cutSentence, foldName, splitNames } from "../../../text";
import { remarkAt, type Remark, type Rule } from "../../finding";

export const jobsInCircle: Rule = {
  name: "jobs-in-circle",
  family: "intent",
  weight: "warn",
  meaning: "No open job waits for one that waits for it in turn: neither would ever begin.",
  check: (model) => {
    const open = new Map(model.rows("jobs").filter(({ state }) => state !== "closed").map((job) => [foldName(job.job), job]));
    const before = oncePer((job: PlanRow<"jobs">) => splitNames(job.after).flatMap((name) => open.get(foldName(name)) ?? []));
    return gather([...open.values()], (job): Remark[] => {
      const waits = before(job).find((earlier) => comesAfter(earlier, job, before));
      if (waits === undefined) return [];
      const sentence = waits === job ? `${job.job} waits for itself.` : `${job.job} comes after ${waits.job}, which waits for it in turn.`;
      return [remarkAt(model, "jobs", job, "after", cutSentence(`${sentence} Clear After of the one that can begin first.`))];
    });
  },
};
