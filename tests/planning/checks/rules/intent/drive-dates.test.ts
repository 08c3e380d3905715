import { driveDates } from "../../../../../src/planning/checks/rules/intent/drive-dates";
import { cells, found, sample } from "../../../../support/plan-rows";

const drive = { array: "rr-array-1", bay: 1, serial: "TML-D-0001", size: "8 TB", fitted: "2026-05-02" };

test("finds a drive that was taken out before it was fitted, and one that will be", () => {
  const rows = sample();
  rows.drives = [{ ...drive, takenOut: "2026-05-01" }, { ...drive, takenOut: "2026-06-02" }];
  expect(found(driveDates, rows)).toEqual([
    "Drives 5 Taken out: The drive of rr-array-1 bay 1 was taken out on 2026-05-01, before it was fitted on 2026-05-02. Mend the day.",
    "Drives 6 Taken out: The drive of rr-array-1 bay 1 was taken out on 2026-06-02, a day to come, yet it counts as gone. Mend the day.",
  ]);
});

test("takes one of the same day, of today, and one in place", () => {
  const rows = sample();
  rows.drives = [{ ...drive, takenOut: "2026-05-02" }, { ...drive, takenOut: "2026-06-01" }, drive, { ...drive, bay: 2, fitted: "2030-01-01" }];
  expect(cells(driveDates, rows)).toEqual([]);
});
