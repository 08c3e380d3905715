import type { ExpandedJob, JobStep } from "../../../../src/planning/commissioning/job";
import { parseExpectation } from "../../../../src/planning/commissioning/procedure";
import { carryRecords, recordFingerprint, snagFingerprint, uncarried, type JobRecords, type StepRecord } from "../../../../src/planning/commissioning/record";
import { jobRecords, sealLine, snagOf, stepRecord } from "../../../support/job-records";

const key = "J1/S-1/A1";

function jobStep(expect: string, more: Partial<JobStep> = {}): JobStep {
  const expectation = parseExpectation({ record: "text", tolerance: null, tolerancePercent: null, bound: "" }, expect, "Step S-1");
  const words = { do: "Do it", caution: "", makersGuide: "", subject: "array 1" };
  return { key, stepId: "S-1", ...words, expectation, unit: "", required: true, sign: "one", holdPoint: false, minutes: 5, planCell: null, slot: null, ...more };
}

/** A job of some steps; where and about what it is does not matter here. */
const job = (...steps: JobStep[]): Pick<ExpandedJob, "sections"> => ({ sections: [{ title: "Start", visit: "", steps, columns: [] }] });
const carry = (steps: JobStep[], current: JobRecords | null, ...others: JobRecords[]) => carryRecords(job(...steps), current, others);
const carriedTo = (step: JobStep, record: StepRecord) => carry([step], jobRecords({ steps: [record] })).records.steps.get(step.key);

const seen = stepRecord({ key, expected: "old", typed: { found: "x", by: "AB" } });
const recheckedBy = { ...seen, typed: { ...seen.typed, recheckedBy: "CD" } };

describe("a record that is carried to its step", () => {
  test.each<[string, StepRecord, JobStep, { expectedBefore: string; recheckedBy: string | null }]>([
    ["asks nothing under the same expectation", seen, jobStep("old"), { expectedBefore: "", recheckedBy: null }],
    ["tells the old one under another", seen, jobStep("new"), { expectedBefore: "old", recheckedBy: null }],
    ["tells the old one where anything will do now", seen, jobStep(""), { expectedBefore: "old", recheckedBy: null }],
    ["tells that anything would do before", { ...seen, expected: "" }, jobStep("new"), { expectedBefore: "(anything)", recheckedBy: null }],
    ["stays seen again while nothing changes", { ...recheckedBy, expectedBefore: "older" }, jobStep("old"), { expectedBefore: "older", recheckedBy: "CD" }],
    ["asks anew once it was seen under an expectation that has changed again", { ...recheckedBy, expectedBefore: "older" }, jobStep("new"), { expectedBefore: "old", recheckedBy: null }],
    ["goes on asking while nothing changes", { ...seen, expectedBefore: "older" }, jobStep("old"), { expectedBefore: "older", recheckedBy: null }],
    ["tells under which one it was made through several changes", { ...seen, expectedBefore: "older" }, jobStep("new"), { expectedBefore: "older", recheckedBy: null }],
    ["asks nothing once the expectation is back to the one it was made under", { ...seen, expectedBefore: "new" }, jobStep("new"), { expectedBefore: "", recheckedBy: null }],
    ["asks nothing once anything will do again, as before", { ...seen, expectedBefore: "(anything)" }, jobStep(""), { expectedBefore: "", recheckedBy: null }],
    ["asks although the words are back, where it was seen again meanwhile", { ...recheckedBy, expectedBefore: "new" }, jobStep("new"), { expectedBefore: "old", recheckedBy: null }],
    ["tells the old expectation without its unit where that has not changed", { ...seen, plannedUnit: "TB" }, jobStep("new", { unit: "TB" }), { expectedBefore: "old", recheckedBy: null }],
    ["tells the old unit with the old expectation", { ...seen, plannedUnit: "TB" }, jobStep("old", { unit: "TiB" }), { expectedBefore: "old TB", recheckedBy: null }],
    ["tells the old unit alone where nothing was expected", { ...seen, expected: "", plannedUnit: "TB" }, jobStep("new", { unit: "TiB" }), { expectedBefore: "TB", recheckedBy: null }],
    ["asks where the unit changed although the words are back", { ...seen, expectedBefore: "new", plannedUnit: "TB" }, jobStep("new", { unit: "TiB" }), { expectedBefore: "new", recheckedBy: null }],
  ])("%s", (_, record, step, expected) => {
    const carried = carriedTo(step, record)!;
    expect({ expectedBefore: carried.expectedBefore, recheckedBy: carried.typed.recheckedBy }).toEqual(expected);
    expect(carried.carried).toBe(recordFingerprint(record));
    expect(carried.typed.found).toBe("x");
  });

  test("asks nothing and loses nothing where nothing was found yet", () => {
    const note = stepRecord({ key, expected: "old", expectedBefore: "older", typed: { note: "later", unit: "TB", recheckedBy: "CD" } });
    expect(carriedTo(jobStep("new", { unit: "TiB" }), note)).toEqual({ typed: note.typed, expectedBefore: "", carried: recordFingerprint(note) });
  });

  test("keeps who has seen a record again under an expectation that changes once more, with the place where the name stood", () => {
    const { elsewhere } = carry([jobStep("new")], jobRecords({ build: 4, steps: [{ ...recheckedBy, no: "7", expectedBefore: "older" }] })).records;
    expect(elsewhere.map(({ typed }) => typed)).toEqual([{ from: "Build 4", text: "CD", place: "Rechecked by of No. 7 S-1 array 1" }]);
  });

  test.each([
    ["keeps the unit it was seen in", "TB", null, "TiB", "x", "TB"],
    ["keeps another unit that was typed", "TB", "bytes", "TiB", "x", "bytes"],
    ["needs no unit that the plan has now", "TB", "TiB", "TiB", "x", null],
    ["needs none where the plan has not changed", "TB", null, "TB", "x", null],
    ["has none where none was planned", "", null, "TiB", "x", null],
    ["takes on the new unit where nothing was found", "TB", null, "TiB", null, null],
  ])("%s", (_, planned, typedUnit, now, found, unit) => {
    const record = stepRecord({ key, expected: "old", plannedUnit: planned, typed: { found, unit: typedUnit, note: "n" } });
    expect(carriedTo(jobStep("old", { unit: now }), record)?.typed.unit).toBe(unit);
  });

  test("is counted, and counted again where it asks to be seen", () => {
    const counts = (record: StepRecord, step: JobStep) => carry([step], jobRecords({ steps: [record] })).counts;
    expect(counts(seen, jobStep("old"))).toEqual({ carried: 1, orphaned: 0, again: 0 });
    expect(counts(seen, jobStep("new"))).toEqual({ carried: 1, orphaned: 0, again: 1 });
    expect(counts({ ...recheckedBy, expectedBefore: "older" }, jobStep("old"))).toEqual({ carried: 1, orphaned: 0, again: 0 });
    expect(counts(stepRecord({ key }), jobStep("old"))).toEqual({ carried: 0, orphaned: 0, again: 0 });
    expect(counts(seen, jobStep("old", { key: "J1/S-2/A1" }))).toEqual({ carried: 0, orphaned: 1, again: 0 });
  });
});

