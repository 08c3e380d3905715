import { count, named, text } from "../column";
import { table } from "../table";

export const networks = table("Networks", "One row a network. Array ports take networks in turn, in the order of the rows of their site.", {
  network: text("Network", "Name of the network.", named),
  site: text("Site", "Where it is; empty when it reaches every site.", { from: "sites" }),
  prefix: text("Prefix", "Address range, such as 10.64.1.0/24."),
  gateway: text("Gateway", "Gateway, or none."),
  vlan: count("VLAN", "VLAN number; empty when untagged."),
  mtu: count("MTU", "Largest packet; 1500 when empty."),
  routing: text("Routing", "Routing table it belongs to; empty for the common one."),
  reserved: text("Reserved", "Addresses the plan must not use: addresses, a-b ranges and prefixes, with commas between."),
});
