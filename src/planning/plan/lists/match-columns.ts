import { parseAddress, parsePrefix } from "../../addressing";
import { isBlank, showCell } from "../../../sheet";
import { foldName } from "../../text";
import { orNull, type PlanModel } from "../model";
import { columnsOf, nameColumn, tables, type Column, type TableKey } from "../schema";
import type { List } from "./list";

/** Where a column of a list goes: a column of the table by its key, or nowhere; and what was said of how its cells are read. */
export interface Match {
  readonly column: string | null;
  readonly readAs: string;
}

/** What the trade calls our columns besides their headers, by the header: common practice, no source. */
const synonyms: Readonly<Record<string, readonly string[]>> = {
  Array: ["name", "device", "system", "hostname", "array name", "storage"],
  Site: ["location", "place", "building", "data centre", "data center"],
  Room: ["area", "hall"],
  Rack: ["cabinet", "rack name"],
  "Bottom unit": ["unit", "u", "position", "rack unit", "rack position", "u position", "lowest unit"],
  Units: ["height", "height u", "rack units", "size u"],
  Serial: ["serial no", "serial number", "s/n", "sn", "serial nr", "seriennummer"],
  Model: ["type", "product", "model name"],
  Firmware: ["firmware version", "version", "release", "fw"],
  Drives: ["disks", "number of drives", "drive count", "disk count", "hdds"],
  "Drive size": ["disk size", "drive capacity", "capacity per drive", "size per drive"],
  Scheme: ["raid", "raid level", "redundancy", "protection"],
  Spares: ["hot spares", "spare drives"],
  Address: ["ip", "ip address", "ipv4", "ipv6"],
  MTU: ["frame size", "packet size"],
  VLAN: ["vlan id", "vlan number"],
  Prefix: ["subnet", "network address", "cidr", "range"],
  Gateway: ["default gateway", "router"],
  Switch: ["switch name", "connected to"],
  "Switch port": ["switch interface", "remote port", "interface"],
  "Weight kg": ["weight", "mass"],
  Watts: ["power", "power w", "consumption"],
  "Warranty until": ["warranty", "warranty end", "support until"],
  Host: ["server", "name", "hostname"],
  "Initiator name": ["iqn", "initiator"],
  Contact: ["contact person", "responsible"],
  Cost: ["price", "purchase price", "unit cost", "unit price", "net price", "list price", "preis", "prix"],
  Part: ["part no", "part number", "article", "article no", "article number", "item", "item no", "item number", "sku", "product", "product no"],
  Description: ["text", "name", "designation", "title"],
  Quantity: ["qty", "amount", "count"],
};

/** Lists the columns of a table into which a list may go: all but formulas and the ids of arrays and jobs, which we alone write. */
export function openColumns(key: TableKey): readonly (readonly [name: string, column: Column])[] {
  return columnsOf(key).filter(([name, { kind }]) => kind !== "formula" && (name !== "id" || name === nameColumn(key)));
}

/** Proposes where each column of a list goes: as it went the last time, else by its header, else by what stands in it; no column gets two. */
export function proposeMatches(model: PlanModel, key: TableKey, list: List): Match[] {
  const taken = new Set<string>();
  const take = (match: Match): Match => {
    if (match.column === null) return match;
    if (taken.has(match.column)) return { column: null, readAs: "" };
    taken.add(match.column);
    return match;
  };
  const first = list.headers.map((header) => remembered(model, key, header) ?? byHeader(key, header));
  // What is known by its header comes first, wherever it stands.
  const sure = first.map((match) => (match === null ? null : take(match)));
  return sure.map((match, at) => match ?? take({ column: byContent(model, key, list, at), readAs: "" }));
}

function remembered(model: PlanModel, key: TableKey, header: string): Match | null {
  const row = model.rows("lists").find((one) => foldName(one.header) === foldName(header) && foldName(one.table) === foldName(tables[key].name));
  if (row === undefined) return null;
  const column = openColumns(key).find(([, one]) => foldName(one.header) === foldName(row.column))?.[0] ?? null;
  return { column, readAs: row.readAs };
}

function byHeader(key: TableKey, header: string): Match | null {
  const wanted = bare(header);
  const exact = openColumns(key).find(([, column]) => bare(column.header) === wanted);
  const column = exact ?? openColumns(key).find(([, { header: ours }]) => Object.hasOwn(synonyms, ours) && synonyms[ours]!.some((word) => bare(word) === wanted));
  return column === undefined ? null : { column: column[0], readAs: "" };
}

/** What stands between letters and digits says nothing: "Serial no." is "serial no". */
function bare(text: string): string {
  return foldName(text.replace(/[^\p{L}\p{N}]+/gu, " "));
}

/** Tells by the first rows where a column goes whose header says nothing: names of rows of another table, addresses, prefixes. */
function byContent(model: PlanModel, key: TableKey, list: List, at: number): string | null {
  const shown = list.rows.slice(0, 50).flatMap(({ cells }) => (isBlank(cells[at]) ? [] : [showCell(cells[at]).trim()]));
  if (shown.length === 0) return null;
  const mostly = (isOne: (text: string) => boolean) => shown.filter(isOne).length >= 0.8 * shown.length;
  const found = openColumns(key).find(([name, { header, from, several }]) => {
    if (name === nameColumn(key)) return false;
    if (from !== undefined && several !== true) return mostly((text) => model.find(from, text) !== null);
    if (header === "Address") return mostly((text) => orNull(() => parseAddress(text, header)) !== null);
    return header === "Prefix" && mostly((text) => text.includes("/") && orNull(() => parsePrefix(text, header)) !== null);
  });
  return found?.[0] ?? null;
}
