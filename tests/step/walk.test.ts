import { fileWith, JobFile, snagEntries, stepEntries, type Entry, type JobTab } from "../../src/step/job-file";
import { outcomeOf, screenOf, type Screen } from "../../src/step/screen";
import { beginWalk, nextOpen, rowsOf, turn, type Walk } from "../../src/step/walk";
import { rowOf as row, stepPlan, tabFile } from "../support/step-plan";

let bytes: Uint8Array;
let file: JobFile;
let job: JobTab;

beforeAll(async () => {
  bytes = await tabFile();
});

beforeEach(async () => {
  file = JobFile.open(bytes);
  job = await file.read(file.jobs[0]!);
});

/** Types into the row of a step that stands alone, and reads the tab anew. */
async function type(stepId: string, subject: string, typed: Parameters<typeof stepEntries>[2]): Promise<void> {
  await write(stepEntries(job, row(job, stepId, subject).records[0]!, typed));
}

async function write(entries: readonly Entry[]): Promise<void> {
  await file.write(entries);
  job = await file.read(job.tab.sheet);
}

const screen = (stepId: string, subject: string): Screen => screenOf(job, row(job, stepId, subject), false);
const at = (walk: Walk) => (walk.place.at === "step" ? rowsOf(walk.job).find(({ row: one }) => walk.place.at === "step" && one === walk.place.row)!.no : walk.place.at);

describe("the way through a tab", () => {
  test("has its steps in the order of the sheet, parted by its headings", () => {
    expect(job.sections.map(({ visit, title, rows }) => [visit, title, rows.length])).toEqual([
      ["Visit 1 of 2: First visit", "Start", 3], ["", "Arrays", 9], ["", "Ports", 5], ["Visit 2 of 2: Second visit", "Cluster", 1], ["", "End", 1], ["", "Drives", 5],
    ]);
    expect(rowsOf(job).map(({ no }) => Number(no))).toEqual(Array.from({ length: 24 }, (_, index) => index + 1));
  });

  test("goes on and back row by row, and from the last one to the list", () => {
    let walk = turn(beginWalk(job), { to: "row", row: row(job, "T-02", "North hall").row });
    walk = turn(walk, { to: "next" });
    expect(at(walk)).toBe("2");
    expect(at(turn(walk, { to: "back" }))).toBe("1");
    expect(at(turn(turn(walk, { to: "back" }), { to: "back" }))).toBe("list");
    expect(at(turn(turn(walk, { to: "row", row: rowsOf(job).at(-1)!.row }), { to: "next" }))).toBe("list");
  });

  test("never passes a hold point that is not signed, and does once it is", async () => {
    const hold = row(job, "T-09", "n-1");
    const before = turn(beginWalk(job), { to: "row", row: hold.row });
    expect(turn(before, { to: "next" })).toBe(before);
    await type("T-09", "n-1", { found: "Yes", by: "AB" });
    const half = turn(before, { to: "read", job });
    expect(turn(half, { to: "next" })).toBe(half);
    await type("T-09", "n-1", { witness: "CD" });
    expect(at(turn(turn(half, { to: "read", job }), { to: "next" }))).toBe("5");
  });

  test("finds the next open step below, and after the last one the first that is open", async () => {
    await type("T-02", "North hall", { found: "At the desk", by: "AB" });
    expect(nextOpen(job, null)!.no).toBe("2");
    expect(nextOpen(job, row(job, "T-03", "North hall").row)!.no).toBe("3");
    expect(nextOpen(job, rowsOf(job).at(-1)!.row)!.no).toBe("2");
  });

  test("leads from a snag back to the row where it was raised", () => {
    const walk = turn(beginWalk(job), { to: "row", row: row(job, "T-11", "n-1").row });
    const raised = turn(walk, { to: "snag", row: null });
    expect(raised.place).toEqual({ at: "snag", row: null, about: row(job, "T-11", "n-1").row });
    expect(at(turn(raised, { to: "back" }))).toBe("6");
    expect(at(turn(raised, { to: "read", job }))).toBe("6");
  });
});

