import { fillOf, limitOf, describePool, toHostsOf, type PoolCapacity } from "../../planning/drawings";
import { formatPercent, formatTerabytes } from "../../planning/text";
import { label, line, pictureWidth, rect, type Picture, type Shape } from "./picture";

const top = 6;
const blockHeight = 76;
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
      label(1, y + 11, `${pool.used > limit ? "! " : ""}${pool.pool}`, { look: "label strong", room: 150 }),
      label(pictureWidth - 1, y + 11, `raw ${formatTerabytes(pool.raw)}`, { anchor: "end", look: "label soft" }),
      ...bars,
      line(post, y + 12, post, y + 16 + barHeight + 4, "post"),
      label(1, y + 16 + barHeight + 14, `${toHostsOf(pool)}, limit ${formatPercent(pool.fillLimit)}`),
      label(1, y + 16 + barHeight + 28, `${formatTerabytes(pool.used)} used of ${formatTerabytes(pool.usable)} usable (${fillOf(pool)})`),
    ];
  });
  return { title: "Capacity by pool", summary: pools.map(describePool).join(" "), width: pictureWidth, height: top + pools.length * blockHeight + 2, shapes, legend: looks };
}
