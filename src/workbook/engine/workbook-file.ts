import type { IWorkbookData } from "@univerjs/core";
import { cellAddress } from "../../sheet";
import { outOfDate, type SheetCell } from "../document/out-of-date";
import { cellAt, emptyDocument, putCell, type WorkbookDocument } from "../document/workbook-document";
import { moveParts } from "../xlsx/move-parts";
import { pointingParts, type ChangedSheet } from "../xlsx/pointing-parts";
import { readFile, readPackage, type OpenFile } from "../xlsx/read-workbook";
import { sameValue } from "../xlsx/write-cells";
import { writeFile } from "../xlsx/write-workbook";
import { documentOf } from "./document-of";
import { openDocument } from "./open-document";
import { extrasOf, type StoredWorkbook } from "./stored-sheet";

/** A file that was made, and the cells in it whose figures no longer follow from what they look at: they are saved without a result. */
export interface SavedFile {
  readonly bytes: Uint8Array;
  /** Such as Quote!B3. */
  readonly outOfDate: readonly string[];
  /** Parts of the file that are not known here and may point to other cells than before, after what moved or was renamed. */
  readonly pointing: readonly string[];
}

/** Reads an .xlsx file as a workbook of the engine; refuses with a sentence what is no workbook or too large. */
export function readWorkbook(file: Uint8Array | OpenFile, { keepsFigures = true } = {}): IWorkbookData {
  return openDocument(openedFile(file).document, { keepsFigures });
}

function openedFile(file: Uint8Array | OpenFile): OpenFile {
  return file instanceof Uint8Array ? readFile(file) : file;
}

/**
 * Makes an .xlsx file of a workbook of the engine: of `original`, the file it was opened from, in which only what differs is written, or a new one.
 *
 * The document of an open file may hold less than the file; what it does not hold stays as it stands. The open file is used up.
 */
export function writeWorkbook(stored: StoredWorkbook, original?: Uint8Array | OpenFile): SavedFile {
  const opened = original === undefined ? null : openedFile(original);
  const came = opened?.file.names() ?? [];
  const changed = opened === null ? [] : changedSheets(opened, stored);
  const pointing = opened === null ? [] : pointingParts(opened, changed.filter(({ moved }) => moved), came);
  const open = opened && withMoves(opened, stored);
  const base: WorkbookDocument = open?.document ?? emptyDocument;
  const before = asTheEngineTells(base);
  const after = documentOf(stored, base.looks);
  const stale = outOfDate(after, differences(before, after), ({ sheet, row, column }) => cellOf(after, sheet)(row, column)?.keepsFigure === true);
  const sheets = new Map(after.sheets.map((sheet) => [sheet.id, sheet]));
  for (const { sheet, row, column } of stale) {
    const { cells } = sheets.get(sheet)!;
    putCell(cells, row, column, { ...cellAt(cells, row, column)!, value: null, hasResult: false });
  }
  const places = stale.map(({ sheet, ...place }) => `${sheets.get(sheet)!.name}!${cellAddress(place)}`);
  const bytes = writeFile(open, before, after);
  // What followed the new names by now is not told of.
  if (open !== null) pointing.push(...pointingParts(open, changed.filter(({ moved }) => !moved), came).filter((part) => !pointing.includes(part)));
  return { bytes, outOfDate: places, pointing };
}

/** Lists the sheets of a file whose rows or columns moved since it was opened, or that have other names. */
function changedSheets({ sheets }: OpenFile, { data }: StoredWorkbook): ChangedSheet[] {
  return sheets.flatMap(({ id, part, name }) => {
    const sheet = id === null ? undefined : data.sheets[id];
    const moved = sheet !== undefined && (extrasOf(sheet).moves ?? []).length > 0;
    return moved || (sheet !== undefined && sheet.name !== name) ? [{ part, name, moved }] : [];
  });
}

/** Moves the parts of a file with the rows and columns that came and went while it was open, so that what is left to compare are cells. */
function withMoves(open: OpenFile, { data }: StoredWorkbook): OpenFile {
  const moves = open.sheets.flatMap(({ id, part, name }) => {
    const sheet = id === null ? undefined : data.sheets[id];
    return sheet === undefined ? [] : (extrasOf(sheet).moves ?? []).map((move) => ({ part, name, move }));
  });
  for (const move of moves) moveParts(open, move);
  return moves.length === 0 ? open : readPackage(open.file);
}

/** Tells of a file what the engine would tell of it untouched: what it rounds or leaves out on the way is no change. */
function asTheEngineTells(base: WorkbookDocument): WorkbookDocument {
  const told = documentOf({ data: openDocument(base, { showsSpilled: true }), spills: {} }, base.looks);
  base.sheets.forEach((sheet, index) => {
    const { cells } = told.sheets[index]!;
    for (const [row, line] of sheet.cells) {
      for (const [column, { array, isDynamic, hasResult, isDataTable }] of line) {
        if (array === undefined && hasResult !== false && isDataTable !== true) continue;
        const cell = cellAt(cells, row, column);
        if (cell !== undefined) putCell(cells, row, column, { ...cell, array, isDynamic, hasResult, isDataTable });
      }
    }
  });
  return told;
}

function cellOf({ sheets }: WorkbookDocument, id: string) {
  const cells = sheets.find((sheet) => sheet.id === id)?.cells;
  return (row: number, column: number) => (cells === undefined ? undefined : cellAt(cells, row, column));
}

/** Lists the cells of sheets that both have in which another value stands. */
function* differences(before: WorkbookDocument, after: WorkbookDocument): Generator<SheetCell> {
  for (const { id, cells } of after.sheets) {
    const old = before.sheets.find((sheet) => sheet.id === id)?.cells;
    if (old === undefined) continue;
    for (const [row, line] of cells) {
      for (const [column, { value }] of line) {
        const was = cellAt(old, row, column);
        if (was?.hasResult !== false && !sameValue(was?.value ?? null, value)) yield { sheet: id, row, column };
      }
    }
    for (const [row, line] of old) for (const [column, { value }] of line) if (value !== null && cellAt(cells, row, column) === undefined) yield { sheet: id, row, column };
  }
}
