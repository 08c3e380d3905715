import { sheetSize, type Area } from "./area";
import { columnLetters, columnNumber } from "./column-letters";

/** A piece of a formula. The pieces of a formula put together are the formula. */
export interface FormulaToken {
  readonly kind: "text" | "sheet" | "cell" | "line" | "function" | "name" | "bracket" | "error" | "other";
  readonly text: string;
}

const kinds = ["text", "sheet", "error", "cell", "line", "other", "function", "name"] as const satisfies readonly FormulaToken["kind"][];

/** One group a kind, in the order of `kinds`: all tried at one place at once, which is ten times as fast as one after the other. */
const token = new RegExp(
  [
    String.raw`("(?:[^"]|"")*")`,
    // Behind a sheet stand cells: the second end of One!A1:One!B3 begins no run of sheets.
    String.raw`(?<!!)((?:'(?:[^']|'')*'|(?:\[\d+\])?[\p{L}\p{N}_.]+(?::[\p{L}\p{N}_.]+)?|\[\d+\])!)`,
    String.raw`(#(?:NULL!|DIV/0!|VALUE!|REF!|NAME\?|NUM!|N/A|SPILL!|CALC!|GETTING_DATA))`,
    String.raw`(\$?[A-Za-z]{1,3}\$?[1-9]\d{0,6}(?![\p{L}\p{N}_.\(]))`,
    // Whole columns or rows.
    String.raw`((?:\$?[A-Za-z]{1,3}:\$?[A-Za-z]{1,3}|\$?[1-9]\d{0,6}:\$?[1-9]\d{0,6})(?![\p{L}\p{N}_.\(!]))`,
    String.raw`(\d+(?:\.\d*)?(?:[Ee][+\-]?\d+)?|[^\p{L}\p{N}_\\\[\]"'#$]+)`,
    String.raw`([\p{L}_\\][\p{L}\p{N}_.\\?]*(?=\())`,
    String.raw`([\p{L}_\\][\p{L}\p{N}_.\\?]*)`,
  ].join("|"),
  "uy",
);

/** Takes a formula apart. Nothing is refused: what is not known is passed on as it is. */
export function formulaTokens(formula: string): FormulaToken[] {
  const tokens: FormulaToken[] = [];
  for (let at = 0; at < formula.length; ) {
    const next = tokenAt(formula, at);
    tokens.push(next);
    at += next.text.length;
  }
  return tokens;
}

function tokenAt(formula: string, at: number): FormulaToken {
  token.lastIndex = at;
  const match = token.exec(formula);
  if (match !== null) {
    const group = (match as readonly (string | undefined)[]).findIndex((text, index) => index > 0 && text !== undefined);
    return { kind: kinds[group - 1]!, text: match[0] };
  }
  if (formula[at] !== "[") return { kind: "other", text: formula[at]! };
  // Names of columns, brackets in brackets; an apostrophe keeps the next character from meaning anything.
  let depth = 0;
  for (let end = at; end < formula.length; end += 1) {
    if (formula[end] === "'") end += 1;
    else if (formula[end] === "[") depth += 1;
    else if (formula[end] === "]" && (depth -= 1) === 0) return { kind: "bracket", text: formula.slice(at, end + 1) };
  }
  return { kind: "bracket", text: formula.slice(at) };
}

/** Reads the name of a sheet, or of a run of sheets with a colon between the two, out of the piece that ends with an exclamation mark. */
export function sheetNameOf(prefix: string): string {
  const bare = prefix.slice(0, -1);
  return bare.startsWith("'") ? bare.slice(1, -1).replaceAll("''", "'") : bare;
}

/** Lists the sheets that a formula names; of a run of sheets the first and the last. A sheet of another workbook has that one's name in brackets before its own. */
export function sheetNamesIn(formula: string): string[] {
  // Most formulas name none, which is told at a glance.
  if (!formula.includes("!")) return [];
  return formulaTokens(formula).flatMap(({ kind, text }) => (kind === "sheet" ? sheetNameOf(text).split(":") : []));
}

/**
 * Prepares a formula to be written for cells so many rows and columns on, as a shared formula is meant: what is not fixed by a dollar sign moves.
 *
 * It is taken apart once, however many cells share it.
 */
