import { choice, date, named, number, text } from "../column";
import { furtherTable } from "../table";

export const readings = furtherTable("Readings", "One row a reading of an array or a pool in use. The latest one counts before Arrays.Used; three over sixty days tell when it will be full.", {
  date: date("Date", "Day on which it was read."),
  subject: text("Subject", "Array or pool that was read; of a pool, what its hosts store.", named),
  what: choice("What", "used: space in use; capacity: usable capacity that it shows.", ["used", "capacity"]),
  value: number("Value", "What was read, as a number."),
  unit: text("Unit", "Unit of the value; TB when empty.", { suggestions: ["TB", "TiB", "GB", "GiB", "PB"] }),
  source: text("Source", "Who or what read it, such as the name of a job."),
});
