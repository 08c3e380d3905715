import { gather } from "../../../plan/model";
import { type Remark, remarkAt, type Rule } from "../../finding";

export const clusterWithoutPort: Rule = {
  name: "cluster-without-port",
  family: "addresses",
  weight: "stop",
  meaning: "Every array of a cluster has a port in the cluster's network, for the shared address may move to it.",
  check: (model) =>
    gather(model.rows("arrays"), (row): Remark[] => {
      const cluster = model.find("clusters", row.cluster);
      const network = cluster === null ? null : model.networks.named(cluster.network);
      const ports = model.ports.of(row);
      if (cluster === null || network === null || ports.length === 0 || ports.some((port) => port.network === network)) return [];
      const sentence = `${row.array} has no port in ${network.row.network}, the network of ${cluster.cluster}. Give it one, or take it out of the cluster.`;
      return [remarkAt(model, "arrays", row, "cluster", sentence)];
    }),
};
