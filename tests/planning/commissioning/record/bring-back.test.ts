import {
  acceptReturned, compareReturned, foundFingerprint, notStanding, recordFingerprint, snagFingerprint, type JobRecords, type Snag, type StepRecord,
} from "../../../../src/planning/commissioning/record";
import { foundText, jobRecords, snagOf, stepRecord } from "../../../support/job-records";
import { problemOf } from "../../../support/sentence";

/** A record as a build has put it into a tab. */
const built = (record: StepRecord): StepRecord => ({ ...record, carried: recordFingerprint(record) });
const builtSnag = (snag: Snag): Snag => ({ ...snag, carried: snagFingerprint(snag) });
const typedInto = (record: StepRecord, typed: Partial<StepRecord["typed"]>): StepRecord => ({ ...record, typed: { ...record.typed, ...typed } });
const snagTyped = (snag: Snag, typed: Partial<Snag["typed"]>): Snag => ({ ...snag, typed: { ...snag.typed, ...typed } });
const withSteps = (...steps: StepRecord[]): JobRecords => jobRecords({ steps });
const withSnags = (...snags: Snag[]): JobRecords => jobRecords({ snags });

const blank = stepRecord({ no: "12", stepId: "S-1", subject: "array 1" });
const before = built(typedInto(blank, { found: "Yes" }));

describe("a returned tab", () => {
  test.each([
    ["another job", { jobId: "J2" }, 'The returned tab "Theirs" is not of this plan\'s job "North hall": it was first built from another plan.'],
    ["another plan that uses the same ids", { born: "2026-03-03T00:00:00.000Z" }, 'The returned tab "Theirs" is not of this plan\'s job "North hall": it was first built from another plan.'],
    ["a later build", { build: 3 }, "The returned tab is build 3, this plan has build 2. Bring it back to the newer plan."],
  ])("of %s is refused", (_, more, sentence) => {
    const problem = problemOf(() => compareReturned(jobRecords({ build: 2 }), jobRecords({ build: 2, title: "Theirs", ...more })));
    expect(problem).toMatchObject({ kind: "invalid", argument: "file", sentence });
  });

  test("of the same build brings its own remarks only, of an earlier one that records may ask to be seen again", () => {
    expect(compareReturned(jobRecords({ build: 2 }), jobRecords({ build: 2, remarks: ["r"] }))).toEqual({ items: [], holdPoints: [], onlyOurs: 0, remarks: ["r"] });
    expect(compareReturned(jobRecords({ build: 2 }), jobRecords({ build: 1, remarks: ["r"] })).remarks).toEqual([
      "The returned tab is build 1, ours is 2: records under an expectation that has changed ask to be seen again.",
      "r",
    ]);
  });

  test.each<[string, StepRecord, StepRecord, { change?: string; onlyOurs: number }]>([
    ["untouched on both sides", before, before, { onlyOurs: 0 }],
    ["blank on both sides", blank, blank, { onlyOurs: 0 }],
    ["changed by both to the same", typedInto(before, { by: "AB" }), typedInto(before, { by: "AB" }), { onlyOurs: 0 }],
    ["changed by us only", typedInto(before, { found: "No" }), before, { onlyOurs: 1 }],
    ["typed by us only", typedInto(blank, { found: "No" }), blank, { onlyOurs: 1 }],
    ["changed by them only", before, typedInto(before, { found: "No" }), { change: "theirs", onlyOurs: 0 }],
    ["typed by them only", blank, typedInto(blank, { found: "No" }), { change: "theirs", onlyOurs: 0 }],
    ["emptied by us and changed by them", typedInto(before, { found: null }), typedInto(before, { found: "No" }), { change: "theirs", onlyOurs: 0 }],
    ["changed by both", typedInto(before, { found: "Maybe" }), typedInto(before, { found: "No" }), { change: "both", onlyOurs: 0 }],
    ["emptied by them and changed by us", typedInto(before, { found: "Maybe" }), typedInto(before, { found: null }), { change: "both", onlyOurs: 0 }],
  ])("is compared record by record: one %s", (_, ours, theirs, { change, onlyOurs }) => {
    const compared = compareReturned(withSteps(ours), withSteps(theirs));
    expect(compared.items.map((item) => item.change)).toEqual(change === undefined ? [] : [change]);
    expect(compared.onlyOurs).toBe(onlyOurs);
  });

  test("names each record by its row and says what stands on both sides", () => {
    const ours = withSteps(typedInto(blank, { found: "ours" }));
    const theirs = withSteps(typedInto({ ...blank, kind: "date" }, { found: 46_083, unit: "TB", recheckedBy: "GH", by: "CD", witness: "EF", done: 46_084, note: "n" }));
    expect(compareReturned(ours, theirs).items).toEqual([
      {
        id: "J1/S-1/A1",
        change: "both",
        label: "No. 12 S-1 array 1",
        ours: "Found: ours",
        theirs: "Found: 2026-03-02, Unit: TB, Rechecked by: GH, By: CD, Witness: EF, Done: 2026-03-03, Note: n",
      },
    ]);
  });

  test("is compared with a record of ours whose step is gone, and brings one that we never had", () => {
    const foreign = typedInto({ ...blank, no: "", subject: "", key: "J1/S-9/A9", stepId: "S-9" }, { found: 46_083 });
    const compared = compareReturned(jobRecords({ orphans: [before] }), jobRecords({ orphans: [typedInto(before, { found: "No" }), foreign] }));
    expect(compared.items.map(({ id, change, label, ours, theirs }) => [id, change, label, ours, theirs])).toEqual([
      ["J1/S-1/A1", "theirs", "No. 12 S-1 array 1", "Found: Yes", "Found: No"],
      ["J1/S-9/A9", "theirs", "S-9", "", "Found: 46083"],
    ]);
  });

  test("is compared with the record at our step where one of the same key stands below as well", () => {
    const below = typedInto(before, { found: "old" });
    expect(compareReturned(jobRecords({ steps: [before], orphans: [below] }), withSteps(typedInto(before, { found: "No" }))).items).toMatchObject([{ ours: "Found: Yes" }]);
  });
});

