import { showCell } from "../../../sheet";
import type { ExpandedJob, JobStep } from "../job";
import { isFilled } from "./entries";
import { foundFingerprint, type FoundText } from "./found-text";
import { recordFingerprint, snagFingerprint } from "./fingerprint";
import type { JobRecords } from "./job-records";
import type { SealLine } from "./seal-line";
import { withIds, type Snag } from "./snag";
import { stepFields, stepLabels, type StepRecord } from "./step-record";

/** What the row of a step begins with in a new tab. */
export interface CarriedStep {
  readonly typed: StepRecord["typed"];
  /** Expectation under which the record was made, where it has changed since. */
  readonly expectedBefore: string;
  /** Fingerprint of the record as it stood in the earlier tab. */
  readonly carried: string;
}

/** Everything that people typed into earlier tabs of a job, ready to be put into the new one. */
export interface CarriedRecords {
  /** By key of the step. */
  readonly steps: ReadonlyMap<string, CarriedStep>;
  /** Records that no step of the new tab takes. */
  readonly orphans: readonly StepRecord[];
  readonly snags: readonly Snag[];
  readonly usedSnagIds: number;
  readonly seals: readonly SealLine[];
  readonly elsewhere: readonly FoundText[];
}

/** What became of the records, for the report. */
export interface CarryCounts {
  /** Records that found their step again. */
  readonly carried: number;
  /** Records without a step. */
  readonly orphaned: number;
  /** Records whose expectation has changed and that ask to be seen again. */
  readonly again: number;
}

/** Shown under Before where the earlier expectation let anything pass. */
const anything = "(anything)";

/**
 * Gives every record of earlier tabs its place in a new one: at its step by key, else among those whose step is gone.
 *
 * `current` is the tab in use, `others` are earlier ones that are still there. From those only what the tab in use has not seen is
 * taken: a record that was typed there while the tab in use was being built. It goes to its step where nobody has typed since, else
 * among the orphans. Where the expectation of a record differs from the one it was made under, that one is told in
 * `expectedBefore` and the name under "Rechecked by" goes to the texts found elsewhere; where it has come back to it, nothing needs to be
 * rechecked.
 */
export function carryRecords(
  { sections }: Pick<ExpandedJob, "sections">,
  current: JobRecords | null,
  others: readonly JobRecords[],
): { readonly records: CarriedRecords; readonly counts: CarryCounts } {
  const late = others.map((earlier) => uncarried(earlier, current));
  const { byKey, rest } = collectRecords(current, late.flatMap(({ records }) => records));
  const steps = new Map<string, CarriedStep>();
  const taken: FoundText[] = [];
  let again = 0;
  for (const step of sections.flatMap((section) => section.steps)) {
    const record = byKey.get(step.key);
    if (record === undefined) continue;
    byKey.delete(step.key);
    const carried = carryTo(step, record);
    if (carried.expectedBefore !== "" && carried.typed.recheckedBy === null) again += 1;
    if (record.typed.recheckedBy !== null && carried.typed.recheckedBy === null) taken.push(takenMark(record, current?.build ?? 0));
    steps.set(step.key, carried);
  }
  const orphans = [...byKey.values(), ...rest];
  const before = [...(current === null ? [] : [current]), ...others].reduce((most, { usedSnagIds }) => Math.max(most, usedSnagIds), 0);
  const { snags, used: usedSnagIds } = withIds([...(current?.snags ?? []), ...late.flatMap((one) => one.snags)], before);
  return {
    records: {
      steps,
      orphans,
      snags,
      usedSnagIds,
      seals: current?.seals ?? [],
      elsewhere: eachOnce([...(current?.elsewhere ?? []), ...late.flatMap((one) => one.elsewhere), ...taken]),
    },
    counts: { carried: steps.size, orphaned: orphans.length, again },
  };
}

/** Takes every text once; one that was emptied in its block is gone. */
function eachOnce(texts: readonly FoundText[]): FoundText[] {
  return [...new Map(texts.filter(({ typed }) => typed.text !== null).map((text) => [foundFingerprint(text), text])).values()];
}

