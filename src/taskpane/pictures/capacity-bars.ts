import type { PlanModel } from "../../planning/plan/model";
import { formatPercent, formatTerabytes } from "../../planning/text";
import type { PlanRow } from "../../planning/plan/read";
import { label, line, pictureWidth, rect, type Picture, type Shape } from "./picture";

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
}

/** Adds up, pool by pool, what the arrays hold; what is in no pool comes last. */
export function layoutCapacity(model: PlanModel): readonly PoolCapacity[] {
  const pools = model.capacity.pools().map((contents) => {
    const { pool, across, fillLimit, arrays } = contents;
    return { ...addUp(model, pool, across === null ? "" : pool.acrossArrays, fillLimit, arrays), toHosts: model.capacity.toHosts(contents) };
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
  };
}

const top = 6;
const blockHeight = 62;
const barHeight = 20;

const looks = [
  { look: "used", meaning: "used" },
  { look: "free", meaning: "free up to the fill limit" },
  { look: "over", meaning: "usable above the fill limit" },
  { look: "redundancy", meaning: "redundancy" },
  { look: "aside", meaning: "reserve, spares and drives outside a group" },
];

/** Draws one bar a pool from nothing to its raw capacity, all to one scale; a post marks the fill limit. */
export function drawCapacity(pools: readonly PoolCapacity[]): Picture {
  const largest = pools.reduce((most, { raw, used }) => (raw > most ? raw : used > most ? used : most), 1n);
  const scaled = (size: bigint) => (Number(size) / Number(largest)) * (pictureWidth - 2);
  const shapes: Shape[] = pools.flatMap((pool, index) => {
    const y = top + index * blockHeight;
    const limit = limitOf(pool);
    const used = pool.used < pool.usable ? pool.used : pool.usable;
    const parts: readonly (readonly [bigint, string])[] = [
      [used, pool.used > limit ? "used alarm" : "used"],
      [limit > used ? limit - used : 0n, "free"],
      [pool.usable - (limit > used ? limit : used), "over"],
      [pool.redundancy, "redundancy"],
      [pool.reserve + pool.spare, "aside"],
    ];
    let x = 1;
    const bars = parts.map(([size, look]) => {
      const width = scaled(size);
      x += width;
      return rect(x - width, y + 16, width, barHeight, `part ${look}`);
    });
    const post = 1 + scaled(limit);
    return [
      label(1, y + 11, `${pool.used > limit ? "⚠ " : ""}${pool.pool}`, { look: "label strong", room: 150 }),
      label(pictureWidth - 1, y + 11, `raw ${formatTerabytes(pool.raw)}`, { anchor: "end", look: "label soft" }),
      ...bars,
      line(post, y + 12, post, y + 16 + barHeight + 4, "post"),
      label(1, y + 16 + barHeight + 14, `${toHostsOf(pool)}; ${formatTerabytes(pool.used)} of ${formatTerabytes(pool.usable)} usable (${fillOf(pool)}), limit ${formatPercent(pool.fillLimit)}`),
    ];
  });
  return { title: "Capacity by pool", summary: pools.map(describePool).join(" "), width: pictureWidth, height: top + pools.length * blockHeight + 2, shapes, legend: looks };
}

/** Says in words what a pool holds. */
export function describePool(pool: PoolCapacity): string {
  const over = pool.used > limitOf(pool) ? " Over its fill limit." : "";
  const across = pool.across === "" ? "" : ` What is used holds ${pool.across} over the arrays.`;
  const left = pool.left.length === 0 ? "" : ` Not counted, for want of scheme, drives or drive size that fit: ${pool.left.join(", ")}.`;
  const fill = `${fillOf(pool)}, limit ${formatPercent(pool.fillLimit)}`;
  return `${pool.pool}: ${toHostsOf(pool)}; ${formatTerabytes(pool.used)} used of ${formatTerabytes(pool.usable)} usable (${fill}), ${formatTerabytes(pool.raw)} raw.${over}${across}${left}`;
}

function limitOf({ usable, fillLimit }: PoolCapacity): bigint {
  return (usable * BigInt(Math.round(fillLimit * 1e6))) / 1_000_000n;
}

function toHostsOf({ toHosts }: PoolCapacity): string {
  return toHosts === null ? "to hosts not known" : `${formatTerabytes(toHosts)} to hosts`;
}

function fillOf({ used, usable }: PoolCapacity): string {
  return usable === 0n ? "nothing usable" : formatPercent(Number(used) / Number(usable));
}
