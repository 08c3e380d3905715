import { foldName } from "../../text";
import { textOf } from "../read";
import { nameColumn, type TableKey } from "../schema";
import { oncePer } from "./once";
import type { PlanRows } from "./plan-rows";

/** The names of the rows of a plan by their letters and digits alone. */
export class Spellings {
  private readonly names = oncePer((key: TableKey) => this.namesOf(key));

  constructor(private readonly rows: PlanRows) {}

  /** Finds the one name of a table that differs from `name` in nothing but case, spaces, dashes and other marks; null for none or several. */
  alike(key: TableKey, name: string): string | null {
    return this.names(key).get(lettersOf(name)) ?? null;
  }

  private namesOf(key: TableKey): ReadonlyMap<string, string | null> {
    const names = new Map<string, string | null>([["", null]]);
    const column = nameColumn(key);
    for (const row of this.rows.rows(key)) {
      const name = textOf(row, column);
      const letters = lettersOf(name);
      const earlier = names.get(letters);
      // Of one name that stands twice the last spelling is offered; two names that cannot be told apart are not.
      names.set(letters, earlier === undefined || (earlier !== null && foldName(earlier) === foldName(name)) ? name : null);
    }
    return names;
  }
}

function lettersOf(name: string): string {
  return foldName(name).replace(/[^\p{L}\p{N}]/gu, "");
}
