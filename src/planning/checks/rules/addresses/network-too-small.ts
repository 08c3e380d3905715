import { assignableRanges, countInRanges, formatPrefix, RangeList, subtractRanges, type Prefix } from "../../../addressing";
import { gather, clusterUse, hostPortUse, isReserved, portUse, type Network, type PlanModel } from "../../../plan/model";
import { remarkAt, type Remark, type Rule } from "../../finding";

export const networkTooSmall: Rule = {
  name: "network-too-small",
  family: "addresses",
  weight: "stop",
  meaning: "A network has an address for every port, cluster and host that needs one in it, beside its gateway, the servers in it and what it keeps back.",
  check: (model) => {
    const needs = addressesNeeded(model);
    return gather(model.networks.all(), (network): Remark[] => {
      const { row, prefix } = network;
      const needed = needs.get(network)?.size ?? 0;
      if (prefix === null || needed === 0) return [];
      const room = roomIn(model, network, prefix);
      if (BigInt(needed) <= room) return [];
      const has = `has ${room} ${room === 1n ? "address" : "addresses"} to give, ${needed} ${needed === 1 ? "is" : "are"} needed`;
      const sentence = `${formatPrefix(prefix)} of ${row.network} ${has}. Give it a larger prefix.`;
      return [remarkAt(model, "networks", row, "prefix", sentence)];
    });
  },
};

function roomIn(model: PlanModel, network: Network, prefix: Prefix): bigint {
  const taken = new RangeList(prefix.family);
  for (const address of model.addresses.keptIn(network)) taken.addRange(address, address);
  for (const { first, last } of network.reserved ?? []) if (first.family === prefix.family) taken.addRange(first, last);
  return countInRanges(subtractRanges(assignableRanges(prefix), taken));
}

/** Names, by network, every use of an address in it; one that lies in what the network keeps back takes no room. */
function addressesNeeded(model: PlanModel): ReadonlyMap<Network, ReadonlySet<string>> {
  const needs = new Map<Network, Set<string>>();
  const add = (network: Network, use: string): void => {
    const uses = needs.get(network) ?? new Set<string>();
    uses.add(use);
    needs.set(network, uses);
  };
  for (const { use, address, network } of model.addresses.all()) if (network !== null && !isReserved(network, address)) add(network, use);
  for (const { row, array, network, address } of model.ports.all()) {
    if (address === null && network !== null) add(network, portUse(row.array, array?.portSharing ?? "", row));
  }
  for (const { row, network, address } of model.hostPorts.all()) if (address === null && network !== null) add(network, hostPortUse(row));
  for (const array of model.rows("arrays")) {
    for (const port of model.ports.missing(array)) add(port.network, portUse(array.array, array.portSharing, port));
  }
  for (const row of model.rows("clusters")) {
    const network = row.sharedAddress === "" ? model.networks.named(row.network) : null;
    if (network !== null) add(network, clusterUse(row));
  }
  return needs;
}