export function formulaShifter(formula: string): (rows: number, columns: number) => string {
  const pieces: (string | LooseEnd)[] = [];
  const add = (piece: string | LooseEnd) => {
    const last = pieces.length - 1;
    if (typeof piece === "string" && typeof pieces[last] === "string") pieces[last] += piece;
    else pieces.push(piece);
  };
  for (const { kind, text } of formulaTokens(formula)) {
    if (kind === "cell") add(looseEnd(text));
    else if (kind === "line") text.split(":").flatMap((end, index) => (index === 0 ? [looseEnd(end)] : [":", looseEnd(end)])).forEach(add);
    else add(text);
  }
  return (rows, columns) => pieces.map((piece) => (typeof piece === "string" ? piece : shiftEnd(piece, rows, columns))).join("");
}

/** A cell, or the end of whole rows or columns, that moves. */
interface LooseEnd {
  readonly fixedColumn: string;
  readonly letters: string;
  /** Null where it is fixed or not there. */
  readonly column: number | null;
  readonly fixedRow: string;
  readonly digits: string;
  readonly row: number | null;
}

function looseEnd(text: string): LooseEnd | string {
  const [, fixedColumn = "", letters = "", fixedRow = "", digits = ""] = /^(\$?)([A-Z]*)(\$?)(\d*)$/i.exec(text) ?? [];
  // A row alone has its dollar sign where else the column has it.
  const column = letters === "" || fixedColumn !== "" ? null : (columnNumber(letters) ?? 0);
  const row = digits === "" || (letters === "" ? fixedColumn : fixedRow) !== "" ? null : Number(digits);
  return column === null && row === null ? text : { fixedColumn, letters, column, fixedRow, digits, row };
}

function shiftEnd({ fixedColumn, letters, column, fixedRow, digits, row }: LooseEnd, rows: number, columns: number): string {
  const [across, down] = [column === null ? null : column + columns, row === null ? null : row + rows];
  if ((across !== null && (across < 0 || across >= sheetSize.columns)) || (down !== null && (down < 1 || down > sheetSize.rows))) return "#REF!";
  return `${fixedColumn}${across === null || columns === 0 ? letters : columnLetters(across)}${fixedRow}${down ?? digits}`;
}

/** Cells that a formula looks at: on its own sheet where none is named; on all from one sheet to another where two are. */
export interface FormulaReference {
  readonly sheet?: string | undefined;
  readonly lastSheet?: string | undefined;
  readonly area: Area;
}

/** Lists the cells that a formula names outright, and not those it finds by a name, a table's column or a text. */
export function formulaReferences(formula: string): FormulaReference[] {
  const tokens = formulaTokens(formula);
  const found: FormulaReference[] = [];
  tokens.forEach(({ kind, text }, at) => {
    if (kind !== "cell" && kind !== "line") return;
    const [before, beforeThat] = [tokens[at - 1], tokens[at - 2]];
    const [after, last] = [tokens[at + 1], tokens[at + 2]];
    // The second end of a range is read with the first.
    if (before?.text === ":" && beforeThat?.kind === "cell") return;
    const end = kind === "cell" && after?.text === ":" && last?.kind === "cell" ? last.text : text;
    const sheets = before?.kind === "sheet" ? sheetsOf(before.text) : {};
    found.push({ ...sheets, area: areaBetween(kind === "line" ? text.split(":")[0]! : text, kind === "line" ? text.split(":")[1]! : end) });
  });
  return found;
}

function sheetsOf(prefix: string): Pick<FormulaReference, "sheet" | "lastSheet"> {
  const [first, last] = sheetNameOf(prefix).split(":");
  return { sheet: first, ...(last !== undefined && { lastSheet: last }) };
}

function areaBetween(one: string, other: string): Area {
  const [a, b] = [endOf(one), endOf(other)];
  const span = (first: number | null, second: number | null, all: number): [number, number] =>
    first === null || second === null ? [0, all] : [Math.min(first, second), Math.abs(first - second) + 1];
  const [row, rows] = span(a.row, b.row, sheetSize.rows);
  const [column, columns] = span(a.column, b.column, sheetSize.columns);
  return { row, column, rows, columns };
}

function endOf(text: string): { row: number | null; column: number | null } {
  const [, letters = "", digits = ""] = /^\$?([A-Z]*)\$?(\d*)$/i.exec(text) ?? [];
  return { row: digits === "" ? null : Number(digits) - 1, column: letters === "" ? null : columnNumber(letters) };
}
