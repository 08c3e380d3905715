import { lastIdSettings } from "../../../plan/read";
import type { PlanRow } from "../../../plan/read";
import { remarkAt, type Mend, type Remark, type Rule } from "../../finding";
import type { PlanIndex } from "../../../plan/model";
import { foldName } from "../../../text";

export const missingId: Rule = {
  name: "missing-id",
  family: "references",
  weight: "warn",
  meaning: "Every array and every job has an id, by which records find it again when its name changes.",
  mends: "Writes the next id that was never used.",
  check: (index) => [...missingIn(index, "arrays"), ...missingIn(index, "jobs")],
};

type Identified = "arrays" | "jobs";
const letters: Readonly<Record<Identified, string>> = { arrays: "A", jobs: "J" };

function missingIn(index: PlanIndex, key: Identified): Remark[] {
  if (index.table(key)?.columns.id === undefined) return [];
  const before = lastId(index, key);
  const rows = index.rows(key).filter(({ id }) => id === "");
  // The settings remember the last id of all that are missing, so that mends written together agree.
  const last = formatId(key, before + rows.length);
  return rows.map((row, at) => {
    const sentence = `${nameOf(row)} has no id, so its records would not be found again once it is renamed. Let the next one be written.`;
    return remarkAt(index, key, row, "id", sentence, writeId(index, key, row, formatId(key, before + at + 1), last));
  });
}

/** Finds the highest id ever given: those that stand, and the one that the settings remember. */
function lastId(index: PlanIndex, key: Identified): number {
  const remembered = index.find("settings", lastIdSettings[key])?.value ?? "";
  return index.rows(key).reduce((most, { id }) => Math.max(most, numberIn(key, id)), numberIn(key, remembered));
}

function numberIn(key: Identified, id: string): number {
  const match = /^([aj])(\d{1,9})$/.exec(foldName(id));
  return match?.[1] === letters[key].toLowerCase() ? Number(match[2]) : 0;
}

function formatId(key: Identified, number: number): string {
  return `${letters[key]}${String(number).padStart(4, "0")}`;
}

function nameOf(row: PlanRow<"arrays"> | PlanRow<"jobs">): string {
  return ("array" in row ? row.array : row.job) || "This row";
}

function writeId(index: PlanIndex, key: Identified, row: PlanRow<"arrays"> | PlanRow<"jobs">, id: string, last: string): Mend {
  const remembered = index.find("settings", lastIdSettings[key]);
  const writes = [index.write(key, row.row, "id", id), remembered === null ? null : index.write("settings", remembered.row, "value", last)];
  return { description: `Give ${nameOf(row)} the id ${id}.`, writes: writes.filter((write) => write !== null) };
}
