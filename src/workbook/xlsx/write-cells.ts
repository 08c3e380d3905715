import { areaAddress, cellAddress, isError, type CellValue } from "../../sheet";
import { isOurs } from "../document/formula-kind";
import { cellAt, type CellGrid, type DocumentCell, type LineSetting } from "../document/workbook-document";
import { writeCellText, writePieces } from "./cell-text";
import { hasUnknownFunction, toFileFormula } from "./formula-text";
import { daysTo1904 } from "./read-cells";
import { shareFormulas, type FormulaGroup } from "./share-formulas";
import type { CellPlaceInFile, RowPlace, SheetOutline } from "./sheet-outline";
import { escapeXml, without, writeAttributes, type Splice } from "./xml";

/** What writing cells needs of the workbook. */
export interface CellWriting {
  /** Number in the file of a look of the document. */
  readonly styleOf: (look: number) => number;
  /** True for looks that show dates where the file counts days from 1904. */
  readonly movesDays: (look: number) => boolean;
  /** Number by which a cell names the mark of a formula that finds its own size; asked for only when there is one. */
  readonly dynamicMark: () => number;
}

/** A cell that is to be written over another; without one the cell went. */
export interface CellChange {
  readonly cell?: DocumentCell | undefined;
  /** True where only what the formula shows, or how, is new: it stays as it stands, whatever kind it is. */
  readonly keepsFormula?: boolean;
  /** True where the formula found its own size before. */
  readonly wasDynamic?: boolean;
}

export type CellChanges = Map<number, Map<number, CellChange>>;

/** Lists the cells that differ, row by row. */
export function changedCells(before: CellGrid, after: CellGrid): CellChanges {
  const changed: CellChanges = new Map();
  for (const [row, line] of after) {
    const old = before.get(row);
    for (const [column, cell] of line) {
      const was = old?.get(column);
      if (was === cell || (was !== undefined && sameCell(was, cell))) continue;
      note(changed, row, column, { cell, keepsFormula: was !== undefined && sameFormula(was, cell) && !isOursIn(cell), wasDynamic: was?.isDynamic === true });
    }
  }
  for (const [row, line] of before) {
    const now = after.get(row);
    for (const column of line.keys()) if (now?.has(column) !== true) note(changed, row, column, {});
  }
  return changed;
}

function note(changes: CellChanges, row: number, column: number, change: CellChange): void {
  const line = changes.get(row);
  if (line === undefined) changes.set(row, new Map([[column, change]]));
  else line.set(column, change);
}

function sameCell(one: DocumentCell, other: DocumentCell): boolean {
  if (one.look !== other.look || JSON.stringify(one.pieces) !== JSON.stringify(other.pieces) || !sameValue(one.value, other.value) || !sameFormula(one, other)) return false;
  return one.formula === undefined || (one.hasResult ?? true) === (other.hasResult ?? true);
}

/** A formula of ours is written as the spreadsheet host stores it, however another program spelt or marked it. */
function isOursIn({ formula }: DocumentCell): boolean {
  return formula !== undefined && isOurs(formula);
}

/** A formula fixed to its cells stays so; one that finds its own size is another when that changes. A formula of one cell may be either. */
function sameFormula(one: DocumentCell, other: DocumentCell): boolean {
  if (one.formula !== other.formula) return false;
  if (one.array === undefined) return other.array === undefined;
  if (other.array === undefined) return one.isDynamic !== true || one.array.rows * one.array.columns === 1;
  return areaAddress(one.array) === areaAddress(other.array);
}

export function sameValue(one: CellValue, other: CellValue): boolean {
  return isError(one) && isError(other) ? one.error === other.error : one === other;
}

/** Writes the rows of a sheet in which nothing stood, each as a text of its own. */
export function writeRows(prefix: string, cells: CellGrid, settings: ReadonlyMap<number, LineSetting | null>, writing: CellWriting): string[] {
  const groupOf = shareFormulas(cells);
  return [...new Set([...cells.keys(), ...settings.keys()])].sort((a, b) => a - b).map((row) => {
    const line = [...(cells.get(row) ?? [])].sort(([a], [b]) => a - b).map(([column, cell]) => writeCell(prefix, row, column, { cell }, writing, undefined, groupOf(row, column)));
    return writeRow(prefix, row, settings.get(row) ?? null, line.join(""), writing);
  });
}

