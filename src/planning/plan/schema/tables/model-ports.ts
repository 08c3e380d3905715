import { choice, named, number, text } from "../column";
import { furtherTable } from "../table";

export const modelPorts = furtherTable("Model ports", "One row a port of a model: what it is for. Addresses and cabling follow it; arrays of models without rows take networks in turn.", {
  model: text("Model", "Model, as the Models table names it.", { ...named, from: "models" }),
  controller: text("Controller", "Controller the port is on; empty for every controller."),
  port: text("Port", "Port, as the chassis labels it.", named),
  role: choice("Role", "What its networks are for; empty where the port may be for anything.", ["data", "management", "replication", "cluster"]),
  side: choice("Side", "A or B where the port belongs to one side of the data networks.", ["A", "B"]),
  gbits: number("Gbit/s", "Speed of the port, in the list for the owner of the switch.", { within: { above: 0, max: 10_000, example: 25 } }),
  connector: text("Connector", "Connector of the port, such as SFP28 or RJ45, in the same list."),
});
