import { gather, type PlanModel } from "../../../plan/model";
import { cutSentence, foldName } from "../../../text";
import { remarkAt, type Remark, type Rule } from "../../finding";

export const poolOfOtherCluster: Rule = {
  name: "pool-of-other-cluster",
  family: "capacity",
  weight: "stop",
  meaning: "An array gives its capacity, and that of its drive sets, to pools of its own cluster: a pool cannot reach beyond its cluster.",
  check: (model) => [
    ...gather(model.rows("arrays"), (row): Remark[] => {
      const sentence = sentenceOf(model, row.array, row.cluster, row.pool);
      return sentence === null ? [] : [remarkAt(model, "arrays", row, "pool", sentence)];
    }),
    ...gather(model.rows("driveSets"), (row): Remark[] => {
      const sentence = sentenceOf(model, row.array, model.find("arrays", row.array)?.cluster ?? "", row.pool);
      return sentence === null ? [] : [remarkAt(model, "driveSets", row, "pool", sentence)];
    }),
  ],
};

function sentenceOf(model: PlanModel, array: string, cluster: string, pool: string): string | null {
  const other = model.find("pools", pool)?.cluster ?? "";
  if (other === "" || foldName(other) === foldName(cluster)) return null;
  return cutSentence(`${pool} is a pool of cluster ${other}; ${array} is in ${cluster === "" ? "none" : cluster}. Name a pool of its cluster, or mend the cluster.`);
}
