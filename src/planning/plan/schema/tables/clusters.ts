import { choice, named, text } from "../column";
import { table } from "../table";

export const clusters = table("Clusters", "One row a cluster: arrays that are managed as one, at one shared address.", {
  cluster: text("Cluster", "Name of the cluster.", named),
  network: text("Network", "Network of its shared address.", { from: "networks" }),
  sharedAddress: text("Shared address", "Address at which the cluster is managed; it sits on no port."),
  state: choice("State", "new: created by the first job; existing: arrays join it.", ["new", "existing"]),
  release: text("Release", "Firmware that its members run: an array that joins is brought to it, never they to its.", { since: 5 }),
});
