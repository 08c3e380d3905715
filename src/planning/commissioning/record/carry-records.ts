import type { ExpandedJob, JobStep } from "../job";
import { isRecord, recordFingerprint, snagFingerprint } from "./fingerprint";
import type { SealLine, SnagRecord, StepRecord, TabReading, TypedCells } from "./tab-reading";

/** What a step of the new tab begins with. */
export interface CarriedStep {
  readonly typed: TypedCells;
  /** Expectation under which the record was made, where it has changed since. */
  readonly was: string;
  readonly carried: string;
}

/** Everything that people typed into earlier tabs of a job, ready to be put into the new one. */
export interface CarriedRecords {
  readonly steps: ReadonlyMap<string, CarriedStep>;
  readonly kept: readonly StepRecord[];
  readonly snags: readonly SnagRecord[];
  readonly seals: readonly SealLine[];
}

/** What became of the records, for the report. */
export interface CarryCounts {
  /** Records that found their step again. */
  readonly carried: number;
  /** Records without a step, in the kept block. */
  readonly kept: number;
  /** Records whose expectation has changed and that ask to be seen again. */
  readonly again: number;
}

/** Shown under Was where the earlier expectation let anything pass. */
const anything = "(anything)";

/**
 * Gives every record of earlier tabs its place in a new one: at its step by key, else in the kept block.
 *
 * `current` is the tab in use, `others` are earlier ones that are still there. From those only what the tab in use has not seen is
 * taken: a record that was typed there while the tab in use was being built. It goes to its step where nobody has typed since, else
 * into the kept block. Where the expectation of a record differs from the one it was made under, that one is told in `was` and the mark
 * "seen again" is taken away; where it has come back to it, nothing needs to be seen.
 */
export function carryRecords(expanded: ExpandedJob, current: TabReading | null, others: readonly TabReading[]): { readonly records: CarriedRecords; readonly counts: CarryCounts } {
  const candidates = new Map<string, StepRecord>();
  const kept: StepRecord[] = [];
  const add = (record: StepRecord): void => {
    if (!isRecord(record.typed)) return;
    const there = candidates.get(record.key);
    if (there === undefined) candidates.set(record.key, record);
    else if (recordFingerprint(there.key, there.typed) !== recordFingerprint(record.key, record.typed)) kept.push(record);
  };
  current?.steps.forEach(add);
  current?.kept.forEach(add);

  const snags: SnagRecord[] = [...(current?.snags ?? [])];
  for (const earlier of others) {
    const late = uncarried(earlier, current);
    for (const record of late.records) {
      const there = current?.steps.find(({ key }) => key === record.key);
      const untouched = there !== undefined && candidates.get(record.key) === there && recordFingerprint(there.key, there.typed) === there.carried;
      if (untouched) candidates.delete(record.key);
      add(record);
    }
    snags.push(...late.snags);
  }

  const steps = new Map<string, CarriedStep>();
  let again = 0;
  for (const step of expanded.sections.flatMap((section) => section.steps)) {
    const record = candidates.get(step.key);
    if (record === undefined) continue;
    candidates.delete(step.key);
    const carried = placeRecord(step, record);
    if (carried.was !== "" && carried.typed.seenAgain === null) again += 1;
    steps.set(step.key, carried);
  }
  const orphans = [...candidates.values(), ...kept];
  return { records: { steps, kept: orphans, snags, seals: current?.seals ?? [] }, counts: { carried: steps.size, kept: orphans.length, again } };
}

function placeRecord(step: JobStep, record: StepRecord): CarriedStep {
  const carried = recordFingerprint(record.key, record.typed);
  const unitChanged = record.plannedUnit !== step.unit;
  // What was seen in the unit planned then was seen in that unit.
  const unit = record.typed.found !== null && unitChanged && record.typed.unit === null && record.plannedUnit !== "" ? record.plannedUnit : record.typed.unit;
  const typed = { ...record.typed, unit: unit === step.unit ? null : unit };
  if (record.typed.found === null) return { typed, was: "", carried };
  const pending = record.was !== "" && record.typed.seenAgain === null;
  const isSame = record.expected === step.expectation.shown.trim() && !unitChanged;
  if (isSame) return { typed, was: record.was, carried };
  const madeUnder = pending ? record.was : [record.expected, unitChanged ? record.plannedUnit : ""].join(" ").trim() || anything;
  const isBack = madeUnder === (step.expectation.shown.trim() || anything) && !unitChanged;
  return { typed: { ...typed, seenAgain: null }, was: isBack ? "" : madeUnder, carried };
}

/**
 * Lists what another tab of the job holds that the tab in use has neither taken over nor holds itself.
 *
 * Of a later build that was never put in place only what people typed there counts: the rest came out of the tab in use.
 */
export function uncarried(earlier: TabReading, current: TabReading | null): { readonly records: readonly StepRecord[]; readonly snags: readonly SnagRecord[] } {
  const known = new Set<string>();
  if (current !== null && earlier.build > current.build) {
    for (const { carried } of [...earlier.steps, ...earlier.kept, ...earlier.snags]) known.add(carried);
  }
  for (const { key, typed, carried } of [...(current?.steps ?? []), ...(current?.kept ?? [])]) known.add(carried).add(recordFingerprint(key, typed));
  for (const { key, typed, carried } of current?.snags ?? []) known.add(carried).add(snagFingerprint(key, typed));
  return {
    records: [...earlier.steps, ...earlier.kept].filter(({ key, typed }) => isRecord(typed) && !known.has(recordFingerprint(key, typed))),
    snags: earlier.snags.filter(({ key, typed }) => !known.has(snagFingerprint(key, typed))),
  };
}

/** Tells whether an earlier tab can go: nothing in it that was not carried, nothing of people's own on it. */
export function isSpent(earlier: TabReading, current: TabReading): boolean {
  const { records, snags } = uncarried(earlier, current);
  return records.length + snags.length + earlier.ownRows.length + earlier.ownColumns.length + earlier.attachments === 0;
}