describe("a returned snag", () => {
  const known = builtSnag(snagOf({ key: "J1/S-1/A1", stepId: "S-1", typed: { foundWrong: "Dent" } }));

  const item = (change: string, ours: string, theirs: string, label = "Snag S-1") => ({ id: "snag 0", change, label, ours, theirs });
  const dent = "What was found: Dent";

  test.each<[string, readonly Snag[], Snag, unknown[]]>([
    ["is nothing new where it is as it was handed out", [known], known, []],
    ["is nothing new where ours says the same", [snagTyped(known, { by: "AB" })], { ...snagTyped(known, { by: "AB" }), carried: "" }, []],
    [
      "is new where they found it",
      [],
      snagOf({ stepId: "S-1", typed: { about: 3, foundWrong: "Dent", byWhen: 46_083 } }),
      [item("theirs", "", `${dent}, By when: 2026-03-02`)],
    ],
    ["is new beside another one of ours", [known], snagOf({ typed: { foundWrong: "Scratch" } }), [item("theirs", "", "What was found: Scratch", "Snag")]],
    ["is theirs where only they went on with it", [known], snagTyped(known, { closed: "Closed" }), [item("theirs", dent, `${dent}, Closed: Closed`)]],
    [
      "is of both where we went on with it too",
      [snagTyped(known, { by: "AB" })],
      snagTyped(known, { closed: "Closed" }),
      [item("both", `${dent}, By: AB`, `${dent}, Closed: Closed`)],
    ],
  ])("%s", (_, ours, theirs, items) => {
    expect(compareReturned(withSnags(...ours), withSnags(theirs)).items).toEqual(items);
  });

  test("is named by where it stands among theirs", () => {
    expect(compareReturned(withSnags(), withSnags(known, snagOf({ typed: { foundWrong: "Loose screw" } }))).items.map(({ id }) => id)).toEqual(["snag 1"]);
  });

  test("that was accepted is added where it is new, and takes the place of ours where it went on from it", () => {
    const fresh = snagOf({ typed: { foundWrong: "Loose screw" } });
    const other = snagOf({ row: 25, typed: { foundWrong: "Other" } });
    const edited = snagTyped(known, { closed: "Closed", by: "CD" });
    const accept = (...ids: string[]) => acceptReturned(withSnags(other, known), withSnags(edited, fresh), new Set(ids)).snags;
    expect(accept()).toEqual([other, known]);
    expect(accept("snag 0")).toEqual([other, edited]);
    expect(accept("snag 1")).toEqual([other, known, fresh]);
    expect(accept("snag 0", "snag 1")).toEqual([other, edited, fresh]);
  });

  test("stands beside ours where both went on with it: neither is lost", () => {
    const [ours, theirs] = [snagTyped(known, { by: "AB" }), snagTyped(known, { closed: "Closed", by: "CD" })];
    expect(acceptReturned(withSnags(ours), withSnags(theirs), new Set(["snag 0"])).snags).toEqual([ours, theirs]);
  });

  test("of a copied row is one of its own", () => {
    const [first, copy] = [snagTyped(known, { by: "AB" }), snagTyped(known, { foundWrong: "Scratch" })];
    expect(compareReturned(withSnags(known), withSnags(first, copy)).items).toMatchObject([{ id: "snag 0", ours: dent }, { id: "snag 1", ours: "" }]);
    expect(acceptReturned(withSnags(known), withSnags(first, copy), new Set(["snag 0", "snag 1"])).snags).toEqual([first, copy]);
    expect(acceptReturned(withSnags(known), withSnags(first, copy), new Set(["snag 1"])).snags).toEqual([known, copy]);
  });

  test("is told by its id, and is ours of that id where two fit", () => {
    const [one, other] = [{ ...known, id: "S-1" }, { ...known, id: "S-2" }];
    const edited = { ...snagTyped(known, { by: "AB" }), id: "S-2" };
    expect(compareReturned(withSnags(one, other), withSnags(edited)).items).toMatchObject([{ label: "Snag S-2 S-1" }]);
    expect(acceptReturned(withSnags(one, other), withSnags(edited), new Set(["snag 0"])).snags).toEqual([one, edited]);
  });

  test("counts among the ids that were used, those that they have deleted included", () => {
    const accepted = acceptReturned(jobRecords({ usedSnagIds: 3 }), jobRecords({ usedSnagIds: 5 }), new Set());
    expect(accepted.usedSnagIds).toBe(5);
  });

  test("is found again by what we typed ourselves and handed out, and keeps the fingerprint that ours has", () => {
    const ours = snagOf({ carried: "", typed: { foundWrong: "Ours" } });
    const handedOut = { ...snagTyped(ours, { mender: "EF" }), carried: snagFingerprint(ours) };
    expect(acceptReturned(withSnags(ours), withSnags(handedOut), new Set(["snag 0"])).snags).toEqual([{ ...handedOut, carried: "" }]);
  });
});

