import { mostDrives } from "../../planning/capacity";
import { invalid } from "../../planning/text";
import { parseDomainCell, type Domain, type Placement, type Room } from "../../planning/resilience";
import { readRows, type RangeRow } from "./cells";
import { readName } from "./names";
import { readCount } from "./numbers";

/** Words that make the first row of a placement its header. */
const headers = new Set([
  "member", "members", "drive", "drives", "disk", "array", "arrays", "device", "name", "node", "server", "controller", "port", "group",
  "rack", "racks", "feed", "feeds", "feed a", "feed b", "power feed", "supply", "source", "circuit", "switch", "switches", "shelf",
  "enclosure", "chassis", "row", "aisle", "room", "hall", "building", "site", "domain",
]);

/**
 * Reads a placement: a member a row, its name in the first column, then what it stands in, column by column, and a column Group wherever
 * it is.
 *
 * The columns are called by the header row; without one they are Column 2, Column 3 and so on. A column that is wholly blank, header
 * included, is left out.
 */
export function readPlacement(received: unknown, argument: string): Placement {
  const all = readRows(received, argument, []);
  const header = all[0] !== undefined && isHeader(all[0]) ? all[0] : null;
  const rows = header === null ? all : all.slice(1);
  if (rows.length === 0) throw invalid(argument, null, `${argument} is blank. Give a range with a member and its domains, such as rack and feed, in each row.`);
  if (rows.length > mostDrives) throw invalid(argument, rows.length, `${argument} has ${rows.length} members. Give at most ${mostDrives}.`);

  const domains: Domain[] = [];
  let groups: string[] | undefined;
  let members: string[] | null = null;
  const width = Math.max(...all.slice(0, 1).map(({ cells }) => cells.length));
  for (let column = 0; column < width; column += 1) {
    const title = header?.cells[column] ?? null;
    if (title === null && rows.every(({ cells }) => cells[column] === null)) continue;
    const name = title === null ? (column === 0 ? "Member" : `Column ${column + 1}`) : String(title);
    const at = ({ row }: RangeRow): string => `${argument} row ${row} ${name.slice(0, 40)}`;
    if (name.toLowerCase() === "group") groups = rows.map((row) => readName(row.cells[column], at(row)));
    else if (members === null) members = rows.map((row) => readName(row.cells[column], at(row)));
    else domains.push({ name, cells: rows.map((row) => parseDomainCell(readName(row.cells[column], at(row)), at(row))) });
  }
  if (domains.length === 0) throw invalid(argument, null, `${argument} has no domains. Add columns behind the members, such as rack and feed.`);
  return { domains, groups };
}

function isHeader({ cells }: RangeRow): boolean {
  return cells.some((cell) => typeof cell === "string" && headers.has(cell.toLowerCase())) && !cells.some((cell) => typeof cell === "number");
}

/** Reads the names of members from a range, row by row. */
export function readMembers(received: unknown, argument: string): string[] {
  const rows = readRows(received, argument, ["member", "members", "name", "names", "array", "arrays", "drive", "drives"]);
  const names = rows.flatMap(({ cells }) => cells.filter((cell) => cell !== null).map(String));
  if (names.length === 0) throw invalid(argument, received, `${argument} is blank. Give a range with the name of every member.`);
  if (names.length > mostDrives) throw invalid(argument, names.length, `${argument} has ${names.length} names. Give at most ${mostDrives}.`);
  return names;
}

/** Reads domains and the members each has room for, a row each; a blank room means any number. */
export function readRooms(received: unknown, argument: string): Room[] {
  const rows = readRows(received, argument, ["domain", "domains", "name", "rack", "racks", "feed", "feeds", "switch", "switches", "shelf", "site"]);
  if (rows.length === 0) throw invalid(argument, received, `${argument} is blank. Give a range with the name of every domain, and its room if it has a bound.`);
  return rows.map(({ row, cells }) => {
    const at = `${argument} row ${row}`;
    const room = cells[1] ?? null;
    return { name: readName(cells[0], `${at} name`), room: room === null ? null : readCount(room, `${at} room`, { min: 0, max: mostDrives, example: 4 }), at };
  });
}
