import { foldName } from "../../text";
import { rowsOf, type Plan, type PlanRow } from "../read";
import type { TableKey } from "../schema";

/** A plan with the look-ups that commissioning needs, each made once for all jobs. */
export class PlanLookup {
  private readonly maps = new Map<string, ReadonlyMap<string, readonly unknown[]>>();

  constructor(readonly plan: Plan) {}

  /** Lists the rows of a table in whose `column` stands `name`, without case. */
  rowsWhere<Key extends TableKey>(key: Key, column: keyof PlanRow<Key> & string, name: string): readonly PlanRow<Key>[] {
    const id = `${key} ${column}`;
    let map = this.maps.get(id) as ReadonlyMap<string, readonly PlanRow<Key>[]> | undefined;
    if (map === undefined) {
      const made = new Map<string, PlanRow<Key>[]>();
      for (const row of rowsOf(this.plan, key)) {
        const folded = foldName(String(row[column] ?? ""));
        const list = made.get(folded);
        if (list === undefined) made.set(folded, [row]);
        else list.push(row);
      }
      map = made;
      this.maps.set(id, map);
    }
    return map.get(foldName(name)) ?? [];
  }

  /** Finds the first row of a table in whose `column` stands `name`; null for a blank name. */
  find<Key extends TableKey>(key: Key, column: keyof PlanRow<Key> & string, name: string): PlanRow<Key> | null {
    return name.trim() === "" ? null : (this.rowsWhere(key, column, name)[0] ?? null);
  }
}