describe("an accepted record", () => {
  const theirs = typedInto({ ...before, expected: "Done well", expectedBefore: "Done", plannedUnit: "TB", row: 99, result: "Differs" }, { found: "No" });

  test("takes what was typed and under which expectation; the rest of the row stays ours, and ours is not lost", () => {
    const accepted = acceptReturned({ ...withSteps(before), sheet: "North hall" }, withSteps(theirs), new Set([before.key]));
    expect(accepted.steps).toEqual([{ ...before, typed: theirs.typed, expected: "Done well", expectedBefore: "Done", plannedUnit: "TB" }]);
    expect(accepted.orphans).toEqual([before]);
    expect(accepted.sheet).toBe("North hall");
  });

  test("leaves nothing behind where ours was blank, and nothing at all where it was not accepted", () => {
    expect(acceptReturned(withSteps(blank), withSteps(theirs), new Set([before.key])).orphans).toEqual([]);
    const refused = acceptReturned(withSteps(before), withSteps(theirs), new Set(["J1/S-2/A1"]));
    expect([refused.steps, refused.orphans]).toEqual([[before], []]);
  });

  test("of a step that we do not have stands behind our own of that kind", () => {
    const ours = stepRecord({ key: "J1/S-8/A8", typed: { found: 1 } });
    const foreign = stepRecord({ key: "J1/S-9/A9", typed: { found: 2 } });
    expect(acceptReturned(jobRecords({ orphans: [ours] }), jobRecords({ orphans: [foreign] }), new Set(["J1/S-9/A9"])).orphans).toEqual([ours, foreign]);
  });

  test("of a copied row is listed, and stands below", () => {
    const [first, second, same] = [typedInto(before, { found: "No" }), typedInto(before, { found: "Maybe" }), before];
    const returned = withSteps(first, second, same);
    expect(compareReturned(withSteps(before), returned).items.map(({ id, label, ours: mine, theirs: yours }) => [id, label, mine, yours])).toEqual([
      ["J1/S-1/A1", "No. 12 S-1 array 1", "Found: Yes", "Found: No"],
      ["J1/S-1/A1 #2", "No. 12 S-1 array 1, copied row", "", "Found: Maybe"],
    ]);
    const accepted = acceptReturned(withSteps(before), returned, new Set(["J1/S-1/A1", "J1/S-1/A1 #2"]));
    expect(accepted.steps.map(({ typed }) => typed.found)).toEqual(["No"]);
    expect(accepted.orphans.map(({ typed }) => typed.found)).toEqual(["Yes", "Maybe"]);
  });

  test("is the one at their step where another of its key stands below", () => {
    const below = typedInto(theirs, { found: "old" });
    expect(acceptReturned(withSteps(before), jobRecords({ steps: [theirs], orphans: [below] }), new Set([before.key])).steps[0]?.typed.found).toBe("No");
  });
});

