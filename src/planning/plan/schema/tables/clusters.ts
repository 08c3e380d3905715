import { choice, named, text } from "../column";
import { table } from "../table";

export const clusters = table("Clusters", "One row a cluster: arrays that are managed as one, at one shared address.", {
  cluster: text("Cluster", "Name of the cluster.", named),
  network: text("Network", "Network of its shared address.", { from: "networks" }),
  sharedAddress: text("Shared address", "Address at which the cluster is managed; it sits on no port."),
  state: choice("State", "new: created by the first job; existing: arrays join it.", ["new", "existing"]),
  putIntoUse: choice("Put into use", "When its capacity is handed to the hosts.", ["now", "after acceptance"]),
});
