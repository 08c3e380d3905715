import { setColumns, usualMtu, type PlanCell, type PlanModel } from "../model";
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

/** What an installation, a check of it or its price cannot do without; the rest may stay empty. Arrays take what their models give. */
const needed: { readonly [Key in TableKey]?: readonly ColumnKey<Key>[] } = {
  sites: ["room", "contact", "timeServers", "alertsTo", "access"],
  racks: ["site", "units", "numberedFrom", "depthMm", "limitKg", "coolingW", "outlets"],
  feeds: ["site", "source", "volts", "phases", "breakerA"],
  networks: ["prefix", "gateway", "role"],
  switches: ["site", "rack", "bottomUnit", "units", "watts", "feedA", "networks", "ports", "frameBytes"],
  hosts: ["site", "initiatorName", "address"],
  clusters: ["network", "sharedAddress", "state"],
  pools: ["fillLimit"],
  arrays: [
    "site", "model", "serial", "rack", "bottomUnit", "units", "depthMm", "weightKg", "liftKg", "liftBy", "watts", "plug", "feedA", "feedB", "controllers", "ports",
    "drives", "driveSize", "scheme", "spares",
  ],
  shelves: ["rack", "bottomUnit"],
  driveSets: [...setColumns],
  ports: ["network", "address", "switch", "switchPort"],
  jobs: ["site", "procedure", "plannedDate"],
  quote: ["for", "quantity", "cost", "margin", "currency", "kind"],
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

/**
 * Tells whether a cell may stay empty: in a network that is none of IP nothing has an address, an array with drive sets leaves to them what they say, a
 * host to its ports, a switch without large packets need not say what it forwards, and a service is for no array.
 */
function isForNobody(model: PlanModel, key: TableKey, row: { readonly row: number }, column: string): boolean {
  switch (key) {
    case "arrays":
      return setColumns.some((one) => one === column) && model.rowsWith("driveSets", "array", textOf(row, "array")).length > 0;
    case "networks":
      return column !== "role" && model.networks.named(textOf(row, "network"))?.isIp === false;
    case "ports":
      return column === "address" && model.networks.named(textOf(row, "network"))?.isIp === false;
    case "switches": {
      const own = model.find("switches", textOf(row, "switch"));
      return column === "frameBytes" && own !== null && !model.networks.carriedOn(own).some(({ isIp, mtu }) => isIp && mtu > usualMtu);
    }
    case "hosts": {
      const own = column === "site" ? null : model.find("hosts", textOf(row, "host"));
      if (own === null) return false;
      const data = model.networks.ofSite(own.site).filter(({ roles }) => roles.has("data"));
      if (data.length > 0 && data.every(({ isIp }) => !isIp)) return true;
      return column === "address" ? model.hostPorts.of(own).length > 0 : model.hostPorts.initiatorNamesOf(own).length > 0;
    }
    case "quote":
      return column === "for" && ["service", "support"].includes(textOf(row, "kind"));
    default:
      return false;
  }
}

/** Texts come without blanks around them. */
function isEmpty(value: unknown): boolean {
  return value === null || value === undefined || value === "";
}
