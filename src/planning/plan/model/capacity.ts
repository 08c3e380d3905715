import { breakDown, layoutDrives, parseScheme, usableOfMixed, type Breakdown, type Layout, type Scheme } from "../../capacity";
import { bytes, megabytesPerSecond, share, type Bytes } from "../../quantity";
import { rebuildHours } from "../../rates";
import { foldName } from "../../text";
import type { PlanRow } from "../read";
import { once, oncePer } from "./once";
import type { PlanRows } from "./plan-rows";
import { orNull } from "./refusal";

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

/** What the arrays and pools of a plan hold. */
export class Capacity {
  /** Lays out the drives of an array; null where the plan does not say enough, or they cannot be laid out. */
  readonly layoutOf = oncePer(({ scheme, drives, spares }: PlanRow<"arrays">): Layout | null =>
    scheme === null || drives === null ? null : orNull(() => layoutDrives(scheme, drives, spares ?? 0)),
  );

  /** Breaks the raw capacity of an array down; null where the plan does not say enough, or its drives cannot be laid out. */
  readonly of = oncePer((row: PlanRow<"arrays">): Breakdown | null => {
    const layout = this.layoutOf(row);
    return layout === null || row.driveSize === null ? null : breakDown(layout, row.driveSize, row.reserve ?? share(0));
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
    const usableOf = (some: readonly PlanRow<"arrays">[]): bigint => some.reduce((sum, row) => sum + (this.of(row)?.usable ?? 0n), 0n);
    const all = usableOf(contents.arrays);
    return whole === null || all === 0n ? null : bytes((whole * usableOf(arrays)) / all);
  }

  constructor(private readonly rows: PlanRows) {}

  /** Computes the hours to rebuild one drive of an array at the drive rate of the settings; null where the plan does not say enough. */
  rebuildHoursOf(row: PlanRow<"arrays">): number | null {
    const layout = this.layoutOf(row);
    const { driveSize } = row;
    if (layout === null || driveSize === null) return null;
    return orNull(() => rebuildHours(layout, driveSize, megabytesPerSecond(this.rows.settings.driveRate), share(1)));
  }

  private contentsOf(pool: PlanRow<"pools">): PoolContents {
    const arrays = this.rows.rowsWith("arrays", "pool", pool.pool);
    const members = arrays.flatMap((row): PoolMember[] => {
      const capacity = this.of(row);
      return capacity === null ? [] : [{ name: row.array, row, usable: capacity.usable, used: row.used ?? bytes(0n) }];
    });
    return { pool, fillLimit: pool.fillLimit ?? this.rows.settings.fillLimit, across: acrossOf(pool), arrays, members };
  }
}

function acrossOf({ acrossArrays }: PlanRow<"pools">): Scheme | null {
  return saysNone(acrossArrays) ? null : orNull(() => parseScheme(acrossArrays, "Across arrays"));
}

/** Tells whether a pool is laid over its arrays by no scheme. */
export function saysNone(acrossArrays: string): boolean {
  return ["", "none"].includes(foldName(acrossArrays));
}
