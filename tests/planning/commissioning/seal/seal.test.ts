import { checkSeal, sealOf } from "../../../../src/planning/commissioning/seal";
import type { JobRecords } from "../../../../src/planning/commissioning/record";
import { digestByHand, jobRecords, sealLine, snagOf, stepRecord } from "../../../support/job-records";

const one = stepRecord({ key: "J1/S-1/A1", no: "1", row: 10, kind: "date", plannedUnit: "TB", result: "As expected", typed: { found: 46_083, by: "AB", witness: "CD", done: 46_084, note: "n" } });
const two = stepRecord({ key: "J1/S-2/A1", no: "2", row: 11, stepId: "S-2", result: "Waived", typed: { found: "Waived", unit: "TiB" } });
const snag = snagOf({ key: "J1/S-2/A1", row: 20, typed: { about: 2, foundWrong: "Dent", mender: "EF", byWhen: 46_085, foundAgain: 5, closed: "Accepted", by: "GH", note: "as is" } });
const orphan = stepRecord({ key: "J1/S-9/A9", no: "", row: 25, result: "Differs", typed: { found: "old" } });
const tab = jobRecords({ build: 3, steps: [one, two], snags: [snag], orphans: [orphan], headerRow: 1 });

/** Seals records as the tab does: digests beside the rows, then the line with the code. */
function sealed(records: JobRecords): JobRecords {
  const { rows, code } = sealOf(records);
  const digestAt = new Map(rows.map(({ row, digest }) => [row, digest]));
  const withDigest = <Row extends { readonly row: number }>(list: readonly Row[]) => list.map((row) => ({ ...row, digest: digestAt.get(row.row)! }));
  return {
    ...records,
    steps: withDigest(records.steps),
    snags: withDigest(records.snags),
    orphans: withDigest(records.orphans),
    seals: [...records.seals, sealLine({ stepCount: records.steps.length, typed: { code } })],
  };
}

describe("the seal of a tab", () => {
  const oneDigest = digestByHand(["J1/S-1/A1", "Done", "2026-03-02", "TB", "As expected", "AB", "CD", "2026-03-03", "n", ""], 32);
  const twoDigest = digestByHand(["J1/S-2/A1", "Done", "Waived", "TiB", "Waived", "", "", "", "", "GH: as is"], 32);
  const snagDigest = digestByHand(["J1/S-2/A1", "2", "Dent", "EF", "2026-03-04", "5", "Accepted", "GH", "as is"], 32);
  const orphanDigest = digestByHand(["J1/S-9/A9", "Done", "old", "", "Differs", "", "", "", "", "kept"], 32);

  test("has a digest of every row, over what it says and who accepted it", () => {
    expect(sealOf(tab).rows).toEqual([
      { row: 10, label: "No. 1 S-1 array 1", digest: oneDigest },
      { row: 11, label: "No. 2 S-2 array 1", digest: twoDigest },
      { row: 20, label: "snag in row 21", digest: snagDigest },
      { row: 25, label: "kept record in row 26", digest: orphanDigest },
    ]);
  });

  test("has a code of 20 characters in fours over the head of the tab and all rows", () => {
    const head = ["J1", "3", "2026-03-02T09:15:00.000Z", "North hall", "2"];
    const code = digestByHand([...head, "steps", `J1/S-1/A1 ${oneDigest}`, `J1/S-2/A1 ${twoDigest}`, "snags", snagDigest, "kept", orphanDigest], 20);
    expect(sealOf(tab).code).toBe(`${code.slice(0, 4)}-${code.slice(4, 8)}-${code.slice(8, 12)}-${code.slice(12, 16)}-${code.slice(16)}`);
  });

  test("does not depend on the order of the rows", () => {
    const more = { ...tab, snags: [snag, snagOf({ row: 21 })], orphans: [orphan, { ...orphan, key: "J1/S-8/A8", row: 26 }] };
    const turned = { ...more, steps: [...more.steps].reverse(), snags: [...more.snags].reverse(), orphans: [...more.orphans].reverse() };
    expect(sealOf(turned).code).toBe(sealOf(more).code);
  });

  test("covers a waiver by the last snag about its step that was accepted, and by no other", () => {
    const digest = (...snags: ReturnType<typeof snagOf>[]): string => sealOf({ ...tab, snags }).rows[1]!.digest;
    const other = snagOf({ key: "J1/S-1/A1", typed: { closed: "Accepted", by: "XY", note: "other step" } });
    const later = { ...snag, typed: { ...snag.typed, by: "ZZ", closed: "Closed" } };
    expect(digest(snag, other, later)).toBe(twoDigest);
    expect(digest(other, later)).toBe(digestByHand(["J1/S-2/A1", "Done", "Waived", "TiB", "Waived", "", "", "", "", ""], 32));
    expect(digest(snag, { ...snag, typed: { ...snag.typed, by: "last" } })).toBe(digestByHand(["J1/S-2/A1", "Done", "Waived", "TiB", "Waived", "", "", "", "", "last: as is"], 32));
    // A step that is not waived owes nothing to a snag.
    expect(sealOf({ ...tab, snags: [{ ...snag, key: "J1/S-1/A1" }] }).rows[0]!.digest).toBe(oneDigest);
  });
});

