import { named, share, text } from "../column";
import { table } from "../table";

export const pools = table("Pools", "One row a pool of capacity.", {
  pool: text("Pool", "Name of the pool.", named),
  cluster: text("Cluster", "Cluster it is in.", { from: "clusters" }),
  fillLimit: share("Fill limit", "Share that may be filled, such as 80%."),
  acrossArrays: text("Across arrays", "none, or the redundancy scheme laid over its arrays.", {
    suggestions: ["none", "2 copies", "3 copies", "2+1", "4+2"],
  }),
});
