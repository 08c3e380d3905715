import { named, text, tick } from "../column";
import { furtherTable } from "../table";

export const assumptions = furtherTable("Assumptions", "One row a value that was assumed, not asked. It counts until the cell says something else, or somebody ticks Settled.", {
  named: text("Row", "Name of the row in which it stands.", { ...named, width: 30 }),
  table: text("Table", "Table of that row."),
  column: text("Column", "Header of its column.", { width: 18 }),
  value: text("Value", "What was assumed.", { width: 18 }),
  settled: tick("Settled", "yes once somebody knows that it is so."),
});
