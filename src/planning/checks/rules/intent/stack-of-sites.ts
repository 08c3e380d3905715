import { gather } from "../../../plan/model";
import type { PlanRow } from "../../../plan/read";
import { cutSentence, foldName } from "../../../text";
import { remarkAt, type Remark, type Rule } from "../../finding";

export const stackOfSites: Rule = {
  name: "stack-of-sites",
  family: "intent",
  weight: "warn",
  meaning: "The switches of one stack stand at one site: two stacks of one name would count as one, which restarts as one.",
  check: (model) => {
    const first = new Map<string, PlanRow<"switches">>();
    return gather(model.rows("switches"), (row): Remark[] => {
      if (row.stack === "" || row.site === "") return [];
      const earlier = first.get(foldName(row.stack));
      if (earlier === undefined) first.set(foldName(row.stack), row);
      if (earlier === undefined || foldName(earlier.site) === foldName(row.site)) return [];
      const sentence = `Stack ${row.stack} is of ${earlier.switch} at ${earlier.site} too, and ${row.switch} is at ${row.site}. Give each stack a name of its own.`;
      return [remarkAt(model, "switches", row, "stack", cutSentence(sentence))];
    });
  },
};
