import { columnLetters, columnNumber, foldSheetName, formulaTokens, sameSheetName, sheetNameOf, sheetSize, type Area } from "../../sheet";
import type { LineMove } from "./workbook-document";

/** Moves a run of rows, or columns; null when all of it went. What is pushed over the end of the sheet is cut off, and all rows stay all rows. */
export function moveSpan(first: number, count: number, { axis, at, by }: LineMove): { readonly first: number; readonly count: number } | null {
  const size = axis === "row" ? sheetSize.rows : sheetSize.columns;
  if (first === 0 && count === size) return { first, count };
  if (by > 0) {
    const [start, length] = at <= first ? [first + by, count] : [first, at < first + count ? count + by : count];
    return start >= size ? null : { first: start, count: Math.min(length, size - start) };
  }
  const [gone, end] = [at - by, first + count];
  const left = count - Math.max(0, Math.min(gone, end) - Math.max(at, first));
  return left === 0 ? null : { first: first - Math.max(0, Math.min(gone, first) - at), count: left };
}

/** Moves an area when rows or columns come and go; null when all of it went. */
export function moveArea(area: Area, move: LineMove): Area | null {
  const moved = move.axis === "row" ? moveSpan(area.row, area.rows, move) : moveSpan(area.column, area.columns, move);
  if (moved === null) return null;
  return move.axis === "row" ? { ...area, row: moved.first, rows: moved.count } : { ...area, column: moved.first, columns: moved.count };
}

/** Moves what a formula says of the cells of a sheet in which rows or columns came or went. `own` is the sheet on which the formula stands. */
export function moveReferences(formula: string, own: string, sheet: string, move: LineMove): string {
  const tokens = formulaTokens(formula);
  const written: string[] = [];
  for (let at = 0; at < tokens.length; at += 1) {
    const token = tokens[at]!;
    const before = tokens[at - 1];
    const isMeant = before?.kind === "sheet" ? sameSheetName(sheetNameOf(before.text), sheet) : sameSheetName(own, sheet);
    const isRange = token.kind === "cell" && tokens[at + 1]?.text === ":" && tokens[at + 2]?.kind === "cell";
    if (!isMeant || (token.kind !== "cell" && token.kind !== "line")) {
      // The second end of a range is on the sheet of the first.
      written.push(token.text, ...(isRange ? [":", tokens[at + 2]!.text] : []));
      if (isRange) at += 2;
      continue;
    }
    written.push(token.kind === "line" ? moveEnds(token.text.split(":"), move, true) : moveEnds(isRange ? [token.text, tokens[at + 2]!.text] : [token.text], move, isRange));
    if (isRange) at += 2;
  }
  return written.join("");
}

/** Writes new names of sheets into a formula, all at once, as two sheets may have swapped theirs. Names are told without regard to case. */
export function renameReferences(formula: string, names: ReadonlyMap<string, string>): string {
  if (namesNoSheet(formula)) return formula;
  return formulaTokens(formula)
    .map(({ kind, text }) => {
      const name = kind === "sheet" ? names.get(foldSheetName(sheetNameOf(text))) : undefined;
      return name === undefined ? text : `'${name.replaceAll("'", "''")}'!`;
    })
    .join("");
}

/** Writes `#REF!` into a formula for every cell of a sheet that went. */
export function loseReferences(formula: string, sheet: string): string {
  if (namesNoSheet(formula)) return formula;
  const tokens = formulaTokens(formula);
  const written: string[] = [];
  for (let at = 0; at < tokens.length; at += 1) {
    const { kind, text } = tokens[at]!;
    const next = tokens[at + 1]?.kind;
    if (kind !== "sheet" || !sameSheetName(sheetNameOf(text), sheet) || (next !== "cell" && next !== "line")) {
      written.push(text);
      continue;
    }
    written.push("#REF!");
    at += next === "cell" && tokens[at + 2]?.text === ":" && tokens[at + 3]?.kind === "cell" ? 3 : 1;
  }
  return written.join("");
}

/** Tells at a glance that a formula names no sheet, as most do. */
function namesNoSheet(formula: string): boolean {
  return !formula.includes("!");
}

interface End {
  readonly fixedColumn: string;
  readonly letters: string;
  readonly fixedRow: string;
  readonly digits: string;
}

function moveEnds(ends: readonly string[], move: LineMove, isRange: boolean): string {
  const read = ends.map((end): End => {
    const [, fixedColumn = "", letters = "", fixedRow = "", digits = ""] = /^(\$?)([A-Z]*)(\$?)(\d*)$/i.exec(end) ?? [];
    return letters === "" ? { fixedColumn: "", letters, fixedRow: fixedColumn || fixedRow, digits } : { fixedColumn, letters, fixedRow, digits };
  });
  const numbers = read.map(({ letters, digits }) => (move.axis === "row" ? (digits === "" ? null : Number(digits) - 1) : letters === "" ? null : columnNumber(letters)));
  const [one, other] = [numbers[0], numbers.at(-1)];
  if (one === null || one === undefined || other === null || other === undefined) return ends.join(":");
  const moved = moveSpan(Math.min(one, other), Math.abs(other - one) + 1, move);
  if (moved === null) return "#REF!";
  const [first, last] = [moved.first, moved.first + moved.count - 1];
  const at = one <= other ? [first, last] : [last, first];
  return read.slice(0, isRange ? 2 : 1).map((end, index) => writeEnd(end, move, at[index]!)).join(":");
}

function writeEnd({ fixedColumn, letters, fixedRow, digits }: End, move: LineMove, number: number): string {
  return move.axis === "row" ? `${fixedColumn}${letters}${fixedRow}${number + 1}` : `${fixedColumn}${columnLetters(number)}${fixedRow}${digits}`;
}
