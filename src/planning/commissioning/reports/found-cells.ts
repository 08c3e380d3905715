import { foldName } from "../../text";
import type { Scalar } from "../../../sheet";
import type { PlanCell, PlanModel } from "../../plan/model";
import { driveLabel } from "../../plan/model";
import type { PlanRow } from "../../plan/read";
import type { ExpandedJob, JobStep } from "../job";
import { isText, results, snagEndOf, type JobRecords, type StepRecord } from "../record";

/** What was found of one cell of the plan, by a step that expects what stands there and nothing else. */
export interface FoundCell {
  readonly cell: PlanCell;
  readonly step: JobStep;
  readonly record: StepRecord;
  /** What was seen last; null where nothing was. */
  readonly seen: Scalar;
}

/** Lists what a tab says of cells of the plan, in the order of its steps. */
export function foundCells(tab: JobRecords, { sections }: Pick<ExpandedJob, "sections">): FoundCell[] {
  const steps = new Map(sections.flatMap((section) => section.steps.map((step) => [step.key, step] as const)));
  return tab.steps.flatMap((record): FoundCell[] => {
    const step = steps.get(record.key);
    const cell = step?.planCell ?? null;
    return step === undefined || cell === null ? [] : [{ cell, step, record, seen: seenLast(tab, record) }];
  });
}

/** Finds what was seen last for a step: the last retest that ended its snag, else the first thing found; null where nothing was, or a word stands in its place. */
export function seenLast({ snags }: Pick<JobRecords, "snags">, { key, typed: { found } }: StepRecord): Scalar {
  if (found === null || isText(found, results.waived) || isText(found, results.notApplicable)) return null;
  const retest = snags.filter((snag) => snag.key === key && snag.typed.foundAgain !== null && snagEndOf(snag) !== null).at(-1);
  return retest?.typed.foundAgain ?? found;
}

/** Tells whether what was found for a step is taken for what is there: as expected, or waived by name. */
export function isAccepted({ result }: StepRecord): boolean {
  return result === results.asExpected || result === results.waived;
}

/** A bay of an array, what the plan has there, and the record of the serial number that was read in it. */
export interface FoundDrive {
  readonly array: PlanRow<"arrays">;
  readonly shelf: string;
  readonly bay: number;
  /** Null where the plan has no row for it. */
  readonly row: PlanRow<"drives"> | null;
  /** The last one in which something was seen; null where there is none. */
  readonly record: StepRecord | null;
  readonly seen: Scalar;
}

/** Lists the bays of some arrays with the serial numbers that a tab has of them, known by the bay that their step is for. */
export function foundDrives(tab: JobRecords, model: PlanModel, arrays: readonly PlanRow<"arrays">[]): FoundDrive[] {
  const serials = new Map(
    tab.steps.flatMap((record) => {
      const seen = record.kind === "serial" ? seenLast(tab, record) : null;
      return seen === null ? [] : [[foldName(record.subject), { record, seen }] as const];
    }),
  );
  return arrays.flatMap((array) =>
    model.drives.expectedIn(array).map(({ shelf, bay, row }): FoundDrive => {
      const found = serials.get(foldName(driveLabel({ array: array.array, shelf, bay })));
      return { array, shelf, bay, row, record: found?.record ?? null, seen: found?.seen ?? null };
    }),
  );
}
