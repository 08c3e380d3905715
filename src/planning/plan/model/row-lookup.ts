import { foldName } from "../../text";
import { textOf } from "../read";
import { groupBy } from "./group-by";
import { once, oncePer } from "./once";

/** The rows of one table, found by their name and by the text of any column, without case. */
export class RowLookup<Row extends { readonly row: number }> {
  private readonly named = once(() => this.rowsByName());
  private readonly grouped = oncePer((column: string) => this.rowsByText(column));

  constructor(
    readonly rows: readonly Row[],
    private readonly nameColumn: string,
  ) {}

  /** Finds the row of a name; the first of two; null for a blank, which names nothing. */
  find(name: string): Row | null {
    const rows = this.named();
    return rows.get(name) ?? rows.get(foldName(name)) ?? null;
  }

  /** Groups the rows by the folded text of a column; rows with a blank there are left out. */
  groupBy(column: string): ReadonlyMap<string, readonly Row[]> {
    return this.grouped(column);
  }

  private rowsByName(): ReadonlyMap<string, Row> {
    const rows = new Map<string, Row>();
    for (const row of this.rows) {
      const text = textOf(row, this.nameColumn);
      const folded = foldName(text);
      if (folded === "") continue;
      const first = rows.get(folded) ?? row;
      rows.set(folded, first);
      // Most names are spelt alike everywhere: those are found without folding them again.
      rows.set(text, first);
    }
    return rows;
  }

  private rowsByText(column: string): ReadonlyMap<string, readonly Row[]> {
    const groups = groupBy(this.rows, (row) => foldName(textOf(row, column)));
    groups.delete("");
    return groups;
  }
}