describe("a returned tab with a row that was copied", () => {
  const theirs = (found: string) => stepRecord({ key: "J1/S-1/A1", typed: { found } });

  test("brings every row of its own, the first to the step and the others to the kept block", () => {
    const ours = jobRecords({ steps: [stepRecord({ key: "J1/S-1/A1" })] });
    const returned = jobRecords({ steps: [theirs("one"), theirs("two"), theirs("one"), stepRecord({ key: "J1/S-1/A1" })] });
    const { items } = compareReturned(ours, returned);
    expect(items.map(({ id, theirs: text }) => [id, text])).toEqual([["J1/S-1/A1", "Found: one"], ["J1/S-1/A1 #2", "Found: two"]]);
    const both = acceptReturned(ours, returned, new Set(items.map(({ id }) => id)));
    expect([both.steps, both.orphans].map((list) => list.map(({ typed }) => typed.found))).toEqual([["one"], ["two"]]);
    expect(notStanding(both, returned, new Set(items.map(({ id }) => id)))).toEqual([]);
    const second = acceptReturned(ours, returned, new Set(["J1/S-1/A1 #2"]));
    expect([second.steps, second.orphans].map((list) => list.map(({ typed }) => typed.found))).toEqual([["two"], []]);
    expect(notStanding(second, returned, new Set(["J1/S-1/A1", "J1/S-1/A1 #2"]))).toEqual(["J1/S-1/A1"]);
  });

  test("brings a snag twice where both sides changed it, or where a copy of its row still says what ours does", () => {
    const handedOut = snagOf({ typed: { foundWrong: "Dent" } });
    const carried = snagFingerprint(handedOut);
    const ours = (foundWrong: string) => jobRecords({ snags: [snagOf({ carried, typed: { foundWrong } })] });
    const returned = (...texts: string[]) => jobRecords({ snags: texts.map((foundWrong) => snagOf({ carried, typed: { foundWrong } })) });
    const after = (mine: string, ...texts: string[]) => {
      const [own, back] = [ours(mine), returned(...texts)];
      return acceptReturned(own, back, new Set(compareReturned(own, back).items.map(({ id }) => id))).snags.map(({ typed }) => typed.foundWrong);
    };
    expect(after("Dent", "Dent, deep")).toEqual(["Dent, deep"]);
    expect(after("Dent, ours", "Dent, theirs")).toEqual(["Dent, ours", "Dent, theirs"]);
    expect(after("Dent", "Dent", "Dent, deep")).toEqual(["Dent", "Dent, deep"]);
    expect(after("Dent", "one", "two")).toEqual(["one", "two"]);
  });
});

