import { remarkAt, type Rule } from "../../finding";

export const clusterWithoutAddress: Rule = {
  name: "cluster-without-address",
  family: "addresses",
  weight: "warn",
  meaning: "Every cluster has a shared address, at which it is managed.",
  check: (model) =>
    model
      .rows("clusters")
      .filter(({ cluster, sharedAddress }) => cluster !== "" && sharedAddress === "")
      .map((row) => remarkAt(model, "clusters", row, "sharedAddress", `${row.cluster} has no shared address. Write one of its network, or choose Assign addresses.`)),
};
