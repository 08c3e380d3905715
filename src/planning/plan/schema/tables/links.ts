import { named, number, text } from "../column";
import { table } from "../table";

export const links = table("Links", "Cables between switches and to hosts. Array ports are links already, by the Ports table.", {
  from: text("From", "Switch or host at one end.", named),
  to: text("To", "Switch or host at the other end.", named),
  unavailability: number("Unavailability", "Share of the time the link is down; 0 when empty.", { within: { min: 0, below: 1, example: 0.001 } }),
});
