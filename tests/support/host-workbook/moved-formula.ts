import { columnLetters, columnNumber, type CellPlace } from "../../../src/sheet";

/** Says a formula of one cell as the host says it in another: cells without a dollar sign move along. Reads it sign by sign. */
export function movedFormula(formula: string, from: CellPlace, to: CellPlace): string {
  let moved = "";
  let rest = formula;
  while (rest !== "") {
    const [piece] = /^(?:"(?:[^"]|"")*"|'(?:[^']|'')*'|\$?[A-Za-z]{1,3}\$?\d+(?![A-Za-z0-9_.(])|[A-Za-z_][A-Za-z0-9_.]*|\d+(?:\.\d+)?|[^])/.exec(rest)!;
    moved += movedPiece(piece, to.row - from.row, to.column - from.column);
    rest = rest.slice(piece.length);
  }
  return moved;
}

function movedPiece(piece: string, down: number, right: number): string {
  const [, fixedColumn, letters, fixedRow, digits] = /^(\$?)([A-Za-z]{1,3})(\$?)(\d+)$/.exec(piece) ?? [];
  const column = letters === undefined ? null : columnNumber(letters.toUpperCase());
  if (column === null) return piece;
  return `${fixedColumn}${fixedColumn === "$" ? letters : columnLetters(column + right)}${fixedRow}${fixedRow === "$" ? digits : Number(digits) + down}`;
}
