import { count, named, number, share, text } from "../column";
import { table } from "../table";

export const feeds = table("Feeds", "One row a power feed. Planning figures: a licensed electrician and the local code decide.", {
  feed: text("Feed", "Name of the feed.", named),
  site: text("Site", "Where it is.", { from: "sites" }),
  source: text("Source", "What it hangs on: the board, the UPS, the utility."),
  volts: number("Volts", "Voltage; between lines when three-phase.", { within: { above: 0, max: 1000, example: 230 } }),
  phases: count("Phases", "1 or 3."),
  breakerA: number("Breaker A", "Rating of its breaker.", { within: { above: 0, max: 10_000, example: 16 } }),
  continuousShare: share("Continuous share", "Share of the breaker that may be loaded all the time; 0.8 when empty."),
  powerFactor: number("Power factor", "Power factor of the load; 1 when empty.", { within: { above: 0, max: 1, example: 0.95 } }),
});
