import type { Layout } from "../../planning/capacity";
import { mostRangeRows } from "../../planning/durability";
import { hours, share, type Hours, type Share } from "../../planning/quantity";
import { number, numberBy, orNone } from "./numbers";
import { proportion } from "./quantities";
import { asTyped, mapped, type Reader } from "./reader";

/** Reads the hours of a repair before anything is copied. A blank is undefined: what it means depends on the repair. */
export const waitTime: Reader<Hours | undefined> = mapped(orNone(number({ min: 0, max: 1e6, example: 4 })), (wait) => (wait === null ? undefined : hours(wait)));

/** Reads the hours from one scrub of a drive to the next; a blank means a week. */
export const scrubInterval: Reader<Hours> = mapped(number({ above: 0, max: 1e6, default: 168, example: 336 }), hours);

/** Reads an annual failure rate below 1 and not so near 0 that no ratio to it can be had. */
export function failureRate(example: string): Reader<Share> {
  return mapped(proportion({ min: 1e-12, below: 1, example: 0.02 }, example), share);
}

const usualRows = 5;

/** Reads how many failure rates to show; a blank means 5. How many there can be depends on the layout. */
export const rangeRows: Reader<(layout: Layout) => number> = {
  ...numberBy(9, (layout: Layout) => ({ min: 2, max: mostRangeRows(layout), whole: true, default: usualRows, example: usualRows })),
  default: asTyped(usualRows),
};
