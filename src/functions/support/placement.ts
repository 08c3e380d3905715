import { isBlank } from "../../sheet";
import { mostDrives } from "../../planning/capacity";
import { foldName, invalid, quote } from "../../planning/text";
import { parseDomainCell, type Domain, type Placement } from "../../planning/resilience";
import { atMost } from "./at-most";
import { HeaderNames, isNoTitle, type Rows } from "./header";
import { name } from "./names";
import { count, orNone } from "./numbers";
import { mapped, type Reader } from "./reader";
import { rowPlace, rowsOf } from "./rows";
import { readScalar } from "./scalar";
import { cells, column, table } from "./table";

/** Titles of the first column of a placement: what its members are called. */
const memberTitles = [
  "Member", "Members", "Name", "Names", "Drive", "Drives", "Disk", "Disks", "Array", "Arrays", "Device", "Devices",
  "Node", "Nodes", "Host", "Hosts", "Server", "Servers", "Controller", "Port",
];
/** Titles of its other columns that are known anywhere; people may call them what they like. */
const domainTitles = [
  "Domain", "Domains", "Rack", "Racks", "Feed", "Feeds", "Feed A", "Feed B", "Switch", "Switches", "Shelf", "Shelves",
  "Enclosure", "Chassis", "Row", "Aisle", "Room", "Hall", "Building", "Site",
];
const foldedMemberTitles = new Set(memberTitles.map(foldName));
const groupTitle = new Set(["group"]);
const foldedTitles = new Set([...memberTitles, ...domainTitles, "Group"].map(foldName));

/**
 * Reads a placement: a member a row, its name and what it stands in, column by column, and a column Group wherever it is.
 *
 * The columns are called by the header row, the first of which has a known title while the others are free; without one they are Column 2,
 * Column 3 and so on. The names stand in the first column with the title of members, else in the first there is. A column that is wholly
 * blank, header included, is left out.
 */
export const placement: Reader<Placement> = atMost(2 * mostDrives, {
  range: true,
  read: (received, argument) => {
    const grid = rowsOf(received);
    const header = findTitles(grid, argument);
    const rows = grid.flatMap((line, index) => (index === header || line.every(isBlank) ? [] : [{ line, row: index + 1 }]));
    if (rows.length === 0) throw invalid(argument, null, `${argument} is blank. Give a range with a member and its domains, such as rack and feed, in each row.`);
    if (rows.length > mostDrives) throw invalid(argument, rows.length, `${argument} has ${rows.length} members. Give at most ${mostDrives}.`);

    // Where a cell stands is only put into words once a sentence needs it: there may be a hundred thousand rows.
    const read = (cell: unknown, row: number, called: string): string => {
      try {
        return name.read(cell, called);
      } catch {
        return name.read(cell, at(row, called));
      }
    };
    const at = (row: number, called: string): string => `${rowPlace(argument, row)} ${called.slice(0, 40)}`;
    const domains: Domain[] = [];
    let groups: string[] | undefined;
    let members = header === null ? -1 : grid[header]!.findIndex((cell) => hasTitle(cell, foldedMemberTitles));
    for (let place = 0; place < rows[0]!.line.length; place += 1) {
      const title = header === null ? null : readScalar(grid[header]![place], rowPlace(argument, header + 1));
      if (title === null && rows.every(({ line }) => isBlank(line[place]))) continue;
      const called = title === null ? (place === 0 ? "Member" : `Column ${place + 1}`) : String(title);
      const named = rows.map(({ line, row }) => read(line[place], row, called));
      if (foldName(called) === "group") groups = named;
      else if (members < 0 || members === place) members = place;
      else domains.push({ name: called, cells: named.map((cell, index) => (cell.includes("+") ? parseDomainCell(cell, at(rows[index]!.row, called)) : [cell])) });
    }
    if (domains.length === 0) throw invalid(argument, null, `${argument} has no domains. Add columns behind the members, such as rack and feed.`);
    return { domains, groups };
  },
});

/**
 * Finds the header row of a placement; null where it has none.
 *
 * A row of known titles, that of the members among them, is one wherever it stands: a sorted spill has it further down. But titles of domains
 * are free, so a known first title makes the first row a header too. What cannot be told is asked: a first row without one of which no value
 * stands below as well, and one with it of which some value does.
 */
