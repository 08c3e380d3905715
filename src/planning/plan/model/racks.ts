import { kilograms, watts, type Kilograms, type Watts } from "../../quantity";
import type { PlanRow } from "../read";
import { once, oncePer } from "./once";
import type { PlanRows } from "./plan-rows";

/** Something that fills units of a rack. Units count from 1 at the bottom, whichever way the rack numbers them. */
export interface RackDevice {
  readonly table: "arrays" | "switches";
  readonly row: PlanRow<"arrays"> | PlanRow<"switches">;
  readonly name: string;
  readonly lowest: number;
  readonly highest: number;
  /** Null where the plan does not say. */
  readonly kg: Kilograms | null;
}

/** A rack and what is planned into it. */
export interface RackContents {
  readonly rack: PlanRow<"racks">;
  /** Devices whose position is known, from the bottom up. */
  readonly devices: readonly RackDevice[];
  /** Names of devices planned into it whose position is not known. */
  readonly unplaced: readonly string[];
  /** Weight of all its arrays together, wherever they stand in it. */
  readonly kg: Kilograms;
  /** What its arrays and switches draw, all of which turns to heat. */
  readonly heat: Watts;
}

/** The racks of a plan. */
export class Racks {
  /** Lists the racks with the arrays and switches in each; of two rows of one name the first. */
  readonly all = once((): readonly RackContents[] => {
    const racks = this.rows.rows("racks").filter((rack) => this.rows.find("racks", rack.rack) === rack);
    return racks.map((rack) => this.of(rack));
  });

  /** Gathers what is planned into a rack. */
  readonly of = oncePer((rack: PlanRow<"racks">): RackContents => this.contentsOf(rack));

  constructor(private readonly rows: PlanRows) {}

  private contentsOf(rack: PlanRow<"racks">): RackContents {
    const arrays = this.rows.rowsWith("arrays", "rack", rack.rack);
    const switches = this.rows.rowsWith("switches", "rack", rack.rack);
    const placed = [
      ...arrays.map((row) => ({ name: row.array, device: deviceOf("arrays", row, row.array, row.weightKg, rack) })),
      ...switches.map((row) => ({ name: row.switch, device: deviceOf("switches", row, row.switch, null, rack) })),
    ];
    return {
      rack,
      devices: placed.flatMap(({ device }) => device ?? []).sort((a, b) => a.lowest - b.lowest),
      unplaced: placed.flatMap(({ name, device }) => (device === null ? [name] : [])),
      kg: kilograms(arrays.reduce((sum, { weightKg }) => sum + (weightKg ?? 0), 0)),
      heat: watts([...arrays, ...switches].reduce((sum, row) => sum + (row.watts ?? 0), 0)),
    };
  }
}

function deviceOf(table: RackDevice["table"], row: RackDevice["row"], name: string, kg: Kilograms | null, rack: PlanRow<"racks">): RackDevice | null {
  const lowest = row.bottomUnit === null ? null : unitFromBottom(row.bottomUnit, rack);
  return lowest === null ? null : { table, row, name, lowest, highest: topUnit(lowest, row.units), kg };
}

/** Computes the highest unit that something fills; one that says no height fills one. */
export function topUnit(bottom: number, units: number | null): number {
  return bottom + Math.max(units ?? 1, 1) - 1;
}

/** Counts a rack unit from the bottom; null where the rack numbers from the top and its height is not known. */
export function unitFromBottom(unit: number, { numberedFrom, units }: PlanRow<"racks">): number | null {
  if (numberedFrom !== "top") return unit;
  return units === null ? null : units - unit + 1;
}

/** Writes which units of its rack a device fills, as the rack numbers them. */
export function unitsOf({ lowest, highest }: RackDevice, { numberedFrom, units }: PlanRow<"racks">): string {
  const [from, to] = numberedFrom === "top" && units !== null ? [units - highest + 1, units - lowest + 1] : [lowest, highest];
  return from === to ? `unit ${from}` : `units ${from} to ${to}`;
}
