import { results, type Result } from "./result";
import type { StepRecord } from "./step-record";

/** A row of a tab as people count them: one step, or the steps of a grid that stand side by side. */
export interface StepRow {
  readonly row: number;
  readonly no: string;
  readonly stepId: string;
  /** What it is for: one subject, or those that stand side by side in it. */
  readonly subject: string;
  readonly records: readonly StepRecord[];
  /** The worst of its results; "" where nothing is wrong and something is still to be done. */
  readonly result: Result | "";
  readonly settled: boolean;
  readonly required: boolean;
  readonly minutes: number;
}

/** What the hidden cell beside a slot says of each result that a person must look at, the worst first; "yes" of what is as expected. */
export const slotStates = [
  ["no", results.differs],
  ["eye", results.compareByEye],
  [results.waived, results.waived],
  [results.notApplicable, results.notApplicable],
] as const satisfies readonly (readonly [string, Result])[];

/** Gathers records by the row in which they stand, in their order. */
export function rowsOfSteps(steps: readonly StepRecord[]): StepRow[] {
  const rows: StepRecord[][] = [];
  for (const step of steps) {
    const above = rows.at(-1);
    if (step.slot !== null && above?.[0]?.slot?.rowKey === step.slot.rowKey && above[0].row === step.row) above.push(step);
    else rows.push([step]);
  }
  return rows.map((records) => ({
    row: records[0]!.row,
    no: records[0]!.no,
    stepId: records[0]!.stepId,
    subject: [...new Set(records.map(({ subject }) => subject))].join(", "),
    records,
    result: worstOf(records)?.result ?? "",
    settled: records.every(({ settled }) => settled),
    required: records.some(({ required }) => required),
    minutes: records.reduce((sum, { minutes }) => sum + minutes, 0),
  }));
}

/** Says what Result shows of a row: the worst of its results, and in a grid of several columns the step or subject in whose column it stands. */
export function rowResultOf({ records, result }: StepRow): string {
  const worst = worstOf(records);
  if (records.length === 1 || worst === undefined || result === "" || result === results.asExpected) return result;
  if (worst.slot !== null && worst.slot.head !== "") return `${result}: ${worst.slot.head}`;
  // By the key where it does not hold the step id of the row, as the formula says what it was built with when that was typed over.
  return `${result}: ${worst.key.includes(`/${worst.stepId}/`) ? worst.stepId : (worst.key.split("/")[1] ?? worst.stepId)}`;
}

/** Finds the record of a row of which Result speaks; none where one is still to be done and none is worse. */
function worstOf(records: readonly StepRecord[]): StepRecord | undefined {
  if (records.length === 1) return records[0];
  const bad = slotStates.flatMap(([, result]) => records.find((record) => record.result === result) ?? []);
  return bad[0] ?? (records.some(({ result }) => result === null) ? undefined : records[0]);
}
