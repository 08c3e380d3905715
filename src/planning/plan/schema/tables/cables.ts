import { named, number, text } from "../column";
import { furtherTable } from "../table";

export const cables = furtherTable("Cables", "One row a cable. Write cables gives those of Ports, Host ports, Links and feeds a row and an id; what you add stays.", {
  id: text("Id", "Written by Write cables, or your own; never changed or used again. It stands on the label.", named),
  from: text("From", "Port, host or device at one end. Write cables keeps both ends as the plan has them.", { width: 30 }),
  to: text("To", "Port of a switch, switch or feed at the other end.", { width: 24 }),
  kind: text("Kind", "What it is.", { suggestions: ["copper", "fibre", "direct attach", "power"] }),
  colour: text("Colour", "Colour of its jacket, for the label."),
  lengthM: number("Length m", "Its length in metres, for the label.", { within: { above: 0, max: 100_000, example: 3 } }),
});
