import type { Area, Cell } from "../workbook-model";
import { shownColumns, tabColumnKeys, tabColumns } from "./tab-columns";

const pointsPerLine = 13.5;
/** Width of one character of the sheet's unit, in points; prose runs a little narrower than digits. */
const pointsPerCharacter = 5.4;
const widths = tabColumnKeys.map((key) => tabColumns[key].width);
const shownWidth = widths.slice(0, shownColumns).reduce((sum, width) => sum + width, 0);

/** Works out how high a row must be, in points, for its longest wrapped text. */
export function rowHeight(cells: readonly Cell[], merges: readonly Area[]): number {
  let lines = 1;
  for (let column = 0; column < shownColumns; column += 1) {
    const value = cells[column]?.value;
    if (typeof value !== "string" || cells[column]!.style === "section" || cells[column]!.style === "note") continue;
    const merged = merges.find((area) => area.column === column);
    const width = widths.slice(column, column + (merged?.columns ?? 1)).reduce((sum, one) => sum + one, 0);
    const bold = cells[column]!.style === "expected" || cells[column]!.style === "label" ? 1.06 : 1;
    lines = Math.max(lines, countLines(value, width / bold));
  }
  return Math.min(409, Math.max(18, lines * pointsPerLine + 5));
}

/** Counts the lines that a text takes when it is wrapped between words. */
function countLines(text: string, width: number): number {
  let lines = 0;
  for (const paragraph of text.split("\n")) {
    let used = 0;
    lines += 1;
    for (const word of paragraph.split(" ")) {
      const length = word.length * 1.0;
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
const page = { width: 770, height: 500 };
/** Height of the two rows that stand again on every page. */
const titleHeight = 60;

/**
 * Chooses the rows that begin a new page: always `starts[0]`, and a later section where it would otherwise be cut although a page could
 * hold it, or where little more than its title would stand at the foot of a page.
 */
export function pageBreaks(heights: readonly number[], starts: readonly number[]): number[] {
  const room = page.height * ((shownWidth * pointsPerCharacter) / page.width) - titleHeight;
  const breaks: number[] = [];
  let used = 0;
  starts.forEach((start, index) => {
    const end = starts[index + 1] ?? heights.length;
    const block = heights.slice(start, end);
    const height = block.reduce((sum, one) => sum + one, 0);
    const beginning = block.slice(0, 3).reduce((sum, one) => sum + one, 0);
    if (index === 0 || (used + height > room && height <= room) || used + beginning > room) {
      breaks.push(start);
      used = 0;
    }
    for (const one of block) used = used + one > room ? one : used + one;
  });
  return breaks;
}
