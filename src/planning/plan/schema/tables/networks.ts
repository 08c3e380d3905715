import { choice, count, named, text } from "../column";
import { table } from "../table";

export const networks = table("Networks", "One row a network. Array ports take the data networks of their site in turn, side A first, then the others.", {
  network: text("Network", "Name of the network.", named),
  site: text("Site", "Where it is; empty when it reaches every site.", { from: "sites" }),
  prefix: text("Prefix", "Address range, such as 10.64.1.0/24."),
  gateway: text("Gateway", "Gateway, or none."),
  // Of the 12 bits of a tag 0 names no VLAN and 4095 is kept back (IEEE 802.1Q clause 9.6).
  vlan: count("VLAN", "VLAN number; empty when untagged.", { within: { min: 1, max: 4094, whole: true, example: 100 } }),
  mtu: count("MTU", "Largest packet; 1500 when empty."),
  routing: text("Routing", "Routing table it belongs to; empty for the common one, with several customers for that of its site's."),
  reserved: text("Reserved", "Addresses the plan must not use: addresses, a-b ranges and prefixes, with commas between."),
  role: text("Role", "What it is for: data, management, replication, cluster; several with commas between. Only data networks count as paths of hosts.", {
    suggestions: ["data", "management", "replication", "cluster"], since: 2,
  }),
  side: choice("Side", "A or B where data networks come in pairs that share no switch; empty where ports of one network go to several switches.", ["A", "B"], { since: 2 }),
  kind: choice("Kind", "IP, so when empty; other: Fibre Channel and the like, whose addresses, MTU and gateways are neither given nor checked.", ["IP", "other"], { since: 5 }),
});
