import { foldName, invalid, quote } from "../../planning/text";
import { isBlank } from "../../sheet";

/** What a header can say of one column. */
export interface HeadedColumn {
  /** What sentences call the column. */
  readonly title: string;
  /** Header cells that mean it: the names in which tables spill, and their plain synonyms. */
  readonly headings: readonly string[];
  /** A table with a header may lack it. */
  readonly optional: boolean;
  /** Several columns may be headed so. */
  readonly many: boolean;
  /** Any text is a value of it, a heading too. */
  readonly anyText: boolean;
}

/** The rows that are headers, and where each column stands: nowhere, in one place, or in several. */
export interface Header {
  readonly rows: readonly number[];
  readonly places: readonly (readonly number[])[];
}

/** Rows of a range, as received. */
export type Rows = readonly (readonly unknown[])[];

/**
 * Knows the header of one argument that takes a table.
 *
 * A row is a header if every filled cell of it is a known name and there are two or more; a sorted spill has it anywhere. In a range of one
 * column one name must do: it is a header where it could be no value of that column, and is refused where it could.
 */
export class HeaderNames {
  /** Column by folded heading; -1 for columns that are known and of no use. */
  private readonly known = new Map<string, number>();
  /** Bit n is set where some heading has n letters: nearly every cell is told apart by its length alone. */
  private lengths = 0;

  constructor(
    private readonly columns: readonly HeadedColumn[],
    passes: readonly string[] = [],
  ) {
    for (const heading of passes) this.add(heading, -1);
    columns.forEach(({ headings }, column) => {
      for (const heading of headings) this.add(heading, column);
    });
  }

  private add(heading: string, column: number): void {
    this.known.set(foldName(heading), column);
    this.lengths |= 1 << heading.length;
  }

  /** Column that a cell heads: -1 for one of no use, undefined for a cell that is no heading. */
  private headed(cell: unknown): number | undefined {
    if (typeof cell !== "string" || cell.length > 30) return undefined;
    const isLetter = cell.charCodeAt(0) > 64 && (this.lengths & (1 << cell.length)) !== 0;
    return isLetter || cell.charCodeAt(0) === 32 ? this.known.get(foldName(cell)) : undefined;
  }

  /** Finds the header of a range; null where it has none, and its columns go by their position. */
  find(rows: Rows, argument: string): Header | null {
    return rows.every((line) => line.length <= 1) ? this.findInOneColumn(rows, argument) : this.findInTable(rows, argument);
  }

  private findInOneColumn(rows: Rows, argument: string): Header | null {
    const found: number[] = [];
    for (let index = 0; index < rows.length; index++) if ((this.headed(rows[index]![0]) ?? -1) >= 0) found.push(index);
    if (found.length === 0) return null;
    const cell = rows[found[0]!]![0];
    const column = this.headed(cell)!;
    if (!this.columns[column]!.anyText) return { rows: found, places: this.columns.map((_, place) => (place === column ? [0] : [])) };
    throw invalid(argument, cell, `${argument} row ${found[0]! + 1} ${quote(cell)} heads a column. Leave the header out of the range.`);
  }

  private findInTable(rows: Rows, argument: string): Header | null {
    const found: number[] = [];
    let begun = false;
    for (let index = 0; index < rows.length; index++) {
      const line = rows[index]!;
      const first = line.find((cell) => !isBlank(cell));
      if (first === undefined) continue;
      if ((!begun || this.headed(first) !== undefined) && this.isHeader(line, argument, index)) found.push(index);
      begun = true;
    }
    if (found.length === 0) return null;
    const places = this.places(rows[found[0]!]!, argument);
    const other = found.find((index) => String(this.places(rows[index]!, argument)) !== String(places));
    if (other !== undefined) throw invalid(argument, null, `${argument} row ${other + 1} is a second header with other columns. Give one table at a time.`);
    return { rows: found, places };
  }

  private isHeader(line: readonly unknown[], argument: string, index: number): boolean {
    const filled = line.filter((cell) => !isBlank(cell));
    const headed = filled.map((cell) => this.headed(cell));
    const stranger = filled.find((_, place) => headed[place] === undefined);
    if (stranger === undefined) return filled.length > 1;
    const columns = new Set(headed.filter((column) => column !== undefined && column >= 0));
    if (columns.size < 2 || filled.some(isNoTitle)) return false;
    throw invalid(argument, stranger, `${argument} row ${index + 1} looks like a header, but its column ${quote(stranger)} is not known. Leave out that column, or the header row.`);
  }

  private places(line: readonly unknown[], argument: string): number[][] {
    const places = this.columns.map((): number[] => []);
    line.forEach((cell, place) => {
      const column = this.headed(cell) ?? -1;
      if (column >= 0) places[column]!.push(place);
    });
    this.columns.forEach(({ title, headings, optional, many }, column) => {
      const [first, second] = places[column]!;
      if (first === undefined && !optional) throw invalid(argument, null, `${argument} has no column ${headings[0]!}. Add it, or leave out the header row.`);
      if (second !== undefined && !many) {
        throw invalid(argument, line[second], `${argument} has two columns for ${title}: ${quote(line[first!])} and ${quote(line[second])}. Leave one of them out.`);
      }
    });
    return places;
  }
}

/** Tells what no column is called: a number, an address, a prefix, a size, an error. */
export function isNoTitle(cell: unknown): boolean {
  return typeof cell !== "string" || /^\s*[\d.+#-]|:/.test(cell);
}
