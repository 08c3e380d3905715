import { count, text } from "../column";
import { table } from "../table";

export const ports = table("Ports", "One row an address of an array port. Assign addresses fills it; what stands here stays.", {
  array: text("Array", "Array the port is on.", { required: true, from: "arrays" }),
  controller: text("Controller", "Controller the port is on."),
  port: text("Port", "Port, as the chassis labels it."),
  network: text("Network", "Network it is on.", { from: "networks" }),
  address: text("Address", "Its address."),
  mtu: count("MTU", "MTU set on the port; the network's when empty. Assign addresses fills it."),
  switch: text("Switch", "Switch it is cabled to.", { from: "switches" }),
  switchPort: text("Switch port", "Port of the switch."),
});
