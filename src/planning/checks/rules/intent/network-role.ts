import { gather, networkRoles, type Network } from "../../../plan/model";
import { foldName, quote, splitNames } from "../../../text";
import { remarkAt, type Remark, type Rule } from "../../finding";

export const networkRole: Rule = {
  name: "network-role",
  family: "intent",
  weight: "warn",
  meaning: "A network that array ports may take says what it is for: without its role nothing is known about paths of hosts, and ports take networks in the order of their rows.",
  check: (model) => {
    const reached = new Set<Network>(gather(model.rows("arrays"), ({ site }) => (site === "" ? [] : model.networks.ofSite(site))));
    return gather(model.networks.all(), (network): Remark[] => {
      const { row } = network;
      const unknown = splitNames(row.role).find((word) => !networkRoles.some((role) => role === foldName(word)));
      if (unknown !== undefined) return [remarkAt(model, "networks", row, "role", `Role ${quote(unknown)} is not known. Write ${networkRoles.join(", ")}, or several with commas between.`)];
      if (row.role !== "" || !reached.has(network)) return [];
      return [remarkAt(model, "networks", row, "role", `${row.network} has no role, so paths over it are not counted or checked. Write data, management or replication.`)];
    });
  },
};
