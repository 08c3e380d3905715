import { showCell } from "../../../sheet";
import { invalid, quote } from "../../text";
import { isFilled } from "./entries";
import { recordFingerprint, snagFingerprint } from "./fingerprint";
import { foundFingerprint, type FoundText } from "./found-text";
import type { JobRecords } from "./job-records";
import { signed } from "./signed";
import { snagEndOf, snagFields, snagLabels, snagText, type Snag } from "./snag";
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

/** What a returned tab says of a hold point, in its record or by the end of a snag about it: signed in the lead's own copy only, so that none of it is taken. */
export type HoldPointItem = Omit<ReturnedItem, "change">;

/** What a returned tab brings. */
export interface ReturnedTab {
  readonly items: readonly ReturnedItem[];
  readonly holdPoints: readonly HoldPointItem[];
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
  const snags = compareSnags(ours, theirs);
  const isOlder = theirs.build < ours.build;
  const age = `The returned tab is build ${theirs.build}, ours is ${ours.build}: records under an expectation that has changed ask to be seen again.`;
  return {
    items: [...steps.items, ...snags.items, ...compareTexts(ours, theirs)],
    holdPoints: [...steps.holdPoints, ...snags.holdPoints],
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

/** A record of a returned tab, and how it is named in the choice: by its key, and one of a row that was copied by a number behind that. */
interface ReturnedRecord {
  readonly id: string;
  readonly record: StepRecord;
  readonly isCopy: boolean;
}

function returnedRecords({ steps, orphans }: JobRecords): ReturnedRecord[] {
  const seen = new Map<string, number>();
  return [...steps, ...orphans].map((record) => {
    const count = (seen.get(record.key) ?? 0) + 1;
    seen.set(record.key, count);
    return { id: count === 1 ? record.key : `${record.key} #${count}`, record, isCopy: count > 1 };
  });
}

/** Tells whether a record of a returned tab is that of a hold point, by what our tab says of the step, or theirs where we do not have it. */
function isHoldPoint({ key, holdPoint }: StepRecord, ours: ReadonlyMap<string, StepRecord>): boolean {
  return ours.get(key)?.holdPoint ?? holdPoint;
}

function compareSteps(ours: JobRecords, theirs: JobRecords): Pick<ReturnedTab, "items" | "holdPoints" | "onlyOurs"> {
  const items: ReturnedItem[] = [];
  const holdPoints: HoldPointItem[] = [];
  let onlyOurs = 0;
  const mine = new Map([...ours.orphans, ...ours.steps].map((record) => [record.key, record]));
  const known = new Set([...ours.orphans, ...ours.steps].map(recordFingerprint));
  for (const { id, record, isCopy } of returnedRecords(theirs)) {
    const own = isCopy ? undefined : mine.get(record.key);
    const before = record.carried;
    const theirNow = recordFingerprint(record);
    const ourNow = own === undefined ? "" : recordFingerprint(own);
    // A copied row that says nothing, or what another one says already, brings nothing.
    if (isCopy && (theirNow === "" || known.has(theirNow))) continue;
    known.add(theirNow);
    // What both say already, be it that names stand in a row of its own by now.
    if ([theirNow, recordFingerprint(signed(record, theirs.steps))].includes(ourNow)) continue;
    if (theirNow === before) {
      if (ourNow !== before && !isCopy) onlyOurs += 1;
      continue;
    }
    const item = {
      id,
      label: isCopy ? `${labelOf(record)}, copied row` : labelOf(record),
      ours: own === undefined ? "" : describeStep(own),
      theirs: describeStep(record),
    };
    if (isHoldPoint(record, mine)) holdPoints.push(item);
    else items.push({ ...item, change: ourNow === before || ourNow === "" ? "theirs" : "both" });
  }
  return { items, holdPoints, onlyOurs };
}

/** A snag of a returned tab, how it is named in the choice, and the one of ours that it was before it was edited. */
interface ReturnedSnag {
  readonly id: string;
  readonly snag: Snag;
  readonly own: Snag | undefined;
  /** True where only they went on with it. */
  readonly isTheirsAlone: boolean;
}

/** Pairs the snags of a returned tab with ours, each of ours once: a copied row is a snag of its own. */
function returnedSnags(ours: JobRecords, theirs: JobRecords): ReturnedSnag[] {
  const free = new Set(ours.snags);
  return theirs.snags.map((snag, index) => {
    // Ours is no earlier state of a row that was copied while another one still says what ours does.
    const isStillSaid = (own: Snag): boolean => theirs.snags.some((one) => one !== snag && snagFingerprint(one) === snagFingerprint(own));
    const isBefore = (own: Snag): boolean => snag.carried !== "" && (own.carried === snag.carried || snagFingerprint(own) === snag.carried) && !isStillSaid(own);
    const likely = [...free].filter(isBefore);
    const own = likely.find(({ id }) => id === snag.id) ?? likely[0];
    if (own !== undefined) free.delete(own);
    return { id: snagItem(index), snag, own, isTheirsAlone: own === undefined || [own.carried, snag.carried].includes(snagFingerprint(own)) };
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

function snagItem(index: number): string {
  return `snag ${index}`;
}

function textId(index: number): string {
  return `text ${index}`;
}

/** Tells whether a snag settles a hold point of ours: its end hands a retest or an acceptance to it. */
function settlesHoldPoint(snag: Snag, ours: JobRecords): boolean {
  return snagEndOf(snag) !== null && ours.steps.some(({ key, holdPoint }) => holdPoint && key === snag.key);
}

function compareSnags(ours: JobRecords, theirs: JobRecords): Pick<ReturnedTab, "items" | "holdPoints"> {
  const items: ReturnedItem[] = [];
  const holdPoints: HoldPointItem[] = [];
  for (const { id, snag, own, isTheirsAlone } of returnedSnags(ours, theirs)) {
    const now = snagFingerprint(snag);
    if (now === snag.carried || ours.snags.some((one) => snagFingerprint(one) === now)) continue;
    const item = {
      id,
      label: ["Snag", snag.id, snag.stepId].filter((part) => part !== "").join(" "),
      ours: own === undefined ? "" : describeSnag(own),
      theirs: describeSnag(snag),
    };
    if (settlesHoldPoint(snag, ours)) holdPoints.push(item);
    else items.push({ ...item, change: isTheirsAlone ? "theirs" : "both" });
  }
  return { items, holdPoints };
}

/**
 * Puts the accepted records of a returned tab into ours; never what would settle a hold point.
 *
 * A record of ours that is replaced stays, as does one of theirs whose step is not here any more or that stands in a copied row: the next
 * build lists them under "Kept from earlier builds". A snag of theirs keeps its id where no other one of ours has it; one that both went on
 * with stands beside ours.
 */
export function acceptReturned<Ours extends JobRecords>(ours: Ours, theirs: JobRecords, accepted: ReadonlySet<string>): Ours {
  const known = new Map(ours.steps.map((step) => [step.key, step]));
  const toSteps = new Map<string, StepRecord>();
  const rest: StepRecord[] = [];
  const mine = new Map([...ours.orphans, ...ours.steps].map((record) => [record.key, record]));
  for (const { record, isCopy } of returnedRecords(theirs).filter(({ id, record: one }) => accepted.has(id) && !isHoldPoint(one, mine))) {
    const own = known.get(record.key);
    // A copied row takes no place in which somebody has typed.
    if (own === undefined || toSteps.has(record.key) || (isCopy && isFilled(own.typed))) rest.push(record);
    else toSteps.set(record.key, record);
  }
  const signAfter = (key: string): StepRecord | undefined => toSteps.get(key) ?? known.get(key);
  const withNames = (record: StepRecord, steps: readonly StepRecord[]): StepRecord => namedApart(record, signed(record, steps), signAfter);
  const replaced = ours.steps.filter(({ key, typed }) => toSteps.has(key) && isFilled(typed));
  const changed = returnedSnags(ours, theirs).filter(({ id, snag }) => accepted.has(id) && !settlesHoldPoint(snag, ours));
  return {
    ...ours,
    steps: ours.steps.map((own) => {
      const taken = toSteps.get(own.key);
      return taken === undefined ? withNames(own, ours.steps) : mergeStep(own, withNames(taken, theirs.steps));
    }),
    orphans: [...ours.orphans, ...replaced, ...rest],
    snags: [
      ...ours.snags.map((own) => {
        const snag = changed.find((one) => one.own === own && one.isTheirsAlone)?.snag;
        return snag === undefined ? own : { ...snag, id: own.id, carried: own.carried };
      }),
      ...changed.filter(({ own, isTheirsAlone }) => own === undefined || !isTheirsAlone).map(({ snag }) => snag),
    ],
    usedSnagIds: Math.max(ours.usedSnagIds, theirs.usedSnagIds),
    elsewhere: [...ours.elsewhere, ...theirs.elsewhere.filter((_, index) => accepted.has(textId(index))).map((text): FoundText => ({ ...text, carried: "" }))],
  };
}

/** Lists the accepted items of a returned tab that do not stand in a tab, neither at their step nor in a block; none where all was written. */
export function notStanding(tab: JobRecords, theirs: JobRecords, accepted: ReadonlySet<string>): string[] {
  // What a changed expectation has touched is known by the fingerprint of what was carried.
  const there = new Set([...tab.steps, ...tab.orphans].flatMap((record) => [record.carried, recordFingerprint(record)]));
  for (const snag of tab.snags) there.add(snag.carried).add(snagFingerprint(snag));
  for (const text of tab.elsewhere) there.add(text.carried).add(foundFingerprint(text));
  const brought: (readonly [id: string, fingerprint: string])[] = [
    ...returnedRecords(theirs).map(({ id, record }) => {
      const named = recordFingerprint(signed(record, theirs.steps));
      return [id, there.has(named) ? named : recordFingerprint(record)] as const;
    }),
    ...theirs.snags.map((snag, index) => [snagItem(index), snagFingerprint(snag)] as const),
    ...theirs.elsewhere.map((text, index) => [textId(index), foundFingerprint(text)] as const),
  ];
  // A record that they emptied leaves nothing to be seen.
  return brought.flatMap(([id, fingerprint]) => (accepted.has(id) && fingerprint !== "" && !there.has(fingerprint) ? [id] : []));
}

/** Gives a record of a grid its names where the row that signs for the grid will say others: both have signed for a part of it. */
function namedApart(record: StepRecord, named: StepRecord, signAfter: (key: string) => StepRecord | undefined): StepRecord {
  const after = record.slot === null ? undefined : signAfter(record.slot.signKey)?.typed;
  const names = (["by", "witness", "done"] as const).filter((field) => named.typed[field] !== null);
  return names.every((field) => named.typed[field] === after?.[field]) ? record : named;
}

function mergeStep(own: StepRecord, taken: StepRecord): StepRecord {
  return { ...own, typed: taken.typed, expected: taken.expected, expectedBefore: taken.expectedBefore, plannedUnit: taken.plannedUnit };
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
