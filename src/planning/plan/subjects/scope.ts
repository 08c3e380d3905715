import { foldName, formatPercent, invalid, quote, type Lookup } from "../../text";
import type { PlanCell } from "../model";
import { cellOf, type PlanRow } from "../read";
import { columnsOf, columnsOfLayer, forEachKinds, layerTables, type ForEach, type LayerName, type TableKey } from "../schema";

/** The fields of one table row that a step can name, by their headers without case. */
export interface Layer {
  /** What the layer is called in `{{Rack.Units}}`. */
  readonly name: LayerName;
  /** Prototype-free; a field of the table that this row lacks is blank. */
  readonly fields: Readonly<Record<string, string>>;
  /** Table row behind the layer; null where there is none. */
  readonly origin: { readonly table: TableKey; readonly row: number } | null;
}

/** Layers in reach of a step, nearest first. */
export type Scope = readonly Layer[];

type TableLayer = { [Name in LayerName]: (typeof layerTables)[Name] extends TableKey ? Name : never }[LayerName];
type Reached<Kind extends ForEach> = (typeof forEachKinds)[Kind]["reach"][number];

/** Puts the layers that a kind of section reaches in their order, nearest first. */
export function scopeOf<Kind extends ForEach>(kind: Kind, layers: Readonly<Record<Reached<Kind>, Layer>>): Scope {
  const reach: readonly Reached<Kind>[] = forEachKinds[kind].reach;
  return reach.map((name) => layers[name]);
}

/** Makes a layer of the row of a planning table, or of none: then every column of the table is blank. */
export function layerOf<Name extends TableLayer>(
  name: Name,
  row: PlanRow<(typeof layerTables)[Name]> | null,
  derived: Readonly<Record<string, string>> = {},
): Layer {
  const table: TableKey = layerTables[name];
  const fields = Object.create(null) as Record<string, string>;
  for (const [column, { header, kind }] of columnsOfLayer(name)) {
    const cell = row === null ? null : cellOf(row, column);
    const shown = row?.shown[header]?.trim() ?? "";
    fields[foldName(header)] = kind === "share" && typeof cell === "number" ? formatPercent(cell) : kind === "size" && /^[\d.]+$/.test(shown) ? `${shown} TB` : shown;
  }
  for (const [header, shown] of Object.entries(row?.shown ?? {})) fields[foldName(header)] ??= shown.trim();
  for (const [field, text] of Object.entries(derived)) fields[foldName(field)] = text;
  return { name, fields, origin: row === null ? null : { table, row: row.row } };
}

/** Makes a layer of fields that stand in no table. */
export function layerOfFields(name: Exclude<LayerName, TableLayer>, derived: Readonly<Record<string, string>>): Layer {
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
    const text = findField(scope, name)?.text;
    if (text !== undefined) return text;
    throw invalid(argument, name, `${argument} names ${quote(name)}, which no table in reach has. Write the header of a column, such as {{Array}}.`);
  };
}

/** Finds the cell of the plan that a field is taken from; null for a derived field and for a column of the user's own. */
export function planCellOf(scope: Scope, name: string): PlanCell | null {
  const found = findField(scope, name);
  const origin = found?.layer.origin ?? null;
  if (found === null || origin === null) return null;
  const column = columnsOf(origin.table).find(([, { header }]) => foldName(header) === found.field);
  return column === undefined || column[1].kind === "formula" ? null : { ...origin, column: column[0] };
}

interface FoundField {
  readonly layer: Layer;
  readonly field: string;
  readonly text: string;
}

function findField(scope: Scope, name: string): FoundField | null {
  const folded = foldName(name);
  for (const layer of scope) {
    const text = layer.fields[folded];
    if (text !== undefined) return { layer, field: folded, text };
  }
  const dot = folded.indexOf(".");
  const layer = dot < 0 ? undefined : scope.find((one) => foldName(one.name) === folded.slice(0, dot).trim());
  const field = folded.slice(dot + 1).trim();
  const text = layer?.fields[field];
  return layer === undefined || text === undefined ? null : { layer, field, text };
}
