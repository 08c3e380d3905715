import { invalid, quote } from "../../planning/text";
import { isoDateOf } from "../../sheet";
import type { Reader } from "./reader";
import { readScalar } from "./scalar";

/**
 * Reads a year and month as text, such as 2024-05.
 *
 * A sheet turns 2024-05 into the first day of that month unless it is told otherwise, so the day number of a date is taken too.
 */
export const yearMonth: Reader<string> = {
  read: (received, place) => {
    const scalar = readScalar(received, place);
    if (typeof scalar === "string") return scalar;
    const day = typeof scalar === "number" && Number.isInteger(scalar) ? isoDateOf(scalar) : null;
    if (day !== null && day >= firstDay && day <= lastDay) return day.slice(0, 7);
    throw invalid(place, received, `${place} is ${quote(scalar)}. Write a year and month as text, such as 2024-05.`);
  },
  example: "2024-05",
};

/** Anything before or behind these is a number, not a date somebody means. */
const [firstDay, lastDay] = ["1980-01-01", "2199-12-31"];
