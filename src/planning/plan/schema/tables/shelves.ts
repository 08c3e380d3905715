import { count, measure, named, text } from "../column";
import { furtherTable } from "../table";

export const shelves = furtherTable("Shelves", "One row a drive shelf of an array. Shelves get power before the chassis, and lose it after.", {
  array: text("Array", "Array it belongs to.", { required: true, from: "arrays" }),
  shelf: text("Shelf", "Name of the shelf at its array, such as S1.", named),
  serial: text("Serial", "Serial number of the shelf."),
  rack: text("Rack", "Rack it goes into.", { from: "racks" }),
  bottomUnit: count("Bottom unit", "Rack unit lowest down that it fills."),
  units: count("Units", "Rack units it fills."),
  weightKg: measure("Weight kg", "Weight with its drives; its array's does not count it.", "kg"),
  watts: measure("Watts", "Power it draws, where the watts of its array do not count it already.", "W"),
  feedA: text("Feed A", "Feed of its first supply.", { from: "feeds" }),
  feedB: text("Feed B", "Feed of its second supply.", { from: "feeds" }),
  bays: count("Bays", "Drive bays it has."),
});
