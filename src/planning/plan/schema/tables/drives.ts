import { count, date, size, text } from "../column";
import { furtherTable } from "../table";

export const drives = furtherTable("Drives", "One row a drive by its bay. A drive that was replaced keeps its row, with the day on which it was taken out.", {
  array: text("Array", "Array it is in.", { required: true, from: "arrays" }),
  shelf: text("Shelf", "Shelf it is in, as the Shelves table names it; empty for a bay of the chassis."),
  bay: count("Bay", "Number of its bay, counted from 1 in the chassis and in each shelf."),
  serial: text("Serial", "Serial number of the drive."),
  part: text("Part", "Part number by which it is ordered."),
  firmware: text("Firmware", "Firmware of the drive."),
  size: size("Size", "Marketed size, such as 8 TB."),
  fitted: date("Fitted", "Day on which it was put in."),
  takenOut: date("Taken out", "Day on which it was taken out; empty as long as it is in place."),
});
