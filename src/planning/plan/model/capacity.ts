import { breakDown, layoutDrives, parseScheme, sumOfBreakdowns, usableOfMixed, type Breakdown, type Layout, type Scheme } from "../../capacity";
import { bytes, megabytesPerSecond, share, type Bytes } from "../../quantity";
import { rebuildHours } from "../../rates";
import { foldName } from "../../text";
import type { PlanRow } from "../read";
import type { setColumns } from "./drive-sets";
import { gather } from "./gather";
import { groupBy } from "./group-by";
import { once, oncePer } from "./once";
import type { PlanRows } from "./plan-rows";
import { orNull } from "./refusal";
import { sumKnown } from "./sum-known";

/** An array of a pool whose capacity is known. */
export interface PoolMember {
  readonly name: string;
  readonly row: PlanRow<"arrays">;
  readonly usable: Bytes;
  readonly used: Bytes;
}

/** A pool with its arrays, and what each of them holds. */
export interface PoolContents {
  readonly pool: PlanRow<"pools">;
  readonly fillLimit: number;
  /** Scheme laid over the arrays; null for none, or where it cannot be read. */
  readonly across: Scheme | null;
  readonly arrays: readonly PlanRow<"arrays">[];
  /** The arrays whose capacity is known, in the same order. */
  readonly members: readonly PoolMember[];
}

/** Drives of an array under one scheme: a row of Drive sets, or the columns of an array that has none there. */
export interface DriveSet {
  /** Cell of the plan that says it, but for the column. */
  readonly at: { readonly table: "arrays" | "driveSets"; readonly row: number };
  /** What it is called, for a sentence. */
  readonly label: string;
  readonly drives: number | null;
  readonly driveSize: Bytes | null;
  readonly scheme: Scheme | null;
  readonly spares: number | null;
  readonly pool: string;
  readonly array: PlanRow<"arrays">;
}

/** What the arrays and pools of a plan hold. */
export class Capacity {
  /** Lists the sets of drives of an array: its rows in Drive sets, or its own columns as one. */
  readonly setsOf = oncePer((array: PlanRow<"arrays">): readonly DriveSet[] => {
    const rows = this.rows.rowsWith("driveSets", "array", array.array);
    if (rows.length === 0) return [{ ...pickSet(array), at: { table: "arrays", row: array.row }, label: array.array, pool: array.pool, array }];
    return rows.map((row): DriveSet => {
      return { ...pickSet(row), at: { table: "driveSets", row: row.row }, label: `${array.array} ${row.set}`.trim(), pool: row.pool === "" ? array.pool : row.pool, array };
    });
  });

  /** Lists the sets of drives of all arrays. */
  readonly sets = once((): readonly DriveSet[] => gather(this.rows.rows("arrays"), (array) => this.setsOf(array)));

  /** Lays out the drives of a set; null where the plan does not say enough, or they cannot be laid out. */
  readonly layoutOf = oncePer(({ scheme, drives, spares }: DriveSet): Layout | null =>
    scheme === null || drives === null ? null : orNull(() => layoutDrives(scheme, drives, spares ?? 0)),
  );

  /** Breaks the raw capacity of a set down; null where the plan does not say enough, or its drives cannot be laid out. */
  readonly ofSet = oncePer((set: DriveSet): Breakdown | null => {
    const layout = this.layoutOf(set);
    return layout === null || set.driveSize === null ? null : breakDown(layout, set.driveSize, set.array.reserve ?? share(0));
  });

  /** Breaks the raw capacity of an array down; null where the plan does not say enough of one of its sets, or that cannot be laid out. */
  readonly of = oncePer((row: PlanRow<"arrays">): Breakdown | null => this.sumOf(this.setsOf(row)));

  /** Breaks down what an array brings to a pool, or, for null, to none that is known; null as for `of`. */
  partIn(array: PlanRow<"arrays">, pool: PlanRow<"pools"> | null): Breakdown | null {
    return this.sumOf(this.setsOf(array).filter((set) => this.rows.find("pools", set.pool) === pool));
  }

  /** Tells what is used of an array in a pool, or in none: all of it is in the pool that the array names, else in that of its first set. */
  usedIn(array: PlanRow<"arrays">, pool: PlanRow<"pools"> | null): Bytes {
    const home = this.rows.find("pools", array.pool === "" ? this.setsOf(array)[0]!.pool : array.pool);
    return array.used !== null && home === pool ? array.used : bytes(0n);
  }

  /** Lists the arrays that bring something to a pool, or, for null, to none that is known, in the order of their rows. */
  arraysIn(pool: PlanRow<"pools"> | null): readonly PlanRow<"arrays">[] {
    return this.byPool().get(pool) ?? [];
  }

