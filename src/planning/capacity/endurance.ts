import { exactDecimal, terabyte, sizeIn, type Bytes } from "../quantity";

/** What a solid-state drive is rated for: so many writes of its whole size a day over the rated years, or so many bytes written. */
export type WriteRating = { readonly driveWritesADay: number; readonly ratedYears: number } | { readonly bytesWritten: Bytes };

/** What is written a day, and on how many drives it is spread. */
export interface WriteLoad {
  readonly dailyWrites: Bytes;
  readonly drives: number;
  /** Bytes that the array writes for each byte it is given: parity, copies, its own records. What happens inside a drive is in its rating. */
  readonly writeFactor: number;
}

const daysAYear = 365;

/**
 * Computes the years until solid-state drives of `driveSize` have written what they are rated for, when the load is spread evenly.
 *
 * Rating · drives / (daily writes · factor), with a rating in drive writes a day over so many years, or in terabytes written (both terms as
 * in JEDEC JESD218); a year has 365 days. It says when the rating is used up, not when a drive fails.
 */
export function enduranceYears(driveSize: Bytes, rating: WriteRating, { dailyWrites, drives, writeFactor }: WriteLoad): number {
  const written = sizeIn(dailyWrites, terabyte).times(exactDecimal(writeFactor)).times(daysAYear);
  const rated = "bytesWritten" in rating
    ? sizeIn(rating.bytesWritten, terabyte)
    : sizeIn(driveSize, terabyte).times(exactDecimal(rating.driveWritesADay)).times(exactDecimal(rating.ratedYears)).times(daysAYear);
  return rated.times(drives).div(written).toNumber();
}
