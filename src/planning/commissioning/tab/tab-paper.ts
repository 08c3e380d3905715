import type { Area, Cell } from "../../../sheet";
import type { TabStyle } from "./tab-styles";
import { shownColumns, tabColumnKeys, tabColumns } from "./tab-columns";

const pointsPerLine = 14.5;
/** Width of a column for each of its characters, in points, and what is added to every column. */
const pointsPerCharacter = 5.25;
const pointsPerColumn = 3.75;
/** Prose runs a little narrower than the digits in which columns are measured. */
const proseWidth = 0.94;
const widths = tabColumnKeys.map((key) => tabColumns[key].width);
const shownWidth = widths.slice(0, shownColumns).reduce((sum, width) => sum + width, 0);

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

/** Printable part of a landscape A4 page inside usual margins, in points. */
const page = { width: 741, height: 487 };
/** Height of the two rows that stand again on every page. */
const titleHeight = 60;
/** A section that does not fit begins a new page only where less than this part of the page is left. */
const worthKeeping = 0.15;

/**
 * Chooses the sections that begin a new page: those that do not fit on the rest of the page, where that rest is small; one of `whole` also where
 * a page of its own would hold it, as what stands above its rows is needed to read them.
 */
export function pageBreaks(heights: readonly number[], sections: readonly number[], whole: ReadonlySet<number> = new Set()): number[] {
  const scale = (shownWidth * pointsPerCharacter + shownColumns * pointsPerColumn) / page.width;
  const room = page.height * scale - titleHeight;
  const breaks: number[] = [];
  const heightOf = (from: number, to: number): number => heights.slice(from, to).reduce((sum, one) => sum + one, 0);
  let used = heightOf(0, sections[0] ?? 0);
  sections.forEach((start, index) => {
    const end = sections[index + 1] ?? heights.length;
    const height = heightOf(start, end);
    const fitsAlone = whole.has(start) && height <= room;
    if (used + height > room && (fitsAlone || room - used < worthKeeping * room)) {
      breaks.push(start);
      used = 0;
    }
    for (const one of heights.slice(start, end)) used = used + one > room ? one : used + one;
  });
  return breaks;
}