describe("texts beside the rows of a returned tab", () => {
  test("are told and brought once; those that its build put there, and those that ours holds, are not", () => {
    const known = foundText({ text: "known" });
    const built = { ...foundText({ text: "built" }), carried: foundFingerprint(foundText({ text: "built" })) };
    const ours = jobRecords({ elsewhere: [known] });
    const returned = jobRecords({ elsewhere: [known, built, foundText({ text: "new" }), foundText({ text: null })] });
    const { items } = compareReturned(ours, returned);
    expect(items).toEqual([{ id: "text 2", change: "theirs", label: "Text at Column P of row 4 (P4)", ours: "", theirs: "new" }]);
    const after = acceptReturned(ours, returned, new Set(["text 2"]));
    expect(after.elsewhere.map(({ typed }) => typed.text)).toEqual(["known", "new"]);
    expect([notStanding(after, returned, new Set(["text 2"])), notStanding(ours, returned, new Set(["text 2"]))]).toEqual([[], ["text 2"]]);
    expect(acceptReturned(ours, returned, new Set()).elsewhere).toEqual([known]);
  });
});

describe("a returned tab with a grid", () => {
  const signKey = "J1/sign/drives";
  const inGrid = (bay: number, found: string | null): StepRecord =>
    stepRecord({ key: `J1/S-1/A1.bay-${bay}`, slot: { place: 0, rowKey: `slots:${bay}`, signKey, head: "" }, sign: "none", row: bay, typed: { found } });
  const sign = (by: string | null): StepRecord => stepRecord({ key: signKey, row: 9, typed: { found: by === null ? null : "Yes", by } });
  const ours = withSteps(inGrid(1, "N-1"), inGrid(2, null), sign("AB"));
  const everything = (theirs: JobRecords) => new Set(compareReturned(ours, theirs).items.map(({ id }) => id));
  const namesOf = (records: JobRecords) => records.steps.map(({ typed }) => [typed.found, typed.by]);

  test("brings its names to its own records where the row that signs for all of them says ours", () => {
    const theirs = withSteps(inGrid(1, null), inGrid(2, "N-2"), sign("CD"));
    const accepted = new Set(["J1/S-1/A1.bay-2"]);
    const merged = acceptReturned(ours, theirs, accepted);
    expect(namesOf(merged)).toEqual([["N-1", null], ["N-2", "CD"], ["Yes", "AB"]]);
    expect(notStanding(merged, theirs, accepted)).toEqual([]);
    expect(compareReturned(merged, theirs).items.map(({ id }) => id)).toEqual([signKey]);
  });

  test("leaves our names with our records where its own take the row that signs", () => {
    const theirs = withSteps(inGrid(1, null), inGrid(2, "N-2"), sign("CD"));
    expect(namesOf(acceptReturned(ours, theirs, everything(theirs)))).toEqual([["N-1", "AB"], ["N-2", null], ["Yes", "CD"]]);
  });

  test("brings no names where both say the same, or it says none", () => {
    for (const by of ["AB", null]) {
      const theirs = withSteps(inGrid(1, null), inGrid(2, "N-2"), sign(by));
      expect(namesOf(acceptReturned(ours, theirs, everything(theirs))).map(([, name]) => name)).toEqual([null, null, "AB"]);
    }
  });
});

