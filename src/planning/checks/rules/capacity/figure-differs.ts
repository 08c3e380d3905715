import { gather, sumKnown, type PlanModel } from "../../../plan/model";
import type { PlanRow } from "../../../plan/read";
import { tables } from "../../../plan/schema";
import type { Bytes } from "../../../quantity";
import { formatTerabytes, roundTo, terabytesOf } from "../../../text";
import { remarkOn, type Remark, type Rule } from "../../finding";

/** A figure that the sheet shows of a row, and what the plan gives, null where it does not say enough. */
interface Figure {
  readonly table: "arrays" | "driveSets" | "quote";
  readonly column: "usable" | "toHosts";
  readonly header: string;
  readonly row: { readonly row: number; readonly shown: Readonly<Record<string, string>> };
  readonly planned: () => Bytes | null;
}

export const figureDiffers: Rule = {
  name: "figure-differs",
  family: "capacity",
  weight: "warn",
  meaning: "Usable and To hosts that Arrays, Drive sets and Quote show are what the plan gives: a formula that somebody typed over goes on showing what was true once.",
  check: (model) =>
    gather(figuresOf(model), ({ table, column, header, row, planned }): Remark[] => {
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
  const usableOf = (array: PlanRow<"arrays">): Bytes | null => capacity.of(array)?.usable ?? null;
  const setAt = new Map(capacity.sets().map((set) => [set.at.table === "driveSets" ? set.at.row : null, set]));
  /** Adds up over the arrays that a row of the quote is for; null where it is for none. */
  const sumOver = (row: PlanRow<"quote">, sizeOf: (array: PlanRow<"arrays">) => Bytes | null): Bytes | null => {
    const arrays = quote.arraysOf(row);
    return arrays.length === 0 ? null : sumKnown(arrays.map((array) => sizeOf(array)));
  };
  return [
    ...gather(model.rows("arrays"), (row): Figure[] => [
      { table: "arrays", column: "usable", header: tables.arrays.columns.usable.header, row, planned: () => usableOf(row) },
      { table: "arrays", column: "toHosts", header: tables.arrays.columns.toHosts.header, row, planned: () => capacity.toHostsOf(row) },
    ]),
    ...model.rows("driveSets").map((row): Figure => {
      const set = setAt.get(row.row);
      return { table: "driveSets", column: "usable", header: tables.driveSets.columns.usable.header, row, planned: () => (set === undefined ? null : (capacity.ofSet(set)?.usable ?? null)) };
    }),
    ...gather(model.rows("quote"), (row): Figure[] => [
      { table: "quote", column: "usable", header: tables.quote.columns.usable.header, row, planned: () => sumOver(row, usableOf) },
      { table: "quote", column: "toHosts", header: tables.quote.columns.toHosts.header, row, planned: () => sumOver(row, capacity.toHostsOf) },
    ]),
  ];
}