  private readonly byPool = once(() => {
    const places = this.sets().map(({ array, pool }) => ({ array, pool: this.rows.find("pools", pool) }));
    return new Map([...groupBy(places, ({ pool }) => pool)].map(([pool, some]) => [pool, [...new Set(some.map(({ array }) => array))]]));
  });

  /** Lists the pools of a plan with the arrays in each; of two rows of one name the first. */
  readonly pools = once((): readonly PoolContents[] => {
    const pools = this.rows.rows("pools").filter((pool) => this.rows.find("pools", pool.pool) === pool);
    return pools.map((pool) => this.contentsOf(pool));
  });

  /**
   * Computes what hosts can store in a pool: what the scheme across its arrays leaves of their usable capacities, which may differ, or their sum
   * where there is none. Null where an array's capacity is not known, or the scheme cannot be read or laid over them.
   */
  readonly toHosts = oncePer(({ pool, across, arrays, members }: PoolContents): Bytes | null => {
    if (members.length === 0 || members.length < arrays.length) return null;
    if (saysNone(pool.acrossArrays)) return bytes(members.reduce((sum, { usable }) => sum + usable, 0n));
    return across === null ? null : orNull(() => usableOfMixed(across, members.map(({ usable }) => usable), 0, share(0)));
  });

  /** Computes the part of what a pool gives to hosts that some of its arrays bring, by their usable capacities; null where either is not known. */
  partToHosts(contents: PoolContents, arrays: readonly PlanRow<"arrays">[]): Bytes | null {
    const whole = this.toHosts(contents);
    const usableOf = (some: readonly PlanRow<"arrays">[]): bigint => some.reduce((sum, row) => sum + (this.partIn(row, contents.pool)?.usable ?? 0n), 0n);
    const all = usableOf(contents.arrays);
    return whole === null || all === 0n ? null : bytes((whole * usableOf(arrays)) / all);
  }

  /** Computes what hosts can store on an array: its parts of what its pools give them, and what is in no pool whole; null where one of these is not known. */
  readonly toHostsOf = oncePer((array: PlanRow<"arrays">): Bytes | null => {
    const parts = gather(this.pools(), (contents) => (contents.arrays.includes(array) ? [this.partToHosts(contents, [array])] : []));
    const inNone = this.arraysIn(null).includes(array) ? [this.partIn(array, null)?.usable ?? null] : [];
    return sumKnown([...parts, ...inNone]);
  });

  constructor(private readonly rows: PlanRows) {}

  /** Computes the hours to rebuild one drive of an array, of the set that takes longest, at the drive rate of the settings; null where the plan does not say enough. */
  rebuildHoursOf(array: PlanRow<"arrays">): number | null {
    const hours = this.setsOf(array).map((set) => {
      const layout = this.layoutOf(set);
      const { driveSize } = set;
      if (layout === null || driveSize === null) return null;
      return orNull(() => rebuildHours(layout, driveSize, megabytesPerSecond(this.rows.settings.driveRate), share(1)));
    });
    return hours.includes(null) ? null : Math.max(...hours.map((one) => one ?? 0));
  }

  private sumOf(sets: readonly DriveSet[]): Breakdown | null {
    const parts = sets.map((set) => this.ofSet(set));
    return parts.every((part) => part !== null) ? sumOfBreakdowns(parts) : null;
  }

  private contentsOf(pool: PlanRow<"pools">): PoolContents {
    const arrays = this.arraysIn(pool);
    const members = arrays.flatMap((row): PoolMember[] => {
      const capacity = this.partIn(row, pool);
      return capacity === null ? [] : [{ name: row.array, row, usable: capacity.usable, used: this.usedIn(row, pool) }];
    });
    return { pool, fillLimit: pool.fillLimit ?? this.rows.settings.fillLimit, across: acrossOf(pool), arrays, members };
  }
}

function pickSet({ drives, driveSize, scheme, spares }: PlanRow<"arrays"> | PlanRow<"driveSets">): Pick<DriveSet, (typeof setColumns)[number]> {
  return { drives, driveSize, scheme, spares };
}

function acrossOf({ acrossArrays }: PlanRow<"pools">): Scheme | null {
  return saysNone(acrossArrays) ? null : orNull(() => parseScheme(acrossArrays, "Across arrays"));
}

/** Tells whether a pool is laid over its arrays by no scheme. */
export function saysNone(acrossArrays: string): boolean {
  return ["", "none"].includes(foldName(acrossArrays));
}