describe("a screen", () => {
  test("says caution and what to do apart, whatever else stands in the cell", () => {
    const { questions: [question], isHoldPoint, names } = screen("T-09", "n-1");
    expect(question).toMatchObject({ do: "Press both supply switches.", expected: "Both lamps lit", caution: expect.stringMatching(/^Live parts behind the rear panel/) as string });
    expect([isHoldPoint, names]).toEqual([true, ["by", "witness"]]);
  });

  test("of what a hold point holds says which one comes first, and of the other array says the other", async () => {
    expect(screen("T-10", "n-1").heldBy?.no).toBe("4");
    expect(screen("T-10", "n-2").heldBy?.no).toBe("8");
    expect(screen("T-01", "North hall").heldBy).toBeNull();
    await type("T-09", "n-1", { found: "Yes", by: "AB", witness: "CD" });
    expect(screen("T-10", "n-1").heldBy).toBeNull();
    expect(screen("T-10", "n-2").heldBy?.no).toBe("8");
    // A step about the cluster waits for what holds everything, not for one array.
    expect(screen("T-30", "North").heldBy).toBeNull();
  });

  test("asks for a second name until it is another one", async () => {
    await type("T-09", "n-1", { found: "Yes", by: "AB", witness: "ab" });
    expect(screen("T-09", "n-1").names).toEqual(["witness"]);
    expect(outcomeOf(screen("T-09", "n-1").row.records[0]!)).toMatchObject({ result: "Needs a second name", isSettled: false, advice: expect.stringMatching(/^Stop here. Somebody else/) as string });
  });

  test("tells at once what differs, and what to do then", async () => {
    await type("T-11", "n-1", { found: 5, by: "AB" });
    expect(outcomeOf(row(job, "T-11", "n-1").records[0]!)).toMatchObject({ result: "Differs", isSettled: false, advice: expect.stringMatching(/^Raise a snag/) as string });
    await type("T-11", "n-1", { found: "4" });
    expect(outcomeOf(row(job, "T-11", "n-1").records[0]!)?.result).toBe("As expected");
    await type("T-11", "n-1", { found: "4.0" });
    expect(outcomeOf(row(job, "T-11", "n-1").records[0]!)).toMatchObject({ result: "Compare by eye", isSettled: false });
  });

  test("shows a subject of a grid with each of its steps, and no name: they stand in the row below", () => {
    const { questions, names, asShown } = screen("T-20", "n-1 A0");
    expect(questions.map(({ record, expected }) => [record.stepId, record.kind, expected])).toEqual([
      ["T-20", "address", "192.0.2.1"], ["T-21", "number", "8972 bytes"], ["T-22", "text", "none"], ["T-23", "tick", "Link up"],
    ]);
    expect([names, asShown]).toEqual([[], []]);
    expect(screen("sign", "Ports").names).toEqual(["by", "witness"]);
  });

  test("ends a visit with its last row alone", () => {
    const ends = rowsOf(job).filter((one) => screenOf(job, one, false).endsVisit).map(({ no }) => no);
    expect(ends).toEqual(["17", "24"]);
  });

  test("offers to be chosen what the file offers", () => {
    expect(file.choices(job, row(job, "T-90", "North hall").records[0]!)).toEqual(["Accepted", "Refused", "Not applicable", "Waived"]);
    expect(file.choices(job, row(job, "T-10", "n-1").records[0]!)).toEqual([]);
  });
});

describe("one press for all ticks", () => {
  const ticks = (more: object = {}) => {
    const plan = stepPlan();
    const only = plan.steps!.map((one) => (one.section === "Ports" ? { ...one, record: "tick", expect: "Seen", ...more } : one));
    return tabFile({ ...plan, steps: only });
  };

  test("is offered for ticks of one subject that stand side by side, and for those alone that are still open", async () => {
    file = JobFile.open(await ticks());
    job = await file.read(file.jobs[0]!);
    expect(screen("T-20", "n-1 A0").asShown.map(({ stepId }) => stepId)).toEqual(["T-20", "T-21", "T-22", "T-23"]);
    await write(stepEntries(job, row(job, "T-20", "n-1 A0").records[1]!, { found: "No" }));
    expect(screen("T-20", "n-1 A0").asShown.map(({ stepId }) => stepId)).toEqual(["T-20", "T-22", "T-23"]);
  });

  test("is never offered for a serial, an address, a number, a single tick or a step in a list", () => {
    const offered = rowsOf(job).filter((one) => screenOf(job, one, false).asShown.length > 0);
    expect(offered).toEqual([]);
  });
});

describe("a snag", () => {
  test("takes the first blank row, about its step, and settles it once the retest is right", async () => {
    await type("T-11", "n-1", { found: 5, by: "AB" });
    await write(snagEntries(job, null, { about: 6, foundWrong: "In unit 5", mender: "EF", byWhen: 46_400 }));
    const [snag] = job.tab.snags;
    expect(snag).toMatchObject({ id: "S-1", stepId: "T-11", typed: { about: 6, foundWrong: "In unit 5", mender: "EF", byWhen: 46_400 } });
    await write(snagEntries(job, snag!.row, { foundAgain: 4, closed: "Closed", by: "EF" }));
    expect(row(job, "T-11", "n-1")).toMatchObject({ result: "As expected", settled: true });
    await write(snagEntries(job, null, { foundWrong: "A scratch" }));
    expect(job.tab.snags.map(({ id }) => id)).toEqual(["S-1", "S-2"]);
  });
});

describe("a tab that nobody may type into", () => {
  test("is told with what to do: a header that is gone", async () => {
    const header = job.sheet.values[1]!.indexOf("Found");
    const faulty = JobFile.open(await fileWith(bytes, [{ sheet: job.tab.sheet, row: 1, column: header, value: null }]));
    expect((await faulty.read(job.tab.sheet)).locked).toBe('The header "Found" of "North hall" is gone. Undo that, or write it back over its column in row 2.');
  });

  test("is nothing that can be opened where a workbook has none, or is no workbook", async () => {
    expect(() => JobFile.open(new TextEncoder().encode("no workbook"))).toThrow("This file is no .xlsx workbook, or it is damaged.");
    const marker = job.sheet.values[0]!.indexOf("Commissioning tab");
    const none = await fileWith(bytes, [{ sheet: job.tab.sheet, row: 0, column: marker, value: "Some tab" }]);
    expect(() => JobFile.open(none)).toThrow("This workbook has no commissioning tab.");
  });
});
