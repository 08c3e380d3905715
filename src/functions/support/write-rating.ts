import type { WriteRating } from "../../planning/capacity";
import { parseNumber, parseSize } from "../../planning/quantity";
import { invalid, quote } from "../../planning/text";
import type { Reader } from "./reader";
import { readScalar } from "./scalar";

/**
 * Reads what a solid-state drive is rated for: a number is writes of the whole drive a day, over the rated years that another argument gives;
 * text is a size, the terabytes written.
 */
export const writeRating: Reader<(ratedYears: number) => WriteRating> = {
  example: "1",
  read: (received, place) => {
    const value = readScalar(received, place);
    if (typeof value === "string" && endsInUnit.test(value)) {
      const bytesWritten = parseSize(value.replace(writtenMark, ""), place);
      return () => ({ bytesWritten });
    }
    if (typeof value === "number" && value > mostWritesADay) {
      throw invalid(place, value, `${place} is ${quote(value)}. Give drive writes a day up to ${mostWritesADay}, or the terabytes written as text, such as "7000 TB".`);
    }
    const driveWritesADay = parseNumber(value, place, { above: 0, max: mostWritesADay, example: 1 });
    return (ratedYears) => ({ driveWritesADay, ratedYears });
  },
};

/** No drive is rated for more; a larger number was meant as terabytes written. */
const mostWritesADay = 100;

/** A number before the name of a unit, right or wrong: what else there is to say of it, the reader of sizes says. */
const endsInUnit = /\d\s*[kmgtpe]?i?bw?$/i;

/** Drives are sold by "TBW", terabytes written. */
const writtenMark = /w$/i;
