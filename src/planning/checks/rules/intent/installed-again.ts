import { gather, orNull } from "../../../plan/model";
import { cutSentence } from "../../../text";
import { remarkAt, type Remark, type Rule } from "../../finding";

export const installedAgain: Rule = {
  name: "installed-again",
  family: "intent",
  weight: "stop",
  meaning: "No open job creates or joins a cluster with an array that a closed job has installed: its drives, which hold data by now, would be emptied.",
  check: (model) =>
    gather(model.rows("jobs"), (job): Remark[] => {
      const again = job.state === "closed" ? null : orNull(() => model.places.installedAgain(job));
      if (again === null) return [];
      const sentence = `${job.job} would empty the drives of ${again.array.array}, which ${again.by.job} installed. Name the new arrays here.`;
      return [remarkAt(model, "jobs", job, "arrays", cutSentence(sentence))];
    }),
};
