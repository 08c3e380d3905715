import { canonicalText, digestOf } from "../../text";
import { isFilled } from "./entries";
import { aboutText, snagFields, snagText, type Snag } from "./snag";
import { stepFields, type StepField, type StepRecord } from "./step-record";

const fingerprintLength = 16;

/** Makes a short text by which a record is recognised; "" where nothing was typed. */
export function recordFingerprint({ key, typed }: Pick<StepRecord, "key" | "typed">): string {
  if (!isFilled(typed)) return "";
  const textOf = (field: StepField): string => canonicalText(typed[field], field === "done");
  return digestOf([key, ...stepFields.map(textOf)], fingerprintLength);
}

/** Makes a short text by which a snag is recognised; the number of its row, which a build changes, does not count, a text in its place does. */
export function snagFingerprint({ key, typed }: Pick<Snag, "key" | "typed">): string {
  const fields = snagFields.filter((field) => field !== "about");
  const texts = fields.map((field) => snagText(field, typed[field]));
  return digestOf(["snag", key, canonicalText(aboutText({ key, typed })), ...texts], fingerprintLength);
}
