import type { DriveSet, PlanModel } from "../plan/model";
import type { PlanRow } from "../plan/read";
import { foldName, formatPercent, formatTerabytes } from "../text";
import { flow, titleOfPart, type Block } from "./flow";
import { body, cells, faint, firm, large, line, medium, rect, text, type Fill, type Mark, type PageContent } from "./page";
import { describePool, fillOf, layoutCapacity, limitOf, toHostsOf, type PoolCapacity } from "./pool-capacity";

/** One part of the raw capacity of a pool. */
interface Part {
  readonly name: string;
  readonly size: bigint;
  readonly fill: Fill;
}

const wide = body.right - body.left;
const rowHeight = 4.4;

/** Draws the pools that have an array at a site: what hosts can store, what the rest of the raw capacity goes to, and the arrays that it is made of. */
export function capacityPages(model: PlanModel, site: string): readonly PageContent[] {
  const isHere = ({ site: other }: PlanRow<"arrays">): boolean => foldName(other) === foldName(site);
  const pools = layoutCapacity(model).filter(({ arrays }) => arrays.some(isHere));
  const largest = pools.reduce((most, { raw, used }) => (raw > most ? raw : used > most ? used : most), 1n);
  const blocks = pools.flatMap((pool) => poolBlocks(model, pool, (size) => (Number(size) / Number(largest)) * wide));
  const summary = pools.map(describePool).join(" ");
  return flow(blocks, body.top, body.bottom).map((marks, at) => ({ kind: "capacity", title: titleOfPart("Capacity to hosts, and what it is made of", at), summary, marks }));
}

function poolBlocks(model: PlanModel, pool: PoolCapacity, scaled: (size: bigint) => number): readonly Block[] {
  const again: Block = { height: 14, draw: (top) => [...text(body.left, top + 4.5, wide, `${pool.pool}, continued`, { size: medium, isBold: true }), ...tableHead(top + 11)] };
  const rows = pool.arrays.map((row): Block => ({ height: rowHeight, again, draw: (top) => arrayRow(model, pool, row, top + 3.2) }));
  const uncounted = `Not counted, for want of scheme, drives or drive size that fit: ${pool.left.join(", ")}.`;
  const left = pool.left.length === 0 ? [] : [{ height: 5, draw: (top: number) => text(body.left, top + 3.6, wide, uncounted) }];
  // The head is not left alone at the end of a page: it goes with the first array.
  const [first, ...others] = rows;
  const head: Block = { height: headHeight + rowHeight, draw: (top) => [...poolHead(pool, scaled, top), ...(first?.draw(top + headHeight) ?? [])] };
  return [head, ...others, ...left, { height: 9, draw: () => [] }];
}

const headHeight = 63;

function poolHead(pool: PoolCapacity, scaled: (size: bigint) => number, top: number): readonly Mark[] {
  const parts = partsOf(pool);
  const [limit, hosts] = [limitOf(pool), toHostsOf(pool)];
  const isOver = pool.used > limit;
  const used = pool.used < pool.usable ? pool.used : pool.usable;
  let x = body.left;
  const bars = parts.map(({ size, fill }) => {
    const width = scaled(size);
    x += width;
    return rect(x - width, top + 13, width, 12, fill);
  });
  const usedTop = top + 39;
  const post = body.left + scaled(limit);
  const filled = `${isOver ? "Over its fill limit: " : ""}used ${formatTerabytes(pool.used)} of ${formatTerabytes(pool.usable)} usable (${fillOf(pool)})`;
  const scheme = pool.across === "" ? "" : `, with ${pool.across} over the arrays`;
  return [
    line([[body.left, top], [body.right, top]], faint),
    ...text(body.left, top + 8, 200, `${pool.pool}: ${hosts}`, { size: large, isBold: true }),
    ...text(body.left + 204, top + 8, wide - 204, `of ${formatTerabytes(pool.raw)} raw${scheme}`, { size: medium, align: "right" }),
    ...bars,
    ...parts.flatMap(({ name, size, fill }, at) => {
      const left = body.left + at * (wide / 5);
      return [rect(left, top + 28.5, 5, 3, fill), ...text(left + 7, top + 31.2, wide / 5 - 9, `${name}: ${formatTerabytes(size)}`)];
    }),
    rect(body.left, usedTop, scaled(pool.usable), 6, "paper"),
    rect(body.left, usedTop, scaled(used), 6, isOver ? "alarm" : "dark"),
    line([[post, usedTop - 2], [post, usedTop + 8]], firm),
    ...text(body.left, usedTop - 2.8, wide, pool.across === "" ? "Of what is usable:" : "Of what is usable on the arrays, before what the scheme over them takes:"),
    ...text(body.left, usedTop + 11.5, wide, `${filled}; the line is the fill limit, ${formatPercent(pool.fillLimit)}, ${formatTerabytes(limit)}`),
    ...tableHead(top + 60),
  ];
}

/** Splits the raw capacity of a pool into parts that add up to it. */
function partsOf({ usable, toHosts, redundancy, reserve, spare }: PoolCapacity): readonly Part[] {
  const hosts: Part = toHosts === null ? { name: "Usable; to hosts not known", size: usable, fill: "grey" } : { name: "To hosts", size: toHosts, fill: "dark" };
  // What a scheme lays over arrays of which one is larger than it can use is no copy, and not for hosts either.
  const across: Part = { name: "Copies, parity over arrays", size: usable - hosts.size, fill: "hatch" };
  return [
    hosts, across, { name: "Redundancy inside arrays", size: redundancy, fill: "cross" }, { name: "Reserve", size: reserve, fill: "dots" },
    { name: "Spares, outside a group", size: spare, fill: "light" },
  ];
}

const columns = [66, 50, 56, 56, 36, 36, 36, 36, 20] as const;
const headings = ["Array", "Site", "Drives", "Scheme", "Raw", "Usable", "To hosts", "Used", "Fill"] as const;

function tableHead(y: number): readonly Mark[] {
  return [...cells(body.left, y, headings.map((heading, at) => [heading, columns[at]!]), { isBold: true }), line([[body.left, y + 1.4], [body.right, y + 1.4]], faint)];
}

function arrayRow(model: PlanModel, pool: PoolCapacity, row: PlanRow<"arrays">, y: number): readonly Mark[] {
  const own = pool.contents?.pool ?? null;
  const capacity = model.capacity.partIn(row, own);
  const sets = model.capacity.setsOf(row).filter((set) => model.find("pools", set.pool) === own);
  const hosts = pool.contents === null ? (capacity?.usable ?? null) : model.capacity.partToHosts(pool.contents, [row]);
  const known = (size: bigint | null): string => (size === null ? "not known" : formatTerabytes(size));
  const fill = capacity === null || capacity.usable === 0n || row.used === null ? "" : formatPercent(Number(row.used) / Number(capacity.usable));
  const words = [
    row.array, row.site, sets.map(drivesText).join(" + "), sets.map(({ scheme }) => scheme?.name ?? "not said").join(" + "),
    known(capacity?.raw ?? null), known(capacity?.usable ?? null), known(hosts), row.used === null ? "" : formatTerabytes(row.used), fill,
  ];
  return cells(body.left, y, words.map((word, at) => [word, columns[at]!]));
}

function drivesText({ drives, driveSize, spares }: DriveSet): string {
  if (drives === null) return "not said";
  return `${drives} x ${driveSize === null ? "?" : formatTerabytes(driveSize)}${spares === null || spares === 0 ? "" : `, ${spares} spare`}`;
}
