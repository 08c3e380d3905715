import type { Kilograms } from "../../quantity";
import type { PlanRow } from "../read";
import { shelfLabel } from "./drives";

/** What goes into a rack and draws power: an array, a shelf or a switch. */
export interface Device {
  readonly table: "arrays" | "shelves" | "switches";
  readonly row: PlanRow<"arrays"> | PlanRow<"shelves"> | PlanRow<"switches">;
  readonly name: string;
  /** Null where the plan does not say, as of every switch. */
  readonly kg: Kilograms | null;
}

/** Lists some arrays, shelves and switches as devices, in this order. */
export function devicesOf(arrays: readonly PlanRow<"arrays">[], shelves: readonly PlanRow<"shelves">[], switches: readonly PlanRow<"switches">[]): Device[] {
  return [
    ...arrays.map((row): Device => ({ table: "arrays", row, name: row.array, kg: row.weightKg })),
    ...shelves.map((row): Device => ({ table: "shelves", row, name: shelfLabel(row), kg: row.weightKg })),
    ...switches.map((row): Device => ({ table: "switches", row, name: row.switch, kg: null })),
  ];
}
