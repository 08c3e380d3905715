import { choice, count, date, named, text } from "../column";
import { furtherTable } from "../table";

export const parts = furtherTable("Parts", "One row a part, or so many alike. List parts writes what plan and quote need; day, serial and box are written as goods come and are packed.", {
  part: text("Part", "What it is, such as Alder 24 or Drive 8 TB.", { ...named, width: 30 }),
  kind: choice("Kind", "What it is in the plan: the serial of an array, a shelf or a drive goes there.", ["array", "shelf", "drive", "cable", "other"]),
  for: text("For", "Array, or site, it is for."),
  shelf: text("Shelf", "Shelf that it is, or sits in."),
  bay: count("Bay", "Bay of a drive."),
  quantity: count("Quantity", "How many; one row for each that has a serial of its own."),
  came: date("Came", "Day on which all of them came; empty while they are missing."),
  serial: text("Serial", "Serial number on its label."),
  box: text("Box", "Box in which it travels."),
});
