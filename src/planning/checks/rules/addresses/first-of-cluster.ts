import { gather } from "../../../plan/model";
import { remarkAt, type Remark, type Rule } from "../../finding";

export const firstOfCluster: Rule = {
  name: "first-of-cluster",
  family: "addresses",
  weight: "stop",
  meaning: "A new cluster has exactly one array of order 1: the one that creates it.",
  check: (model) =>
    gather(model.rows("clusters"), (row): Remark[] => {
      if (row.state !== "new" || row.cluster === "") return [];
      const [first, ...others] = model.rowsWith("arrays", "cluster", row.cluster).filter(({ clusterOrder }) => clusterOrder === 1);
      if (first === undefined) return [remarkAt(model, "clusters", row, "cluster", `No array creates the new cluster ${row.cluster}. Write Cluster order 1 at the one that is installed first.`)];
      return others.map((array) => remarkAt(model, "arrays", array, "clusterOrder", `${array.array} would create ${row.cluster} after ${first.array} did. Write 2 or more: it joins.`));
    }),
};
