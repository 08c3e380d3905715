// What the file library keeps of a sheet and its types leave out, as it stands in release 4.4.0. Only here is it looked into.
import type { Buffer as FileBytes, Cell, Column, ConditionalFormattingOptions, DataValidation, Row, Workbook, Worksheet } from "exceljs";

/** The members of a sheet that its types leave out, or say otherwise. */
interface SheetInside {
  /** Protection as it stood in the file. */
  sheetProtection: Readonly<Record<string, unknown>> | null | undefined;
  conditionalFormattings: ConditionalFormattingOptions[];
  /** Rules for typing, by the address of their area. */
  readonly dataValidations: { model: Record<string, DataValidation> };
  /** Null where a file says nothing of them. */
  readonly columns: readonly Partial<Column>[] | null;
  /** Place among the sheets, from 0. */
  orderNo: number;
  _rows: (Row | undefined)[];
  _columns: unknown;
  rowBreaks: unknown[];
  tables: object;
}

/** A named table of a sheet. */
export interface FileTable {
  readonly name: string;
  /** Address of its area, header row included. */
  readonly tableRef: string;
  readonly style?: object;
}

/** Opens what a sheet keeps beyond its types. */
export function insideOf(sheet: Worksheet): SheetInside {
  return sheet as Worksheet & SheetInside;
}

/** Lists the rows a sheet really has. The library's own walks either leave out empty ones with a look or make up every one between. */
export function storedRows(sheet: Worksheet): Row[] {
  return insideOf(sheet)._rows.filter((row) => row !== undefined);
}

/** Lists the cells a row really has. */
export function storedCells(row: Row): Cell[] {
  const { _cells } = row as Row & { readonly _cells: readonly (Cell | undefined)[] };
  return _cells.filter((cell) => cell !== undefined);
}

/** Reads the note of a cell. Not by the cell's own way, which answers for a merged cell with the note of the first. */
export function storedNote(cell: Cell): unknown {
  return (cell as Cell & { readonly _comment?: { readonly note: unknown } })._comment?.note;
}

/** Lists the tables of a sheet; the types call each a pair, which it is not. */
export function tablesOf(sheet: Worksheet): FileTable[] {
  const entries: readonly unknown[] = sheet.getTables();
  return entries.map((entry) => (entry as { readonly table: FileTable }).table);
}

/** Takes everything out of a sheet that is written anew. */
export function clearSheet(sheet: Worksheet): void {
  for (const merge of sheet.model.merges) sheet.unMergeCells(merge);
  Object.assign(insideOf(sheet), { _rows: [], _columns: null, rowBreaks: [], tables: {} });
}

/** Puts a sheet that is written into the form that goes into the file, and lets go of the library's objects, of which every cell is one. */
export function keepModelOnly(sheet: Worksheet): void {
  const { model } = sheet;
  Object.defineProperty(sheet, "model", { value: model });
  insideOf(sheet)._rows = [];
}

/** Loads a file. The types ask for the bytes of a page's own kind; any bytes will do. */
export async function loadInto(file: Workbook, bytes: Uint8Array): Promise<void> {
  // Rules for typing are read by us: taking them apart cell by cell, the library stalls on whole columns.
  await file.xlsx.load(bytes as Uint8Array & FileBytes, { ignoreNodes: ["dataValidations", "extLst"] });
}