describe("a returned tab with a hold point", () => {
  const hold = built(stepRecord({ key: "J1/S-9/A1", no: "13", stepId: "S-9", subject: "array 1", holdPoint: true }));
  const theirHold = typedInto(hold, { found: "Yes", by: "CD", witness: "EF" });
  const ours = withSteps(before, hold);

  test("brings what else was done, and shows what it says of the hold point beside ours", () => {
    const returned = withSteps(typedInto(before, { found: "No" }), theirHold);
    const { items, holdPoints } = compareReturned(ours, returned);
    expect(items.map(({ id }) => id)).toEqual([before.key]);
    expect(holdPoints).toEqual([{ id: hold.key, label: "No. 13 S-9 array 1", ours: "", theirs: "Found: Yes, By: CD, Witness: EF" }]);
  });

  test("never has it taken over, even where its id is accepted, and says that it does not stand", () => {
    const returned = withSteps(before, theirHold);
    const accepted = new Set([hold.key]);
    const merged = acceptReturned(ours, returned, accepted);
    expect([merged.steps, merged.orphans]).toEqual([ours.steps, []]);
    expect(notStanding(merged, returned, accepted)).toEqual([hold.key]);
  });

  test("is judged by what our tab says of the step: what theirs makes of it does not count", () => {
    const forged = { ...theirHold, holdPoint: false };
    expect(compareReturned(ours, withSteps(before, forged)).holdPoints.map(({ id }) => id)).toEqual([hold.key]);
    expect(acceptReturned(ours, withSteps(before, forged), new Set([hold.key])).steps).toEqual(ours.steps);
    const noLonger = withSteps(before, { ...hold, holdPoint: false });
    expect(compareReturned(noLonger, withSteps(before, theirHold))).toMatchObject({ items: [{ id: hold.key, change: "theirs" }], holdPoints: [] });
  });

  test("brings no copied row of it, and none of a hold point that we do not have any more", () => {
    const copied = withSteps(before, hold, theirHold);
    expect(compareReturned(ours, copied)).toMatchObject({ items: [], holdPoints: [{ id: `${hold.key} #2`, label: "No. 13 S-9 array 1, copied row" }] });
    expect(acceptReturned(ours, copied, new Set([`${hold.key} #2`])).orphans).toEqual([]);
    expect(compareReturned(withSteps(before), withSteps(before, theirHold))).toMatchObject({ items: [], holdPoints: [{ id: hold.key }] });
  });

  test("says nothing of one that both sides left alone, or signed alike", () => {
    expect(compareReturned(ours, withSteps(before, hold))).toMatchObject({ items: [], holdPoints: [] });
    expect(compareReturned(withSteps(before, theirHold), withSteps(before, theirHold))).toMatchObject({ items: [], holdPoints: [] });
    expect(compareReturned(withSteps(before, theirHold), withSteps(before, hold))).toMatchObject({ items: [], holdPoints: [], onlyOurs: 1 });
  });

  test("brings a snag about it as long as that is open: its end would settle the hold point", () => {
    const snag = (typed: Partial<Snag["typed"]>): Snag => snagOf({ id: "S-1", key: hold.key, stepId: "S-9", typed: { about: 13, ...typed } });
    const returned = (typed: Partial<Snag["typed"]>) => ({ ...withSteps(before, hold), snags: [snag(typed)] });
    expect(compareReturned(ours, returned({}))).toMatchObject({ items: [{ label: "Snag S-1 S-9" }], holdPoints: [] });
    for (const end of [{ closed: "Closed", by: "CD", foundAgain: "Yes" }, { closed: "Accepted", by: "CD" }, { closed: "Closed" }]) {
      const theirs = returned(end);
      const { items, holdPoints } = compareReturned(ours, theirs);
      expect([items, holdPoints.map(({ label }) => label)]).toEqual([[], ["Snag S-1 S-9"]]);
      expect(acceptReturned(ours, theirs, new Set(holdPoints.map(({ id }) => id))).snags).toEqual([]);
      const elsewhere = { ...theirs, snags: theirs.snags.map((one) => ({ ...one, key: before.key })) };
      expect(compareReturned(ours, elsewhere)).toMatchObject({ items: [{ label: "Snag S-1 S-9" }], holdPoints: [] });
    }
  });
});

test("a kept record that they emptied is not missed afterwards, as nothing is left of it to be seen", () => {
  const kept = built(stepRecord({ key: "J1/S-9/A1", typed: { found: "old" } }));
  const theirs = jobRecords({ steps: [before], orphans: [typedInto(kept, { found: null })] });
  expect(notStanding(withSteps(before), theirs, new Set(["J1/S-9/A1"]))).toEqual([]);
});
