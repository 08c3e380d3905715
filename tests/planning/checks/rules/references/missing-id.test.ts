import { checkPlan } from "../../../../../src/planning/checks";
import { missingId } from "../../../../../src/planning/checks/rules/references/missing-id";
import { withCell } from "../../../../support/plain-workbook";
import { cells, found, mends, sample, workbookWith } from "../../../../support/plan-rows";

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

test("begins with 1 where no id was ever given", () => {
  const rows = sample();
  rows.settings = [];
  for (const row of [...rows.arrays.slice(1), ...rows.jobs.slice(1)]) row.id = "inventory 9";
  rows.arrays[0]!.id = null;
  rows.jobs[0]!.id = null;
  expect(mends(missingId, rows)).toEqual(["Arrays 5 Id: A0001", "Jobs 5 Id: J0001"]);
});

test("names the array or job, or says this row, and what the mend does", () => {
  const rows = sample();
  rows.arrays[0]!.id = null;
  Object.assign(rows.arrays[1]!, { id: null, array: null });
  rows.jobs[0]!.id = null;
  const rest = "has no id, so its records would not be found again once it is renamed. Let the next one be written.";
  expect(found(missingId, rows)).toEqual([`Arrays 5 Id: rr-array-1 ${rest}`, `Arrays 6 Id: This row ${rest}`, `Jobs 5 Id: Reading Room installation ${rest}`]);
  const descriptions = checkPlan(workbookWith(rows), [missingId], "2026-06-01").map(({ mend }) => mend?.description);
  expect(descriptions).toEqual(["Give rr-array-1 the id A0007.", "Give This row the id A0008.", "Give Reading Room installation the id J0004."]);
});
