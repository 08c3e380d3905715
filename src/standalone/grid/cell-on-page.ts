import type { FUniver } from "@univerjs/core/facade";

/** Tells where on the page a cell of the sheet in front is drawn. */
export function cellOnPage(api: FUniver, container: HTMLElement, row: number, column: number): { readonly left: number; readonly bottom: number } {
  const cell = api.getActiveWorkbook()!.getActiveSheet().getRange(row, column).getCellRect();
  const canvas = container.querySelector("canvas[id^=univer-sheet-main-canvas]")!.getBoundingClientRect();
  return { left: canvas.left + cell.left, bottom: canvas.top + cell.bottom };
}
