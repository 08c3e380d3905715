import { layoutDrives, parseScheme, usableBytes, type Layout, type Scheme } from "../../capacity";
import { bytes, share, type Bytes } from "../../quantity";
import type { PlanRow } from "../read";
import { orNull, type PlanIndex } from "./plan-index";

/** Lays out the drives of an array; null where the plan does not say enough, or they cannot be laid out. */
export function layoutOf(row: PlanRow<"arrays">): Layout | null {
  const { scheme, drives, spares } = row;
  return scheme === null || drives === null ? null : orNull(() => layoutDrives(scheme, drives, spares ?? 0));
}

/** Computes the usable capacity of an array after its reserve; null where the plan does not say enough. */
export function usableOf(row: PlanRow<"arrays">): Bytes | null {
  const layout = layoutOf(row);
  return layout === null || row.driveSize === null ? null : usableBytes(layout, row.driveSize, row.reserve ?? share(0));
}

/** A pool with its arrays, and what each of them holds. */
export interface PoolContents {
  readonly pool: PlanRow<"pools">;
  readonly fillLimit: number;
  /** Scheme laid over the arrays; null for none, or where it cannot be read. */
  readonly across: Scheme | null;
  readonly arrays: readonly PlanRow<"arrays">[];
  /** The arrays whose capacity is known, in the same order. */
  readonly members: readonly { readonly name: string; readonly row: PlanRow<"arrays">; readonly usable: Bytes; readonly used: Bytes }[];
}

/** Lists the pools of a plan with the arrays in each. */
export function poolContents(index: PlanIndex): PoolContents[] {
  return index.rows("pools").filter((pool) => index.find("pools", pool.pool) === pool).map((pool) => {
    const arrays = index.rowsWith("arrays", "pool", pool.pool);
    const members = arrays.flatMap((row) => {
      const usable = usableOf(row);
      return usable === null ? [] : [{ name: row.array, row, usable, used: row.used ?? bytes(0n) }];
    });
    return { pool, fillLimit: pool.fillLimit ?? index.settings.fillLimit, across: acrossOf(pool), arrays, members };
  });
}

function acrossOf({ acrossArrays }: PlanRow<"pools">): Scheme | null {
  return saysNone(acrossArrays) ? null : orNull(() => parseScheme(acrossArrays, "Across arrays"));
}

/** Tells whether a pool is laid over its arrays by no scheme. */
export function saysNone(acrossArrays: string): boolean {
  return ["", "none"].includes(acrossArrays.toLowerCase());
}
