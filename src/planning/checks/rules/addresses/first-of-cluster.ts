import { remarkAt, type Remark, type Rule } from "../../finding";
import { foldName } from "../../../text";

export const firstOfCluster: Rule = {
  name: "first-of-cluster",
  family: "addresses",
  weight: "stop",
  meaning: "A new cluster has exactly one array of order 1: the one that creates it.",
  check: (index) =>
    index.rows("clusters").flatMap((row): Remark[] => {
      if (foldName(row.state) !== "new" || row.cluster === "") return [];
      const [first, ...others] = index.rowsWith("arrays", "cluster", row.cluster).filter(({ clusterOrder }) => clusterOrder === 1);
      if (first === undefined) return [remarkAt(index, "clusters", row, "cluster", `No array creates the new cluster ${row.cluster}. Write Cluster order 1 at the one that is installed first.`)];
      return others.map((array) => remarkAt(index, "arrays", array, "clusterOrder", `${array.array} would create ${row.cluster} after ${first.array} did. Write 2 or more: it joins.`));
    }),
};
