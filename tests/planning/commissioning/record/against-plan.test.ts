import type { ExpandedJob, JobStep } from "../../../../src/planning/commissioning/job";
import { judgedByPlan, outdatedItems, type StepRecord } from "../../../../src/planning/commissioning/record";
import { jobRecords, stepRecord } from "../../../support/job-records";

const planned: JobStep = {
  key: "J1/S-1/A1", stepId: "S-1", do: "Measure", caution: "", makersGuide: "", subject: "array 1",
  expectation: { kind: "number", choices: [], shown: "4 ±1", wanted: { by: "range", least: 3, most: 5 } },
  unit: "V", required: true, sign: "one", holdPoint: false, minutes: 5, planCell: null, slot: null,
};
const plan = (...steps: JobStep[]) => ({ sections: [{ title: "S", visit: "", steps, columns: [] }] }) satisfies Pick<ExpandedJob, "sections">;
const record: StepRecord = stepRecord({
  step: "Measure", kind: "number", expected: "4 ±1", plannedUnit: "V", wanted: { by: "range", least: 3, most: 5 }, typed: { found: 5, by: "AB" },
});
const sentences = (steps: readonly StepRecord[], ...now: JobStep[]): string[] => outdatedItems(jobRecords({ steps }), plan(...now)).map(({ sentence }) => sentence);

describe("a tab that is not the plan's as it is now", () => {
  test("is one where the plan makes a hold point of a step, or of a hold point a step", () => {
    const held = { ...planned, holdPoint: true };
    const sentence = "No. 1 S-1 asks for other names than the plan, or is no longer asked for as there. Build the tab again.";
    expect(sentences([record], held)).toEqual([sentence]);
    expect(sentences([{ ...record, holdPoint: true }], planned)).toEqual([sentence]);
    expect(judgedByPlan(jobRecords({ steps: [record] }), plan(held)).steps[0]!.holdPoint).toBe(true);
  });

  test("is none where every step says what the plan says", () => {
    expect(sentences([record], planned)).toEqual([]);
    // Other programs store 15 digits.
    expect(sentences([{ ...record, wanted: { by: "range", least: 3 + 1e-15, most: 5 } }], planned)).toEqual([]);
  });

  test.each<[string, Partial<JobStep>]>([
    ["expects something else than the plan", { expectation: { ...planned.expectation, shown: "6 ±1" } }],
    ["is compared with something else than the plan says", { expectation: { ...planned.expectation, wanted: { by: "range", least: 3, most: 6 } } }],
    ["is compared with something else than the plan says", { expectation: { ...planned.expectation, wanted: null } }],
    ["is compared with something else than the plan says", { expectation: { ...planned.expectation, kind: "size" } }],
    ["is compared with something else than the plan says", { unit: "mV" }],
    ["asks for other names than the plan, or is no longer asked for as there", { sign: "two" }],
    ["asks for other names than the plan, or is no longer asked for as there", { required: false }],
    ["says something else than the plan", { caution: "Live parts." }],
    ["says something else than the plan", { subject: "array 2" }],
    ["says something else than the plan", { stepId: "S-1b" }],
    ["is no step of the plan any more", { key: "J1/S-1/A9" }],
  ])("names a step that %s", (what, more) => {
    expect(sentences([record], { ...planned, ...more })[0]).toBe(`No. 1 S-1 ${what}. Build the tab again.`);
  });

  test("names a step whose text or address the plan has changed, even where what is shown has stayed", () => {
    const compared = (tab: Pick<StepRecord, "kind" | "wanted">, now: StepRecord["wanted"]): string[] =>
      sentences([{ ...record, ...tab }], { ...planned, expectation: { ...planned.expectation, kind: tab.kind, wanted: now } });
    const changed = ["No. 1 S-1 is compared with something else than the plan says. Build the tab again."];
    expect(compared({ kind: "text", wanted: { by: "text", text: "N-1" } }, { by: "text", text: "N-1" })).toEqual([]);
    expect(compared({ kind: "text", wanted: { by: "text", text: "N-1" } }, { by: "text", text: "N-2" })).toEqual(changed);
    const address = (last: string) => ({ by: "address", canonical: `10.20.0.${last}`, full: `10.20.0.${last}` }) as const;
    expect(compared({ kind: "address", wanted: address("9") }, address("9"))).toEqual([]);
    expect(compared({ kind: "address", wanted: address("9") }, address("8"))).toEqual(changed);
  });

  test("names a step that the plan has and the tab has not, unless its row was deleted, which is told by its number", () => {
    const added = { ...planned, key: "J1/S-2/A1", stepId: "S-2" };
    expect(sentences([record], planned, added)).toEqual(["The plan has step S-2 for array 1, the tab has not. Build the tab again."]);
    expect(sentences([{ ...record, no: "2" }], planned, added)).toEqual([]);
  });
});

describe("records judged by the plan", () => {
  test("are as expected by what it expects now, whatever the tab says", () => {
    const results = (...now: JobStep[]) => judgedByPlan(jobRecords({ steps: [record] }), plan(...now)).steps.map(({ result, settled }) => [result, settled]);
    expect(results(planned)).toEqual([["As expected", true]]);
    expect(results({ ...planned, expectation: { ...planned.expectation, wanted: { by: "range", least: 6, most: 7 } } })).toEqual([["Differs", false]]);
    expect(results({ ...planned, sign: "two" })).toEqual([["Needs a second name", false]]);
    // A step that the plan does not have stays as the tab has it.
    expect(results()).toEqual([[null, false]]);
  });
});
