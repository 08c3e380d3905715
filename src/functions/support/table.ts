import { memoise } from "../../planning/quantity";
import { invalid } from "../../planning/text";
import { HeaderNames, type HeadedColumn } from "./header";
import type { Reader } from "./reader";
import { eachRow, rowPlace } from "./rows";
import { isBlank } from "../../sheet";

/** One column of a range that is read as a table. */
export interface Column<Value> extends HeadedColumn {
  /** Has no position: it is only there where a header names it. */
  readonly named: boolean;
  readonly read: (cells: readonly unknown[], places: readonly number[], row: TableRow) => Value;
}

/** What else there is to say of a column. */
interface ColumnRule {
  /** A table with a header may lack it; its reader knows what a blank means. */
  readonly optional?: boolean;
  /** Has no position: it is only there where a header names it. */
  readonly named?: boolean;
}

/** Where a row of a range stands. It is only put into words once a sentence needs it: there may be a hundred thousand rows. */
class TableRow {
  constructor(
    private readonly argument: string,
    /** Counted from the first row of the range. */
    readonly row: number,
  ) {}

  /** What a sentence calls the row, such as `needs row 2`. */
  get at(): string {
    return rowPlace(this.argument, this.row);
  }
}

type Columns = Readonly<Record<string, Column<unknown>>>;

/** One row as its columns have read it, and where it stands. */
export type RowOf<Given extends Columns> = { readonly [Name in keyof Given]: Given[Name] extends Column<infer Value> ? Value : never } & Pick<TableRow, "row" | "at">;

/** What else there is to say of a table. */
export interface TableRule<Name> {
  /** Headings that are known and of no use here: the other columns of what people hand over. */
  readonly passes?: readonly string[];
  /** What to give where the range is blank; left out where a blank says that there are none. */
  readonly give?: string;
  /** Column without which a row says nothing and is passed over. */
  readonly without?: Name;
}

/** Declares a column of one cell a row; `headings` are the header cells that mean it, the first of them the one to write. */
export function column<Value>(title: string, headings: readonly string[], reader: Reader<Value>, rule: ColumnRule = {}): Column<Value> {
  const { read } = reader;
  return {
    ...headed(title, headings, reader, rule),
    many: false,
    read: (cells, places, row) => {
      const cell = cells[places[0] ?? -1];
      try {
        return read(cell, title);
      } catch {
        return read(cell, `${row.at} ${title}`);
      }
    },
  };
}

/** Declares a column that may stand several times: under a header each that is headed so, else all to the end of the row. Blank cells are passed over. */
export function columns<Value>(title: string, headings: readonly string[], reader: Reader<Value>, rule: ColumnRule = {}): Column<readonly Value[]> {
  const { read } = reader;
  return {
    ...headed(title, headings, reader, rule),
    many: true,
    read: (cells, places, { at }) => places.flatMap((place) => (isBlank(cells[place]) ? [] : [read(cells[place], `${at} ${title}`)])),
  };
}

function headed(title: string, headings: readonly string[], { anyText = false }: Reader<unknown>, { optional = false, named = false }: ColumnRule) {
  return { title, headings, anyText, optional: optional || named, named };
}

/** Reads a range as a table, a row each: the columns are found by their header, without one by their position. */
export function table<Given extends Columns>(given: Given, { passes, give, without }: TableRule<keyof Given> = {}): Reader<readonly RowOf<Given>[]> {
  const names = Object.keys(given);
  const readers = Object.values(given);
  const header = new HeaderNames(readers, passes);
  const decisive = without === undefined ? -1 : names.indexOf(String(without));
  const byPosition = memoise((width: number) => positions(readers, width));
  return {
    range: true,
    read: (received, argument) => {
      const rows: RowOf<Given>[] = [];
      eachRow(received, argument, header, (cells, row, headedPlaces) => {
        const places = headedPlaces ?? byPosition(cells.length);
        if (decisive >= 0 && isBlank(cells[places[decisive]![0] ?? -1])) return;
        const read = new TableRow(argument, row) as TableRow & Record<string, unknown>;
        for (let index = 0; index < names.length; index++) read[names[index]!] = readers[index]!.read(cells, places[index]!, read);
        rows.push(read as RowOf<Given>);
      });
      if (rows.length === 0 && give !== undefined) throw invalid(argument, null, `${argument} is blank. ${give}`);
      return rows;
    },
  };
}

