import { exactDecimal, parseNumber, parseShare } from "../../planning/quantity";
import { invalid, quote } from "../../planning/text";
import { orNone } from "./numbers";
import type { Reader } from "./reader";
import { readScalar } from "./scalar";
import { column } from "./table";

/** Above this an unavailability is more likely the share of the time that something is up. */
const mostPlausible = 0.9;

/** Reads a share of the time; a number above 1 is not taken for a percentage, because 99.9 is most often an availability. */
const unavailability: Reader<number> = {
  read: (received, place) => {
    const value = readScalar(received, place);
    // What stands here by mistake would be lost without a word: that a node does not forward.
    if (typeof value === "boolean") throw invalid(place, value, `${place} is ${value ? "TRUE" : "FALSE"}. Write a number, such as 0, and behind it whether the node forwards.`);
    const down = typeof value === "string" && value.endsWith("%") ? parseShare(value, place) : parseNumber(value, place, { min: 0, max: 1, example: 0.001 });
    if (down <= mostPlausible) return down;
    throw invalid(place, value, `${place} is ${quote(value)}. Down or up that often? Under the heading Availability write the share it is up.`);
  },
};

/** Reads the share of the time that something is up, and answers how often it is down, digit for digit. */
const availability: Reader<number> = {
  read: (received, place) => exactDecimal(parseShare(readScalar(received, place), place)).neg().plus(1).toNumber(),
};

/** The columns that say how often something is down; by position it is the first of them. A header may head one of them Availability. */
export const down = column("unavailability", ["Unavailability"], orNone(unavailability), { optional: true });
export const up = column("availability", ["Availability"], orNone(availability), { named: true });

/** Takes the one figure of a row; refuses none, and two. */
export function downOf(row: { readonly down: number | null; readonly up: number | null; readonly at: string }): number {
  if (row.down !== null && row.up !== null) throw invalid(row.at, row.up, `${row.at} has an unavailability and an availability. Leave one of the two columns out.`);
  return row.up ?? row.down ?? unavailability.read(null, `${row.at} unavailability`);
}
