import { seenUnits } from "../planning/commissioning/procedure";
import { results } from "../planning/commissioning/record";
import type { RecordKind } from "../planning/plan/schema";
import { explainComma, invalid, isPlainNumber, quote } from "../planning/text";
import { longestText, sheetDayOf, type Scalar } from "../sheet";

/** What may stand in place of what was found, each with name and reason. */
export const insteadOfFound: readonly string[] = [results.notApplicable, results.waived];

/** Units in which a size may be seen. */
export const sizeUnits = Object.keys(seenUnits);

/** Reads what was typed for a record of a kind as what goes into its cell; refuses with a sentence what cannot be meant. `what` names the field. */
export function readAnswer(kind: RecordKind, text: string, what = "Found"): Scalar {
  const typed = requireText(text, what, hints[kind]);
  if (insteadOfFound.includes(typed)) return typed;
  switch (kind) {
    case "number":
    case "size":
      return readNumber(typed, what);
    case "date": {
      const day = sheetDayOf(typed);
      if (day === null) throw invalid(what, text, `${what} ${quote(typed)} is no date. ${hints.date}`);
      return day;
    }
    default:
      return typed;
  }
}

/** Reads a text that may not be missing; `hint` says what to write. */
export function requireText(text: string, what: string, hint: string): string {
  const typed = text.trim();
  if (typed === "") throw invalid(what, text, `${what} is empty. ${hint}`);
  if (typed.length > longestText) throw invalid(what, text, `${what} is longer than a cell takes. Write it shorter, and the rest into a file of its own.`);
  return typed;
}

const hints: Readonly<Record<RecordKind, string>> = {
  tick: "Choose Yes or No.",
  text: "Write what you see.",
  number: "Write the number that you see.",
  size: "Write the number that you see, and choose its unit.",
  address: "Write the address that you see.",
  serial: "Write or scan the serial number.",
  date: "Write it as 2026-05-31.",
  choice: "Choose one.",
};

function readNumber(text: string, what: string): number {
  if (isPlainNumber(text)) return Number(text);
  const comma = explainComma(text, what, (proposal) => readNumber(String(proposal), what));
  throw comma ?? invalid(what, text, `${what} ${quote(text)} is not a number. Write digits alone, such as 42 or 0.5.`);
}
