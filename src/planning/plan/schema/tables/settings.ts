import { named, text } from "../column";
import { table } from "../table";

export const settings = table("Settings", "Thresholds of the checks. Change a value here and the checks follow.", {
  setting: text("Setting", "Name of the threshold.", named),
  value: text("Value", "Its value."),
  meaning: text("Meaning", "What it decides.", { width: 90 }),
});
