import { mostDrives } from "../../planning/capacity";
import { foldName, invalid } from "../../planning/text";
import { parseDomainCell, type Domain, type Placement } from "../../planning/resilience";
import { name } from "./names";
import { count, orNone } from "./numbers";
import { mapped, type Reader } from "./reader";
import { eachRow, rowPlace } from "./rows";
import { isBlank, readScalar } from "./scalar";
import { cells, column, table } from "./table";

/** Words that make the first row of a placement its header. */
const headers = new Set([
  "member", "members", "drive", "drives", "disk", "array", "arrays", "device", "name", "node", "server", "controller", "port", "group",
  "rack", "racks", "feed", "feeds", "feed a", "feed b", "power feed", "supply", "source", "circuit", "switch", "switches", "shelf",
  "enclosure", "chassis", "row", "aisle", "room", "hall", "building", "site", "domain",
]);

interface PlacementRow {
  readonly cells: readonly unknown[];
  readonly row: number;
}

/**
 * Reads a placement: a member a row, its name in the first column, then what it stands in, column by column, and a column Group wherever
 * it is.
 *
 * The columns are called by the header row; without one they are Column 2, Column 3 and so on. A column that is wholly blank, header
 * included, is left out.
 */
export const placement: Reader<Placement> = {
  range: true,
  read: (received, argument) => {
    const all: PlacementRow[] = [];
    eachRow(received, argument, [], (line, row) => all.push({ cells: line, row }));
    const header = all[0] !== undefined && isHeader(all[0], argument) ? all[0] : null;
    const rows = header === null ? all : all.slice(1);
    if (rows.length === 0) throw invalid(argument, null, `${argument} is blank. Give a range with a member and its domains, such as rack and feed, in each row.`);
    if (rows.length > mostDrives) throw invalid(argument, rows.length, `${argument} has ${rows.length} members. Give at most ${mostDrives}.`);

    const domains: Domain[] = [];
    let groups: string[] | undefined;
    let membered = false;
    for (let place = 0; place < all[0]!.cells.length; place += 1) {
      const title = header === null ? null : readScalar(header.cells[place], rowPlace(argument, header.row));
      if (title === null && rows.every(({ cells: line }) => isBlank(line[place]))) continue;
      const called = title === null ? (place === 0 ? "Member" : `Column ${place + 1}`) : String(title);
      const at = ({ row }: PlacementRow): string => `${rowPlace(argument, row)} ${called.slice(0, 40)}`;
      const named = rows.map((row) => name.read(row.cells[place], at(row)));
      if (foldName(called) === "group") groups = named;
      else if (!membered) membered = true;
      else domains.push({ name: called, cells: named.map((cell, index) => parseDomainCell(cell, at(rows[index]!))) });
    }
    if (domains.length === 0) throw invalid(argument, null, `${argument} has no domains. Add columns behind the members, such as rack and feed.`);
    return { domains, groups };
  },
};

function isHeader({ cells: line, row }: PlacementRow, argument: string): boolean {
  const scalars = line.map((cell) => readScalar(cell, rowPlace(argument, row)));
  return scalars.some((cell) => typeof cell === "string" && headers.has(cell.toLowerCase())) && !scalars.some((cell) => typeof cell === "number");
}

/** Reads the names of members from a range, row by row. */
export const members: Reader<readonly string[]> = mapped(
  cells(name, {
    headers: ["member", "members", "name", "names", "array", "arrays", "drive", "drives"],
    give: "Give a range with the name of every member.",
  }),
  (names, argument) => {
    if (names.length > mostDrives) throw invalid(argument, names.length, `${argument} has ${names.length} names. Give at most ${mostDrives}.`);
    return names.map(({ value }) => value);
  },
);

/** Reads domains and the members each has room for, a row each; a blank room means any number. */
export const rooms = table(
  { name: column("name", name), room: column("room", orNone(count({ min: 0, max: mostDrives, example: 4 }))) },
  {
    headers: ["domain", "domains", "name", "rack", "racks", "feed", "feeds", "switch", "switches", "shelf", "site"],
    give: "Give a range with the name of every domain, and its room if it has a bound.",
  },
);
