import { canonicalText, digestOf } from "../../text";
import { missingNumbers, results, snagEndOf, snagEnds, snagFields, snagText, stepText, type JobRecords, type Snag, type StepRecord } from "../record";

/** A row under the seal: where it stands, what it is called, and its digest now. */
export interface SealedRow {
  readonly row: number;
  readonly label: string;
  readonly digest: string;
}

/** The digests of a tab as it stands, and the code made of them. */
export interface Seal {
  readonly rows: readonly SealedRow[];
  /** 20 base32 characters in fours. */
  readonly code: string;
}

const digestLength = 32;
const codeLength = 20;

/**
 * Computes the seal of a tab: a digest a row, and a code over the header, all rows sorted by key, the snags and the orphans.
 *
 * A row's digest covers key, expectation, found, unit, result, by, witness, done, note and waiver, each as a text that other spreadsheet
 * programs leave alone, so that saving elsewhere and sorting rows do not break it. SHA-256, of which the code shows 100 bits.
 */
export function sealOf(records: JobRecords): Seal {
  const steps = records.steps.map((record) => ({ row: record.row, label: labelOf(record), digest: stepDigest(record, waiverOf(records, record)) }));
  const snags = records.snags.map((snag) => ({ row: snag.row, label: `snag in row ${snag.row + 1}`, digest: snagDigest(snag) }));
  const orphans = records.orphans.map((record) => ({ row: record.row, label: `kept record in row ${record.row + 1}`, digest: stepDigest(record, "kept") }));
  const header = [records.jobId, String(records.build), records.born, records.title, String(records.steps.length)];
  const sorted = (rows: readonly SealedRow[]): string[] => rows.map(({ digest }) => digest).sort();
  const byKey = records.steps.map(({ key }, index) => `${key} ${steps[index]!.digest}`).sort();
  const code = digestOf([...header, "steps", ...byKey, "snags", ...sorted(snags), "kept", ...sorted(orphans)], codeLength);
  return { rows: [...steps, ...snags, ...orphans], code: code.match(/.{4}/g)!.join("-") };
}

function stepDigest({ key, expected, typed, plannedUnit, result, kind }: StepRecord, waiver: string): string {
  const { found, unit, by, witness, done, note } = typed;
  const texts = [
    key,
    expected,
    stepText("found", found, kind),
    stepText("unit", unit ?? plannedUnit, kind),
    result ?? "",
    stepText("by", by, kind),
    stepText("witness", witness, kind),
    stepText("done", done, kind),
    stepText("note", note, kind),
    waiver,
  ];
  return digestOf(texts.map((text) => canonicalText(text)), digestLength);
}

function snagDigest({ key, typed }: Snag): string {
  return digestOf([key, ...snagFields.map((field) => snagText(field, typed[field]))], digestLength);
}

/** Says who accepted what differs, and why, where a snag did. */
function waiverOf({ snags }: JobRecords, { key, result }: StepRecord): string {
  if (result !== results.waived) return "";
  const accepted = snags.filter((snag) => snag.key === key && snagEndOf(snag) === snagEnds.accepted).at(-1);
  return accepted === undefined ? "" : `${canonicalText(accepted.typed.by)}: ${canonicalText(accepted.typed.note)}`;
}

function labelOf({ no, stepId, subject }: StepRecord): string {
  return `No. ${no} ${stepId} ${subject}`.trim();
}

/** A row that is not what it was, in words, and where to look. */
export interface ChangedRow {
  readonly row: number;
  readonly label: string;
}

/** What checking a seal has found. */
export interface SealCheck {
  /** Code that stands in the tab; "" where it was never sealed. */
  readonly code: string;
  readonly reopened: boolean;
  readonly holds: boolean;
  readonly changed: readonly ChangedRow[];
}

/** Named where the code does not fit although every row that is there does. */
const somethingElse: ChangedRow = { row: 0, label: "the head of the tab, its code, or a row that is gone" };

/** Holds a tab against its last seal and names the rows that changed, are new or are missing. */
export function checkSeal(records: JobRecords): SealCheck {
  const last = records.seals.at(-1);
  const code = canonicalText(last?.typed.code);
  if (last === undefined || code === "") return { code: "", reopened: false, holds: false, changed: [] };
  const now = sealOf(records);
  const changed = [...changedRows(records, now), ...missingRows(records, last.stepCount)];
  const holds = now.code === code && changed.length === 0;
  return { code, reopened: last.typed.reopened !== null, holds, changed: holds || changed.length > 0 ? changed : [somethingElse] };
}

/** Lists the rows whose digest is not the one that was written beside them. */
function changedRows({ steps, snags, orphans }: JobRecords, now: Seal): ChangedRow[] {
  const written = new Map([...steps, ...snags, ...orphans].map(({ row, digest }) => [row, digest]));
  return now.rows.flatMap(({ row, label, digest }) => {
    const before = written.get(row)!;
    return before === digest ? [] : [{ row, label: before === "" ? `${label} is new` : label }];
  });
}

/** Lists the numbers of steps that were there when the tab was sealed. */
function missingRows({ steps, headerRow }: JobRecords, stepCount: number | null): ChangedRow[] {
  const most = stepCount ?? new Set(steps.map(({ no }) => Number(no))).size;
  return missingNumbers(steps, most).map((no) => ({ row: headerRow, label: `No. ${no} is missing` }));
}
