import { isTextFormat, type Univer } from "@univerjs/core";
import { ISheetClipboardService } from "@univerjs/sheets-ui";
import type { LiveWorkbook } from "../../workbook/engine/live-workbook";

/** What of the engine's clipboard is private: how it reads the number format of a cell that another spreadsheet program copied. */
interface ForeignTables {
  readonly _htmlToUSM: { _getMsoNumfmtForNode(cell: HTMLTableCellElement): string | null | undefined };
}

/**
 * Lets what is text stay text: what another spreadsheet program says is text, and all that goes into cells for text.
 *
 * The engine takes the number out of a cell that comes with a format, and so makes 46024 of a bay called 1-2.
 */
export function keepForeignText(univer: Univer, live: LiveWorkbook): void {
  const tables = (univer.__getInjector().get(ISheetClipboardService) as unknown as ForeignTables)._htmlToUSM;
  const formatOf = tables._getMsoNumfmtForNode.bind(tables);
  const isForText = ({ cellIndex, parentElement }: HTMLTableCellElement) => {
    const range = live.selectedRange();
    const [row, column] = [(range?.startRow ?? 0) + (parentElement as HTMLTableRowElement).rowIndex, (range?.startColumn ?? 0) + cellIndex];
    return isTextFormat(live.workbook.getActiveSheet().getCellStyle(row, column)?.n?.pattern);
  };
  tables._getMsoNumfmtForNode = (cell) => {
    const format = formatOf(cell);
    return format && (isTextFormat(format.replace("\\", "")) || isForText(cell)) ? null : format;
  };
}

/**
 * Lets rows that come as plain text, their cells parted by tabs, stay in their columns, whether they are pasted by the keys or by a menu.
 *
 * The engine trims the text first, so that a list whose first cell is empty moves to the left, keeps the carriage return of each line in
 * its last cell, and reads "<" in a cell as the beginning of a tag; from a menu it puts all of it into one cell. Of a single word it makes a date
 * where it can, in a cell for text too.
 */
export function keepPastedText(univer: Univer): void {
  const clipboard = univer.__getInjector().get(ISheetClipboardService);
  const paste = clipboard.legacyPaste.bind(clipboard);
  clipboard.legacyPaste = (html, text, files) => (html || files !== undefined || !goesIntoCells(text) ? paste(html, text, files) : paste(tableOf(text), undefined, undefined));
  const pasteItem = clipboard.paste.bind(clipboard);
  clipboard.paste = async (item, type) => {
    const text = item.types.length === 1 && item.types[0] === plain ? await (await item.getType(plain)).text() : undefined;
    return pasteItem(goesIntoCells(text) ? new ClipboardItem({ "text/html": new Blob([tableOf(text)], { type: "text/html" }) }) : item, type);
  };
}

const plain = "text/plain";

/** Tells whether a text goes into cells as it is: whatever is no formula. */
function goesIntoCells(text: string | undefined): text is string {
  return text !== undefined && text !== "" && (/[\t\n]/.test(text) || !text.startsWith("="));
}

function tableOf(text: string): string {
  const lines = text.replace(/\r?\n$/, "").split(/\r?\n/);
  // Blanks at the end of a line are no part of its last cell: nobody sees them, and no name is found with them.
  const row = (line: string) => `<tr>${line.replace(/ +$/, "").split("\t").map((cell) => `<td>${escaped(cell)}</td>`).join("")}</tr>`;
  return `<table>${lines.map(row).join("")}</table>`;
}

const escaped = (cell: string) => cell.replace(/&/g, "&amp;").replace(/</g, "&lt;").replace(/>/g, "&gt;");