function writeRow(prefix: string, row: number, setting: LineSetting | null, cells: string, writing: CellWriting): string {
  return `<${prefix}row${writeAttributes({ r: row + 1, ...rowAttributes(setting, writing) })}>${cells}</${prefix}row>`;
}

/** Makes the changes in the text of a sheet that turn its cells and rows into others. */
export function cellSplices(
  xml: string,
  outline: SheetOutline,
  changes: CellChanges,
  rowSettings: ReadonlyMap<number, LineSetting | null>,
  after: CellGrid,
  writing: CellWriting,
): Splice[] {
  const { prefix } = outline;
  const data = outline.sections.find(({ name }) => name === "sheetData")!;
  if (outline.rows.length === 0) return [{ start: data.start, end: data.end, text: `<${prefix}sheetData>${writeRows(prefix, after, rowSettings, writing).join("")}</${prefix}sheetData>` }];
  const splices: Splice[] = [];
  rewriteSharers(outline, changes, after);
  const all = [...new Set([...changes.keys(), ...rowSettings.keys()])].sort((a, b) => a - b);
  let next = 0;
  // New rows at one place go in together, in their order.
  const fresh = new Map<number, string[]>();
  for (const row of all) {
    while (next < outline.rows.length && outline.rows[next]!.row < row) next += 1;
    const found = outline.rows[next];
    const line = changes.get(row) ?? new Map<number, CellChange>();
    if (found?.row === row) splices.push(...rowSplices(xml, prefix, found, line, rowSettings.get(row), writing));
    else {
      const written = [...line].sort(([a], [b]) => a - b).map(([column, change]) => writeCell(prefix, row, column, change, writing));
      const at = found === undefined ? data.innerEnd : found.start;
      const text = writeRow(prefix, row, rowSettings.get(row) ?? null, written.join(""), writing);
      const texts = fresh.get(at);
      if (texts === undefined) fresh.set(at, [text]);
      else texts.push(text);
    }
  }
  for (const [at, texts] of fresh) splices.push({ start: at, end: at, text: texts.join("") });
  return splices;
}

/** Cells that share the formula of a cell that is written anew are written too: they can no longer be read without it. */
function rewriteSharers({ shared }: SheetOutline, changes: CellChanges, after: CellGrid): void {
  for (const [first, ...others] of shared.values()) {
    const change = first === undefined ? undefined : changes.get(first.row)?.get(first.column);
    if (change === undefined || change.keepsFormula === true) continue;
    for (const { row, column } of others) {
      const cell = cellAt(after, row, column);
      if (cell !== undefined) note(changes, row, column, { cell });
    }
  }
}

function rowSplices(
  xml: string,
  prefix: string,
  place: RowPlace,
  changes: ReadonlyMap<number, CellChange>,
  setting: LineSetting | null | undefined,
  writing: CellWriting,
): Splice[] {
  const splices: Splice[] = [];
  const inserted: [number, string][] = [];
  const known = new Map(place.cells.map((cell) => [cell.column, cell]));
  for (const [column, change] of [...changes].sort(([a], [b]) => a - b)) {
    const old = known.get(column);
    if (old !== undefined) splices.push({ start: old.start, end: old.end, text: writeCell(prefix, place.row, column, change, writing, standingFormula(xml, old)) });
    else if (change.cell !== undefined) {
      const behind = place.cells.find((one) => one.column > column);
      inserted.push([behind === undefined ? place.innerEnd : behind.start, writeCell(prefix, place.row, column, change, writing)]);
    }
  }
  if (inserted.length === 0 && setting === undefined) return splices;
  // What a row says of its first and last cell may no longer be so.
  const kept = without(place.attributes, "spans");
  const attributes = setting === undefined ? kept : { ...without(kept, "ht", "customHeight", "hidden"), ...rowAttributes(setting, writing) };
  const isEmpty = place.innerEnd === place.end;
  const opening = `<${prefix}row${writeAttributes({ ...attributes, r: place.row + 1 })}>`;
  if (isEmpty) return [{ start: place.start, end: place.end, text: `${opening}${inserted.map(([, text]) => text).join("")}</${prefix}row>` }];
  splices.push({ start: place.start, end: place.inner, text: opening });
  const byPlace = new Map<number, string>();
  for (const [at, text] of inserted) byPlace.set(at, (byPlace.get(at) ?? "") + text);
  for (const [at, text] of byPlace) splices.push({ start: at, end: at, text });
  return splices;
}