function findTitles(grid: Rows, argument: string): number | null {
  const first = grid.findIndex((line) => !line.every(isBlank));
  if (first < 0) return null;
  const whole = grid.findIndex((line) => mayBeTitles(line) && line.every((cell) => isBlank(cell) || hasTitle(cell, foldedTitles)) && line.some((cell) => hasTitle(cell, foldedMemberTitles)));
  if (whole >= 0) return whole;
  const titled = grid.findIndex((line, index) => mayBeTitles(line) && isFirstTitle(line) && (index === first || !someRecurs(grid, index)));
  const unclear = titled === first ? someRecurs(grid, first) : titled < 0 && mayBeTitles(grid[first]!) && !someRecurs(grid, first);
  const place = rowPlace(argument, (titled > 0 ? titled : first) + 1);
  if (unclear) throw invalid(argument, null, `${place} may be a header or a member. Put a header row on top, with Member as its first title.`);
  if (titled <= first) return titled < 0 ? null : first;
  throw invalid(argument, null, `${place} ${quote(grid[titled]![0])} looks like a header among the members. Put it in the first row, or leave it out.`);
}

function isFirstTitle([cell]: readonly unknown[]): boolean {
  return hasTitle(cell, foldedMemberTitles) || hasTitle(cell, groupTitle);
}

function hasTitle(cell: unknown, titles: ReadonlySet<string>): boolean {
  return typeof cell === "string" && titles.has(foldName(cell));
}

/** Tells whether a row could be titles: two texts or more, none of them a number or the like. */
function mayBeTitles(line: readonly unknown[]): boolean {
  const filled = line.filter((cell) => !isBlank(cell));
  return filled.length > 1 && !filled.some(isNoTitle);
}

/** Tells whether a value of one row stands in its column elsewhere too, alone or beside a +. */
function someRecurs(grid: Rows, index: number): boolean {
  return grid[index]!.some((cell, place) => {
    const values = new Set(valuesOf(cell));
    return values.size > 0 && grid.some((line, other) => other !== index && valuesOf(line[place]).some((value) => values.has(value)));
  });
}

function valuesOf(cell: unknown): string[] {
  return isBlank(cell) ? [] : String(cell).split("+").map(foldName);
}

/** The members that are to be placed. */
export interface Members {
  readonly names: readonly string[];
  /** Group of each, where the range says it. */
  readonly groups?: readonly string[];
}

const memberPasses = ["Domain", "Address", "Rack", "Feed"];
const memberCells = cells(name, { headings: memberTitles, passes: memberPasses, give: "Give a range with the name of every member." });
const groupedMembers = table(
  { name: column("name", memberTitles, name), group: column("group", ["Group"], name, { named: true }) },
  { passes: memberPasses },
);
const memberHeader = new HeaderNames(
  [
    { title: "name", headings: memberTitles, optional: true, many: true, anyText: true },
    { title: "group", headings: ["Group"], optional: true, many: false, anyText: true },
  ],
  memberPasses,
);

/** Reads the names of members from a range, row by row; a column Group, which needs a header, says the group of each. */
export const members: Reader<Members> = mapped(
  atMost(2 * mostDrives, {
    range: true,
    read: (received, argument): Members => {
      const header = memberHeader.find(rowsOf(received), argument);
      if (header === null || header.places[1]!.length === 0) return { names: memberCells.read(received, argument).map(({ value }) => value) };
      const rows = groupedMembers.read(received, argument);
      return { names: rows.map((row) => row.name), groups: rows.map(({ group }) => group) };
    },
  }),
  (members, argument) => {
    if (members.names.length > mostDrives) throw invalid(argument, null, `${argument} has ${members.names.length} names. Give at most ${mostDrives}.`);
    return members;
  },
);

const roomRows = table(
  {
    name: column("name", ["Domain", "Domains", "Name", "Rack", "Racks", "Feed", "Feeds", "Switch", "Switches", "Shelf", "Site"], name),
    room: column("room", ["Room", "Rooms", "Room for", "Members"], orNone(count({ min: 0, max: mostDrives, example: 4 })), { optional: true }),
  },
  { give: "Give a range with the name of every domain, and its room if it has a bound." },
);

/** Reads domains and the members each has room for, a row each; a blank room means any number. */
export const rooms = atMost(mostDrives, roomRows);
