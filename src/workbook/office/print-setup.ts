import { cellAddress, type PrintPlan, type SheetPlan } from "../../sheet";

/** Sets how a sheet is printed. */
export function setUpPrint(sheet: Excel.Worksheet, print: PrintPlan, plan: SheetPlan): void {
  const layout = sheet.pageLayout;
  layout.orientation = print.orientation === "landscape" ? "Landscape" : "Portrait";
  if (print.fitToWidth) layout.zoom = { scale: pageScale(print, plan) };
  if (print.titleRows !== undefined) layout.setPrintTitleRows(`$${print.titleRows.row + 1}:$${print.titleRows.row + print.titleRows.rows}`);
  if (print.header !== undefined) layout.headersFooters.defaultForAllPages.centerHeader = print.header;
  if (print.footer !== undefined) layout.headersFooters.defaultForAllPages.centerFooter = print.footer;
  for (const row of print.breaksBefore) sheet.horizontalPageBreaks.add(cellAddress({ row, column: 0 }));
}

/**
 * Narrower side and longer side, in points, that both A4 (ISO 216) and US letter (8.5 by 11 inches) have, less 0.7 inches of margin on
 * both sides: which paper a printer holds is not known.
 */
const printable = { portrait: 595 - 2 * 50.4, landscape: 792 - 2 * 50.4 } as const;
/** Width of a column that has none of its own: 64 pixels. */
const ownPoints = 48;

/**
 * Finds the scale, in percent, at which all columns in sight fit on one page's width.
 *
 * Fitting by the host itself would be simpler, but a sheet that is fitted loses its page breaks. The host takes 10 to 400; nothing is enlarged.
 */
export function pageScale({ orientation }: Pick<PrintPlan, "orientation">, { columnWidths, hiddenColumns = [] }: Pick<SheetPlan, "columnWidths" | "hiddenColumns">): number {
  const points = columnWidths.reduce<number>((sum, width, column) => sum + (hiddenColumns.includes(column) ? 0 : width === null ? ownPoints : columnPoints(width)), 0);
  return Math.max(10, Math.min(100, Math.floor((100 * printable[orientation]) / Math.max(1, points))));
}

/** Turns a width in characters of the default font into points: 7 pixels a character and 5 beside them, at 96 pixels an inch. */
export function columnPoints(characters: number): number {
  return Math.round(characters * 7 + 5) * 0.75;
}
