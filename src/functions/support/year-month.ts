import { invalid, quote } from "../../planning/text";
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
    if (typeof scalar === "number" && Number.isInteger(scalar) && scalar >= firstDay && scalar <= lastDay) {
      return new Date((scalar - dayOf1970) * 86_400_000).toISOString().slice(0, 7);
    }
    throw invalid(place, received, `${place} is ${quote(scalar)}. Write a year and month as text, such as 2024-05.`);
  },
  example: "2024-05",
};

/** Day number of 1970-01-01 in a sheet. */
const dayOf1970 = 25_569;
/** 1980-01-01 and 2199-12-31: anything else is a number, not a date somebody means. */
const firstDay = 29_221;
const lastDay = 109_574;
