import { foldName } from "../../text";
import { lastIdSettings } from "../read";
import type { PlanRows } from "./plan-rows";

/** Tables whose rows have an id that we give. */
export type Identified = keyof typeof lastIdSettings;

const letters: Readonly<Record<Identified, string>> = { arrays: "A", jobs: "J", cables: "C" };

/** Finds the number of the highest id ever given in a table: of those that stand, and of the one that the settings remember. */
export function lastIdNumber(rows: PlanRows, key: Identified): number {
  const remembered = rows.find("settings", lastIdSettings[key])?.value ?? "";
  return rows.rows(key).reduce((most, { id }) => Math.max(most, numberIn(key, id)), numberIn(key, remembered));
}

/** Writes the id of a number, such as A0042. */
export function formatId(key: Identified, number: number): string {
  return `${letters[key]}${String(number).padStart(4, "0")}`;
}

function numberIn(key: Identified, id: string): number {
  const match = /^([a-z])(\d{1,9})$/.exec(foldName(id));
  return match?.[1] === foldName(letters[key]) ? Number(match[2]) : 0;
}
