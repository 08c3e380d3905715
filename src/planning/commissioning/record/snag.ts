import { showCell, type Scalar } from "../../../sheet";
import { canonicalText } from "../../text";
import { fieldsOf, isText, withoutSpaces, type Entries } from "./entries";

/** What people type about a snag, each field with its label. Fingerprints and digests are made in this order. */
export const snagLabels = {
  about: "Row",
  foundWrong: "What was found",
  mender: "Who mends",
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

/** What stands in place of the number of a step that is gone, so that a snag never points at another one. */
export const goneStep = "gone";

/** Says what somebody wrote in place of the number of a step; "" where the number, or what we put in its place, says which one it is. */
export function aboutText({ key, typed: { about } }: Pick<Snag, "key" | "typed">): string {
  if (typeof about === "string" && about !== goneStep) return about;
  return key === "" && about !== null && about !== goneStep ? `${showCell(about)}?` : "";
}
