import fc from "fast-check";
import { isoDateOf, sheetDayOf } from "../../src/sheet";

describe("the days of a sheet", () => {
  // Last day: ECMA-376 part 1, section 18.17.4.1, the 1900 date system (from memory). The others follow by counting days.
  test.each([
    [61, "1900-03-01"],
    [2_958_465, "9999-12-31"],
    [25_569, "1970-01-01"],
    [46_173, "2026-05-31"],
    [45_351, "2024-02-29"],
  ])("number %i is %s, and back", (day, iso) => {
    expect(isoDateOf(day)).toBe(iso);
    expect(sheetDayOf(iso)).toBe(day);
  });

  test("hold every time of their day", () => {
    expect(isoDateOf(46_173.999_99)).toBe("2026-05-31");
    expect(isoDateOf(2_958_465.999)).toBe("9999-12-31");
  });

  test.each([60, 60.999, 0, -1, 2_958_466, NaN, Infinity])("leave %d without a date", (day) => {
    expect(isoDateOf(day)).toBeNull();
  });

  test.each(["1900-02-28", "1900-02-29", "1899-12-31", "2026-02-29", "2026-13-01", "2026-5-31", "31.5.2026", "2026-05-31T00:00", " 2026-05-31", "10000-01-01", ""])(
    "leave %j without a number",
    (iso) => {
      expect(sheetDayOf(iso)).toBeNull();
    },
  );

  test("turn into a date and back into themselves", () => {
    fc.assert(fc.property(fc.integer({ min: 61, max: 2_958_465 }), (day) => sheetDayOf(isoDateOf(day)!) === day), { seed: 19, numRuns: 500 });
  });
});
