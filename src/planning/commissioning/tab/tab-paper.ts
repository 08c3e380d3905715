import { columnPoints, pageRoom, type Area, type Cell, type Margins, type Paper, type PrintPlan } from "../../../sheet";
import { at, shownColumns, tabColumnKeys, tabColumns } from "./tab-columns";
import type { TabStyle } from "./tab-styles";
import { lineCount, type LineCount } from "./text-lines";

/** Percent at which a tab prints: its 11 points come out as 9. */
const scale = 82;

/** As narrow as printers take them; header and footer stand in those at top and bottom. */
const marginsMm: Margins = { left: 10, right: 10, top: 10.5, bottom: 10.5, header: 4.5, footer: 4.5 };

/** Says how a tab lies on paper. Programs that fit a sheet to a page pass over its breaks: here the columns are made for the paper. */
export function onPaper(paper: Paper): Pick<PrintPlan, "orientation" | "fitToWidth" | "scale" | "paper" | "marginsMm" | "firstPage"> {
  return { orientation: "landscape", fitToWidth: false, scale, paper, marginsMm, firstPage: 1 };
}

/** Finds how much of the columns and rows of a tab, in points, lies on a page. */
function roomOn(paper: Paper): { readonly width: number; readonly height: number } {
  const { width, height } = pageRoom(paper, marginsMm);
  return { width: (width * 100) / scale, height: (height * 100) / scale };
}

/** Points that stay free on the right, as every program rounds the widths of columns in its own way. */
const spare = 6;

/** Points of a line of text, as programs make rows of wrapped text in the default font of workbooks. */
const pointsPerLine = 15;

/** A row of one line, and the highest that a sheet takes. */
const [lowest, highest] = [18, 409];

/** To how many points programs round the height of a row. */
const pixel = 0.75;

/** Lowest row, in points, in which people write by hand: 7 mm on paper. */
export const writingHeight = Math.ceil(((7 / 25.4) * 72 * 100) / scale / pixel) * pixel;

/** A row of a tab, as its height is worked out. */
export interface PaperRow {
  readonly cells: readonly Cell[];
  /** Cells of it that run together. */
  readonly merges: readonly Area[];
  /** Lowest that it may be, in points. */
  readonly least: number;
}

/** Works out how high a row must be, in points, for its longest wrapped text in columns of these widths. */
export function rowHeight({ cells, merges, least }: PaperRow, widths: readonly number[]): number {
  const lines = cells.slice(0, shownColumns).map((cell, column) => {
    const across = merges.find((area) => area.column === column)?.columns ?? 1;
    return lineCountOf(cell)?.(widthOf(widths.slice(column, column + across))) ?? 1;
  });
  return heightOf(Math.max(1, ...lines), least);
}

/** Points of a character of a column, and those that a column has beside its characters. */
const besidePoints = columnPoints(0);
const characterPoints = columnPoints(1) - besidePoints;

/** Finds how many characters wide columns are that run together: those of each, and what they would have between them. */
function widthOf(widths: readonly number[]): number {
  return widths.reduce((sum, one) => sum + one, 0) + ((widths.length - 1) * besidePoints) / characterPoints;
}

function heightOf(lines: number, least: number): number {
  return Math.min(highest, Math.max(lowest, least, lines * pointsPerLine));
}

/** Measures what a cell shows; null where it takes one line in any case. */
function lineCountOf(cell: Cell | undefined): LineCount | null {
  if (typeof cell?.value !== "string" || isStyled(cell, "visit", "section", "note", "pocketHead", "pocket")) return null;
  return lineCount(cell.value, isStyled(cell, "expected", "label", "header", "holdPointId", "sideTitle"));
}

function isStyled(cell: Cell, ...styles: readonly TabStyle[]): boolean {
  return styles.some((style) => style === cell.style);
}

/** How many characters are tried at once when columns are widened, 1 to this: a line may need several to go. */
const mostAtOnce = 16;

/**
 * Finds how wide every column is, in characters: as wide as it must be, and what is left of the width of a page goes where it makes the rows lowest.
 *
 * Rows with merged cells take what comes of it. The step takes what nobody is the better for.
 */
