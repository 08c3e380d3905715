import { unreadableSetting } from "../../../../../src/planning/checks/rules/references/unreadable-setting";
import { cells, sample, set } from "../../../../support/plan-rows";

test.each([
  ["Spares an array", "some"],
  ["Fill limit", "80"],
  ["Lift reach cm", "-3"],
  ["Read error rate", "2"],
])("finds %s of %s", (setting, value) => {
  const rows = sample();
  set(rows, setting, value);
  expect(cells(unreadableSetting, rows)).toEqual([`Settings ${rows.settings.findIndex((row) => row.setting === setting) + 5} Value`]);
});

test.each([["Fill limit", "0.75"], ["Fill limit", "75%"], ["Read error rate", "1e-14"], ["Spares an array", ""]])("takes %s of %s", (setting, value) => {
  const rows = sample();
  set(rows, setting, value);
  expect(cells(unreadableSetting, rows)).toEqual([]);
});
