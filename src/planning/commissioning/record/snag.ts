import { showCell, type Scalar } from "../../../sheet";
import { canonicalText } from "../../text";
import { fieldsOf, isText, withoutSpaces, type Entries } from "./entries";

/** What people type about a snag, each field with its label. Fingerprints and digests are made in this order. */
export const snagLabels = {
  about: "Row",
  foundWrong: "What was found",
  mender: "Who puts it right",
  byWhen: "By when",
  foundAgain: "Found again",
  closed: "Closed",
  by: "By",
  note: "Note",
} as const;

export type SnagField = keyof typeof snagLabels;

export const snagFields = fieldsOf(snagLabels);

/** Words that end a snag: it was mended, or somebody takes it as it is. */
export const snagEnds = { closed: "Closed", accepted: "Accepted" } as const;

export type SnagEnd = (typeof snagEnds)[keyof typeof snagEnds];

/** Something found wrong that must be put right, as it was read from a tab. */
export interface Snag {
  /** Names it for good, such as S-3; "" where its row has none, as one that people added. */
  readonly id: string;
  /** Key of the step it is about; "" where it is about none. */
  readonly key: string;
  readonly stepId: string;
  readonly typed: Entries<SnagField>;
  /** Fields whose cell shows an error; its text stands in `typed`. */
  readonly errors: readonly SnagField[];
  /** Fingerprint of the snag that the build put here; "" where it put none. */
  readonly carried: string;
  /** Row of the sheet, from 0. */
  readonly row: number;
}

/** Tells how a snag was ended, by name or not; null where it was not. */
export function snagEndOf({ typed }: Snag): SnagEnd | null {
  return Object.values(snagEnds).find((end) => isText(typed.closed, end)) ?? null;
}

/** Tells whether a snag is closed or accepted, by name. */
export function isSnagClosed(snag: Snag): boolean {
  return snag.errors.length === 0 && snagEndOf(snag) !== null && withoutSpaces(snag.typed.by) !== "";
}

/** Writes what stands in a field as one text; a day as an ISO date. */
export function snagText(field: SnagField, value: Scalar): string {
  return canonicalText(value, field === "byWhen");
}

/** Writes the id of a number. */
export function snagId(number: number): string {
  return `S-${number}`;
}

/** Reads the number of an id; null where a text is none. */
export function snagNumber(id: string): number | null {
  const digits = /^S-([1-9]\d{0,8})$/.exec(id)?.[1];
  return digits === undefined ? null : Number(digits);
}

/** Names a snag in a sentence, by its id or else by its row. */
export function snagName({ id, row }: Pick<Snag, "id" | "row">): string {
  return id === "" ? `the snag in row ${row + 1}` : `snag ${id}`;
}

/**
 * Gives every snag an id that no other one has, and none that was ever used before: `used` is the highest number that was.
 *
 * The first one of an id keeps it; its copies, and those without one, get new ones in their order.
 */
export function withIds(snags: readonly Snag[], used: number): { readonly snags: readonly Snag[]; readonly used: number } {
  const taken = new Set<string>();
  const isKept = snags.map(({ id }) => id !== "" && !taken.has(id) && taken.add(id).size > 0);
  let last = snags.reduce((most, { id }) => Math.max(most, snagNumber(id) ?? 0), used);
  const all = snags.map((snag, index) => (isKept[index] === true ? snag : { ...snag, id: snagId((last += 1)) }));
  return { snags: all, used: last };
}

/** What stands in place of the number of a step that is gone, so that a snag never points at another one. */
export const goneStep = "gone";

/** Says what somebody wrote in place of the number of a step; "" where the number, or what we put in its place, says which one it is. */
export function aboutText({ key, typed: { about } }: Pick<Snag, "key" | "typed">): string {
  if (typeof about === "string" && about !== goneStep) return about;
  return key === "" && about !== null && about !== goneStep ? `${showCell(about)}?` : "";
}
