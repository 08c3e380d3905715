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