function rowAttributes(setting: LineSetting | null, writing: CellWriting): Record<string, string | number | undefined> {
  const { size, hidden, look } = setting ?? {};
  return {
    ...(look !== undefined && { s: writing.styleOf(look), customFormat: 1 }),
    ...(size !== undefined && { ht: size, customHeight: 1 }),
    ...(hidden === true && { hidden: 1 }),
  };
}

/** A formula element as it stands in the file, and the mark of its cell. */
interface StandingFormula {
  readonly text: string;
  readonly mark?: string | undefined;
}

function standingFormula(xml: string, { formula, attributes }: CellPlaceInFile): StandingFormula | undefined {
  return formula === null ? undefined : { text: xml.slice(formula.start, formula.end), mark: attributes["cm"] };
}

/** Errors that a file can hold by name; a younger one is stored as the nearest of them. */
const fileErrors: ReadonlySet<string> = new Set(["#NULL!", "#DIV/0!", "#VALUE!", "#REF!", "#NAME?", "#NUM!", "#N/A"]);

function writeCell(prefix: string, row: number, column: number, change: CellChange, writing: CellWriting, standing?: StandingFormula, group?: FormulaGroup): string {
  const { cell, keepsFormula = false, wasDynamic = false } = change;
  if (cell === undefined) return "";
  const place = { row, column };
  const style = writing.styleOf(cell.look);
  const opening = `<${prefix}c r="${cellAddress(place)}"${style === 0 ? "" : ` s="${style}"`}`;
  if (cell.formula === undefined && cell.value === null) return `${opening}/>`;
  let [formula, mark] = ["", undefined as string | number | undefined];
  if (keepsFormula && standing !== undefined && !hasUnknownFunction(standing.text)) [formula, mark] = [standing.text, standing.mark];
  else if (group !== undefined && group.area.row !== row) formula = `<${prefix}f t="shared" si="${group.number}"/>`;
  else if (cell.formula !== undefined) {
    // Without the mark the host reads a function of an add-in as one that answers with a single cell, and shows it with an "@" before it.
    const array = cell.array ?? (wasDynamic || isOursIn(cell) ? { ...place, rows: 1, columns: 1 } : undefined);
    if (array !== undefined && cell.isDynamic !== false) mark = writing.dynamicMark();
    const shared = group === undefined ? {} : { t: "shared", ref: areaAddress(group.area), si: group.number };
    formula = `<${prefix}f${writeAttributes(array === undefined ? shared : { t: "array", ref: areaAddress(array) })}>${escapeXml(toFileFormula(cell.formula))}</${prefix}f>`;
  }
  const { type, inside } = writeValue(prefix, cell, formula !== "", writing);
  return `${opening}${type === undefined ? "" : ` t="${type}"`}${mark === undefined ? "" : ` cm="${mark}"`}>${formula}${inside}</${prefix}c>`;
}

function writeValue(prefix: string, { value, look, pieces, hasResult = true }: DocumentCell, isComputed: boolean, writing: CellWriting): { readonly type?: string; readonly inside: string } {
  const written = (text: string) => `<${prefix}v>${text}</${prefix}v>`;
  if (isComputed && !hasResult) return { inside: "" };
  if (value === null) return isComputed ? { type: "str", inside: written("") } : { inside: "" };
  if (typeof value === "boolean") return { type: "b", inside: written(value ? "1" : "0") };
  if (typeof value === "number") {
    // No file can say infinity.
    if (!Number.isFinite(value)) return { type: "e", inside: written("#NUM!") };
    return { inside: written(String(writing.movesDays(look) ? value - daysTo1904 : value)) };
  }
  if (isError(value)) return { type: "e", inside: written(fileErrors.has(value.error) ? value.error : "#VALUE!") };
  if (isComputed) return { type: "str", inside: written(escapeXml(writeCellText(value))) };
  return { type: "inlineStr", inside: `<${prefix}is>${writePieces(prefix, { text: value, pieces })}</${prefix}is>` };
}
