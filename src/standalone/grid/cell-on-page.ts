import type { FUniver } from "@univerjs/core/facade";

/** Where on the page a cell of the sheet in front is drawn. */
export interface CellOnPage {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  /** Where the cells end on the right. */
  readonly edge: number;
  /** False where it is scrolled out of sight. */
  readonly isSeen: boolean;
}

/** Tells where on the page a cell of the sheet in front is drawn. */
export function cellOnPage(api: FUniver, container: HTMLElement, row: number, column: number): CellOnPage {
  const { left, right, top, bottom } = api.getActiveWorkbook()!.getActiveSheet().getRange(row, column).getCellRect();
  const canvas = container.querySelector("canvas[id^=univer-sheet-main-canvas]")!.getBoundingClientRect();
  return {
    left: canvas.left + left, right: canvas.left + right, top: canvas.top + top, bottom: canvas.top + bottom, edge: canvas.right,
    isSeen: top >= 0 && top < canvas.height && right > 0 && left < canvas.width,
  };
}
