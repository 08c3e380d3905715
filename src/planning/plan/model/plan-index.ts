import { containsAddress, parseBlocks, parseControllerNames, parsePortNames, parsePrefix, readAddress, type Address, type Block, type Prefix } from "../../addressing";
import { foldName } from "../../text";
import { Problem } from "../../text";
import type { Scalar, SheetSnapshot, WorkbookSnapshot } from "../../../sheet";
import { writeCell, type CellWrite } from "../changes";
import { readPlan, rowsOf, type Plan, type PlanRow, type ReadTable } from "../read";
import { tables, type Table, type TableKey } from "../schema";
import { readSettings, type SettingFault, type Settings } from "../read";

/** A network as its row says, with what could be read of it. */
export interface NetworkFacts {
  readonly row: PlanRow<"networks">;
  readonly prefix: Prefix | null;
  /** "none" where the row says so, "blank" where it says nothing, null where it cannot be read. */
  readonly gateway: Address | "none" | "blank" | null;
  readonly reserved: readonly Block[] | null;
  /** Routing table in lower case; "" is the common one. */
  readonly routing: string;
}

/** A row of the Ports table, with what could be read of it. */
export interface PortFacts {
  readonly row: PlanRow<"ports">;
  readonly array: PlanRow<"arrays"> | null;
  readonly network: NetworkFacts | null;
  /** Null where the cell is blank or no address. */
  readonly address: Address | null;
  /** Switch that it is cabled to; null where none is named or it has no row. */
  readonly to: PlanRow<"switches"> | null;
  /** Controller and port in one text without case: rows of the same one stand for the same socket. */
  readonly socket: string;
}

/** A port of a controller that an array has by its columns Controllers and Ports. */
export interface Socket {
  readonly controller: string;
  readonly port: string;
  /** Place of the port on its controller, from 0. */
  readonly at: number;
  readonly socket: string;
}

export { foldName };
export { splitFeedPhase as splitFeed } from "../../resilience";

/** Splits a cell that names several things, with commas between. */
export function splitNames(text: string): string[] {
  return text.split(",").map((name) => name.trim()).filter((name) => name !== "");
}

/** Reads the column of a row whose key is known only when it runs. */
export function fieldOf(row: object, column: string): unknown {
  return (row as Readonly<Record<string, unknown>>)[column];
}

/** Reads a text column of a row whose key is known only when it runs. */
export function textIn(row: object, column: string): string {
  return fieldOf(row, column) as string;
}

/** The plan with everything that several rules look up, each worked out once and only when asked for. */
export class PlanIndex {
  readonly plan: Plan;
  readonly settings: Settings;
  readonly settingFaults: readonly SettingFault[];
  private readonly names = new Map<TableKey, ReadonlyMap<string, unknown>>();
  private readonly groups = new Map<string, ReadonlyMap<string, readonly unknown[]>>();
  private readonly sheets: ReadonlyMap<string, SheetSnapshot>;
  private readonly siteNetworks = new Map<string, readonly NetworkFacts[]>();
  private readonly sockets = new Map<string, readonly Socket[] | null>();
  private networkFacts: readonly NetworkFacts[] | null = null;
  private networksByName: ReadonlyMap<string, NetworkFacts> | null = null;
  private portFacts: readonly PortFacts[] | null = null;
  private arrayPorts: ReadonlyMap<PlanRow<"arrays">, readonly PortFacts[]> | null = null;

  constructor(readonly workbook: WorkbookSnapshot) {
    this.plan = readPlan(workbook);
    const { settings, faults } = readSettings(this.plan);
    this.settings = settings;
    this.settingFaults = faults;
    this.sheets = new Map(workbook.sheets.map((sheet) => [sheet.name, sheet]));
  }

  table(key: TableKey): ReadTable | null {
    return this.plan[key];
  }

  rows<Key extends TableKey>(key: Key): readonly PlanRow<Key>[] {
    return rowsOf(this.plan, key);
  }

  sheet(name: string): SheetSnapshot | null {
    return this.sheets.get(name) ?? null;
  }

  /** Proposes to write one cell of a table; null where the table lacks the column. */
  write(key: TableKey, row: number, column: string, value: Scalar): CellWrite | null {
    const table = this.table(key);
    return table === null ? null : writeCell(this.workbook, table, row, column, value);
  }

  /** Finds the row of a table by its name, without case; the first of two. */
  find<Key extends TableKey>(key: Key, name: string): PlanRow<Key> | null {
    let map = this.names.get(key) as ReadonlyMap<string, PlanRow<Key>> | undefined;
    if (map === undefined) {
      const column = nameColumn(key);
      const made = new Map<string, PlanRow<Key>>();
      for (const row of this.rows(key)) {
        const text = textIn(row, column);
        const folded = foldName(text);
        if (folded === "") continue;
        if (!made.has(folded)) made.set(folded, row);
        // Most names are spelt alike everywhere: those are found without folding them again.
        if (!made.has(text)) made.set(text, made.get(folded)!);
      }
      map = made;
      this.names.set(key, map);
    }
    return map.get(name) ?? map.get(foldName(name)) ?? null;
  }

