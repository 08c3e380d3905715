import { recordFingerprint, snagFingerprint } from "../../../../src/planning/commissioning/record";
import { digestByHand, snagOf, stepRecord } from "../../../support/job-records";

describe("the fingerprint of a record", () => {
  test("is that of its key and of what was typed, in one order; only a day under Done is a date", () => {
    const record = stepRecord({ key: "K", kind: "date", typed: { found: 46_083, unit: "TB", recheckedBy: "CD", by: "AB", witness: "CD", done: 46_083, note: " n " } });
    // Day 46,083 is 2026-03-02.
    expect(recordFingerprint(record)).toBe(digestByHand(["K", "46083", "TB", "CD", "AB", "CD", "2026-03-02", "n"], 16));
  });

  test("is nothing where nothing was typed, and something where anything was", () => {
    expect(recordFingerprint(stepRecord())).toBe("");
    expect(recordFingerprint(stepRecord({ key: "K", typed: { found: false } }))).toBe(digestByHand(["K", "FALSE", "", "", "", "", "", ""], 16));
  });

  test("of a snag leaves out the number of its row, which a build changes", () => {
    const typed = { about: 4, foundWrong: "Dent", mender: "EF", byWhen: 46_083, foundAgain: 5, closed: "Closed", by: "AB", note: "n" };
    const expected = digestByHand(["snag", "K", "", "Dent", "EF", "2026-03-02", "5", "Closed", "AB", "n"], 16);
    expect(snagFingerprint(snagOf({ key: "K", typed }))).toBe(expected);
    expect(snagFingerprint(snagOf({ key: "K", typed: { ...typed, about: 7 } }))).toBe(expected);
    expect(snagFingerprint(snagOf({ key: "K", typed: { ...typed, about: "gone" } }))).toBe(expected);
  });

  test("of a snag has what somebody wrote in place of that number", () => {
    const printOf = (key: string, about: string | number | null): string => snagFingerprint(snagOf({ key, typed: { about, foundWrong: null } }));
    const byHand = (key: string, about: string): string => digestByHand(["snag", key, about, "", "", "", "", "", "", ""], 16);
    expect(printOf("K", "the left one")).toBe(byHand("K", "the left one"));
    // A number that is no step's is written with a question mark at the next build.
    expect([printOf("", 99), printOf("", "99?")]).toEqual([byHand("", "99?"), byHand("", "99?")]);
  });
});
