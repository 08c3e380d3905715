/** What one cell holds as plain data; null is an empty cell. */
export type Scalar = string | number | boolean | null;

/** An error shown by a cell, such as `#VALUE!`. */
export interface CellError {
  readonly error: string;
}

export type CellValue = Scalar | CellError;

/** Tells whether a cell shows an error. */
export function isError(cell: CellValue | undefined): cell is CellError {
  return typeof cell === "object" && cell !== null;
}

/** What a cell shows whose formula is not computed yet: while a function is asked, and while data is fetched. */
const unfinished: ReadonlySet<string> = new Set(["#BUSY!", "#GETTING_DATA"]);

/** Tells whether a cell shows that its formula is still being computed: it will show something else. */
export function isBeingComputed(cell: CellValue | undefined): cell is CellError {
  return isError(cell) && unfinished.has(cell.error);
}

/** Tells whether a cell is empty, or holds nothing but blanks; an omitted argument is empty. */
export function isBlank(cell: unknown): boolean {
  return cell === null || cell === undefined || (typeof cell === "string" && cell.trim() === "");
}

/** Shows a cell as a person reads it: numbers at 15 significant digits, blank as "". */
export function showCell(cell: CellValue | undefined): string {
  if (cell === null || cell === undefined) return "";
  if (isError(cell)) return cell.error;
  if (typeof cell === "boolean") return cell ? "TRUE" : "FALSE";
  return typeof cell === "number" ? String(Number(cell.toPrecision(15))) : cell;
}

/** Most characters of a text in a cell, as the spreadsheet host's published limits have it. */
export const longestText = 32_767;
