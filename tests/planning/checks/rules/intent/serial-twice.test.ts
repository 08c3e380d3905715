import { serialTwice } from "../../../../../src/planning/checks/rules/intent/serial-twice";
import { found, sample } from "../../../../support/plan-rows";

function withDrives(...drives: Record<string, string | number>[]) {
  const rows = sample();
  rows.shelves = [{ array: "rr-array-1", shelf: "S1", serial: "SH-1" }];
  rows.drives = drives.map((row) => ({ array: "rr-array-1", ...row }));
  return rows;
}

describe("serial-twice", () => {
  test("warns of a serial number of an array, a shelf or a drive in place that another has already, without case", () => {
    const rows = withDrives({ bay: 1, serial: "D-1" }, { bay: 2, serial: "d-1" }, { shelf: "S1", bay: 1, serial: "SH-1" });
    rows.arrays[1]!.serial = "TML-24-0107";
    expect(found(serialTwice, rows)).toEqual([
      'Arrays 6 Serial: Serial "TML-24-0107" is that of rr-array-1 already, here it is that of rr-array-2. Read both labels and mend one.',
      'Drives 6 Serial: Serial "d-1" is that of rr-array-1 bay 1 already, here it is that of rr-array-1 bay 2. Read both labels and mend one.',
      'Drives 7 Serial: Serial "SH-1" is that of rr-array-1 S1 already, here it is that of rr-array-1 S1 bay 1. Read both labels and mend one.',
    ]);
  });

  test("is content with serial numbers that differ, with blanks, and with a drive that was taken out and put in elsewhere", () => {
    expect(found(serialTwice, withDrives({ bay: 1, serial: "D-1", takenOut: "2026-05-01" }, { bay: 2, serial: "D-1" }, { bay: 3 }, { bay: 4 }))).toEqual([]);
    expect(found(serialTwice, sample())).toEqual([]);
  });
});
