import { bytes, exactFraction, type Bytes, type Fraction, type Share } from "../quantity";
import { layoutDrives, type Layout } from "./layout";
import type { Scheme } from "./scheme";

/**
 * Computes the usable capacity of drives of unequal sizes, less the share `reserve` of it; rounded down to a whole byte.
 *
 * The largest drives are the spares. Fixed groups: drives sorted from large to small and cut one group after the other, the smallest
 * left outside; each drive counts as the smallest of its group, and no other grouping gives more. One group: each counts as the
 * smallest. Spread: stripes over distinct drives, as many as fit (see `stripeDepth`).
 */
export function usableOfMixed(scheme: Scheme, driveSizes: readonly Bytes[], spares: number, reserve: Share): Bytes {
  const layout = layoutDrives(scheme, driveSizes.length, spares, "driveSizes count");
  const members = [...driveSizes].sort((a, b) => Number(b - a)).slice(spares);
  const data = dataCapacity(layout, members);
  const kept = exactFraction(reserve);
  return bytes((data.numerator * (kept.denominator - kept.numerator)) / (data.denominator * kept.denominator));
}

function dataCapacity(layout: Layout, sizes: readonly Bytes[]): Fraction {
  const data = BigInt(layout.data);
  if (layout.scheme.grouping === "spread") {
    const depth = stripeDepth(sizes, layout.data + layout.redundancy);
    return { numerator: data * depth.numerator, denominator: depth.denominator };
  }
  const width = layout.members / layout.groups;
  let smallest = 0n;
  for (let group = 1; group <= layout.groups; group++) smallest += sizes[group * width - 1]!;
  return { numerator: data * smallest, denominator: 1n };
}

/**
 * Finds the largest T with Σ min(size, T) >= width · T: how deep stripes over `width` distinct drives can be laid.
 *
 * `sizes` run from large to small. Each drive larger than T can give only T, so drives are capped from the largest down until the rest,
 * shared evenly over the places that are left, is no smaller than the next drive:
 *
 *     T = (what the uncapped drives hold) / (width - capped drives)
 *
 * With one place left the rest holds at least the next drive, so at most width - 1 drives are capped.
 */
function stripeDepth(sizes: readonly Bytes[], width: number): Fraction {
  let rest = sizes.reduce((sum, size) => sum + size, 0n);
  let capped = 0;
  while (sizes[capped]! * BigInt(width - capped) > rest) {
    rest -= sizes[capped]!;
    capped++;
  }
  return { numerator: rest, denominator: BigInt(width - capped) };
}
