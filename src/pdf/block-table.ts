import { cellText, type PackBlock, type PackLine } from "../planning/printouts";

/** Colour of what is said beside the lines. */
export const aside = "#3d4f49";

/** Points left and right of the text of a cell, and how wide a letter is where many are capitals and digits. */
const [padding, letter] = [4, 5.1];
const lineWidth = 0.5;

/** Letters of a word for which its column is always wide enough, and those of a line beyond which a text may be wrapped. */
const [surelyWhole, longestLine] = [24, 60];

/**
 * Lays a block out as one table: its title and its headers stand again on every page, no line is torn.
 *
 * Every cell is plain text, whatever stands in it. `width` is that of the page between its margins, in points.
 */
export function blockTable({ title, note, headers, lines, none }: PackBlock, width: number): object {
  const columns = lines.length === 0 ? 1 : headers.length;
  const widths = lines.length === 0 ? [width - 2 * padding] : columnWidths([headers, ...lines], width);
  const whole = (content: object): object[] => [{ ...content, colSpan: columns }, ...Array.from({ length: columns - 1 }, () => ({}))];
  const band = whole({ text: [{ text: title, bold: true, fontSize: 11 }, ...(note === "" ? [] : [{ text: `   ${note}`, color: aside, fontSize: 8 }])], fillColor: "#cfe0da" });
  const isNumbers = (at: number): boolean => lines.some((line) => typeof line[at] === "number" || typeof line[at] === "object");
  const head = headers.map((text, at) => ({ text, bold: true, fillColor: "#e6eeeb", ...(isNumbers(at) && { alignment: "right" }) }));
  const body = lines.length === 0 ? [whole({ text: none, color: aside })] : lines.map((line) => headers.map((_, at) => cellOf(line[at] ?? "", widths[at]!)));
  return {
    margin: [0, 8, 0, 0],
    table: { headerRows: lines.length === 0 ? 1 : 2, keepWithHeaderRows: 1, dontBreakRows: true, widths, body: [band, ...(lines.length === 0 ? [] : [head]), ...body] },
    layout: {
      hLineWidth: () => lineWidth,
      vLineWidth: () => lineWidth,
      hLineColor: () => "#b9c4c0",
      vLineColor: () => "#b9c4c0",
      paddingLeft: () => padding,
      paddingRight: () => padding,
      paddingTop: () => 2,
      paddingBottom: () => 2,
    },
  };
}

/** Makes a cell; a word that is longer than the column is torn rather than lost. */
function cellOf(value: PackLine[number], width: number): object {
  const text = cellText(value);
  const isTooLong = text.split(/\s/).some((word) => word.length * letter > width);
  return { text, ...(typeof value !== "string" && { alignment: "right" }), ...(isTooLong && { wordBreak: "break-all" }) };
}

/** Shares the width of the page among columns: first each has room for its longest word, then what is left goes by how long their lines are. */
function columnWidths(rows: readonly PackLine[], width: number): number[] {
  const columns = rows[0]!.map((_, at) => rows.map((row) => cellText(row[at] ?? "")));
  const longest = (texts: readonly string[], between: RegExp, most: number): number => Math.min(most, Math.max(1, ...texts.flatMap((text) => text.split(between).map((part) => part.length))));
  const words = columns.map((texts) => longest(texts, /\s/, surelyWhole) * letter);
  const lines = columns.map((texts, at) => Math.max(words[at]!, longest(texts, /\n/, longestLine) * letter));
  const sum = (points: readonly number[]): number => points.reduce((total, one) => total + one, 0);
  const room = width - columns.length * 2 * padding - (columns.length + 1) * lineWidth;
  const [least, wanted] = [sum(words), sum(lines)];
  if (least >= room) return words.map((one) => (one / least) * room);
  if (wanted <= room) return lines.map((one) => (one / wanted) * room);
  return words.map((one, at) => one + ((lines[at]! - one) / (wanted - least)) * (room - least));
}
