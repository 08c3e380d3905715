import { breakDown, layoutDrives, parseScheme, usableOfMixed } from "../../planning/capacity";
import { Problem } from "../../planning/problem";
import { bytes, type Bytes, type Share } from "../../planning/quantity";
import { readSettings, rowsOf, type Plan, type PlanRow } from "../../planning/workbook-model";
import { label, line, pictureWidth, rect, type Picture, type Shape } from "./picture";

/** Where the raw capacity of a pool goes. The parts add up to `raw`; `used` may be more than `usable`. */
export interface PoolCapacity {
  readonly pool: string;
  readonly arrays: number;
  readonly raw: bigint;
  readonly usable: bigint;
  readonly used: bigint;
  readonly fillLimit: number;
  /** Taken by redundancy inside the arrays and across them. */
  readonly redundancy: bigint;
  readonly reserve: bigint;
  /** Hot spares and drives that fill no group. */
  readonly spare: bigint;
  /** Arrays that are not counted, each with the reason. */
  readonly left: readonly string[];
}

/** Adds up, pool by pool, what the arrays hold; arrays without a pool come last. */
export function layoutCapacity(plan: Plan): readonly PoolCapacity[] {
  const { settings } = readSettings(plan);
  const arrays = rowsOf(plan, "arrays");
  const pools = rowsOf(plan, "pools").map(({ pool, fillLimit, acrossArrays }) => ({ pool, fillLimit: fillLimit ?? settings.fillLimit, acrossArrays }));
  const known = new Set(pools.map(({ pool }) => pool.toLowerCase()));
  const rest = arrays.filter(({ pool }) => !known.has(pool.toLowerCase()));
  return [
    ...pools.map((pool) => addUp(pool, arrays.filter((row) => row.pool.toLowerCase() === pool.pool.toLowerCase()))),
    ...(rest.length === 0 ? [] : [addUp({ pool: "No pool", fillLimit: settings.fillLimit, acrossArrays: "" }, rest)]),
  ].filter(({ arrays: count }) => count > 0);
}

interface PoolTerms {
  readonly pool: string;
  readonly fillLimit: number;
  readonly acrossArrays: string;
}

function addUp({ pool, fillLimit, acrossArrays }: PoolTerms, arrays: readonly PlanRow<"arrays">[]): PoolCapacity {
  const left: string[] = [];
  const parts = arrays.flatMap((row) => {
    if (row.scheme === null || row.drives === null || row.driveSize === null) {
      left.push(`${row.array}: scheme, drives or drive size is missing`);
      return [];
    }
    try {
      return [breakDown(layoutDrives(row.scheme, row.drives, row.spares ?? 0), row.driveSize, row.reserve ?? (0 as Share))];
    } catch (thrown) {
      if (!(thrown instanceof Problem)) throw thrown;
      left.push(`${row.array}: ${thrown.sentence}`);
      return [];
    }
  });
  const sum = (of: (part: (typeof parts)[number]) => bigint) => parts.reduce((total, part) => total + of(part), 0n);
  const inside = sum((part) => part.usable);
  let usable = inside;
  if (acrossArrays !== "" && acrossArrays.toLowerCase() !== "none") {
    try {
      usable = usableOfMixed(parseScheme(acrossArrays, "Across arrays"), parts.map((part): Bytes => bytes(part.usable)), 0, 0 as Share);
    } catch (thrown) {
      if (!(thrown instanceof Problem)) throw thrown;
      left.push(`Across arrays: ${thrown.sentence}`);
    }
  }
  return {
    pool,
    arrays: arrays.length,
    raw: sum((part) => part.raw),
    usable,
    used: arrays.reduce((total, { used }) => total + (used ?? 0n), 0n),
    fillLimit,
    redundancy: sum((part) => part.redundancy) + inside - usable,
    reserve: sum((part) => part.reserve),
    spare: sum((part) => part.spares + part.outside),
    left,
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
      label(pictureWidth - 1, y + 11, `raw ${terabytes(pool.raw)}`, { anchor: "end", look: "label soft" }),
      ...bars,
      line(post, y + 12, post, y + 16 + barHeight + 4, "post"),
      label(1, y + 16 + barHeight + 14, `${terabytes(pool.used)} of ${terabytes(pool.usable)} usable (${fillOf(pool)}), limit ${percent(pool.fillLimit)}`),
    ];
  });
  return { title: "Capacity by pool", summary: pools.map(describePool).join(" "), width: pictureWidth, height: top + pools.length * blockHeight + 2, shapes, legend: looks };
}

/** Says in words what a pool holds. */
export function describePool(pool: PoolCapacity): string {
  const over = pool.used > limitOf(pool) ? " Over its fill limit." : "";
  const left = pool.left.length === 0 ? "" : ` Not counted: ${pool.left.join("; ")}.`;
  return `${pool.pool}: ${terabytes(pool.used)} used of ${terabytes(pool.usable)} usable (${fillOf(pool)}, limit ${percent(pool.fillLimit)}), ${terabytes(pool.raw)} raw.${over}${left}`;
}

function limitOf({ usable, fillLimit }: PoolCapacity): bigint {
  return (usable * BigInt(Math.round(fillLimit * 1e6))) / 1_000_000n;
}

function fillOf({ used, usable }: PoolCapacity): string {
  return usable === 0n ? "nothing usable" : percent(Number(used) / Number(usable));
}

function percent(share: number): string {
  return `${Math.round(share * 100)} %`;
}

/** Writes a size in TB with one decimal place. */
function terabytes(size: bigint): string {
  return `${(Number(size) / 1e12).toFixed(1)} TB`;
}
