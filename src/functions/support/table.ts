import { invalid } from "../../planning/text";
import type { Reader } from "./reader";
import { eachRow, rowPlace } from "./rows";
import { isBlank } from "./scalar";

/** One column of a range that is read as a table. */
export interface Column<Value> {
  /** What sentences call it. */
  readonly title: string;
  readonly read: (cells: readonly unknown[], place: number, row: TableRow) => Value;
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
  /** First cells that make the first row a header. */
  readonly headers: readonly string[];
  /** What to give where the range is blank; left out where a blank says that there are none. */
  readonly give?: string;
  /** Column without which a row says nothing and is passed over. */
  readonly without?: Name;
}

/** Declares a column of one cell a row. */
export function column<Value>(title: string, { read }: Reader<Value>): Column<Value> {
  return {
    title,
    read: (cells, place, row) => {
      try {
        return read(cells[place], title);
      } catch {
        return read(cells[place], `${row.at} ${title}`);
      }
    },
  };
}

/** Declares a last column that goes on to the end of the row, blank cells aside. */
export function columnsToTheEnd<Value>(title: string, { read }: Reader<Value>): Column<readonly Value[]> {
  return { title, read: (cells, place, { at }) => cells.slice(place).flatMap((cell) => (isBlank(cell) ? [] : [read(cell, `${at} ${title}`)])) };
}

/** Reads a range as a table: a row each, the columns by their position. */
export function table<Given extends Columns>(columns: Given, { headers, give, without }: TableRule<keyof Given>): Reader<readonly RowOf<Given>[]> {
  const names = Object.keys(columns);
  const readers = Object.values(columns);
  const decisive = without === undefined ? null : names.indexOf(String(without));
  return {
    range: true,
    read: (received, argument) => {
      const rows: RowOf<Given>[] = [];
      eachRow(received, argument, headers, (cells, row) => {
        if (decisive !== null && isBlank(cells[decisive])) return;
        const read = new TableRow(argument, row) as TableRow & Record<string, unknown>;
        for (let place = 0; place < names.length; place++) read[names[place]!] = readers[place]!.read(cells, place, read);
        rows.push(read as RowOf<Given>);
      });
      if (rows.length === 0 && give !== undefined) throw invalid(argument, null, `${argument} is blank. ${give}`);
      return rows;
    },
  };
}

/** A cell of a range and the row it stands in. */
export interface CellOf<Value> {
  readonly value: Value;
  readonly row: number;
}

/** Reads every cell of a range, row by row; blank cells are passed over, or read too where `blanks` says so. */
export function cells<Value>({ read }: Reader<Value>, { headers, give, blanks = "pass" }: TableRule<never> & { readonly blanks?: "pass" | "read" }): Reader<readonly CellOf<Value>[]> {
  return {
    range: true,
    read: (received, argument) => {
      const found: CellOf<Value>[] = [];
      eachRow(received, argument, headers, (line, row) => {
        for (const cell of line) if (blanks === "read" || !isBlank(cell)) found.push({ value: read(cell, rowPlace(argument, row)), row });
      });
      if (found.length === 0 && give !== undefined) throw invalid(argument, null, `${argument} is blank. ${give}`);
      return found;
    },
  };
}
