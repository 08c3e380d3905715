import { columnPoints } from "../../../sheet";

/**
 * How wide letters are at most, as shares of a digit, in which columns are measured: by the advance widths of Carlito, the free font that is as wide
 * as the default one of workbooks. What is not listed is a little wider than a digit.
 */
const widths: readonly (readonly [letters: string, width: number])[] = [
  [" il'", 0.455],
  ["j’.,I·", 0.5],
  [":;", 0.53],
  ["()[]{}-fJ", 0.63],
  ["!t", 0.665],
  ["r", 0.69],
  ["sz/\\", 0.78],
  ["\"“”", 0.83],
  ["cxL", 0.86],
  ["kvy", 0.9],
  ["g?FSZ|", 0.93],
  ["aETY", 0.965],
  ["e0123456789#$*+<=>^_~•–", 1],
  ["bdhnopquKPX", 1.04],
  ["BR", 1.075],
  ["AV", 1.145],
  ["DGH", 1.25],
  ["NU", 1.275],
  ["OQ&", 1.35],
  ["w%…", 1.41],
  ["m", 1.58],
  ["M", 1.69],
  ["W@—", 1.79],
];
const widthOf = new Map(widths.flatMap(([letters, width]) => [...letters].map((letter) => [letter, width] as const)));
const otherWidth = 1.06;
/** Ideographs and the like fill a square. */
const squareWidth = 2;
const firstSquare = 0x2e80;

/** How much wider bold letters are. */
const boldShare = 1.03;
/**
 * Points of a digit on paper, by its advance width in that font (1,038 of 2,048 units at 11 points): more than the 7 pixels by which columns are counted,
 * so that a wide column holds fewer digits than its number says. A cell keeps some points free on both sides.
 */
const digitPoints = (11 * 1038) / 2048;
const paddingPoints = 2;

/** Tells how many lines a text takes in a column so many characters wide. */
export type LineCount = (columnWidth: number) => number;

/** Measures a text once, to be wrapped between words in columns of any width. */
export function lineCount(text: string, isBold: boolean): LineCount {
  const paragraphs = text.split("\n").map((paragraph) => paragraph.split(" ").map(textWidth));
  // The same widths are tried again and again.
  const known = new Map<number, number>();
  return (columnWidth) => {
    const found = known.get(columnWidth);
    if (found !== undefined) return found;
    const width = (columnPoints(columnWidth) - paddingPoints) / digitPoints / (isBold ? boldShare : 1);
    const lines = paragraphs.reduce((sum, words) => sum + linesOf(words, width), 0);
    known.set(columnWidth, lines);
    return lines;
  };
}

const space = textWidth(" ");

function linesOf(words: readonly number[], width: number): number {
  let lines = 1;
  let used = 0;
  for (const word of words) {
    if (used > 0 && used + space + word > width) {
      lines += 1;
      used = 0;
    }
    used += (used > 0 ? space : 0) + word;
    // A word that no line holds is broken wherever it comes to its end.
    while (used > width) {
      lines += 1;
      used -= width;
    }
  }
  return lines;
}

function textWidth(text: string): number {
  let width = 0;
  for (const letter of text) width += widthOf.get(letter) ?? (letter.codePointAt(0)! >= firstSquare ? squareWidth : otherWidth);
  return width;
}
