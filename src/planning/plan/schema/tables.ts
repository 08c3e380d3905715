import type { ChoiceColumn, Column } from "./column";
import type { Table } from "./table";
import type { TableKey } from "./table-keys";
import { access } from "./tables/access";
import { arrays } from "./tables/arrays";
import { assumptions } from "./tables/assumptions";
import { cables } from "./tables/cables";
import { clusters } from "./tables/clusters";
import { driveSets } from "./tables/drive-sets";
import { drives } from "./tables/drives";
import { feeds } from "./tables/feeds";
import { hostPorts } from "./tables/host-ports";
import { hosts } from "./tables/hosts";
import { jobs } from "./tables/jobs";
import { links } from "./tables/links";
import { lists } from "./tables/lists";
import { modelPorts } from "./tables/model-ports";
import { models } from "./tables/models";
import { networks } from "./tables/networks";
import { parts } from "./tables/parts";
import { pools } from "./tables/pools";
import { ports } from "./tables/ports";
import { prices } from "./tables/prices";
import { procedures } from "./tables/procedures";
import { prompts } from "./tables/prompts";
import { quote } from "./tables/quote";
import { racks } from "./tables/racks";
import { readings } from "./tables/readings";
import { settings } from "./tables/settings";
import { shelves } from "./tables/shelves";
import { sites } from "./tables/sites";
import { steps } from "./tables/steps";
import { switches } from "./tables/switches";
import { volumes } from "./tables/volumes";

/** The planning tables by their keys; `tableKeys` says their order. */
export const tables = {
  settings, sites, racks, feeds, networks, switches, hosts, hostPorts, links, clusters, pools, models, modelPorts, arrays, shelves, driveSets, drives, ports, cables, volumes,
  access, procedures, steps, prompts, jobs, readings, parts, prices, quote, assumptions, lists,
} as const satisfies Readonly<Record<TableKey, Table>>;

export type Tables = typeof tables;

/** Key of a column of a planning table in code, such as `bottomUnit`. */
export type ColumnKey<Key extends TableKey> = keyof Tables[Key]["columns"] & string;

/** Keys of the columns of a planning table that are read as text: texts and choices. */
export type TextColumn<Key extends TableKey> = {
  [Name in ColumnKey<Key>]: Tables[Key]["columns"][Name] extends Column<"text"> | ChoiceColumn ? Name : never;
}[ColumnKey<Key>];

type ColumnList = readonly (readonly [name: string, column: Column])[];

const columnLists = Object.fromEntries(
  Object.entries<Table>(tables).map(([key, { columns }]) => [key, Object.entries(columns)]),
) as Partial<Record<TableKey, ColumnList>> as Readonly<Record<TableKey, ColumnList>>;

/** Lists the columns of a table with their keys, in the order in which set-up writes them. */
export function columnsOf(key: TableKey): ColumnList {
  return columnLists[key];
}

/** Tells whether set-up leaves a table out until somebody asks for it. */
export function isFurther(key: TableKey): boolean {
  const { further }: Table = tables[key];
  return further === true;
}

/** Keys of the columns that an array takes from its model where it leaves them empty: those that both tables have, the model's name apart. */
export const inheritedColumns: ReadonlySet<string> = new Set(
  Object.keys(tables.models.columns).filter((name) => name in tables.arrays.columns && name !== nameColumn("models")),
);

/** Names the column by which the rows of a table are named: its first required one. */
export function nameColumn(key: TableKey): string {
  const found = columnsOf(key).find(([, { required }]) => required === true);
  if (found === undefined) throw new Error(`Table ${tables[key].name} has no required column.`);
  return found[0];
}
