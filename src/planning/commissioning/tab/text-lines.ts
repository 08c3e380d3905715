/**
 * How wide letters are, as shares of a digit, in which columns are measured: those of the default font of workbooks, whose widths are those of
 * Carlito, the free font that stands in for it. What is not listed is a little wider than a digit.
 */
const widths: readonly (readonly [letters: string, width: number])[] = [
  [" il'’j", 0.46],
  [".,:;I|·", 0.53],
  ["()[]{}-fJ", 0.62],
  ["!tr", 0.69],
  ["sz/\\\"“”", 0.79],
  ["cxL", 0.85],
  ["gkvy?FSZ", 0.93],
  ["aETY", 0.96],
  ["e0123456789#$*+<=>^_~•–", 1],
  ["ABDGHNORUVQ&", 1.3],
  ["mw%—…", 1.58],
  ["MW@", 1.76],
];
const widthOf = new Map(widths.flatMap(([letters, width]) => [...letters].map((letter) => [letter, width] as const)));
const otherWidth = 1.06;
/** Ideographs and the like fill a square. */
const squareWidth = 2;
const firstSquare = 0x2e80;

/** How much wider bold letters are, and how much narrower than its width a column may come out. */
const boldShare = 1.03;
const columnShare = 0.97;

/** Finds how wide a column must be, in characters, for a text to stand on one line. */
export function widthFor(text: string): number {
  return textWidth(text) / columnShare;
}

/** Counts the lines that a text takes when it is wrapped between words in a column so many characters wide. */
export function wrappedLines(text: string, columnWidth: number, isBold: boolean): number {
  const width = (columnWidth * columnShare) / (isBold ? boldShare : 1);
  const space = textWidth(" ");
  let lines = 0;
  for (const paragraph of text.split("\n")) {
    let used = 0;
    lines += 1;
    for (const word of paragraph.split(" ")) {
      const wide = textWidth(word);
      if (used > 0 && used + space + wide > width) {
        lines += 1;
        used = 0;
      }
      used += (used > 0 ? space : 0) + wide;
      // A word that no line holds is broken wherever it comes to its end.
      while (used > width) {
        lines += 1;
        used -= width;
      }
    }
  }
  return lines;
}

function textWidth(text: string): number {
  return [...text].reduce((sum, letter) => sum + (widthOf.get(letter) ?? (letter.codePointAt(0)! >= firstSquare ? squareWidth : otherWidth)), 0);
}
