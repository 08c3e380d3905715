import { dateInText } from "../../../../../src/planning/checks/rules/references/date-in-text";
import { cells, found, sample } from "../../../../support/plan-rows";

test("finds a number that a sheet shows as a date, in a text column", () => {
  const rows = sample();
  rows.ports[0]!.switchPort = 46_024;
  expect(found(dateInText, rows)).toEqual([
    "Ports 5 Switch port: Switch port holds the number 46024, perhaps a text that turned into the date 2026-01-02. Set text format and type it again.",
  ]);
});

test.each([["a small number", 12], ["text that stayed text", "1-2"], ["a number past all dates", 73_051]])("takes %s", (_, value) => {
  const rows = sample();
  rows.ports[0]!.switchPort = value;
  expect(cells(dateInText, rows)).toEqual([]);
});

// 25,569 days lie between the calendar's day 0 and 1970-01-01, 10,957 more until 2000-01-01, and 36,525 in the century from there.
test.each([[36_525, []], [36_526, ["2000-01-01"]], [73_050, ["2099-12-31"]], [73_051, []]])("takes the days of this century for dates: %i", (value, days) => {
  const rows = sample();
  rows.ports[0]!.switchPort = value;
  expect(found(dateInText, rows).flatMap((line) => /date ([\d-]+)\./.exec(line)?.[1] ?? [])).toEqual(days);
});
