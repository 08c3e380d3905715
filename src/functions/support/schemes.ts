import { parseScheme, type Scheme } from "../../planning/capacity";
import { readRows } from "./cells";

/** Reads a range of schemes, in its own order; null where it is blank throughout. A bad one is named by its row. */
export function readSchemes(received: unknown, argument: string): Scheme[] | null {
  const rows = readRows(received, argument, ["scheme", "schemes"]);
  if (rows.length === 0) return null;
  return rows.flatMap(({ row, cells }) =>
    cells.filter((cell) => cell !== null).map((cell) => parseScheme(cell, `${argument} row ${row}`)),
  );
}
