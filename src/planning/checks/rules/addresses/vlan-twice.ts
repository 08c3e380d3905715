import { gather, type Network, type PlanModel } from "../../../plan/model";
import { cutSentence, foldName } from "../../../text";
import { remarkAt, type Remark, type Rule } from "../../finding";

export const vlanTwice: Rule = {
  name: "vlan-twice",
  family: "addresses",
  weight: "warn",
  meaning: "Two IPv4 networks of a site have VLANs of their own, unless they are on switches apart. A network of each address family may share one.",
  check: (model) => {
    const seen = new Map<string, Network[]>();
    const at = (place: string): Network[] => seen.get(place) ?? [];
    const switchesOf = switchesByNetwork(model);
    return gather(model.networks.all(), (network): Remark[] => {
      const { row, prefix } = network;
      if (row.vlan === null || prefix?.family !== 4) return [];
      // A network of no site reaches every one.
      const [everywhere, ofSite] = [`${row.vlan}`, `${row.vlan}\n${foldName(row.site)}`];
      const earlier = row.site === "" ? at(everywhere) : [...at(`${row.vlan}\n`), ...at(ofSite)];
      const other = earlier.find((one) => !areApart(one, network, switchesOf));
      for (const place of [everywhere, ofSite]) seen.set(place, [...at(place), network]);
      if (other === undefined) return [];
      return [remarkAt(model, "networks", row, "vlan", cutSentence(`VLAN ${row.vlan} of ${row.network} is that of ${other.row.network} already: both would be one network. Give each its own.`))];
    });
  },
};

/** Lists the switches that carry a network, for all that a switch carries. */
function switchesByNetwork(model: PlanModel): ReadonlyMap<Network, readonly object[]> {
  const switches = new Map<Network, object[]>();
  for (const row of model.rows("switches")) for (const network of model.networks.carriedOn(row)) switches.set(network, [...(switches.get(network) ?? []), row]);
  return switches;
}

/** Tells whether two networks meet on no switch: sides A and B never do, and others where the plan says which switches carry each. */
function areApart(one: Network, other: Network, switchesOf: ReadonlyMap<Network, readonly object[]>): boolean {
  if (one.row.side !== "" && other.row.side !== "") return one.row.side !== other.row.side;
  const [own, others] = [switchesOf.get(one), switchesOf.get(other)];
  return own !== undefined && others !== undefined && !own.some((row) => others.includes(row));
}
