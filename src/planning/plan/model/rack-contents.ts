import type { PlanRow } from "../read";
import { foldName } from "../../text";
import type { PlanIndex } from "./plan-index";

/** Something that fills units of a rack. Units count from 1 at the bottom, whichever way the rack numbers them. */
export interface RackItem {
  readonly table: "arrays" | "switches";
  readonly row: PlanRow<"arrays"> | PlanRow<"switches">;
  readonly name: string;
  readonly lowest: number;
  readonly highest: number;
  /** Null where the plan does not say. */
  readonly kg: number | null;
}

/** A rack and what is planned into it. */
export interface RackContents {
  readonly rack: PlanRow<"racks">;
  /** Items whose position is known, from the bottom up. */
  readonly items: readonly RackItem[];
}

const contents = new WeakMap<PlanIndex, readonly RackContents[]>();

/** Lists the racks of a plan with the arrays and switches in each. */
export function rackContents(index: PlanIndex): readonly RackContents[] {
  let list = contents.get(index);
  if (list === undefined) {
    list = index.rows("racks").filter((rack) => index.find("racks", rack.rack) === rack).map((rack) => ({ rack, items: itemsIn(index, rack) }));
    contents.set(index, list);
  }
  return list;
}

function itemsIn(index: PlanIndex, rack: PlanRow<"racks">): RackItem[] {
  const arrays = index.rowsWith("arrays", "rack", rack.rack).map((row) => itemOf("arrays", row, row.array, row.weightKg, rack));
  const switches = index.rowsWith("switches", "rack", rack.rack).map((row) => itemOf("switches", row, row.switch, null, rack));
  return [...arrays, ...switches].filter((item) => item !== null).sort((a, b) => a.lowest - b.lowest);
}

function itemOf(table: RackItem["table"], row: RackItem["row"], name: string, kg: number | null, rack: PlanRow<"racks">): RackItem | null {
  if (row.bottomUnit === null) return null;
  const lowest = unitFromBottom(row.bottomUnit, rack);
  return lowest === null ? null : { table, row, name, lowest, highest: lowest + Math.max(row.units ?? 1, 1) - 1, kg };
}

/** Counts a rack unit from the bottom; null where the rack numbers from the top and its height is not known. */
export function unitFromBottom(unit: number, { numberedFrom, units }: PlanRow<"racks">): number | null {
  if (foldName(numberedFrom) !== "top") return unit;
  return units === null ? null : units - unit + 1;
}

/** Writes which units of its rack an item fills, as the rack numbers them. */
export function unitsOf({ lowest, highest }: RackItem, { numberedFrom, units }: PlanRow<"racks">): string {
  const [from, to] = foldName(numberedFrom) === "top" ? [units! - highest + 1, units! - lowest + 1] : [lowest, highest];
  return from === to ? `unit ${from}` : `units ${from} to ${to}`;
}
