import { columnLetters, columnNumber, quoteSheetName, type CellPlace } from "../../../src/sheet";

/** A text in quotes, the name of a sheet, a cell, a name, a number, or one other sign. */
const piece = /^(?:"(?:[^"]|"")*"|'(?:[^']|'')*'|(\$?)([A-Za-z]{1,3})(\$?)(\d+)(?![A-Za-z0-9_.(])|[\p{L}_][\p{L}\p{N}_.]*|\d+[A-Za-z0-9_.]*|[^])/u;

/** Says a formula of one cell as the host says it in another: what has no dollar sign moves along. Reads it piece by piece. */
export function movedFormula(formula: string, from: CellPlace, to: CellPlace): string {
  let moved = "";
  for (let rest = formula; rest !== "";) {
    const [text, fixedColumn = "", letters = "", fixedRow = "", digits = ""] = piece.exec(rest)!;
    const column = columnNumber(letters);
    if (column === null || Number(digits) > 1_048_576) moved += text;
    else {
      const [right, down] = [to.column - from.column, to.row - from.row];
      moved += `${fixedColumn}${fixedColumn === "$" ? letters : columnLetters(column + right)}${fixedRow}${fixedRow === "$" ? digits : Number(digits) + down}`;
    }
    rest = rest.slice(text.length);
  }
  return moved;
}

/** Says a formula as the host says it once a sheet is called otherwise: what stands before an exclamation mark is the name of a sheet. */
export function renamedFormula(formula: string, from: string, to: string): string {
  // Most formulas name no sheet, which is told at a glance.
  if (!formula.includes("!")) return formula;
  let renamed = "";
  for (let rest = formula; rest !== "";) {
    const [text] = piece.exec(rest)!;
    rest = rest.slice(text.length);
    const name = text.startsWith("'") ? text.slice(1, -1).replaceAll("''", "'") : text;
    renamed += rest.startsWith("!") && name.toLowerCase() === from.toLowerCase() ? quoteSheetName(to) : text;
  }
  return renamed;
}

/** Does that to every formula in what was set of validations and formats. */
export function renamedSetting(value: unknown, from: string, to: string): unknown {
  if (typeof value === "string") return value.startsWith("=") ? renamedFormula(value, from, to) : value;
  if (typeof value !== "object" || value === null || Array.isArray(value)) return value;
  return Object.fromEntries(Object.entries(value).map(([key, part]) => [key, renamedSetting(part, from, to)]));
}
