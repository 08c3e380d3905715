import { columnPoints, pageRoom, type Area, type Cell, type Margins, type Paper, type PrintPlan } from "../../../sheet";
import { shownColumns, tabColumnKeys, tabColumns } from "./tab-columns";
import type { TabStyle } from "./tab-styles";
import { widthFor, wrappedLines } from "./text-lines";

/** Percent at which a tab prints: its 11 points come out as 9. */
const scale = 82;

/** As narrow as printers take them; header and footer stand in those at top and bottom. */
const marginsMm: Margins = { left: 10, right: 10, top: 12, bottom: 11, header: 6, footer: 5 };

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

/** Width of the column of the subjects, in characters, and the most that it takes so that each of them stands on one line. */
const [subjectWidth, widestSubject] = [14, 22];

/** Lists the widths that the columns of a tab may have on a paper: with the subjects of its grids wrapped, or each on one line. */
export function possibleWidths(paper: Paper, ofGrids: readonly string[]): number[][] {
  const needed = Math.ceil(Math.max(subjectWidth, ...ofGrids.map(widthFor)));
  return [subjectWidth, ...(needed <= widestSubject ? [needed] : [])].map((width) => columnWidthsOn(paper, width));
}

/** Finds how wide every column is, in characters: the step takes what the others leave of the width of a page. */
function columnWidthsOn(paper: Paper, subject: number): number[] {
  const room = roomOn(paper).width - spare;
  const widthsWith = (step: number): number[] => tabColumnKeys.map((key) => tabColumns[key].width ?? (key === "subject" ? subject : step));
  const pointsWith = (step: number): number => widthsWith(step).slice(0, shownColumns).reduce((sum, width) => sum + columnPoints(width), 0);
  return widthsWith(Math.floor((room - pointsWith(0)) / (columnPoints(1) - columnPoints(0))));
}

/** Points of a line of text, and those around all lines of a cell. */
const pointsPerLine = 14.5;
const pointsAround = 3;

/** A row of one line, and the highest that a sheet takes. */
const [lowest, highest] = [18, 409];

/** Lowest row, in points, in which people write by hand: 7 mm on paper. */
export const writingHeight = Math.ceil(((7 / 25.4) * 72 * 100) / scale);

/** Works out how high a row must be, in points, for its longest wrapped text in columns of these widths. */
export function rowHeight(cells: readonly Cell[], merges: readonly Area[], widths: readonly number[]): number {
  let lines = 1;
  for (let column = 0; column < shownColumns; column += 1) {
    const value = cells[column]?.value;
    if (typeof value !== "string" || isStyled(cells[column], "visit", "section", "note")) continue;
    const merged = merges.find((area) => area.column === column);
    const width = widths.slice(column, column + (merged?.columns ?? 1)).reduce((sum, one) => sum + one, 0);
    lines = Math.max(lines, wrappedLines(value, width, isStyled(cells[column], "expected", "label", "holdPointId")));
  }
  return Math.min(highest, Math.max(lowest, lines * pointsPerLine + pointsAround));
}

function isStyled(cell: Cell | undefined, ...styles: readonly TabStyle[]): boolean {
  return styles.some((style) => style === cell?.style);
}

/** Rows of a tab by what a page does with them. */
export interface PageRows {
  /** First row below the headers, which stand again on every page; what is above them stands on the first one alone. */
  readonly first: number;
  /** Sections that are better kept on one page, as what stands above their rows is needed to read them: their first row, and the one below their last. */
  readonly whole: ReadonlyMap<number, number>;
  /** Rows that are read with the row below: no page ends with one. */
  readonly heads: ReadonlySet<number>;
  /** Rows with which a page begins, however much room is left. */
  readonly fresh: ReadonlySet<number>;
  /** Rows in which nothing stands: no page holds such rows alone. */
  readonly blank: ReadonlySet<number>;
}

/** Chooses the rows at which pages begin, so that every program breaks alike: where no further row fits, and before what is better kept whole and fits a page of its own. */
export function pageBreaks(heights: readonly number[], { first, whole, heads, fresh, blank }: PageRows, paper: Paper): number[] {
  const heightOf = (from: number, to: number): number => heights.slice(from, to).reduce((sum, one) => sum + one, 0);
  const room = roomOn(paper).height - spare - heightOf(first - 1, first);
  const isMoved = (row: number, used: number): boolean => {
    const height = heightOf(row, whole.get(row) ?? row);
    return height <= room && used + height > room;
  };
  const breaks: number[] = [];
  let used = heightOf(0, first - 1);
  let isFilled = false;
  const begin = (row: number): void => {
    breaks.push(row);
    used = 0;
    isFilled = false;
  };
  for (let row = first, next = first; row < heights.length; row = next) {
    while (heads.has(next) && next + 1 < heights.length) next += 1;
    next += 1;
    if (isFilled && (fresh.has(row) || used + heightOf(row, next) > room || isMoved(row, used))) begin(row);
    for (let one = row; one < next; one += 1) {
      if (isFilled && used + heights[one]! > room) begin(one);
      used += heights[one]!;
      isFilled ||= !blank.has(one);
    }
  }
  return breaks;
}
