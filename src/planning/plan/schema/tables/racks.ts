import { choice, count, measure, named, text } from "../column";
import { table } from "../table";

export const racks = table("Racks", "One row a rack. Positions count rack units from the end named in Numbered from.", {
  rack: text("Rack", "Name of the rack.", named),
  site: text("Site", "Where it stands.", { from: "sites" }),
  units: count("Units", "Rack units it has."),
  numberedFrom: choice("Numbered from", "Where unit 1 is.", ["bottom", "top"]),
  depthMm: measure("Depth mm", "Usable depth between the rails and the rear door.", "mm"),
  limitKg: measure("Limit kg", "Load the rack and the floor carry.", "kg"),
  coolingW: measure("Cooling W", "Heat that can be taken away here.", "W"),
  outlets: text("Outlets", "Outlets free for this plan, such as 12 x C13, 4 x C19."),
});
