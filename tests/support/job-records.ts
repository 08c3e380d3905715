import { createHash } from "node:crypto";
import type { FoundText, JobRecords, SealLine, Snag, StepRecord } from "../../src/planning/commissioning/record";

/** Fields of a record, of which those that people type may be given in part. */
type Some<Made extends { readonly typed: object }> = { readonly [Field in keyof Made]?: Field extends "typed" ? Partial<Made["typed"]> : Made[Field] };

const nothing: StepRecord["typed"] = { found: null, unit: null, recheckedBy: null, by: null, witness: null, done: null, note: null };

/** Makes the record of a required tick that one name signs, of which nothing is done yet. */
export function stepRecord({ typed = {}, ...more }: Some<StepRecord> = {}): StepRecord {
  return {
    key: "J1/S-1/A1", slot: null, no: "1", stepId: "S-1", step: "Do it", subject: "array 1", expected: "Done", plannedUnit: "", expectedBefore: "",
    result: null, required: true, sign: "one", holdPoint: false, kind: "tick", wanted: null, errors: [], seenUnit: "",
    settled: false, minutes: 5, carried: "", row: 10,
    ...more,
    typed: { ...nothing, ...typed },
  };
}

/** Makes a snag about no step, of which nothing is filled but what was found. */
export function snagOf({ typed = {}, ...more }: Some<Snag> = {}): Snag {
  return {
    id: "", key: "", stepId: "", errors: [], carried: "", row: 20,
    ...more,
    typed: { about: null, foundWrong: "Scratch", mender: null, byWhen: null, foundAgain: null, closed: null, by: null, note: null, ...typed },
  };
}

/** Makes a text that stood beside a row of build 1. */
export function foundText(typed: Partial<FoundText["typed"]> = {}): FoundText {
  return { carried: "", row: 25, typed: { from: "Build 1", text: "Mind the step", place: "Column P of row 4 (P4)", ...typed } };
}

/** Makes a line of the seals that was not reopened. */
export function sealLine({ typed = {}, ...more }: Some<SealLine> = {}): SealLine {
  return { row: 30, ...more, typed: { sealed: "2026-03-09", code: "CODE", by: "AB", reopened: null, reopenedBy: null, reason: null, ...typed } };
}

/** Makes the records of a job of build 1 that has nothing in it. */
export function jobRecords(more: Partial<JobRecords> = {}): JobRecords {
  return {
    jobId: "J1", title: "North hall", build: 1, born: "2026-03-02T09:15:00.000Z",
    steps: [], snags: [], usedSnagIds: 0, orphans: [], seals: [], elsewhere: [], headerRow: 1, remarks: [],
    ...more,
  };
}

/** Digests texts by the letter of FIPS 180-4 and RFC 4648, each behind its length: SHA-256 of the host, base32 by hand. */
export function digestByHand(texts: readonly string[], characters: number): string {
  const bits = [...createHash("sha256").update(texts.map((text) => `${text.length}:${text}`).join("\n")).digest()].map((byte) => byte.toString(2).padStart(8, "0")).join("");
  return (bits.match(/.{5}/g) ?? []).map((five) => "ABCDEFGHIJKLMNOPQRSTUVWXYZ234567"[parseInt(five, 2)]).join("").slice(0, characters);
}
