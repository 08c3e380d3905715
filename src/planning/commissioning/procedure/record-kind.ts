import { recordKinds, type RecordKind } from "../../plan/schema";
import { foldName, invalid, quote } from "../../text";

/** A record as the table Steps names it: its kind, and what may be chosen where that is a choice. */
export interface NamedRecord {
  readonly kind: RecordKind;
  readonly choices: readonly string[];
}

/** How a kind is written in the table Steps; a choice stands with an example. */
const spellings = recordKinds.map((kind) => (kind === "choice" ? "choice:a|b" : kind));

/**
 * Reads the kind of record that a step names, such as `number` or `choice:Complete|Incomplete`; a blank is a tick.
 *
 * Refuses a kind that is none, a choice of fewer than two, and one with a comma in it, as a sheet parts its lists there.
 * `argument` names the step in the sentence.
 */
export function parseRecordKind(record: string, argument: string): NamedRecord {
  const colon = record.indexOf(":");
  const name = colon < 0 ? record : record.slice(0, colon);
  const list = colon < 0 ? "" : record.slice(colon + 1);
  const kind = record.trim() === "" ? "tick" : recordKinds.find((one) => one === foldName(name));
  const choices = list.split("|").map((choice) => choice.trim()).filter((choice) => choice !== "");
  if (kind === undefined) {
    throw invalid(argument, record, `${argument} records ${quote(record)}. Write ${spellings.slice(0, -1).join(", ")} or ${spellings.at(-1)}.`);
  }
  if (kind === "choice" && choices.length < 2) {
    throw invalid(argument, record, `${argument} offers ${quote(record)}. Write at least two choices, such as choice:Complete|Incomplete.`);
  }
  const comma = choices.find((choice) => choice.includes(","));
  if (comma !== undefined) throw invalid(argument, comma, `${argument} offers ${quote(comma)}, which holds a comma. Write it without one.`);
  return { kind, choices };
}
