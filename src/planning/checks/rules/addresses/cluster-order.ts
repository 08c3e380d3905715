import { gather } from "../../../plan/model";
import { cutSentence } from "../../../text";
import { remarkAt, type Remark, type Rule } from "../../finding";

export const clusterOrder: Rule = {
  name: "cluster-order",
  family: "addresses",
  weight: "warn",
  meaning: "Every array of a new cluster has a place of its own in the order in which they join: tabs put their steps in that order.",
  check: (model) =>
    gather(model.rows("clusters"), (row): Remark[] => {
      if (row.state !== "new") return [];
      const seen = new Map<number, string>();
      return model.rowsWith("arrays", "cluster", row.cluster).flatMap((array): Remark[] => {
        const order = array.clusterOrder;
        if (order === null) {
          const sentence = `When ${array.array} joins ${row.cluster} is blank. Write its place: 2, 3 ... behind the array that creates it.`;
          return [remarkAt(model, "arrays", array, "clusterOrder", cutSentence(sentence))];
        }
        const other = seen.get(order);
        seen.set(order, array.array);
        // Two that would create it are told by a rule of their own.
        if (other === undefined || order === 1) return [];
        return [remarkAt(model, "arrays", array, "clusterOrder", cutSentence(`${array.array} joins ${row.cluster} as number ${order}, and so does ${other}. Give each its own place.`))];
      });
    }),
};
