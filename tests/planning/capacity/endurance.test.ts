import { enduranceYears } from "../../../src/planning/capacity";
import { parseSize } from "../../../src/planning/quantity";

const size = (text: string) => parseSize(text, "size");

test.each<[string, number, number, string, number, number, number]>([
  // One whole drive written a day, as rated: it lasts the rated years.
  ["3.84 TB", 1, 5, "3.84 TB", 1, 1, 5],
  ["3.84 TB", 3, 5, "3.84 TB", 1, 1, 15],
  ["3.84 TB", 1, 3, "7.68 TB", 1, 1, 1.5],
  // 12 drives of 7.68 TB share 40 TB a day: 92.16 · 5 / 40.
  ["7.68 TB", 1, 5, "20 TB", 12, 2, 11.52],
])("%s at %p drive writes a day over %p years, %s a day on %i drives at a factor of %p: %p years", (drive, rating, years, daily, drives, factor, lasts) => {
  const rated = { driveWritesADay: rating, ratedYears: years };
  expect(enduranceYears(size(drive), rated, { dailyWrites: size(daily), drives, writeFactor: factor })).toBeCloseTo(lasts, 12);
});

test("a rating in terabytes written counts days of a year of 365 (common practice, no source): 7008 TB are 3.84 TB a day for five years", () => {
  expect(enduranceYears(size("3.84 TB"), { bytesWritten: size("7008 TB") }, { dailyWrites: size("3.84 TB"), drives: 1, writeFactor: 1 })).toBeCloseTo(5, 12);
  expect(enduranceYears(size("1 TB"), { bytesWritten: size("7008 TB") }, { dailyWrites: size("3.84 TB"), drives: 2, writeFactor: 4 })).toBeCloseTo(2.5, 12);
});
