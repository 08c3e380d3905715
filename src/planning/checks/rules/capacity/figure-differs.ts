import { gather, type PlanModel } from "../../../plan/model";
import { columnsOf } from "../../../plan/schema";
import { formatTerabytes, roundTo, terabytesOf } from "../../../text";
import { remarkOn, type Remark, type Rule } from "../../finding";

/** A figure that the sheet shows of a row, and what the plan gives, null where it does not say enough. */
interface Figure {
  readonly table: "arrays" | "driveSets" | "quote";
  readonly column: "usable" | "toHosts";
  readonly row: { readonly row: number; readonly shown: Readonly<Record<string, string>> };
  readonly planned: () => bigint | null;
}

export const figureDiffers: Rule = {
  name: "figure-differs",
  family: "capacity",
  weight: "warn",
  meaning: "Usable and To hosts that Arrays, Drive sets and Quote show are what the plan gives: a formula that somebody typed over goes on showing what was true once.",
  check: (model) =>
    gather(figuresOf(model), ({ table, column, row, planned }): Remark[] => {
      const header = Object.fromEntries(columnsOf(table))[column]!.header;
      const text = row.shown[header] ?? "";
      const shown = text === "" ? Number.NaN : Number(text);
      if (Number.isNaN(shown)) return [];
      const size = planned();
      if (size !== null && Math.abs(shown - terabytesOf(size)) <= toTheNearest) return [];
      const given = size === null ? "the plan does not say enough for that" : `the plan gives ${formatTerabytes(size)}`;
      return [remarkOn(model, { table, row: row.row, column }, `${header} shows ${roundTo(2, shown)} TB, but ${given}. If it was typed over, copy the formula of another row here.`)];
    }),
};

/** By how much a figure differs at most from the same one with two decimals. */
const toTheNearest = 0.005_001;

function figuresOf(model: PlanModel): Figure[] {
  const { capacity, quote } = model;
  const setAt = new Map(capacity.sets().map((set) => [set.at.table === "driveSets" ? set.at.row : null, set]));
  return [
    ...gather(model.rows("arrays"), (row): Figure[] => [
      { table: "arrays", column: "usable", row, planned: () => capacity.of(row)?.usable ?? null },
      { table: "arrays", column: "toHosts", row, planned: () => capacity.toHostsOf(row) },
    ]),
    ...model.rows("driveSets").map((row): Figure => {
      const set = setAt.get(row.row);
      return { table: "driveSets", column: "usable", row, planned: () => (set === undefined ? null : (capacity.ofSet(set)?.usable ?? null)) };
    }),
    ...gather(model.rows("quote"), (row): Figure[] => [
      { table: "quote", column: "usable", row, planned: () => sumOf(quote.arraysOf(row).map((array) => capacity.of(array)?.usable ?? null)) },
      { table: "quote", column: "toHosts", row, planned: () => sumOf(quote.arraysOf(row).map((array) => capacity.toHostsOf(array))) },
    ]),
  ];
}

/** Adds sizes up; null where there is none, or one is not known. */
function sumOf(sizes: readonly (bigint | null)[]): bigint | null {
  return sizes.length === 0 ? null : sizes.reduce((sum, size) => (sum === null || size === null ? null : sum + size));
}