describe("records of a tab in use", () => {
  test("go to their step or among those without one; blank rows go nowhere", () => {
    const gone = stepRecord({ key: "J1/S-9/A9", typed: { found: "y" } });
    const { records } = carry([jobStep("old")], jobRecords({ steps: [seen, gone, stepRecord({ key: "J1/S-8/A8" })] }));
    expect([...records.steps.keys()]).toEqual([key]);
    expect(records.orphans).toEqual([gone]);
  });

  test("come back from below once their step does, but not over one that is typed there", () => {
    expect(carry([jobStep("old")], jobRecords({ orphans: [seen] })).records.steps.get(key)?.typed.found).toBe("x");
    const other = { ...seen, typed: { ...seen.typed, found: "z" } };
    const { records } = carry([jobStep("old")], jobRecords({ steps: [other], orphans: [seen] }));
    expect(records.steps.get(key)?.typed.found).toBe("z");
    expect(records.orphans).toEqual([seen]);
  });

  test("that stand twice with the same words are one record, with other words two", () => {
    const copy = { ...seen, row: 40 };
    expect(carry([jobStep("old")], jobRecords({ steps: [seen, copy] })).records.orphans).toEqual([]);
    const changed = { ...copy, typed: { ...copy.typed, found: "z" } };
    expect(carry([jobStep("old")], jobRecords({ steps: [seen, changed] })).records.orphans).toEqual([changed]);
  });

  test("bring snags and seals along as they are", () => {
    const [snags, seals] = [[snagOf({ id: "S-4" })], [sealLine()]];
    expect(carry([], jobRecords({ snags, seals })).records).toMatchObject({ snags, seals });
    expect(carry([jobStep("old")], null).records).toEqual({ steps: new Map(), orphans: [], snags: [], usedSnagIds: 0, seals: [], elsewhere: [] });
  });
});

