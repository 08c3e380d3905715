import { tabName } from "../../../../../src/planning/checks/rules/references/tab-name";
import { cells, found, mends, sample, workbookWith } from "../../../../support/plan-rows";

test.each([
  ["a character that no tab's name may hold", "Reading Room: day 1", "Reading Room- day 1"],
  ["more than 31 characters", "Installation of the Reading Room arrays", "Installation of the Reading Roo"],
  ["an apostrophe at its end", "Reading Room'", "Reading Room"],
])("finds %s, and mends it", (_, job, mended) => {
  const rows = sample();
  rows.jobs[0]!.job = job;
  expect(cells(tabName, rows)).toEqual(["Jobs 5 Job"]);
  expect(mends(tabName, rows)).toEqual([`Jobs 5 Job: ${mended}`]);
});

test("finds the name of a planning sheet, which has no mend", () => {
  const rows = sample();
  rows.jobs[0]!.job = "arrays";
  expect(found(tabName, rows)).toEqual(['Jobs 5 Job: Job "arrays" is the name of a planning sheet, so no tab can have it. Write another.']);
  expect(mends(tabName, rows)).toEqual([]);
});

test("proposes no name that another job has", () => {
  const rows = sample();
  rows.jobs[0]!.job = "Bindery installation'";
  expect(mends(tabName, rows)).toEqual([]);
});

test("takes 31 characters", () => {
  const rows = sample();
  rows.jobs[0]!.job = "x".repeat(31);
  expect(cells(tabName, rows)).toEqual([]);
});

test("takes the name of a planning sheet that the workbook does not have", () => {
  const rows = sample();
  rows.jobs[0]!.job = "racks";
  const { sheets } = workbookWith(rows);
  expect(cells(tabName, { sheets: sheets.filter(({ name }) => name !== "Racks") })).toEqual([]);
});
