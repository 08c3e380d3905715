import fc from "fast-check";
import { dayOfInstant, instantOfDay, isIsoDate, isoDateOf, sheetDayOf } from "../../src/sheet";

describe("day numbers agree with ECMA-376 first edition, part 4, section 3.17.4.1, 1900 date base", () => {
  test.each([[61, "1900-03-01"], [3687, "1910-02-03"], [38749, "2006-02-01"], [2_958_465, "9999-12-31"]])("%i is %s", (day, iso) => {
    expect(isoDateOf(day)).toBe(iso);
    expect(sheetDayOf(iso)).toBe(day);
  });

  // The 1904 date base counts the same days from another one on.
  test.each([[0, "1904-01-01"], [2225, "1910-02-03"], [37287, "2006-02-01"], [2_957_003, "9999-12-31"]])("%i of the 1904 date base is 1462 days later, %s", (day, iso) => {
    expect(isoDateOf(day + 1462)).toBe(iso);
  });
});

// POSIX.1-2017 (Base Definitions, section 4.16) counts seconds from 1970-01-01; RFC 3339 gives the form of the date.
test.each([[25_569, 0], [25_570, 86_400_000], [25_569.5, 43_200_000]])("day %d is the instant %i ms after 1970 began", (day, milliseconds) => {
  expect(instantOfDay(day).getTime()).toBe(milliseconds);
  expect(dayOfInstant(new Date(milliseconds))).toBe(day);
});

test("days before the one that never was, and those after the year 9999, are no dates", () => {
  expect([60.9, 60, 0, -1, 2_958_466, 1e300, NaN, Infinity].map(isoDateOf)).toEqual(Array(8).fill(null));
  expect(["1900-02-28", "1899-12-31", "0001-01-01"].map(sheetDayOf)).toEqual([null, null, null]);
});

test("the time of the day is left out", () => {
  expect(isoDateOf(2_958_465.999)).toBe("9999-12-31");
});

test.each(["2026-02-29", "2026-02-30", "1900-02-29", "2026-13-01", "2026-1-1", "2026-05-31T00:00", " 2026-05-31", "31.05.2026", ""])("%j is no date", (text) => {
  expect(sheetDayOf(text)).toBeNull();
  expect(isIsoDate(text)).toBe(false);
});

test.each(["1900-02-28", "0001-01-01", "2026-05-31"])("%s is a day of the calendar, whether or not a sheet has a number for it", (text) => {
  expect(isIsoDate(text)).toBe(true);
});

test("a day that is written is read again", () => {
  fc.assert(
    fc.property(fc.integer({ min: 61, max: 2_958_465 }), (day) => {
      expect(sheetDayOf(isoDateOf(day)!)).toBe(day);
    }),
    { seed: 11, numRuns: 1000 },
  );
});
