import { count, measure, named, text } from "../column";
import { table } from "../table";

export const switches = table("Switches", "One row a switch that array ports or hosts are cabled to.", {
  switch: text("Switch", "Name of the switch.", named),
  site: text("Site", "Where it is.", { from: "sites" }),
  rack: text("Rack", "Rack it sits in.", { from: "racks" }),
  bottomUnit: count("Bottom unit", "Lowest rack unit it fills."),
  units: count("Units", "Rack units it fills."),
  watts: measure("Watts", "Power it draws.", "W"),
  feedA: text("Feed A", "Feed of its first supply.", { from: "feeds" }),
  feedB: text("Feed B", "Feed of its second supply.", { from: "feeds" }),
  networks: text("Networks", "Networks it carries, with commas between.", { from: "networks", several: true }),
});
