import { invalid, quote } from "../../text";
import { canonicalText } from "../../text";
import { isRecord, recordFingerprint, snagFingerprint } from "./fingerprint";
import { snagColumnKeys, snagColumns, tabColumns, typedColumns } from "../tab";
import type { SnagRecord, StepRecord, TabReading } from "./tab-reading";

/** Who changed a record since the tab was handed out: only the returned file, or both sides. */
export type ReturnedChange = "theirs" | "both";

/** One record of a returned tab that differs from ours. */
export interface ReturnedItem {
  /** Names the item in the choice: the key of the step, or `snag` and where it stands in the returned tab. */
  readonly id: string;
  readonly change: ReturnedChange;
  /** What it is about, such as `No. 12 INS-080 rr-array-1 A0`. */
  readonly label: string;
  readonly ours: string;
  readonly theirs: string;
}

/** What a returned tab brings. */
export interface ReturnedTab {
  readonly items: readonly ReturnedItem[];
  /** Records that only we changed since: they stay. */
  readonly onlyOurs: number;
  readonly remarks: readonly string[];
}

/**
 * Compares a returned tab with ours, row by row, against what both began with.
 *
 * A tab carries a fingerprint of every record that its build put there: a record that still has it was not changed since. Refuses the
 * tab of another job or of another plan that uses the same ids, and one of a later build than ours.
 */
export function compareReturned(ours: TabReading, theirs: TabReading): ReturnedTab {
  if (ours.jobId !== theirs.jobId || ours.born !== theirs.born) {
    throw invalid("file", theirs.title, `The returned tab ${quote(theirs.title)} is not of this plan's job ${quote(ours.title)}: it was first built from another plan.`);
  }
  if (theirs.build > ours.build) {
    throw invalid("file", theirs.build, `The returned tab is build ${theirs.build}, this plan has build ${ours.build}. Bring it back to the newer plan.`);
  }
  const items: ReturnedItem[] = [];
  let onlyOurs = 0;
  const mine = new Map([...ours.kept, ...ours.steps].map((record) => [record.key, record]));
  for (const record of [...theirs.steps, ...theirs.kept]) {
    const own = mine.get(record.key);
    const [before, theirNow, ourNow] = [record.carried, recordFingerprint(record.key, record.typed), own === undefined ? "" : recordFingerprint(own.key, own.typed)];
    if (theirNow === ourNow) continue;
    if (theirNow === before) {
      if (ourNow !== before) onlyOurs += 1;
      continue;
    }
    const change = ourNow === before || ourNow === "" ? "theirs" : "both";
    items.push({ id: record.key, change, label: labelOf(record), ours: own === undefined ? "" : describeStep(own), theirs: describeStep(record) });
  }
  for (const [index, snag] of theirs.snags.entries()) {
    const now = snagFingerprint(snag.key, snag.typed);
    if (ours.snags.some((one) => snagFingerprint(one.key, one.typed) === now) || now === snag.carried) continue;
    const own = counterpart(ours, snag);
    const isUntouched = own === undefined || snagFingerprint(own.key, own.typed) === own.carried;
    items.push({ id: `snag ${index}`, change: isUntouched ? "theirs" : "both", label: `Snag ${snag.stepId}`.trim(), ours: own === undefined ? "" : describeSnag(own), theirs: describeSnag(snag) });
  }
  const remarks = theirs.build < ours.build ? [`The returned tab is build ${theirs.build}, ours is ${ours.build}: records under an expectation that has changed ask to be seen again.`] : [];
  return { items, onlyOurs, remarks: [...remarks, ...theirs.remarks] };
}

/**
 * Puts the accepted records of a returned tab into ours.
 *
 * A record of ours that is replaced is kept, as is one of theirs whose step is not here any more: the next build lists both under "Kept
 * from earlier builds".
 */
export function acceptReturned(ours: TabReading, theirs: TabReading, accepted: ReadonlySet<string>): TabReading {
  const taken = new Map([...theirs.kept, ...theirs.steps].filter(({ key }) => accepted.has(key)).map((record) => [record.key, record]));
  const known = new Set(ours.steps.map(({ key }) => key));
  const replaced = ours.steps.filter(({ key, typed }) => taken.has(key) && isRecord(typed));
  const snags = [...ours.snags];
  for (const [index, snag] of theirs.snags.entries()) {
    if (!accepted.has(`snag ${index}`)) continue;
    const own = counterpart(ours, snag);
    if (own === undefined) snags.push(snag);
    else snags[snags.indexOf(own)] = { ...snag, carried: own.carried };
  }
  return {
    ...ours,
    steps: ours.steps.map((own) => mergeStep(own, taken.get(own.key))),
    kept: [...ours.kept, ...replaced, ...[...taken.values()].filter(({ key }) => !known.has(key))],
    snags,
  };
}

function mergeStep(own: StepRecord, taken: StepRecord | undefined): StepRecord {
  if (taken === undefined) return own;
  return { ...own, typed: taken.typed, expected: taken.expected, was: taken.was, plannedUnit: taken.plannedUnit };
}

/** Finds the snag of ours that a returned one was before it was edited. */
function counterpart(ours: TabReading, snag: SnagRecord): SnagRecord | undefined {
  return snag.carried === "" ? undefined : ours.snags.find(({ carried, key, typed }) => carried === snag.carried || snagFingerprint(key, typed) === snag.carried);
}

function labelOf({ no, stepId, subject }: StepRecord): string {
  return [no === "" ? "" : `No. ${no}`, stepId, subject].filter((part) => part !== "").join(" ");
}

function describeStep({ typed, kind }: StepRecord): string {
  return typedColumns
    .filter((column) => typed[column] !== null)
    .map((column) => `${tabColumns[column].header}: ${canonicalText(typed[column], column === "done" || (column === "found" && kind === "date"))}`)
    .join(", ");
}

function describeSnag({ typed }: SnagRecord): string {
  return snagColumnKeys
    .filter((column) => column !== "no" && typed[column] !== null)
    .map((column) => `${snagColumns[column]}: ${canonicalText(typed[column], column === "expected")}`)
    .join(", ");
}
