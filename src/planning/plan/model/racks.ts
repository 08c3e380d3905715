import { kilograms, watts, type Kilograms, type Watts } from "../../quantity";
import type { PlanRow } from "../read";
import { devicesOf, type Device } from "./devices";
import { once, oncePer } from "./once";
import type { PlanRows } from "./plan-rows";

/** Something that fills units of a rack. Units count from 1 at the bottom, whichever way the rack numbers them. */
export interface RackDevice extends Device {
  readonly lowest: number;
  readonly highest: number;
}

/** A rack and what is planned into it. */
export interface RackContents {
  readonly rack: PlanRow<"racks">;
  /** Devices whose position is known, from the bottom up. */
  readonly devices: readonly RackDevice[];
  /** Names of devices planned into it whose position is not known. */
  readonly unplaced: readonly string[];
  /** Weight of all its arrays and shelves together, wherever they stand in it; those whose weight is not known count nothing. */
  readonly kg: Kilograms;
  /** Names of arrays and shelves whose weight is not known. */
  readonly unweighed: readonly string[];
  /** Names of devices of which it is not known how many units they fill: each counts one. */
  readonly unmeasured: readonly string[];
  /** What all of it draws, which turns to heat. */
  readonly heat: Watts;
}

/** The racks of a plan. */
export class Racks {
  /** Lists the racks with the arrays, shelves and switches in each; of two rows of one name the first. */
  readonly all = once((): readonly RackContents[] => {
    const racks = this.rows.rows("racks").filter((rack) => this.rows.find("racks", rack.rack) === rack);
    return racks.map((rack) => this.of(rack));
  });

  /** Gathers what is planned into a rack. */
  readonly of = oncePer((rack: PlanRow<"racks">): RackContents => this.contentsOf(rack));

  constructor(private readonly rows: PlanRows) {}

  private contentsOf(rack: PlanRow<"racks">): RackContents {
    const planned = devicesOf(this.rows.rowsWith("arrays", "rack", rack.rack), this.rows.rowsWith("shelves", "rack", rack.rack), this.rows.rowsWith("switches", "rack", rack.rack));
    const placed = planned.map((one) => ({ name: one.name, device: deviceOf(one, rack) }));
    return {
      rack,
      devices: placed.flatMap(({ device }) => device ?? []).sort((a, b) => a.lowest - b.lowest),
      unplaced: placed.flatMap(({ name, device }) => (device === null ? [name] : [])),
      kg: kilograms(planned.reduce((sum, { kg }) => sum + (kg ?? 0), 0)),
      unweighed: planned.filter(({ table, kg }) => table !== "switches" && kg === null).map(({ name }) => name),
      unmeasured: planned.filter(({ row }) => row.units === null).map(({ name }) => name),
      heat: watts(planned.reduce((sum, { row }) => sum + (row.watts ?? 0), 0)),
    };
  }
}

function deviceOf(planned: Device, rack: PlanRow<"racks">): RackDevice | null {
  const { bottomUnit, units } = planned.row;
  const lowest = bottomUnit === null ? null : unitFromBottom(bottomUnit, rack);
  return lowest === null ? null : { ...planned, lowest, highest: lowest + unitsAbove(units) };
}

/** Computes the unit highest up that something fills, from the one lowest down, as its rack numbers them: above 38 comes 37 where that is from the top. */
export function topUnit(bottom: number, units: number | null, rack: Pick<PlanRow<"racks">, "numberedFrom"> | null): number {
  return rack?.numberedFrom === "top" ? bottom - unitsAbove(units) : bottom + unitsAbove(units);
}

/** Counts the units that something fills above its lowest; one that says no height fills one. */
function unitsAbove(units: number | null): number {
  return Math.max(units ?? 1, 1) - 1;
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
