import { showCell } from "../../../sheet";
import { invalid, quote } from "../../text";
import { isFilled } from "./entries";
import { recordFingerprint, snagFingerprint } from "./fingerprint";
import { foundFingerprint, type FoundText } from "./found-text";
import type { JobRecords } from "./job-records";
import { snagFields, snagLabels, snagText, type Snag } from "./snag";
import { stepFields, stepLabels, stepText, type StepRecord } from "./step-record";

/** Who changed a record since the tab was handed out: only the returned file, or both sides. */
export type ReturnedChange = "theirs" | "both";

/** One record of a returned tab that differs from ours. */
export interface ReturnedItem {
  /** Names the item in the choice: the key of the step, with # and a number from its second row on, or `snag` or `text` and where it stands in the returned tab. */
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
export function compareReturned(ours: JobRecords, theirs: JobRecords): ReturnedTab {
  refuseForeign(ours, theirs);
  const steps = compareSteps(ours, theirs);
  const isOlder = theirs.build < ours.build;
  const age = `The returned tab is build ${theirs.build}, ours is ${ours.build}: records under an expectation that has changed ask to be seen again.`;
  return {
    items: [...steps.items, ...compareSnags(ours, theirs), ...compareTexts(ours, theirs)],
    onlyOurs: steps.onlyOurs,
    remarks: [...(isOlder ? [age] : []), ...theirs.remarks],
  };
}

function refuseForeign(ours: JobRecords, theirs: JobRecords): void {
  if (ours.jobId !== theirs.jobId || ours.born !== theirs.born) {
    const sentence = `The returned tab ${quote(theirs.title)} is not of this plan's job ${quote(ours.title)}: it was first built from another plan.`;
    throw invalid("file", theirs.title, sentence);
  }
  if (theirs.build > ours.build) {
    const sentence = `The returned tab is build ${theirs.build}, this plan has build ${ours.build}. Bring it back to the newer plan.`;
    throw invalid("file", theirs.build, sentence);
  }
}

function compareSteps(ours: JobRecords, theirs: JobRecords): Pick<ReturnedTab, "items" | "onlyOurs"> {
  const items: ReturnedItem[] = [];
  let onlyOurs = 0;
  const mine = new Map([...ours.orphans, ...ours.steps].map((record) => [record.key, record]));
  const known = new Set([...ours.orphans, ...ours.steps].map(recordFingerprint));
  for (const [id, record] of byRow(theirs)) {
    const own = mine.get(record.key);
    // A copied row that says nothing, or what another one says already, brings nothing.
    if (id !== record.key && (!isFilled(record.typed) || known.has(recordFingerprint(record)))) continue;
    known.add(recordFingerprint(record));
    const before = record.carried;
    const theirNow = recordFingerprint(record);
    const ourNow = own === undefined ? "" : recordFingerprint(own);
    if (theirNow === ourNow) continue;
    if (theirNow === before) {
      if (ourNow !== before) onlyOurs += 1;
      continue;
    }
    items.push({
      id,
      change: ourNow === before || ourNow === "" ? "theirs" : "both",
      label: labelOf(record),
      ours: own === undefined ? "" : describeStep(own),
      theirs: describeStep(record),
    });
  }
  return { items, onlyOurs };
}

/** Names every record of a returned tab row by row: a step whose row was copied stands there twice. */
function byRow({ steps, orphans }: JobRecords): [id: string, record: StepRecord][] {
  const counts = new Map<string, number>();
  return [...steps, ...orphans].map((record) => {
    const count = (counts.get(record.key) ?? 0) + 1;
    counts.set(record.key, count);
    return [count === 1 ? record.key : `${record.key} #${count}`, record];
  });
}

/** Lists what was typed beside, between or over the cells of a returned tab, and into the texts that its build has found. */
function compareTexts(ours: JobRecords, theirs: JobRecords): ReturnedItem[] {
  const known = new Set(ours.elsewhere.flatMap((text) => [text.carried, foundFingerprint(text)]));
  return theirs.elsewhere.flatMap((text, index): ReturnedItem[] => {
    const now = foundFingerprint(text);
    if (text.typed.text === null || now === text.carried || known.has(now)) return [];
    return [{ id: textId(index), change: "theirs", label: `Text at ${showCell(text.typed.place)}`, ours: "", theirs: showCell(text.typed.text) }];
  });
}

function textId(index: number): string {
  return `text ${index}`;
}

function compareSnags(ours: JobRecords, theirs: JobRecords): ReturnedItem[] {
  return theirs.snags.flatMap((snag, index): ReturnedItem[] => {
    const now = snagFingerprint(snag);
    if (now === snag.carried || ours.snags.some((one) => snagFingerprint(one) === now)) return [];
    const own = counterpart(ours, snag);
    const isUntouched = own === undefined || isAsHandedOut(own, snag);
    return [{
      id: snagId(index),
      change: isUntouched ? "theirs" : "both",
      label: `Snag ${snag.stepId}`.trim(),
      ours: own === undefined ? "" : describeSnag(own),
      theirs: describeSnag(snag),
    }];
  });
}

/** Names a snag in the choice by where it stands in the returned tab: snags have no key of their own. */
function snagId(index: number): string {
  return `snag ${index}`;
}

/**
 * Puts the accepted records of a returned tab into ours.
 *
 * A record of ours that is replaced stays, as does one of theirs whose step is not here any more or is filled twice: the next build lists them
 * under "Kept from earlier builds". A snag that both have changed is there twice afterwards.
 */
export function acceptReturned<Ours extends JobRecords>(ours: Ours, theirs: JobRecords, accepted: ReadonlySet<string>): Ours {
  const known = new Set(ours.steps.map(({ key }) => key));
  const taken = new Map<string, StepRecord>();
  const rest: StepRecord[] = [];
  for (const [id, record] of byRow(theirs)) {
    if (!accepted.has(id)) continue;
    if (known.has(record.key) && !taken.has(record.key)) taken.set(record.key, record);
    else rest.push(record);
  }
  const replaced = ours.steps.filter(({ key, typed }) => taken.has(key) && isFilled(typed));
  const snags = [...ours.snags];
  for (const [index, snag] of theirs.snags.entries()) {
    if (!accepted.has(snagId(index))) continue;
    const own = counterpart(ours, snag);
    // Ours gives way where nobody has touched it, unless a copy of the row still says there what ours does.
    const place = own === undefined || !isAsHandedOut(own, snag) || theirs.snags.some((one) => snagFingerprint(one) === snagFingerprint(own)) ? -1 : snags.indexOf(own);
    if (own === undefined || place < 0) snags.push(snag);
    else snags[place] = { ...snag, carried: own.carried };
  }
  const texts = theirs.elsewhere.filter((_, index) => accepted.has(textId(index)));
  return {
    ...ours,
    steps: ours.steps.map((own) => mergeStep(own, taken.get(own.key))),
    orphans: [...ours.orphans, ...replaced, ...rest],
    snags,
    elsewhere: [...ours.elsewhere, ...texts.map((text): FoundText => ({ ...text, carried: "" }))],
  };
}

/** Lists the accepted items of a returned tab that do not stand in a tab, neither at their step nor in a block; none where all was written. */
export function notStanding(tab: JobRecords, theirs: JobRecords, accepted: ReadonlySet<string>): string[] {
  // What a changed expectation has touched is known by the fingerprint of what was carried.
  const there = new Set([...tab.steps, ...tab.orphans].flatMap((record) => [record.carried, recordFingerprint(record)]));
  for (const snag of tab.snags) there.add(snag.carried).add(snagFingerprint(snag));
  for (const text of tab.elsewhere) there.add(text.carried).add(foundFingerprint(text));
  const brought: (readonly [id: string, fingerprint: string])[] = [
    ...byRow(theirs).map(([id, record]) => [id, recordFingerprint(record)] as const),
    ...theirs.snags.map((snag, index) => [snagId(index), snagFingerprint(snag)] as const),
    ...theirs.elsewhere.map((text, index) => [textId(index), foundFingerprint(text)] as const),
  ];
  // A record that they emptied leaves nothing to be seen.
  return brought.flatMap(([id, fingerprint]) => (accepted.has(id) && fingerprint !== "" && !there.has(fingerprint) ? [id] : []));
}

function mergeStep(own: StepRecord, taken: StepRecord | undefined): StepRecord {
  if (taken === undefined) return own;
  return { ...own, typed: taken.typed, expected: taken.expected, was: taken.was, plannedUnit: taken.plannedUnit };
}

/** Tells whether nobody has changed a snag of ours since the tab was handed out. */
function isAsHandedOut(own: Snag, returned: Snag): boolean {
  const now = snagFingerprint(own);
  return now === own.carried || now === returned.carried;
}

/** Finds the snag of ours that a returned one was before it was edited. */
function counterpart(ours: JobRecords, snag: Snag): Snag | undefined {
  return snag.carried === "" ? undefined : ours.snags.find((own) => own.carried === snag.carried || snagFingerprint(own) === snag.carried);
}

function labelOf({ no, stepId, subject }: StepRecord): string {
  return [no === "" ? "" : `No. ${no}`, stepId, subject].filter((part) => part !== "").join(" ");
}

function describeStep({ typed, kind }: StepRecord): string {
  return stepFields
    .filter((field) => typed[field] !== null)
    .map((field) => `${stepLabels[field]}: ${stepText(field, typed[field], kind)}`)
    .join(", ");
}

function describeSnag({ typed }: Snag): string {
  return snagFields
    .filter((field) => field !== "about" && typed[field] !== null)
    .map((field) => `${snagLabels[field]}: ${snagText(field, typed[field])}`)
    .join(", ");
}