/** Chooses the record that the step of each key takes; the rest are other records of such a key. */
function collectRecords(current: JobRecords | null, late: readonly StepRecord[]): { readonly byKey: Map<string, StepRecord>; readonly rest: readonly StepRecord[] } {
  const byKey = new Map<string, StepRecord>();
  const rest: StepRecord[] = [];
  const add = (record: StepRecord): void => {
    if (!isFilled(record.typed)) return;
    const there = byKey.get(record.key);
    if (there === undefined) byKey.set(record.key, record);
    else if (recordFingerprint(there) !== recordFingerprint(record)) rest.push(record);
  };
  current?.steps.forEach(add);
  current?.orphans.forEach(add);
  for (const record of late) {
    const there = current?.steps.find(({ key }) => key === record.key);
    const isUntouched = there !== undefined && byKey.get(record.key) === there && recordFingerprint(there) === there.carried;
    if (isUntouched) byKey.delete(record.key);
    add(record);
    // What was typed over there may have come from another tab still.
    if (isUntouched && !saysAll(record, there)) rest.push(there);
  }
  return { byKey, rest };
}

/** Tells whether a record says all that another one does, so that it can stand in its place. */
function saysAll({ typed }: StepRecord, other: StepRecord): boolean {
  return stepFields.every((field) => other.typed[field] === null || other.typed[field] === typed[field]);
}

/** Keeps who had seen a record again under an expectation that has changed since. */
function takenMark({ no, stepId, subject, typed, row }: StepRecord, build: number): FoundText {
  return { typed: { from: `Build ${build}`, text: showCell(typed.recheckedBy), place: `${stepLabels.recheckedBy} of No. ${no} ${stepId} ${subject}`.slice(0, 200) }, carried: "", row };
}

function carryTo(step: JobStep, record: StepRecord): CarriedStep {
  const carried = recordFingerprint(record);
  const unitChanged = record.plannedUnit !== step.unit;
  // What was seen in the unit planned then was seen in that unit.
  const isInOldUnit = record.typed.found !== null && unitChanged && record.typed.unit === null && record.plannedUnit !== "";
  const unit = isInOldUnit ? record.plannedUnit : record.typed.unit;
  const typed = { ...record.typed, unit: unit === step.unit ? null : unit };
  if (record.typed.found === null) return { typed, expectedBefore: "", carried };
  const shown = step.expectation.shown.trim();
  if (record.expected === shown && !unitChanged) return { typed, expectedBefore: record.expectedBefore, carried };
  // A record that was not seen again since an earlier change is still one under the expectation before that.
  const isPending = record.expectedBefore !== "" && record.typed.recheckedBy === null;
  const madeUnder = isPending ? record.expectedBefore : [record.expected, unitChanged ? record.plannedUnit : ""].join(" ").trim() || anything;
  const isBack = madeUnder === (shown || anything) && !unitChanged;
  return { typed: { ...typed, recheckedBy: null }, expectedBefore: isBack ? "" : madeUnder, carried };
}

/** What a tab holds that another one does not. */
export interface Uncarried {
  readonly records: readonly StepRecord[];
  readonly snags: readonly Snag[];
  readonly elsewhere: readonly FoundText[];
}

/**
 * Lists what another tab of the job holds that the tab in use has neither taken over nor holds itself.
 *
 * Of a later build that was never put in place only what people typed there counts: the rest came out of the tab in use.
 */
export function uncarried(earlier: JobRecords, current: JobRecords | null): Uncarried {
  const known = new Set<string>();
  if (current !== null && earlier.build > current.build) {
    for (const { carried } of [...earlier.steps, ...earlier.orphans, ...earlier.snags, ...earlier.elsewhere]) known.add(carried);
  }
  for (const record of [...(current?.steps ?? []), ...(current?.orphans ?? [])]) known.add(record.carried).add(recordFingerprint(record));
  for (const snag of current?.snags ?? []) known.add(snag.carried).add(snagFingerprint(snag));
  for (const text of current?.elsewhere ?? []) known.add(text.carried).add(foundFingerprint(text));
  return {
    records: [...earlier.steps, ...earlier.orphans].filter((record) => isFilled(record.typed) && !known.has(recordFingerprint(record))),
    snags: earlier.snags.filter((snag) => !known.has(snagFingerprint(snag))),
    elsewhere: earlier.elsewhere.filter((text) => text.typed.text !== null && !known.has(foundFingerprint(text))),
  };
}
