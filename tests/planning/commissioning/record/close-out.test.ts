import { openItems, withoutAccepted, type Snag, type StepRecord } from "../../../../src/planning/commissioning/record";
import { jobRecords, snagOf, stepRecord } from "../../../support/job-records";

const open = (steps: readonly StepRecord[], snags: readonly Snag[] = []) => openItems(jobRecords({ steps, snags, headerRow: 7 }));
const sentences = (steps: readonly StepRecord[], snags: readonly Snag[] = []): string[] => open(steps, snags).map(({ sentence }) => sentence);
const accepted = (more: Partial<Snag["typed"]> = {}): Snag => snagOf({ key: "J1/S-1/A1", typed: { closed: "Accepted", by: "EF", ...more } });

describe("what keeps a tab from being closed", () => {
  test.each<[string, Parameters<typeof stepRecord>[0], string[]]>([
    ["nothing, as expected and signed", { result: "As expected", typed: { by: "AB" } }, []],
    ["a missing name", { result: "As expected", typed: { by: "  " } }, ["No. 1 S-1 wants a name under By."]],
    ["nothing where no name signs", { result: "As expected", sign: "none" }, []],
    ["a missing name where two sign", { result: "As expected", sign: "two" }, ["No. 1 S-1 wants a name under By."]],
    ["a step that is not done", { result: null }, ["No. 1 S-1 is not done. Type what was found."]],
    ["nothing of a step that need not be done", { result: null, required: false }, []],
    ["nothing of a step that differs and need not be done", { result: "Differs", required: false }, []],
    ["a step that differs", { result: "Differs", typed: { by: "AB", note: "n" } }, ["No. 1 S-1 says Differs. Put it right, or waive it with name and reason."]],
    ["a step that wants a second name", { result: "Needs a second name" }, ["No. 1 S-1 says Needs a second name. Put it right, or waive it with name and reason."]],
    ["a step to be compared by eye", { result: "Compare by eye" }, ["No. 1 S-1 says Compare by eye. Put it right, or waive it with name and reason."]],
    ["a changed expectation", { result: "Check again", typed: { by: "AB" } }, ["No. 1 S-1 asks to be seen again: its expectation has changed."]],
    ["a changed expectation of a step that need not be done", { result: "Check again", required: false }, ["No. 1 S-1 asks to be seen again: its expectation has changed."]],
    ["nothing of a waiver with name and reason", { result: "Waived", typed: { by: "AB", note: "later" } }, []],
    ["a waiver without a reason", { result: "Waived", typed: { by: "AB", note: " " } }, ["No. 1 S-1 wants a name under By and a reason in Note."]],
    ["a waiver without a name", { result: "Waived", typed: { note: "later" } }, ["No. 1 S-1 wants a name under By and a reason in Note."]],
    ["nothing of what does not apply, with name and reason", { result: "Not applicable", typed: { by: "AB", note: "no port" } }, []],
    ["what does not apply, without them", { result: "Not applicable" }, ["No. 1 S-1 wants a name under By and a reason in Note."]],
  ])("is %s", (_, step, expected) => {
    expect(sentences([stepRecord(step)])).toEqual(expected);
  });

  test("is no waiver that a snag about the step has accepted by name", () => {
    const waived = stepRecord({ result: "Waived" });
    const missing = ["No. 1 S-1 wants a name under By and a reason in Note."];
    expect(sentences([waived], [accepted()])).toEqual([]);
    expect(sentences([waived], [{ ...accepted(), key: "J1/S-2/A1" }])).toEqual(missing);
    expect(sentences([waived], [accepted({ closed: "Closed" })])).toEqual(missing);
    expect(sentences([waived], [accepted(), accepted({ closed: "Closed" })])).toEqual(missing);
    expect(sentences([waived], [accepted({ closed: "Closed" }), accepted()])).toEqual([]);
    expect(sentences([waived], [accepted({ by: null })])).toEqual([...missing, "The snag in row 21 is open. Write Closed or Accepted, and a name under By."]);
  });

  test("is an open snag, by its row", () => {
    expect(open([], [snagOf({ row: 41 }), snagOf({ typed: { closed: "Closed", by: "AB" } })])).toEqual([
      { row: 41, sentence: "The snag in row 42 is open. Write Closed or Accepted, and a name under By." },
    ]);
  });

  const signed = (no: number, key = `J1/S-${no}/A1`) => stepRecord({ no: String(no), key, row: 10 + no, result: "As expected", typed: { by: "AB" } });

  test("is a row that was deleted, told at the headers", () => {
    expect(open([signed(1), signed(2), signed(3)])).toEqual([]);
    expect(open([])).toEqual([]);
    expect(open([signed(1), signed(4)])).toEqual([
      { row: 7, sentence: "No. 2 is missing. Build the tab again: its row comes back." },
      { row: 7, sentence: "No. 3 is missing. Build the tab again: its row comes back." },
    ]);
  });

  test("is no number that was emptied, as if its row had been deleted", () => {
    expect(open([{ ...signed(1), no: "" }])).toEqual([]);
  });

  test("is a row that was copied, told at the copy", () => {
    expect(open([signed(1), signed(2), { ...signed(1), row: 19 }])).toEqual([{ row: 19, sentence: "No. 1 stands twice. Delete the copy of the row." }]);
  });

  test("is named by the row of its step", () => {
    expect(open([signed(1), { ...signed(2), result: null }])).toEqual([{ row: 12, sentence: "No. 2 S-1 is not done. Type what was found." }]);
  });
});

describe("what is accepted as it is", () => {
  const items = [{ row: 1, sentence: "One. Build the tab again.", fact: "One." }, { row: 2, sentence: "Two. Build the tab again.", fact: "Two." }, { row: 3, sentence: "Open." }];
  const left = (typed: Partial<Snag["typed"]>): number[] => withoutAccepted(items, { snags: [snagOf({ typed })] }).map(({ row }) => row);

  test("is what a snag lists, a line each, that somebody has accepted by name; what is open otherwise stays", () => {
    expect(left({ foundWrong: "One.\nTwo.", closed: "Accepted", by: "EF" })).toEqual([3]);
    expect(left({ foundWrong: "Two.", closed: "accepted", by: "EF" })).toEqual([1, 3]);
    expect(left({ foundWrong: "Open.", closed: "Accepted", by: "EF" })).toEqual([1, 2, 3]);
    for (const typed of [{ closed: "Accepted" }, { closed: "Closed", by: "EF" }, { by: "EF" }]) expect(left({ foundWrong: "One.\nTwo.", ...typed })).toEqual([1, 2, 3]);
    expect(left({ foundWrong: "One. Two.", closed: "Accepted", by: "EF" })).toEqual([1, 2, 3]);
  });
});
