import { columnLetters, columnNumber, type CellPlace } from "../../../src/sheet";

/** A text in quotes, the name of a sheet, a cell, a name, a number, or one other sign. */
const piece = /^(?:"(?:[^"]|"")*"|'(?:[^']|'')*'|(\$?)([A-Za-z]{1,3})(\$?)(\d+)(?![A-Za-z0-9_.(])|[A-Za-z_][A-Za-z0-9_.]*|\d+[A-Za-z0-9_.]*|[^])/;

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
