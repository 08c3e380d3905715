import { isBlank } from "../../../sheet";
import { setColumns, type PlanCell, type PlanModel } from "../model";
import { cellOf, textOf } from "../read";
import { columnsOf, nameColumn, tableKeys, tables, type ColumnKey, type TableKey } from "../schema";

/** A column of a table that is empty in some of its rows. */
export interface MissingColumn {
  readonly table: string;
  readonly header: string;
  /** The rows by their names, in table order. */
  readonly rows: readonly string[];
  /** The first empty cell. */
  readonly first: PlanCell;
}

/** What an installation cannot do without; the rest may stay empty. Arrays take what their models give. */
const needed: { readonly [Key in TableKey]?: readonly ColumnKey<Key>[] } = {
  sites: ["room", "contact", "timeServers", "alertsTo", "access"],
  racks: ["site", "units", "numberedFrom", "depthMm", "limitKg", "coolingW"],
  feeds: ["site", "source", "volts", "phases", "breakerA"],
  networks: ["prefix", "gateway", "role"],
  switches: ["site", "rack", "bottomUnit", "units", "watts", "feedA", "networks", "ports", "frameBytes"],
  hosts: ["site", "initiatorName", "address"],
  clusters: ["network", "sharedAddress", "state"],
  pools: ["fillLimit"],
  arrays: [
    "site", "model", "serial", "rack", "bottomUnit", "units", "depthMm", "weightKg", "liftKg", "liftBy", "watts", "feedA", "feedB", "controllers", "ports",
    "drives", "driveSize", "scheme", "spares",
  ],
  driveSets: [...setColumns],
  ports: ["network", "address", "switch", "switchPort"],
  jobs: ["site", "procedure", "plannedDate"],
};

/** Lists what a plan does not say yet, table by table in their order and column by column. */
export function missingValues(model: PlanModel): MissingColumn[] {
  return tableKeys.flatMap((key): MissingColumn[] =>
    columnsOf(key).flatMap(([column, { header }]): MissingColumn[] => {
      if (!(needed[key] as readonly string[] | undefined)?.includes(column) || model.table(key)?.columns[column] === undefined) return [];
      const empty = model.rows(key).filter((row) => isEmpty(cellOf(row, column)) && !isForNobody(model, key, row, column));
      const [first] = empty;
      return first === undefined ? [] : [{ table: tables[key].name, header, rows: empty.map((row) => textOf(row, nameColumn(key))), first: { table: key, row: first.row, column } }];
    }),
  );
}

/** Tells whether a cell may stay empty: in a network that is none of IP nothing has an address, and an array with drive sets leaves to them what they say. */
function isForNobody(model: PlanModel, key: TableKey, row: { readonly row: number }, column: string): boolean {
  if (key === "arrays") return setColumns.some((one) => one === column) && model.rowsWith("driveSets", "array", textOf(row, "array")).length > 0;
  if (key !== "networks" && !(key === "ports" && column === "address")) return false;
  return column !== "role" && model.networks.named(textOf(row, "network"))?.isIp === false;
}

function isEmpty(value: unknown): boolean {
  return value === null || value === undefined || (typeof value === "string" && isBlank(value));
}
