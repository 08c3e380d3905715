import { invalid } from "../../planning/text";
import type { Area } from "../../sheet";
import { InputReader } from "./formula-inputs";
import { isToCompute, isVolatile } from "./formula-kind";
import { outOfDate } from "./out-of-date";
import type { CellGrid, DocumentCell, DocumentSheet, WorkbookDocument } from "./workbook-document";

/** Rows from the first to the last of which a run of columns is needed. */
interface Strip {
  first: number;
  last: number;
  readonly column: number;
  readonly columns: number;
}

/** Most formulas that are computed: the engine takes well under ten seconds for as many. */
const mostFormulas = 20_000;

/** Most strips of one sheet that are told apart; of a sheet with more every cell is needed. */
const mostStrips = 200;

/**
 * Leaves of a document only what is needed to compute it: the formulas to be computed, those computed from them, and what these look at.
 *
 * Sheets, names and tables all stay, and so does what tells how far the cells of a sheet reach. The very document comes back where a formula
 * may look anywhere. A formula may fill cells that were left out: see `meetsLeftOut`. A file with too many formulas to compute is refused.
 */
export function neededCells(document: WorkbookDocument): WorkbookDocument {
  const open = [...formulas(document)].filter(({ cell, formula }) => isToCompute(cell, formula)).map(({ sheet, row, column }) => ({ sheet: sheet.id, row, column }));
  refuseMany(open.length);
  const places = new Set([...open, ...outOfDate(document, open, () => true)].map(({ sheet, row, column }) => `${sheet} ${row} ${column}`));
  refuseMany(places.size);
  const reader = new InputReader(document);
  const strips = new Map(document.sheets.map(({ id }) => [id, new Map<string, Strip>()]));
  for (const { sheet, row, column, cell, formula } of formulas(document)) {
    if (!places.has(`${sheet.id} ${row} ${column}`)) continue;
    const { areas, anything } = reader.inputsOf(sheet, formula);
    // One that answers anew each time keeps its figure, where it has one.
    if (anything && !(cell.hasResult === true && isVolatile(formula))) return document;
    addStrip(strips.get(sheet.id)!, cell.array ?? { row, column, rows: 1, columns: 1 });
    for (const one of areas) addStrip(strips.get(one.sheet)!, one.area);
  }
  // A formula that fills cells is needed with them or not at all.
  for (const { sheet, cell } of formulas(document)) if (cell.array !== undefined && strips.get(sheet.id)!.size > 0) addStrip(strips.get(sheet.id)!, cell.array);
  return { ...document, sheets: document.sheets.map((sheet) => neededSheet(sheet, [...strips.get(sheet.id)!.values()])) };
}

/** Tells whether one of the areas has a cell of a document in it that was left out of what is needed of it. */
export function meetsLeftOut(document: WorkbookDocument, needed: WorkbookDocument, areas: readonly { readonly sheet: string; readonly area: Area }[]): boolean {
  const gridOf = ({ sheets }: WorkbookDocument, id: string) => sheets.find((sheet) => sheet.id === id)!.cells;
  return areas.some(({ sheet, area }) => {
    const left = gridOf(needed, sheet);
    return [...gridOf(document, sheet)].some(
      ([row, line]) =>
        row >= area.row && row < area.row + area.rows && [...line.keys()].some((column) => column >= area.column && column < area.column + area.columns && left.get(row)?.has(column) !== true),
    );
  });
}

function refuseMany(count: number): void {
  if (count <= mostFormulas) return;
  const [there, most] = [count.toLocaleString("en"), mostFormulas.toLocaleString("en")];
  throw invalid("file", count, `This file has ${there} formulas to compute; ${most} is the most. Let a spreadsheet program compute and save it, or split it.`);
}

function addStrip(strips: Map<string, Strip>, { row, column, rows, columns }: Area): void {
  const key = `${column} ${columns}`;
  const strip = strips.get(key);
  if (strip === undefined) strips.set(key, { first: row, last: row + rows - 1, column, columns });
  else [strip.first, strip.last] = [Math.min(strip.first, row), Math.max(strip.last, row + rows - 1)];
}

function neededSheet(sheet: DocumentSheet, strips: readonly Strip[]): DocumentSheet {
  if (strips.length > mostStrips) return sheet;
  const cells: CellGrid = new Map();
  const ends = endsOf(sheet.cells);
  for (const [row, line] of sheet.cells) {
    const meant = strips.filter(({ first, last }) => row >= first && row <= last);
    const isNeeded = (at: number) => meant.some(({ column, columns }) => at >= column && at < column + columns) || ends.some((end) => end.row === row && end.column === at);
    if (meant.length === 0 && !ends.some((end) => end.row === row)) continue;
    const kept = [...line].filter(([column]) => isNeeded(column));
    if (kept.length === line.size) cells.set(row, line);
    else if (kept.length > 0) cells.set(row, new Map(kept));
  }
  // Sums may leave out hidden rows; all else is for people who look.
  return { ...sheet, cells, rows: sheet.rows.filter(({ hidden }) => hidden === true), columns: [], typingRules: [], formats: [], notes: [] };
}

/** Lists the cells that reach furthest up, down, left and right. */
function endsOf(cells: CellGrid): { readonly row: number; readonly column: number }[] {
  const far: { row: number; column: number }[] = [];
  for (const [row, line] of cells) {
    for (const column of line.keys()) {
      const [up, down, left, right] = far;
      const here = { row, column };
      if (up === undefined || row < up.row) far[0] = here;
      if (down === undefined || row > down.row) far[1] = here;
      if (left === undefined || column < left.column) far[2] = here;
      if (right === undefined || column > right.column) far[3] = here;
    }
  }
  return far;
}

function* formulas({ sheets }: WorkbookDocument): Generator<{ sheet: DocumentSheet; row: number; column: number; cell: DocumentCell; formula: string }> {
  for (const sheet of sheets) {
    for (const [row, line] of sheet.cells) for (const [column, cell] of line) if (cell.formula !== undefined) yield { sheet, row, column, cell, formula: cell.formula };
  }
}
