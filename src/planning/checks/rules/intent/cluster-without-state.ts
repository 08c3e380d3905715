import { gather } from "../../../plan/model";
import { cutSentence } from "../../../text";
import { remarkAt, type Remark, type Rule } from "../../finding";

export const clusterWithoutState: Rule = {
  name: "cluster-without-state",
  family: "intent",
  weight: "stop",
  meaning: "Every cluster says whether it is new or exists: creating it, or joining it, empties drives.",
  check: (model) =>
    gather(model.rows("clusters"), (row): Remark[] => {
      const [first] = model.rowsWith("arrays", "cluster", row.cluster);
      if (row.state !== "" || first === undefined) return [];
      const sentence = `Whether ${first.array} creates ${row.cluster} or joins it is not known, and both empty drives. Write new or existing.`;
      return [remarkAt(model, "clusters", row, "state", cutSentence(sentence))];
    }),
};
