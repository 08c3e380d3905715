import type { PlanModel, PoolContents } from "../plan/model";
import type { PlanRow } from "../plan/read";
import { formatPercent, formatTerabytes } from "../text";

/** Where the raw capacity of a pool's arrays goes. The parts add up to `raw`; `used` may be more than `usable`. */
export interface PoolCapacity {
  readonly pool: string;
  /** Scheme laid over the arrays, as it is written; "" for none. What it takes is part of what is used. */
  readonly across: string;
  readonly fillLimit: number;
  readonly raw: bigint;
  readonly usable: bigint;
  /** What hosts can store of it, after the scheme over the arrays; null where that is not known. */
  readonly toHosts: bigint | null;
  readonly used: bigint;
  readonly redundancy: bigint;
  readonly reserve: bigint;
  /** Hot spares and drives that fill no group. */
  readonly spare: bigint;
  /** Arrays whose capacity is not known: they are in no bar. */
  readonly left: readonly string[];
  /** Every array of it, counted or not. */
  readonly arrays: readonly PlanRow<"arrays">[];
  /** The pool as the model tells of it; null for arrays without one. */
  readonly contents: PoolContents | null;
}

/** Adds up, pool by pool, what the arrays hold; arrays without a pool come last. */
export function layoutCapacity(model: PlanModel): readonly PoolCapacity[] {
  const pools = model.capacity.pools().map((contents) => {
    const { pool, across, fillLimit, arrays } = contents;
    return { ...addUp(model, pool, across === null ? "" : pool.acrossArrays, fillLimit, arrays), toHosts: model.capacity.toHosts(contents), contents };
  });
  return [...pools, addUp(model, null, "", model.settings.fillLimit, model.capacity.arraysIn(null))].filter(({ raw, left }) => raw > 0n || left.length > 0);
}

function addUp(model: PlanModel, pool: PlanRow<"pools"> | null, across: string, fillLimit: number, arrays: readonly PlanRow<"arrays">[]): PoolCapacity {
  const counted = arrays.flatMap((row) => {
    const capacity = model.capacity.partIn(row, pool);
    return capacity === null ? [] : [{ row, ...capacity }];
  });
  const sum = (of: (part: (typeof counted)[number]) => bigint) => counted.reduce((total, part) => total + of(part), 0n);
  const usable = sum((part) => part.usable);
  return {
    pool: pool?.pool ?? "No pool",
    across,
    fillLimit,
    raw: sum((part) => part.raw),
    usable,
    toHosts: usable,
    used: sum(({ row }) => model.capacity.usedIn(row, pool)),
    redundancy: sum((part) => part.redundancy),
    reserve: sum((part) => part.reserve),
    spare: sum((part) => part.spares + part.outside),
    left: arrays.filter((row) => !counted.some((part) => part.row === row)).map(({ array }) => array),
    arrays,
    contents: null,
  };
}

/** Says in words what a pool holds. */
export function describePool(pool: PoolCapacity): string {
  const over = pool.used > limitOf(pool) ? " Over its fill limit." : "";
  const across = pool.across === "" ? "" : ` What is used holds ${pool.across} over the arrays.`;
  const left = pool.left.length === 0 ? "" : ` Not counted, for want of scheme, drives or drive size that fit: ${pool.left.join(", ")}.`;
  const fill = `${fillOf(pool)}, limit ${formatPercent(pool.fillLimit)}`;
  return `${pool.pool}: ${toHostsOf(pool)}; ${formatTerabytes(pool.used)} used of ${formatTerabytes(pool.usable)} usable (${fill}), ${formatTerabytes(pool.raw)} raw.${over}${across}${left}`;
}

/** Computes how much of what is usable may be filled. */
export function limitOf({ usable, fillLimit }: PoolCapacity): bigint {
  return (usable * BigInt(Math.round(fillLimit * 1e6))) / 1_000_000n;
}

/** Says what hosts can store, or that it is not known. */
export function toHostsOf({ toHosts }: PoolCapacity): string {
  return toHosts === null ? "to hosts not known" : `${formatTerabytes(toHosts)} to hosts`;
}

/** Says how full a pool is. */
export function fillOf({ used, usable }: PoolCapacity): string {
  return usable === 0n ? "nothing usable" : formatPercent(Number(used) / Number(usable));
}