export function columnWidthsOn(paper: Paper, rows: readonly PaperRow[]): number[] {
  const widths = tabColumnKeys.map((key): number => tabColumns[key].width);
  const room = roomOn(paper).width - spare - widths.slice(0, shownColumns).reduce((sum, width) => sum + columnPoints(width), 0);
  let left = Math.floor(room / characterPoints);
  const lines = rows.filter(({ merges }) => merges.length === 0).map(({ cells, least }) => new RowLines(cells, least, widths));
  while (left > 0) {
    let best = { column: at.step, more: left, rate: 0 };
    for (let column = 0; column < shownColumns; column += 1) {
      const decided = lines.filter(({ highestCell }) => highestCell === column);
      for (let more = 1; decided.length > 0 && more <= Math.min(left, mostAtOnce); more += 1) {
        const rate = decided.reduce((sum, row) => sum + row.gain(widths[column]! + more), 0) / more;
        if (rate > best.rate) best = { column, more, rate };
      }
    }
    widths[best.column]! += best.more;
    left -= best.more;
    for (const row of lines) row.widen(best.column, widths[best.column]!);
  }
  return widths;
}

/** How many lines each cell of a row takes, while its columns are widened. */
class RowLines {
  private readonly counts: readonly (LineCount | null)[];
  private readonly lines: number[];
  /** Column of the cell that alone decides how high the row is; null where there are several. */
  highestCell: number | null = null;
  private most = 1;
  private mostOfOthers = 1;

  constructor(
    cells: readonly Cell[],
    private readonly least: number,
    widths: readonly number[],
  ) {
    this.counts = cells.slice(0, shownColumns).map(lineCountOf);
    this.lines = this.counts.map((count, column) => count?.(widths[column]!) ?? 1);
    this.findHighest();
  }

  /** Tells by how many points the row is lower where the column of its highest cell has that width. */
  gain(width: number): number {
    return heightOf(this.most, this.least) - heightOf(Math.max(this.mostOfOthers, this.counts[this.highestCell!]!(width)), this.least);
  }

  widen(column: number, width: number): void {
    const count = this.counts[column];
    if (count === null || count === undefined) return;
    this.lines[column] = count(width);
    this.findHighest();
  }

  private findHighest(): void {
    this.most = Math.max(1, ...this.lines);
    const highest = this.lines.indexOf(this.most);
    this.mostOfOthers = this.lines.reduce((most, lines, column) => (column === highest ? most : Math.max(most, lines)), 1);
    this.highestCell = this.most === this.mostOfOthers ? null : highest;
  }
}

/** Rows of a tab by what a page does with them. */
export interface PageRows {
  /** First row below the headers, which stand again on every page; what is above them stands on the first one alone. */
  readonly first: number;
  /** Rows that are kept on one page wherever one holds them: the first, and the one below the last. */
  readonly whole: ReadonlyMap<number, number>;
  /** Rows that are read with the row below: no page ends with one. */
  readonly heads: ReadonlySet<number>;
  /** Rows in which nothing stands: no page holds such rows alone. */
  readonly blank: ReadonlySet<number>;
}

/** Chooses the rows at which pages begin, so that every program breaks alike: where no further row fits, and before what is better kept whole and fits a page of its own. */
export function pageBreaks(heights: readonly number[], { first, whole, heads, blank }: PageRows, paper: Paper): number[] {
  const sumOf = (from: number, to: number): number => heights.slice(from, to).reduce((sum, one) => sum + one, 0);
  const room = roomOn(paper).height - spare - sumOf(first - 1, first);
  const isMoved = (row: number, used: number): boolean => {
    const height = sumOf(row, whole.get(row) ?? row);
    return height <= room && used + height > room;
  };
  const breaks: number[] = [];
  let used = sumOf(0, first - 1);
  let isFilled = false;
  const begin = (row: number): void => {
    breaks.push(row);
    used = 0;
    isFilled = false;
  };
  for (let row = first, next = first; row < heights.length; row = next) {
    while (heads.has(next) && next + 1 < heights.length) next += 1;
    next += 1;
    if (isFilled && (used + sumOf(row, next) > room || isMoved(row, used))) begin(row);
    for (let one = row; one < next; one += 1) {
      if (isFilled && used + heights[one]! > room) begin(one);
      used += heights[one]!;
      isFilled ||= !blank.has(one);
    }
  }
  return breaks;
}
