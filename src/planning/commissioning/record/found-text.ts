import { canonicalText, digestOf } from "../../text";
import { fieldsOf, type Entries } from "./entries";

/** What is told of a text that was found where no build looks for one, each field with its label. Fingerprints are made in this order. */
export const foundLabels = { from: "From", text: "Text", place: "Place" } as const;

export type FoundField = keyof typeof foundLabels;

export const foundFields = fieldsOf(foundLabels);

/** A text that somebody typed beside, between or over the cells of ours, with its place and the build on which it stood. */
export interface FoundText {
  readonly typed: Entries<FoundField>;
  /** Fingerprint of the text that the build put into its block; "" where it was found outside it. */
  readonly carried: string;
  /** Row of the sheet, from 0. */
  readonly row: number;
}

const fingerprintLength = 16;

/** Makes a short text by which a text that was found is recognised. */
export function foundFingerprint({ typed }: Pick<FoundText, "typed">): string {
  return digestOf(["found", ...foundFields.map((field) => canonicalText(typed[field]))], fingerprintLength);
}
