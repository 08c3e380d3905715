import { named, text } from "../column";
import { furtherTable } from "../table";

export const lists = furtherTable("Lists", "One row a column of a list that was brought in: the next list with this header goes the same way. Delete a row to be asked again.", {
  header: text("Header", "Header of the column in the list.", { ...named, width: 30 }),
  table: text("Table", "Table into which it goes."),
  column: text("Column", "Header of its column there; empty where it is left out."),
  readAs: text("Read as", "How its cells are read: day first, month first, decimal point, decimal comma, or a unit such as TB."),
});