/** Where columns stand in a row of `width` cells that no header names. */
function positions(given: readonly Column<unknown>[], width: number): number[][] {
  return given.map(({ many, named }, place) => (named ? [] : many ? Array.from({ length: Math.max(0, width - place) }, (_, index) => place + index) : [place]));
}

/** A cell of a range and the row it stands in. */
export interface CellOf<Value> {
  readonly value: Value;
  readonly row: number;
}

/** Which cells of a range are read, and what its headers are. */
export interface CellsRule {
  /** Header cells that mean the column to read. */
  readonly headings: readonly string[];
  /** Header cells that mean it where none of `headings` is there. */
  readonly otherwise?: readonly string[];
  readonly passes?: readonly string[];
  readonly give?: string;
  /** Reads blank cells too, of rows that hold something. */
  readonly blanks?: boolean;
}

/** Visits cells one by one: as received, with their row; `at` says where the one at hand stands, and only during the visit. */
export type VisitCell = (cell: unknown, row: number, at: () => string) => void;

/** Makes a visitor of every cell of a range: under a header those of the column it names, else all of them. Blank cells are passed over unless `blanks` says so. */
export function eachCell({ headings, otherwise = [], passes, blanks = false }: CellsRule, anyText = false): (received: unknown, argument: string, visit: VisitCell) => void {
  const column = { title: headings[0]!, anyText, optional: true, many: true };
  const header = new HeaderNames([{ ...column, headings }, { ...column, headings: otherwise }], passes);
  return (received, argument, visit) => {
    const kinds = new Set<boolean>();
    // One for the whole range: there may be a hundred thousand cells, and only the one at hand is ever asked for.
    const here = { row: 0, place: 0, width: 0 };
    const at = (): string => rowPlace(argument, here.row) + (here.width > 1 ? ` column ${here.place + 1}` : "");
    eachRow(received, argument, header, (cells, row, places) => {
      if (anyText && places === null && cells.length > 1) refuseMixture(cells, kinds, argument, headings[0]!);
      const under = places === null ? null : places[0]!.length > 0 ? places[0]! : places[1]!;
      if (under?.length === 0) throw invalid(argument, null, `${argument} has no column ${headings[0]!}. Add it, or leave out the header row.`);
      const length = under?.length ?? cells.length;
      here.row = row;
      here.width = cells.length;
      for (let index = 0; index < length; index++) {
        here.place = under?.[index] ?? index;
        const cell = cells[here.place];
        if (blanks || !isBlank(cell)) visit(cell, row, at);
      }
    });
  };
}

/** Refuses several columns of names, under no known header, among which there are numbers or addresses: each cell would become a name. */
function refuseMixture(cells: readonly unknown[], kinds: Set<boolean>, argument: string, heading: string): void {
  for (const cell of cells) if (!isBlank(cell)) kinds.add(typeof cell === "string" && !/^[\d./%]+$|:/.test(cell.trim()));
  if (kinds.size < 2) return;
  throw invalid(argument, null, `${argument} has several columns that are not all of names. Give the column of names alone, or with a header such as ${heading} on top.`);
}

/** Reads the cells of a range one by one. */
export function cells<Value>(reader: Reader<Value>, rule: CellsRule): Reader<readonly CellOf<Value>[]> {
  const { read, anyText } = reader;
  const visit = eachCell(rule, anyText);
  return {
    range: true,
    read: (received, argument) => {
      const found: CellOf<Value>[] = [];
      visit(received, argument, (cell, row, at) => {
        try {
          found.push({ value: read(cell, argument), row });
        } catch {
          found.push({ value: read(cell, at()), row });
        }
      });
      if (found.length === 0 && rule.give !== undefined) throw invalid(argument, null, `${argument} is blank. ${rule.give}`);
      return found;
    },
  };
}
