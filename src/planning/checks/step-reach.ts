import { derivedFields } from "../plan/subjects";
import { showCell } from "../../sheet";
import type { PlanRow } from "../plan/read";
import { tables, type Table, type TableKey } from "../plan/schema";
import type { PlanIndex } from "../plan/model";
import { foldName } from "../text";

/** A table in reach of a step, under the name by which `{{Rack.Units}}` calls it. */
export interface ReachedTable {
  readonly name: string;
  /** Null for what has no table of its own: a controller, a bay. */
  readonly table: TableKey | null;
  /** Names of its fields in lower case: columns, the user's own included, and derived ones. */
  readonly fields: ReadonlySet<string>;
}

/** Names of the tables that a section reaches, nearest first, by what it is repeated for. */
const reach: Readonly<Record<string, readonly (keyof typeof layers)[]>> = {
  site: ["Site", "Job"],
  cluster: ["Cluster", "Network", "Site", "Job"],
  pool: ["Pool", "Cluster", "Network", "Site", "Job"],
  array: ["Array", "Pool", "Cluster", "Rack", "Network", "Site", "Job"],
  controller: ["Controller", "Array", "Pool", "Cluster", "Rack", "Network", "Site", "Job"],
  port: ["Port", "Controller", "Array", "Pool", "Cluster", "Rack", "Network", "Site", "Job"],
  drive: ["Drive", "Array", "Pool", "Cluster", "Rack", "Network", "Site", "Job"],
  prompt: ["Prompt", "Array", "Pool", "Cluster", "Rack", "Network", "Site", "Job"],
};

const layers = {
  Site: { table: "sites", more: [] },
  Job: { table: "jobs", more: [] },
  Cluster: { table: "clusters", more: [] },
  Pool: { table: "pools", more: [] },
  Rack: { table: "racks", more: [] },
  Network: { table: "networks", more: Object.keys(derivedFields.network) },
  Array: { table: "arrays", more: Object.keys(derivedFields.array) },
  Port: { table: "ports", more: Object.keys(derivedFields.port) },
  Prompt: { table: "prompts", more: [] },
  Controller: { table: null, more: ["Controller", ...Object.keys(derivedFields.controller)] },
  Drive: { table: null, more: ["Bay"] },
} as const satisfies Record<string, { readonly table: TableKey | null; readonly more: readonly string[] }>;

const reached = new WeakMap<PlanIndex, Map<string, readonly ReachedTable[]>>();

/** Lists the tables in reach of a section's steps, nearest first; a section that says nothing is about the site. */
export function tablesInReach(index: PlanIndex, forEach: string): readonly ReachedTable[] {
  const known = reached.get(index) ?? new Map<string, readonly ReachedTable[]>();
  reached.set(index, known);
  let list = known.get(forEach);
  if (list === undefined) {
    list = (reach[forEach] ?? reach.site!).map((name) => ({ name, table: layers[name].table, fields: fieldsOf(index, layers[name]) }));
    known.set(forEach, list);
  }
  return list;
}

function fieldsOf(index: PlanIndex, { table: key, more }: { readonly table: TableKey | null; readonly more: readonly string[] }): ReadonlySet<string> {
  const table = key === null ? null : index.table(key);
  const schema = key === null ? [] : Object.values((tables[key] as Table).columns).map(({ header }) => header);
  const header = table === null ? [] : (index.sheet(table.sheet)?.values[table.headerRow] ?? []).slice(table.firstColumn, table.lastColumn + 1).map(showCell);
  return new Set([...schema, ...header, ...more].map(foldName).filter((name) => name !== ""));
}

/** Finds the tables that a field may come from: the one it names outright, else every one in reach that has it, nearest first. */
export function ownersOf(scope: readonly ReachedTable[], field: string): readonly ReachedTable[] {
  const folded = foldName(field);
  const bare = scope.filter(({ fields }) => fields.has(folded));
  const dot = folded.indexOf(".");
  if (bare.length > 0 || dot < 0) return bare;
  const named = scope.find(({ name }) => foldName(name) === folded.slice(0, dot).trim());
  return named !== undefined && named.fields.has(folded.slice(dot + 1).trim()) ? [named] : [];
}

/** A step with what its section is repeated for. */
export interface PlacedStep {
  readonly row: PlanRow<"steps">;
  readonly section: PlanRow<"procedures">;
}

/** Lists the steps whose section is one of their procedure. */
export function placedSteps(index: PlanIndex): PlacedStep[] {
  const sections = new Map(index.rows("procedures").map((row) => [`${foldName(row.procedure)}\n${foldName(row.section)}`, row]));
  return index.rows("steps").flatMap((row): PlacedStep[] => {
    const section = sections.get(`${foldName(row.procedure)}\n${foldName(row.section)}`);
    return section === undefined ? [] : [{ row, section }];
  });
}
