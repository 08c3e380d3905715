import type { Univer } from "@univerjs/core";
import { ISheetClipboardService } from "@univerjs/sheets-ui";

/**
 * Lets rows that come as plain text, their cells parted by tabs, stay in their columns.
 *
 * The engine trims the text first, so that a list whose first cell is empty moves to the left, keeps the carriage return of each line in
 * its last cell, and reads "<" in a cell as the beginning of a tag.
 */
export function keepPastedText(univer: Univer): void {
  const clipboard = univer.__getInjector().get(ISheetClipboardService);
  const paste = clipboard.legacyPaste.bind(clipboard);
  clipboard.legacyPaste = (html, text, files) => (html || files !== undefined || !text || !/[\t\n]/.test(text) ? paste(html, text, files) : paste(tableOf(text), undefined, undefined));
}

function tableOf(text: string): string {
  const lines = text.replace(/\r?\n$/, "").split(/\r?\n/);
  // Blanks at the end of a line are no part of its last cell: nobody sees them, and no name is found with them.
  const row = (line: string) => `<tr>${line.replace(/ +$/, "").split("\t").map((cell) => `<td>${escaped(cell)}</td>`).join("")}</tr>`;
  return `<table>${lines.map(row).join("")}</table>`;
}

const escaped = (cell: string) => cell.replace(/&/g, "&amp;").replace(/</g, "&lt;").replace(/>/g, "&gt;");
