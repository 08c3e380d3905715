import { canonicalText, digestOf } from "../../text";
import { snagColumnKeys } from "../tab";
import type { SnagRecord, StepRecord, TabReading } from "../record";

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

/**
 * Computes the seal of a tab: a digest a row, and a code over the header, all rows sorted by key, the snags and the kept block.
 *
 * A row's digest covers key, expectation, found, unit, result, by, second, done, note and waiver, each as a text that other spreadsheet
 * programs leave alone, so that saving elsewhere and sorting rows do not break it. SHA-256, of which the code shows 100 bits.
 */
export function sealOf(tab: TabReading): Seal {
  const steps = tab.steps.map((record) => ({ row: record.row, label: labelOf(record), digest: stepDigest(record, waiverOf(tab, record)) }));
  const snags = tab.snags.map((snag) => ({ row: snag.row, label: `snag in row ${snag.row + 1}`, digest: snagDigest(snag) }));
  const kept = tab.kept.map((record) => ({ row: record.row, label: `kept record in row ${record.row + 1}`, digest: stepDigest(record, "kept") }));
  const header = [tab.jobId, String(tab.build), tab.born, tab.title, String(tab.steps.length)];
  const sorted = (rows: readonly SealedRow[]): string[] => rows.map(({ digest }) => digest).sort();
  const byKey = tab.steps.map(({ key }, index) => `${key} ${steps[index]!.digest}`).sort();
  const code = digestOf([...header, "steps", ...byKey, "snags", ...sorted(snags), "kept", ...sorted(kept)], 20);
  return { rows: [...steps, ...snags, ...kept], code: code.match(/.{4}/g)!.join("-") };
}

function stepDigest({ key, expected, typed, plannedUnit, result, kind }: StepRecord, waiver: string): string {
  const { found, unit, by, second, done, note } = typed;
  const texts = [key, expected, canonicalText(found, kind === "date"), canonicalText(unit ?? plannedUnit), result, canonicalText(by), canonicalText(second), canonicalText(done, true), canonicalText(note), waiver];
  return digestOf(texts.map((text) => canonicalText(text)), digestLength);
}

function snagDigest({ key, typed }: SnagRecord): string {
  return digestOf([key, ...snagColumnKeys.map((column) => canonicalText(typed[column], column === "expected"))], digestLength);
}

/** Says who accepted what differs, and why, where a snag did. */
function waiverOf({ snags }: TabReading, { key, result }: StepRecord): string {
  if (result !== "Waived") return "";
  const accepted = snags.filter((snag) => snag.key === key && snag.typed.result === "Accepted").at(-1);
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

/** Holds a tab against its last seal and names the rows that changed, are new or are missing. */
export function checkSeal(tab: TabReading): SealCheck {
  const last = tab.seals.at(-1);
  const code = canonicalText(last?.typed.step);
  if (last === undefined || code === "") return { code: "", reopened: false, holds: false, changed: [] };
  const now = sealOf(tab);
  const sealed = new Map([...tab.steps, ...tab.snags, ...tab.kept].map(({ row, digest }) => [row, digest]));
  const changed = now.rows.flatMap(({ row, label, digest }) => {
    const before = sealed.get(row)!;
    return before === digest ? [] : [{ row, label: before === "" ? `${label} is new` : label }];
  });
  const numbers = new Set(tab.steps.map(({ no }) => Number(no)));
  const count = Number(/^\d+/.exec(last.digest)?.[0] ?? numbers.size);
  const missing = Array.from({ length: count }, (_, index) => index + 1).filter((no) => !numbers.has(no)).map((no) => ({ row: tab.places.headerRow, label: `No. ${no} is missing` }));
  const named = [...changed, ...missing];
  const holds = now.code === code && named.length === 0;
  return { code, reopened: last.typed.expected !== null, holds, changed: holds || named.length > 0 ? named : [{ row: 0, label: "the head of the tab, its code, or a row that is gone" }] };
}
