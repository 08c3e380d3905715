import { unknownSetting } from "../../../../../src/planning/checks/rules/references/unknown-setting";
import { cells, sample } from "../../../../support/plan-rows";

test("notes a row that no check reads", () => {
  const rows = sample();
  rows.settings.push({ setting: "Coffee breaks", value: "2" });
  expect(cells(unknownSetting, rows)).toEqual([`Settings ${rows.settings.length + 4} Setting`]);
});

test("knows its own settings in any case", () => {
  const rows = sample();
  rows.settings[0]!.setting = "SPARES AN ARRAY";
  expect(cells(unknownSetting, rows)).toEqual([]);
});
