import type { Bytes } from "../quantity";
import { invalid } from "../text";
import type { Layout } from "./layout";
import type { Scheme } from "./scheme";

/** A write and the stripe units that it falls on. */
export interface WriteSizes {
  readonly writeSize: Bytes;
  /** Bytes that lie together on one drive before the next drive of the stripe follows. */
  readonly stripeUnit: Bytes;
}

/** Pairs the sizes of a write, both of which are given or neither. */
export function pairWriteSizes(writeSize: Bytes | null, stripeUnit: Bytes | null): WriteSizes | null {
  if (writeSize !== null && stripeUnit !== null) return { writeSize, stripeUnit };
  if (writeSize === null && stripeUnit === null) return null;
  const [lacking, given, example] = writeSize === null ? ["writeSize", "stripeUnit", "256 KiB"] : ["stripeUnit", "writeSize", "64 KiB"];
  throw invalid(lacking, null, `${lacking} is blank, though ${given} is given. Write it too, such as "${example}", or leave out both for a small write.`);
}

/**
 * Counts the operations on drives that one write takes; without `sizes` it is one of a single stripe unit, a small write.
 *
 * A write begins at a stripe and covers u = ceil(writeSize / stripeUnit) units. No redundancy: u. Copies: one operation a copy and unit.
 * Parity of k + m: every full stripe is written whole, k + m; the t units behind them take the cheaper of reading and writing them and the
 * parity, 2·(t + m), and of reading the rest of the stripe and writing what changed, k + m together. A small write therefore costs
 * min(2·(m + 1), k + m): 4 for single and 6 for double parity, and less in narrow groups (Chen, Lee, Gibson, Katz, Patterson, ACM Computing
 * Surveys 26(2), 1994, table 1).
 *
 * Without `layout` a mirror is taken as two drives, and a scheme whose width depends on the drives as a wide one; a write of several units
 * is refused for it, since it depends on the width.
 */
export function writeCost(scheme: Scheme, layout: Layout | null = null, sizes: WriteSizes | null = null): number {
  const units = sizes === null ? 1 : Number((sizes.writeSize + sizes.stripeUnit - 1n) / sizes.stripeUnit);
  const redundancy = layout?.redundancy ?? scheme.redundancy ?? 1;
  if (scheme.mirrored || redundancy === 0) return units * (redundancy + 1);
  const data = layout?.data ?? scheme.data;
  if (data === null) {
    if (units > 1) throw withoutWidth(scheme);
    return 2 * (1 + redundancy);
  }
  const stripe = data + redundancy;
  const rest = units % data;
  return Math.floor(units / data) * stripe + (rest === 0 ? 0 : Math.min(2 * (rest + redundancy), stripe));
}

function withoutWidth({ name, redundancy }: Scheme): Error {
  const shaped = `${name} 8+${redundancy}`;
  return invalid("scheme", name, `scheme ${name} says no width, and a write of several stripe units depends on it. Write a shape, such as ${shaped}.`);
}
