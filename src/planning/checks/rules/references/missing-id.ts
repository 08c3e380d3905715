import { formatId, lastIdNumber, type PlanModel } from "../../../plan/model";
import { lastIdSettings, type PlanRow } from "../../../plan/read";
import { type Mend, type Remark, remarkAt, type Rule } from "../../finding";

export const missingId = {
  name: "missing-id",
  family: "references",
  weight: "warn",
  meaning: "Every array and every job has an id, by which records find it again when its name changes.",
  mends: "Writes the next id that was never used.",
  check: (model: PlanModel) => [...missingIn(model, "arrays"), ...missingIn(model, "jobs")],
} satisfies Rule;

function missingIn(model: PlanModel, key: "arrays" | "jobs"): Remark[] {
  if (model.table(key)?.columns.id === undefined) return [];
  const before = lastIdNumber(model, key);
  const rows = model.rows(key).filter(({ id }) => id === "");
  // The settings remember the last id of all that are missing, so that mends written together agree.
  const last = formatId(key, before + rows.length);
  return rows.map((row, at) => {
    const sentence = `${nameOf(row)} has no id, so its records would not be found again once it is renamed. Let the next one be written.`;
    return remarkAt(model, key, row, "id", sentence, writeId(model, key, row, formatId(key, before + at + 1), last));
  });
}

function nameOf(row: PlanRow<"arrays"> | PlanRow<"jobs">): string {
  return ("array" in row ? row.array : row.job) || "This row";
}

function writeId(model: PlanModel, key: "arrays" | "jobs", row: PlanRow<"arrays"> | PlanRow<"jobs">, id: string, last: string): Mend {
  const remembered = model.find("settings", lastIdSettings[key]);
  const writes = [model.write({ table: key, row: row.row, column: "id" }, id), remembered === null ? null : model.write({ table: "settings", row: remembered.row, column: "value" }, last)];
  return { description: `Give ${nameOf(row)} the id ${id}.`, writes: writes.filter((write) => write !== null) };
}
