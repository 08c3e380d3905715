import type { Univer } from "@univerjs/core";
import { ISheetClipboardService } from "@univerjs/sheets-ui";

/**
 * Lets rows that come as plain text, their cells parted by tabs, stay in their columns, whether they are pasted by the keys or by a menu.
 *
 * The engine trims the text first, so that a list whose first cell is empty moves to the left, keeps the carriage return of each line in
 * its last cell, and reads "<" in a cell as the beginning of a tag; from a menu it puts all of it into one cell.
 */
export function keepPastedText(univer: Univer): void {
  const clipboard = univer.__getInjector().get(ISheetClipboardService);
  const paste = clipboard.legacyPaste.bind(clipboard);
  clipboard.legacyPaste = (html, text, files) => (html || files !== undefined || !isTable(text) ? paste(html, text, files) : paste(tableOf(text), undefined, undefined));
  const pasteItem = clipboard.paste.bind(clipboard);
  clipboard.paste = async (item, type) => {
    const text = item.types.length === 1 && item.types[0] === plain ? await (await item.getType(plain)).text() : undefined;
    return pasteItem(isTable(text) ? new ClipboardItem({ "text/html": new Blob([tableOf(text)], { type: "text/html" }) }) : item, type);
  };
}

const plain = "text/plain";

function isTable(text: string | undefined): text is string {
  return text !== undefined && /[\t\n]/.test(text);
}

function tableOf(text: string): string {
  const lines = text.replace(/\r?\n$/, "").split(/\r?\n/);
  // Blanks at the end of a line are no part of its last cell: nobody sees them, and no name is found with them.
  const row = (line: string) => `<tr>${line.replace(/ +$/, "").split("\t").map((cell) => `<td>${escaped(cell)}</td>`).join("")}</tr>`;
  return `<table>${lines.map(row).join("")}</table>`;
}

const escaped = (cell: string) => cell.replace(/&/g, "&amp;").replace(/</g, "&lt;").replace(/>/g, "&gt;");
