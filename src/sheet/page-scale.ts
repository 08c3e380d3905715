import type { Margins, Paper, PrintPlan } from "./sheet-plan";

/** Shorter and longer side in millimetres: ISO 216, and 8.5 by 11 inches. */
const sidesMm = { A4: [210, 297], Letter: [215.9, 279.4] } as const;

/** Finds how wide and high, in points, a landscape page of a paper is inside its margins. */
export function pageRoom(paper: Paper, { left, right, top, bottom }: Margins): { readonly width: number; readonly height: number } {
  const [short, long] = sidesMm[paper];
  return { width: ((long - left - right) / 25.4) * 72, height: ((short - top - bottom) / 25.4) * 72 };
}

/**
 * Narrower side and longer side, in points, that both A4 (ISO 216) and US letter (8.5 by 11 inches) have, less 0.7 inches of margin on
 * both sides: which paper a printer holds is not known.
 */
const printable = { portrait: 595 - 2 * 50.4, landscape: 792 - 2 * 50.4 } as const;
/** Width of a column that has none of its own: 64 pixels. */
const ownPoints = 48;

/**
 * Finds the scale, in percent, at which columns of these widths (characters; null where a column has none of its own) fit on one page's width.
 *
 * Fitting by the program itself would be simpler, but a sheet that is fitted loses its page breaks. Programs take 10 to 400; nothing is enlarged.
 */
export function pageScale(orientation: PrintPlan["orientation"], widths: readonly (number | null)[]): number {
  const points = widths.reduce<number>((sum, width) => sum + (width === null ? ownPoints : columnPoints(width)), 0);
  return Math.max(10, Math.min(100, Math.floor((100 * printable[orientation]) / Math.max(1, points))));
}

/** Turns a width in characters of the default font into points: 7 pixels a character and 5 beside them, at 96 pixels an inch. */
export function columnPoints(characters: number): number {
  return Math.round(characters * 7 + 5) * 0.75;
}
