import type { Cell } from "../../../sheet";
import type { JobStep } from "../job";
import type { Expectation } from "../procedure";
import { recordFingerprint, type CarriedStep, type StepRecord } from "../record";
import { kindsOnTab } from "./kind-on-tab";
import { ruleText } from "./rule-cell";
import { hidden, rowOf, styled, type TabCells } from "./tab-cells";
import { orphanPrefix } from "./tab-columns";
import { stepFormulas, type RowSpan } from "./tab-formulas";

/** Where a step stands on the tab, and what surrounds it there. */
export interface StepPlace {
  /** Row of the sheet, from 0. */
  readonly row: number;
  readonly no: number;
  readonly snagRows: RowSpan;
  /** What its row says under Step: all of it, or, where that stands above, how to find it there. */
  readonly says: string;
}

/** Lays out the row of a step with what was carried to it. */
export function stepRow(step: JobStep, carried: CarriedStep | undefined, { row, no, snagRows, says }: StepPlace): Cell[] {
  const { expectation, sign, holdPoint } = step;
  const { low, high } = wantedCells(expectation);
  const typed = carried?.typed;
  const expectedBefore = carried?.expectedBefore ?? "";
  const kind = kindsOnTab[expectation.kind];
  const formulas = stepFormulas(row, expectation, sign, snagRows);
  const computed = (key: keyof typeof formulas): Cell => ({ formula: formulas[key], style: key === "result" ? "result" : "hidden" });
  return rowOf({
    no: styled(no, holdPoint ? "holdPoint" : "no"),
    stepId: styled(step.stepId, holdPoint ? "holdPointId" : "stepId"),
    step: styled(says, step.caution === "" ? "step" : "stepCaution"),
    subject: styled(step.subject, "text"),
    expected: styled(expectation.shown, "expected"),
    found: styled(typed?.found ?? null, kind.foundStyle),
    unit: styled(typed?.unit ?? step.unit, kind.hasSeenUnit ? "typedText" : "unitFixed"),
    result: computed("result"),
    expectedBefore: styled(expectedBefore, "before"),
    recheckedBy: styled(typed?.recheckedBy ?? null, expectedBefore === "" ? "notAsked" : "typedText"),
    by: styled(typed?.by ?? null, "typedText"),
    witness: styled(typed?.witness ?? null, sign === "two" ? "typedText" : "notAsked"),
    done: styled(typed?.done ?? null, "typedDate"),
    note: styled(typed?.note ?? null, "typedText"),
    key: hidden(step.key),
    rule: hidden(ruleText({ required: step.required, sign, kind: expectation.kind, holdPoint })),
    low,
    high,
    plannedUnit: hidden(step.unit),
    compares: computed("compares"),
    retest: computed("retest"),
    retestCompares: computed("retestCompares"),
    settled: computed("settled"),
    minutes: hidden(step.minutes),
    carried: hidden(carried?.carried ?? null),
    digest: { style: "hiddenText" },
  });
}

/** Lays out what a record is compared with in the two cells that the formulas look at. */
export function wantedCells({ wanted }: Expectation): Required<Pick<TabCells, "low" | "high">> {
  switch (wanted?.by) {
    case "range":
      return { low: hidden(wanted.least), high: hidden(wanted.most) };
    case "address":
      return { low: hidden(wanted.canonical), high: hidden(wanted.full) };
    case "text":
      return { low: hidden(wanted.text), high: {} };
    case undefined:
      return { low: {}, high: {} };
  }
}

/** Lays out the row of a record whose step is gone: all of it is text to be read, none of it is asked for. */
export function orphanRow(record: StepRecord): Cell[] {
  const { typed } = record;
  return rowOf({
    stepId: styled(record.stepId, "stepId"),
    step: styled(record.step, "step"),
    subject: styled(record.subject, "text"),
    expected: styled(record.expected, "expected"),
    found: styled(typed.found, "text"),
    unit: styled(typed.unit ?? record.plannedUnit, "text"),
    result: styled(record.result, "text"),
    expectedBefore: styled(record.expectedBefore, "before"),
    recheckedBy: styled(typed.recheckedBy, "text"),
    by: styled(typed.by, "text"),
    witness: styled(typed.witness, "text"),
    done: styled(typed.done, typeof typed.done === "number" ? "typedDate" : "text"),
    note: styled(typed.note, "text"),
    key: hidden(`${orphanPrefix}${record.key}`),
    rule: hidden(ruleText(record)),
    plannedUnit: hidden(record.plannedUnit),
    carried: hidden(recordFingerprint(record)),
  });
}
