import { readingNotCounted } from "../../../../../src/planning/checks/rules/capacity/reading-not-counted";
import { usedBesideReading } from "../../../../../src/planning/checks/rules/capacity/used-beside-reading";
import { found, mends, sample } from "../../../../support/plan-rows";

// These checks are run as of 2026-06-01.
const withReadings = (...readings: Record<string, string | number | null>[]) => {
  const rows = sample();
  rows.readings.push(...readings.map((one) => ({ what: "used", unit: "TB", value: 60, date: "2026-05-01", ...one })));
  return rows;
};

test("an array whose row says another size than was read of it last is told, with the reading to be written", () => {
  const rows = withReadings({ subject: "bi-array-1", value: 64.5 }, { subject: "bi-array-1", value: 50, date: "2026-01-01" });
  expect(found(usedBesideReading, rows)).toEqual(["Arrays 7 Used: Used of bi-array-1 is 61 TB, and 64.5 TB was read last, which counts. Write the reading."]);
  expect(mends(usedBesideReading, rows)).toEqual(["Arrays 7 Used: 64.5 TB"]);
});

test("nothing is told of a difference that is rounding, or of an array that says nothing of its own", () => {
  expect(found(usedBesideReading, withReadings({ subject: "bi-array-1", value: 61.5 }))).toEqual([]);
  const rows = withReadings({ subject: "bi-array-1", value: 64.5 });
  rows.arrays.find(({ array }) => array === "bi-array-1")!.used = null;
  expect(found(usedBesideReading, rows)).toEqual([]);
});

test.each<[Record<string, string | number | null>, string]>([
  [{ subject: "bi-array-9" }, 'Readings 5 Subject: "bi-array-9" is neither an array nor a pool. Mend the name.'],
  [{ subject: "Scans", what: null }, "Readings 5 What: What was read of Scans is not said. Write used or capacity."],
  [{ subject: "Scans", date: "2026-06-02" }, "Readings 5 Date: The reading of Scans on 2026-06-02 is of a day to come, and counts as the latest. Write the day on which it was read."],
  [{ subject: "Scans", date: null }, "Readings 5 Date: The reading of Scans has no day. Write it as 2026-05-31."],
  [{ subject: "Scans", value: null }, "Readings 5 Value: The reading of Scans has no value. Write a number, such as 42."],
  [{ subject: "Scans", value: -3 }, "Readings 5 Value: -3 TB of Scans is no size. Write a number from 0, and a unit such as TB."],
  [{ subject: "Scans", unit: "boxes" }, "Readings 5 Unit: 60 boxes of Scans is no size. Write a number from 0, and a unit such as TB."],
])("%j is told", (reading, sentence) => {
  expect(found(readingNotCounted, withReadings(reading))).toEqual([sentence]);
});

test("nothing is told of readings of arrays and pools that say all", () => {
  expect(found(readingNotCounted, withReadings({ subject: "Scans" }, { subject: "bi-array-1", date: "2026-06-01" }))).toEqual([]);
});
