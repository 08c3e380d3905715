import type { PlanModel } from "../../../plan/model";
import { lastIdSettings, type PlanRow } from "../../../plan/read";
import { foldName } from "../../../text";
import { type Mend, type Remark, remarkAt, type Rule } from "../../finding";

export const missingId = {
  name: "missing-id",
  family: "references",
  weight: "warn",
  meaning: "Every array and every job has an id, by which records find it again when its name changes.",
  mends: "Writes the next id that was never used.",
  check: (model: PlanModel) => [...missingIn(model, "arrays"), ...missingIn(model, "jobs")],
} satisfies Rule;

type Identified = "arrays" | "jobs";
const letters: Readonly<Record<Identified, string>> = { arrays: "A", jobs: "J" };

function missingIn(model: PlanModel, key: Identified): Remark[] {
  if (model.table(key)?.columns.id === undefined) return [];
  const before = lastId(model, key);
  const rows = model.rows(key).filter(({ id }) => id === "");
  // The settings remember the last id of all that are missing, so that mends written together agree.
  const last = formatId(key, before + rows.length);
  return rows.map((row, at) => {
    const sentence = `${nameOf(row)} has no id, so its records would not be found again once it is renamed. Let the next one be written.`;
    return remarkAt(model, key, row, "id", sentence, writeId(model, key, row, formatId(key, before + at + 1), last));
  });
}

/** Finds the highest id ever given: those that stand, and the one that the settings remember. */
function lastId(model: PlanModel, key: Identified): number {
  const remembered = model.find("settings", lastIdSettings[key])?.value ?? "";
  return model.rows(key).reduce((most, { id }) => Math.max(most, numberIn(key, id)), numberIn(key, remembered));
}

function numberIn(key: Identified, id: string): number {
  const match = /^([aj])(\d{1,9})$/.exec(foldName(id));
  return match?.[1] === foldName(letters[key]) ? Number(match[2]) : 0;
}

function formatId(key: Identified, number: number): string {
  return `${letters[key]}${String(number).padStart(4, "0")}`;
}

function nameOf(row: PlanRow<"arrays"> | PlanRow<"jobs">): string {
  return ("array" in row ? row.array : row.job) || "This row";
}

function writeId(model: PlanModel, key: Identified, row: PlanRow<"arrays"> | PlanRow<"jobs">, id: string, last: string): Mend {
  const remembered = model.find("settings", lastIdSettings[key]);
  const writes = [model.write({ table: key, row: row.row, column: "id" }, id), remembered === null ? null : model.write({ table: "settings", row: remembered.row, column: "value" }, last)];
  return { description: `Give ${nameOf(row)} the id ${id}.`, writes: writes.filter((write) => write !== null) };
}