  /** Groups the rows of a table by the text of one column, without case; rows with a blank there are left out. */
  groupBy<Key extends TableKey>(key: Key, column: string): ReadonlyMap<string, readonly PlanRow<Key>[]> {
    const id = `${key} ${column}`;
    let map = this.groups.get(id) as ReadonlyMap<string, readonly PlanRow<Key>[]> | undefined;
    if (map === undefined) {
      const made = new Map<string, PlanRow<Key>[]>();
      for (const row of this.rows(key)) {
        const folded = foldName(textIn(row, column));
        if (folded === "") continue;
        const list = made.get(folded);
        if (list === undefined) made.set(folded, [row]);
        else list.push(row);
      }
      map = made;
      this.groups.set(id, map);
    }
    return map;
  }

  /** Lists the rows of a table whose column names `name`. */
  rowsWith<Key extends TableKey>(key: Key, column: string, name: string): readonly PlanRow<Key>[] {
    return this.groupBy(key, column).get(foldName(name)) ?? [];
  }

  get networks(): readonly NetworkFacts[] {
    this.networkFacts ??= this.rows("networks").map(readNetwork);
    return this.networkFacts;
  }

  network(name: string): NetworkFacts | null {
    if (this.networksByName === null) {
      const made = new Map<string, NetworkFacts>();
      for (const one of this.networks) if (!made.has(foldName(one.row.network))) made.set(foldName(one.row.network), one);
      this.networksByName = made;
    }
    if (name === "") return null;
    return this.networksByName.get(name) ?? this.networksByName.get(foldName(name)) ?? null;
  }

  /** Lists the networks that reach a site: its own, and those of no site. */
  networksOfSite(site: string): readonly NetworkFacts[] {
    const folded = foldName(site);
    let list = this.siteNetworks.get(folded);
    if (list === undefined) {
      list = this.networks.filter(({ row }) => row.site === "" || foldName(row.site) === folded);
      this.siteNetworks.set(folded, list);
    }
    return list;
  }

  get ports(): readonly PortFacts[] {
    this.portFacts ??= this.rows("ports").map((row) => ({
      row,
      array: this.find("arrays", row.array),
      network: this.network(row.network),
      address: row.address === "" ? null : readAddress(row.address),
      to: row.switch === "" ? null : this.find("switches", row.switch),
      socket: socketOf(row.controller, row.port),
    }));
    return this.portFacts;
  }

  /** Lists the ports that an array has, controller by controller; null where a column is blank or cannot be read. */
  socketsOf({ controllers, ports }: PlanRow<"arrays">): readonly Socket[] | null {
    // Arrays of one model have the same ones: they are worked out once for all.
    const key = `${controllers}\n${ports}`;
    let list = this.sockets.get(key);
    if (list === undefined) {
      list = workOutSockets(controllers, ports);
      this.sockets.set(key, list);
    }
    return list;
  }

  /** Lists the port rows of an array. */
  portsOf(array: PlanRow<"arrays">): readonly PortFacts[] {
    if (this.arrayPorts === null) {
      const made = new Map<PlanRow<"arrays">, PortFacts[]>();
      for (const port of this.ports) {
        if (port.array === null) continue;
        const list = made.get(port.array);
        if (list === undefined) made.set(port.array, [port]);
        else list.push(port);
      }
      this.arrayPorts = made;
    }
    return this.arrayPorts.get(array) ?? [];
  }
}

/** Key of the column by which rows of a table are named. */
export function nameColumn(key: TableKey): string {
  return Object.entries((tables[key] as Table).columns).find(([, { required }]) => required === true)![0];
}

/** Names the controllers of an array; null where the cell is blank or cannot be read. */
export function controllersOf(array: PlanRow<"arrays">): string[] | null {
  return orNull(() => (array.controllers === "" ? null : parseControllerNames(array.controllers)));
}

function workOutSockets(controllers: string, ports: string): Socket[] | null {
  if (controllers === "" || ports === "") return null;
  return orNull(() => {
    const portNames = parsePortNames(ports);
    return parseControllerNames(controllers).flatMap((controller) => portNames.map((port, at) => ({ controller, port, at, socket: socketOf(controller, port) })));
  });
}

function socketOf(controller: string, port: string): string {
  return `${foldName(controller)}\n${foldName(port)}`;
}

/** Runs `read` and gives null where it refuses: another rule says why. */
export function orNull<T>(read: () => T): T | null {
  try {
    return read();
  } catch (thrown) {
    if (thrown instanceof Problem) return null;
    throw thrown;
  }
}

/** Runs `read` and gives the sentence with which it refuses; null where it does not. */
export function refusalOf(read: () => unknown): string | null {
  try {
    read();
    return null;
  } catch (thrown) {
    if (thrown instanceof Problem) return thrown.sentence;
    throw thrown;
  }
}

function readNetwork(row: PlanRow<"networks">): NetworkFacts {
  const gateway = foldName(row.gateway);
  return {
    row,
    prefix: row.prefix === "" ? null : orNull(() => parsePrefix(row.prefix)),
    gateway: gateway === "none" ? "none" : gateway === "" ? "blank" : readAddress(row.gateway),
    reserved: orNull(() => parseBlocks(row.reserved)),
    routing: foldName(row.routing),
  };
}

/** Finds the network of a list that an address lies in. */
export function networkHolding(networks: readonly NetworkFacts[], address: Address): NetworkFacts | null {
  return networks.find(({ prefix }) => prefix !== null && containsAddress(prefix, address)) ?? null;
}
