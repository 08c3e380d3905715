import { assignableRanges, countInRanges, formatPrefix, RangeList, subtractRanges, type Prefix } from "../../../addressing";
import { addressCells, isReserved } from "../../../plan/model";
import { remarkAt, type Remark, type Rule } from "../../finding";
import type { NetworkFacts, PlanIndex } from "../../../plan/model";
import { foldName } from "../../../text";
import { missingPorts, portUse } from "../../../plan/model";

export const networkTooSmall: Rule = {
  name: "network-too-small",
  family: "addresses",
  weight: "stop",
  meaning: "A network has an address for every port, cluster and host that needs one in it, beside its gateway and what it keeps back.",
  check: (index) => {
    const needs = addressesNeeded(index);
    return index.networks.flatMap((network): Remark[] => {
      const { row, prefix } = network;
      const needed = needs.get(network)?.size ?? 0;
      if (prefix === null || needed === 0) return [];
      const room = roomIn(network, prefix);
      if (BigInt(needed) <= room) return [];
      return [remarkAt(index, "networks", row, "prefix", `${formatPrefix(prefix)} of ${row.network} has ${room} addresses to give, ${needed} are needed. Give it a larger prefix.`)];
    });
  },
};

function roomIn({ gateway, reserved }: NetworkFacts, prefix: Prefix): bigint {
  const taken = new RangeList(prefix.family);
  if (gateway !== null && typeof gateway !== "string" && gateway.family === prefix.family) taken.addRange(gateway, gateway);
  for (const { first, last } of reserved ?? []) if (first.family === prefix.family) taken.addRange(first, last);
  return countInRanges(subtractRanges(assignableRanges(prefix), taken));
}

/** Names, by network, every use of an address in it; one that lies in what the network keeps back takes no room. */
function addressesNeeded(index: PlanIndex): ReadonlyMap<NetworkFacts, ReadonlySet<string>> {
  const needs = new Map<NetworkFacts, Set<string>>();
  const add = (network: NetworkFacts, use: string): void => {
    const uses = needs.get(network) ?? new Set<string>();
    uses.add(use);
    needs.set(network, uses);
  };
  for (const { use, address, network } of addressCells(index)) if (network !== null && !isReserved(network, address)) add(network, use);
  for (const { row, array, network, address } of index.ports) {
    if (address === null && network !== null) add(network, portUse(row.array, foldName(array?.portSharing ?? ""), row.controller, row.port));
  }
  for (const array of index.rows("arrays")) {
    for (const { controller, port, network } of missingPorts(index, array)) add(network, portUse(array.array, foldName(array.portSharing), controller, port));
  }
  for (const row of index.rows("clusters")) {
    const network = row.sharedAddress === "" ? index.network(row.network) : null;
    if (network !== null) add(network, `cluster\n${row.row}`);
  }
  return needs;
}