describe("checking a seal", () => {
  const whole = sealed(tab);
  const code = sealOf(tab).code;

  test("answers that it holds while nothing has changed, sorted or not", () => {
    const holds = { code, reopened: false, holds: true, changed: [] };
    expect(checkSeal(whole)).toEqual(holds);
    expect(checkSeal({ ...whole, steps: [...whole.steps].reverse() })).toEqual(holds);
  });

  test("finds none where the tab was never sealed, or its code is gone", () => {
    const none = { code: "", reopened: false, holds: false, changed: [] };
    expect(checkSeal(tab)).toEqual(none);
    expect(checkSeal({ ...whole, seals: [sealLine({ typed: { code: " " } })] })).toEqual(none);
  });

  test("takes the last line of several, and tells that it was reopened", () => {
    const again = { ...whole, seals: [sealLine({ typed: { code: "OLD" } }), ...whole.seals] };
    expect(checkSeal(again)).toMatchObject({ code, holds: true });
    const reopened = { ...whole, seals: [sealLine({ stepCount: 2, typed: { code, reopened: "2026-03-10" } })] };
    expect(checkSeal(reopened)).toEqual({ code, reopened: true, holds: true, changed: [] });
  });

  test.each<[string, Partial<JobRecords>, { row: number; label: string }[]]>([
    ["a record", { steps: [whole.steps[0]!, { ...whole.steps[1]!, typed: { ...two.typed, note: "more" } }] }, [{ row: 11, label: "No. 2 S-2 array 1" }]],
    ["an expectation", { steps: [{ ...whole.steps[0]!, expected: "Else" }, whole.steps[1]!] }, [{ row: 10, label: "No. 1 S-1 array 1" }]],
    ["a snag, with the waiver it gave", { snags: [{ ...whole.snags[0]!, typed: { ...snag.typed, note: "else" } }] }, [{ row: 11, label: "No. 2 S-2 array 1" }, { row: 20, label: "snag in row 21" }]],
    ["a record whose step is gone", { orphans: [{ ...whole.orphans[0]!, typed: { ...orphan.typed, by: "AB" } }] }, [{ row: 25, label: "kept record in row 26" }]],
    ["a new snag", { snags: [...whole.snags, snagOf({ row: 21 })] }, [{ row: 21, label: "snag in row 22 is new" }]],
    ["a new step", { steps: [...whole.steps, stepRecord({ no: "3", stepId: "S-3", row: 12 })] }, [{ row: 12, label: "No. 3 S-3 array 1 is new" }]],
    ["a deleted step", { steps: [whole.steps[1]!] }, [{ row: 1, label: "No. 1 is missing" }]],
    ["the last step deleted", { steps: [whole.steps[0]!] }, [{ row: 1, label: "No. 2 is missing" }]],
    ["a snag that is gone, by the waiver it gave", { snags: [] }, [{ row: 11, label: "No. 2 S-2 array 1" }]],
    ["a lost record whose step is gone, which nothing on the tab names", { orphans: [] }, [{ row: 0, label: "the head of the tab, its code, or a row that is gone" }]],
    ["the name of the job", { title: "South hall" }, [{ row: 0, label: "the head of the tab, its code, or a row that is gone" }]],
    ["the job", { jobId: "J2" }, [{ row: 0, label: "the head of the tab, its code, or a row that is gone" }]],
    ["the build", { build: 4 }, [{ row: 0, label: "the head of the tab, its code, or a row that is gone" }]],
    ["the first build", { born: "2026-03-03" }, [{ row: 0, label: "the head of the tab, its code, or a row that is gone" }]],
    ["the code", { seals: [sealLine({ stepCount: 2, typed: { code: "AAAA" } })] }, [{ row: 0, label: "the head of the tab, its code, or a row that is gone" }]],
  ])("names what changed: %s", (_, more, changed) => {
    const check = checkSeal({ ...whole, ...more });
    expect(check.changed).toEqual(changed);
    expect(check.holds).toBe(false);
  });

  test("names a row that was forged back: its digest fits, the code does not", () => {
    const forged = sealed({ ...tab, steps: [{ ...one, expected: "Else" }, two] });
    expect(checkSeal({ ...forged, seals: whole.seals })).toMatchObject({ holds: false, changed: [{ row: 0 }] });
  });

  test("counts by the numbers that are there where the line does not say how many steps there were", () => {
    const seals = [sealLine({ stepCount: null, typed: { code } })];
    expect(checkSeal({ ...whole, seals })).toMatchObject({ holds: true });
    expect(checkSeal({ ...whole, seals, steps: [whole.steps[1]!] }).changed).toEqual([{ row: 1, label: "No. 1 is missing" }]);
  });
});
