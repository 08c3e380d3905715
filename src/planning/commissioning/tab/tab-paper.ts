import { pageScale, type Area, type Cell } from "../../../sheet";
import type { TabStyle } from "./tab-styles";
import { shownColumns, tabColumnKeys, tabColumns } from "./tab-columns";

const pointsPerLine = 14.5;
/** Prose runs a little narrower than the digits in which columns are measured. */
const proseWidth = 0.94;
const widths = tabColumnKeys.map((key) => tabColumns[key].width);

/** Works out how high a row must be, in points, for its longest wrapped text. */
export function rowHeight(cells: readonly Cell[], merges: readonly Area[]): number {
  let lines = 1;
  for (let column = 0; column < shownColumns; column += 1) {
    const value = cells[column]?.value;
    if (typeof value !== "string" || isStyled(cells[column], "visit", "section", "note")) continue;
    const merged = merges.find((area) => area.column === column);
    const width = widths.slice(column, column + (merged?.columns ?? 1)).reduce((sum, one) => sum + one, 0);
    const isBold = isStyled(cells[column], "expected", "label");
    lines = Math.max(lines, countLines(value, (width - 1) / (isBold ? 1 : proseWidth)));
  }
  return Math.min(409, Math.max(18, lines * pointsPerLine + 5));
}

function isStyled(cell: Cell | undefined, ...styles: readonly TabStyle[]): boolean {
  return styles.some((style) => style === cell?.style);
}

/** Counts the lines that a text takes when it is wrapped between words. */
function countLines(text: string, width: number): number {
  let lines = 0;
  for (const paragraph of text.split("\n")) {
    let used = 0;
    lines += 1;
    for (const word of paragraph.split(" ")) {
      const { length } = word;
      if (used > 0 && used + 1 + length > width) {
        lines += 1;
        used = 0;
      }
      used += (used > 0 ? 1 : 0) + length;
      while (used > width) {
        lines += 1;
        used -= width;
      }
    }
  }
  return lines;
}

/** Height, in points, that a landscape page has inside usual margins: that of A4, the lower of the two papers. */
const pageHeight = 487;
/** Height of the two rows that stand again on every page. */
const titleHeight = 60;

/** Rows of a tab by what a page does with them. */
export interface PageRows {
  /** First row below those that stand again on every page. */
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
export function pageBreaks(heights: readonly number[], { first, whole, heads, fresh, blank }: PageRows): number[] {
  const room = (100 * pageHeight) / pageScale("landscape", widths.slice(0, shownColumns)) - titleHeight;
  const heightOf = (from: number, to: number): number => heights.slice(from, to).reduce((sum, one) => sum + one, 0);
  const isMoved = (row: number, used: number): boolean => {
    const height = heightOf(row, whole.get(row) ?? row);
    return height <= room && used + height > room;
  };
  const breaks: number[] = [];
  let used = 0;
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
