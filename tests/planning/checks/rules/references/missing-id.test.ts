import { missingId } from "../../../../../src/planning/checks/rules/references/missing-id";
import { withCell } from "../../../../support/plain-workbook";
import { cells, mends, sample, workbookWith } from "../../../../support/plan-rows";

test("gives arrays and jobs without an id the next ones, past those that were ever given", () => {
  const rows = sample();
  rows.arrays[0]!.id = null;
  rows.arrays[5]!.id = null;
  rows.jobs[1]!.id = null;
  expect(cells(missingId, rows)).toEqual(["Arrays 5 Id", "Arrays 10 Id", "Jobs 6 Id"]);
  const [last, lastJob] = rows.settings.flatMap(({ setting }, at) => (String(setting).startsWith("Last ") ? [at + 5] : []));
  expect(mends(missingId, rows)).toEqual([
    "Arrays 5 Id: A0007",
    `Settings ${last} Value: A0008`,
    "Arrays 10 Id: A0008",
    `Settings ${last} Value: A0008`,
    "Jobs 6 Id: J0004",
    `Settings ${lastJob} Value: J0004`,
  ]);
});

test("goes by the ids that stand where the settings remember none", () => {
  const rows = sample();
  rows.settings = [];
  rows.arrays[2]!.id = null;
  rows.arrays[3]!.id = "a0041";
  rows.arrays[4]!.id = "inventory 77";
  expect(mends(missingId, rows)).toEqual(["Arrays 7 Id: A0042"]);
});

test("says nothing where every array and job has one, or the column is not there", () => {
  expect(cells(missingId, sample())).toEqual([]);
  const rows = sample();
  rows.arrays[0]!.id = null;
  expect(cells(missingId, withCell(workbookWith(rows), "Arrays", 3, 0, "Own number"))).toEqual([]);
});
