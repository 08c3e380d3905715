import { lastArrayIdSetting, type PlanRow } from "../workbook-model";
import { remarkAt, type Mend, type Rule } from "./finding";
import { foldName, type PlanIndex } from "./plan-index";

export const missingId: Rule = {
  name: "missing-id",
  family: "references",
  weight: "warn",
  meaning: "Every array has an id, by which records find it again when its name changes.",
  mends: "Writes the next id that was never used.",
  check: (index) => {
    const column = index.table("arrays")?.columns.id;
    if (column === undefined) return [];
    const before = lastId(index);
    const rows = index.rows("arrays").filter(({ id }) => id === "");
    // The settings remember the last id of all that are missing, so that mends written together agree.
    const last = formatId(before + rows.length);
    return rows.map((row, at) => {
      const sentence = `${row.array === "" ? "The array" : row.array} has no id, so its records would not be found again. Let the next one be written.`;
      return remarkAt(index, "arrays", row, "id", sentence, writeId(index, row, formatId(before + at + 1), last));
    });
  },
};

/** Finds the highest id ever given: those that stand, and the one that the settings remember. */
function lastId(index: PlanIndex): number {
  const remembered = index.find("settings", lastArrayIdSetting)?.value ?? "";
  return index.rows("arrays").reduce((most, { id }) => Math.max(most, numberIn(id)), numberIn(remembered));
}

function numberIn(id: string): number {
  const match = /^A(\d{1,9})$/i.exec(foldName(id));
  return match === null ? 0 : Number(match[1]);
}

function formatId(number: number): string {
  return `A${String(number).padStart(4, "0")}`;
}

function writeId(index: PlanIndex, row: PlanRow<"arrays">, id: string, last: string): Mend {
  const remembered = index.find("settings", lastArrayIdSetting);
  const writes = [
    index.write("arrays", row.row, "id", id),
    remembered === null ? null : index.write("settings", remembered.row, "value", last),
  ];
  return { description: `Give ${row.array} the id ${id}.`, writes: writes.filter((write) => write !== null) };
}
