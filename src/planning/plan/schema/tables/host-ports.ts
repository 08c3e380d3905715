import { choice, count, text } from "../column";
import { furtherTable } from "../table";

export const hostPorts = furtherTable("Host ports", "One row an address of a host port. Where a host has rows here they are what counts, beside its row in Hosts and its Links.", {
  host: text("Host", "Host the port is on.", { required: true, from: "hosts" }),
  card: text("Card", "Port, as the host labels it. Rows of one port share its cable."),
  initiatorName: text("Initiator name", "iSCSI qualified name of the card; that of the host when empty."),
  network: text("Network", "Network it is on.", { from: "networks" }),
  side: choice("Side", "A or B; that of the network when empty.", ["A", "B"]),
  address: text("Address", "Its address."),
  mtu: count("MTU", "MTU set on the port; the network's when empty. Propose cabling fills it."),
  switch: text("Switch", "Switch it is cabled to.", { from: "switches" }),
  switchPort: text("Switch port", "Port of the switch."),
});
