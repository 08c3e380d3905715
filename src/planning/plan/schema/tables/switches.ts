import { choice, count, measure, named, text } from "../column";
import { table } from "../table";

export const switches = table("Switches", "One row a switch that array ports or hosts are cabled to.", {
  switch: text("Switch", "Name of the switch.", named),
  site: text("Site", "Where it is.", { from: "sites" }),
  rack: text("Rack", "Rack it sits in.", { from: "racks" }),
  bottomUnit: count("Bottom unit", "Rack unit lowest down that it fills."),
  units: count("Units", "Rack units it fills."),
  watts: measure("Watts", "Power it draws.", "W"),
  feedA: text("Feed A", "Feed of its first supply.", { from: "feeds" }),
  feedB: text("Feed B", "Feed of its second supply.", { from: "feeds" }),
  networks: text("Networks", "Networks it carries, with commas between.", { from: "networks", several: true }),
  side: choice("Side", "A or B where each side of the data networks has switches of its own.", ["A", "B"], { since: 2 }),
  ports: text("Ports", "How many ports it has (24), numbered from 1, or their names (1-24, x1, x2).", { since: 2 }),
  keptPorts: text("Kept ports", "Ports that the plan must not use, such as uplinks: 23, 24 or 23-24.", { since: 2 }),
  frameBytes: count("Frame bytes", "Largest frame it forwards, header, tag and check sequence included, such as 9216.", { since: 2 }),
  stack: text("Stack", "Stack it is part of: its switches fail one by one, but run one firmware and restart together.", { since: 5 }),
});
