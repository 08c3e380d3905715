import { foldName } from "../../text";
import { invalid, quote } from "../../text";
import type { PlanRow } from "../read";
import { tables, type Table, type TableKey } from "../schema";
import type { Lookup } from "../../text";

/** The fields of one table row that a step can name, by their headers without case. */
export interface Layer {
  /** What the layer is called in `{{Rack.Units}}`. */
  readonly name: string;
  /** Prototype-free; a field of the table that this row lacks is blank. */
  readonly fields: Readonly<Record<string, string>>;
  /** Table row behind the layer; null where there is none. */
  readonly origin: { readonly table: TableKey; readonly row: number } | null;
}

/** A cell of the plan from which a field came. */
export interface PlanCell {
  readonly table: TableKey;
  readonly row: number;
  readonly column: string;
}

/** Layers in reach of a step, nearest first. */
export type Scope = readonly Layer[];

/** Makes a layer of the row of a planning table, or of none: then every column of the table is blank. */
export function layerOf<Key extends TableKey>(name: string, key: Key, row: PlanRow<Key> | null, derived: Readonly<Record<string, string>> = {}): Layer {
  const fields = Object.create(null) as Record<string, string>;
  for (const [column, { header, kind }] of Object.entries((tables[key] as Table).columns)) {
    const cell = row === null ? null : (row as Readonly<Record<string, unknown>>)[column];
    const shown = row?.shown[header] ?? "";
    fields[foldName(header)] = kind === "share" && typeof cell === "number" ? percent(cell) : kind === "size" && /^[\d.]+$/.test(shown) ? `${shown} TB` : shown.trim();
  }
  for (const [header, shown] of Object.entries(row?.shown ?? {})) fields[foldName(header)] ??= shown.trim();
  for (const [field, text] of Object.entries(derived)) fields[foldName(field)] = text;
  return { name, fields, origin: row === null ? null : { table: key, row: row.row } };
}

/** Makes a layer of fields that stand in no table. */
export function layerOfFields(name: string, derived: Readonly<Record<string, string>>): Layer {
  const fields = Object.create(null) as Record<string, string>;
  for (const [field, text] of Object.entries(derived)) fields[foldName(field)] = text;
  return { name, fields, origin: null };
}

/**
 * Looks a field up: `Table.Column` in the layer of that name, a bare name in the nearest layer that has it.
 *
 * `argument` names the step in the sentence that refuses a field that no layer has.
 */
export function lookupIn(scope: Scope, argument: string): Lookup {
  return (name) => {
    const found = findField(scope, name);
    if (found !== null) return found.layer.fields[found.field]!;
    throw invalid(argument, name, `${argument} names ${quote(name)}, which no table in reach has. Write the header of a column, such as {{Array}}.`);
  };
}

/** Finds the cell of the plan that a field is taken from; null for a derived field and for a column of the user's own. */
export function planCellOf(scope: Scope, name: string): PlanCell | null {
  const found = findField(scope, name);
  const origin = found?.layer.origin ?? null;
  if (found === null || origin === null) return null;
  const column = Object.entries((tables[origin.table] as Table).columns).find(([, { header }]) => foldName(header) === found.field);
  return column === undefined || column[1].kind === "formula" ? null : { ...origin, column: column[0] };
}

function findField(scope: Scope, name: string): { readonly layer: Layer; readonly field: string } | null {
  const folded = foldName(name);
  const nearest = scope.find(({ fields }) => folded in fields);
  if (nearest !== undefined) return { layer: nearest, field: folded };
  const dot = folded.indexOf(".");
  const field = folded.slice(dot + 1).trim();
  const named = dot < 0 ? undefined : scope.find((layer) => foldName(layer.name) === folded.slice(0, dot).trim());
  return named !== undefined && field in named.fields ? { layer: named, field } : null;
}

/** Writes a share as a percentage of at most two decimals. */
export function percent(share: number): string {
  return `${Number((share * 100).toFixed(2))}%`;
}