describe("records of an earlier tab", () => {
  const late = { ...seen, typed: { ...seen.typed, found: "late" } };
  const current = (record: StepRecord): JobRecords => jobRecords({ build: 2, steps: [record] });
  const earlier = (record: StepRecord, build = 1): JobRecords => jobRecords({ build, steps: [record] });
  const asCarried = { ...seen, carried: recordFingerprint(seen) };

  test("go to a step where nobody has typed since", () => {
    expect(carry([jobStep("old")], current(stepRecord({ key, expected: "old" })), earlier(late)).records.steps.get(key)?.typed.found).toBe("late");
    const { records } = carry([jobStep("old")], current(asCarried), earlier(late));
    expect(records.steps.get(key)?.typed.found).toBe("late");
    // What it was typed over may have come from yet another tab: it is kept, unless the late one says it too.
    expect(records.orphans).toEqual([asCarried]);
    const more = { ...asCarried, typed: { ...asCarried.typed, note: "and a note" } };
    expect(carry([jobStep("old")], current(asCarried), earlier(more)).records).toMatchObject({ orphans: [], steps: new Map([[key, { typed: more.typed }]]) });
  });

  test("stand below where somebody has", () => {
    const typed = { ...asCarried, typed: { ...seen.typed, found: "newer" } };
    const { records } = carry([jobStep("old")], current(typed), earlier(late));
    expect(records.steps.get(key)?.typed.found).toBe("newer");
    expect(records.orphans).toEqual([late]);
  });

  test("go to their step where no tab is in use", () => {
    expect(carry([jobStep("old")], null, earlier(late)).records.steps.get(key)?.typed.found).toBe("late");
  });

  test("stand below where an earlier one went to the step already", () => {
    const later = { ...late, typed: { ...late.typed, found: "later still" } };
    const { records } = carry([jobStep("old")], current(asCarried), earlier(late), earlier(later));
    expect(records.steps.get(key)?.typed.found).toBe("late");
    expect(records.orphans).toEqual([asCarried, later]);
  });

  test("are taken once: neither what was carried over nor what stands in the tab in use", () => {
    expect(uncarried(earlier(seen), current(asCarried))).toEqual({ records: [], snags: [], elsewhere: [] });
    expect(uncarried(earlier(seen), current({ ...late, carried: recordFingerprint(seen) }))).toEqual({ records: [], snags: [], elsewhere: [] });
    expect(uncarried(earlier(seen), jobRecords({ build: 2, orphans: [seen] }))).toEqual({ records: [], snags: [], elsewhere: [] });
    expect(uncarried(earlier(late), current(asCarried))).toEqual({ records: [late], snags: [], elsewhere: [] });
    expect(uncarried(jobRecords({ orphans: [late] }), current(asCarried)).records).toEqual([late]);
    expect(uncarried(earlier(stepRecord({ key })), null)).toEqual({ records: [], snags: [], elsewhere: [] });
    expect(uncarried(earlier(late), null).records).toEqual([late]);
  });

  test("of a later build that was never put in place count only where people typed there", () => {
    const carriedThere = { ...late, carried: recordFingerprint(late) };
    expect(uncarried(earlier(carriedThere, 3), current(asCarried)).records).toEqual([]);
    expect(uncarried(earlier({ ...late, carried: recordFingerprint(seen) }, 3), current(asCarried)).records).toHaveLength(1);
    expect(uncarried(earlier(carriedThere, 2), current(asCarried)).records).toEqual([carriedThere]);
    expect(uncarried(jobRecords({ build: 3, orphans: [carriedThere] }), current(asCarried)).records).toEqual([]);
  });

  test("bring their snags behind those of the tab in use, each once", () => {
    const [known, fresh] = [snagOf({ id: "S-1", typed: { foundWrong: "known" } }), snagOf({ id: "S-2", typed: { foundWrong: "fresh" } })];
    const carriedOver = { ...known, carried: snagFingerprint(known), typed: { ...known.typed, by: "AB" } };
    expect(carry([], jobRecords({ build: 2, snags: [carriedOver] }), jobRecords({ snags: [known, fresh] })).records.snags).toEqual([carriedOver, fresh]);
    expect(carry([], jobRecords({ build: 2, snags: [known] }), jobRecords({ snags: [known] })).records.snags).toEqual([known]);
    const unplaced = { ...fresh, carried: snagFingerprint(fresh) };
    expect(uncarried(jobRecords({ build: 3, snags: [unplaced] }), jobRecords({ build: 2 })).snags).toEqual([]);
  });
});
