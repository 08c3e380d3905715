import { canonicalText } from "../../text";
import { isBlank, isError, type CellValue } from "../../../sheet";

/** What stands in each cell of a row as a text that other programs leave alone, by the name of its column; empty cells are left out. */
export type RowTokens = ReadonlyMap<string, string>;

/** Tokens of cells whose text does not count: a formula of ours, which is the twin's matter, and an entry, which is carried as a record. */
export const tokens = { formula: "=", entry: "~" } as const;

const empty = ".";
const marks = [empty, ...Object.values(tokens)].join("");
const alphabet = "ABCDEFGHIJKLMNOPQRSTUVWXYZ234567";
/** Characters of a code: 25 bits, so that one text in 33 million passes for another. */
const codeLength = 5;

/**
 * Says what a cell holds: what kind it is, so that 4 is not "4", then its text.
 *
 * A formula counts with what it shows, a number at 12 digits: other programs keep 15 of what it is computed from.
 */
export function cellToken(value: CellValue | undefined, hasFormula: boolean): string {
  if (hasFormula) return `f${cellToken(typeof value === "number" ? Number(value.toPrecision(12)) : value, false)}`;
  if (isBlank(value)) return "";
  const kind = isError(value) ? "e" : typeof value === "number" ? "n" : typeof value === "boolean" ? "b" : "t";
  return kind + canonicalText(value);
}

/** Codes of a row by column, as they were read back. */
export interface RowCode {
  /** Tells whether a cell holds what it held when the code was written; "" for an empty one. */
  readonly holds: (name: string, token: string) => boolean;
  /** Tells whether a cell held a formula of ours. */
  readonly isFormula: (name: string) => boolean;
  /** How many cells outside the known columns held something. */
  readonly others: number;
}

/** Writes and reads what stands in the rows of a sheet with some known columns. */
export class RowCodes {
  private readonly places: ReadonlyMap<string, number>;

  constructor(private readonly columns: readonly string[]) {
    this.places = new Map(columns.map((name, index) => [name, index]));
  }

  /**
   * Writes what stands in a row as one short text: a code for each of the columns in their order, one character where there is nothing to tell
   * apart, then name and code of every other cell.
   */
  write(row: RowTokens): string {
    let codes = "";
    let length = 0;
    let known = 0;
    for (const name of this.columns) {
      const code = codeOf(row.get(name) ?? "");
      codes += code;
      if (row.has(name)) known += 1;
      if (code !== empty) length = codes.length;
    }
    const others = row.size === known ? [] : [...row].filter(([name]) => !this.places.has(name)).map(([name, token]) => `+${hash(name)}${codeOf(token)}`);
    return codes.slice(0, length) + others.join("");
  }

  /** Reads what `write` has written; null where the text is none. */
  read(text: string): RowCode | null {
    const end = text.includes("+") ? text.indexOf("+") : text.length;
    if (text === "" || !rowCodeText.test(text)) return null;
    const codes: string[] = [];
    for (let at = 0; at < end; at += codes.at(-1)!.length) codes.push(marks.includes(text[at]!) ? text[at]! : text.slice(at, at + codeLength));
    if (codes.length > this.columns.length) return null;
    const others = text.slice(end).split("+").slice(1);
    const codeIn = (name: string): string => {
      const place = this.places.get(name);
      if (place !== undefined) return codes[place] ?? empty;
      const code = hash(name);
      return others.find((one) => one.startsWith(code))?.slice(codeLength) ?? empty;
    };
    return {
      holds: (name, token) => codeIn(name) === codeOf(token),
      isFormula: (name) => codeIn(name) === tokens.formula,
      others: others.length,
    };
  }
}

const rowCodeText = /^(?:[.=~]|[A-Z2-7]{5})*(?:\+[A-Z2-7]{5}(?:[=~]|[A-Z2-7]{5}))*$/;

function codeOf(token: string): string {
  if (token === "") return empty;
  return token === tokens.formula || token === tokens.entry ? token : hash(token);
}

/** Hashes a text by FNV-1a over its UTF-16 units, 32 bits of which 25 are written in base32 (RFC 4648): fast, and no proof of anything. */
function hash(text: string): string {
  let bits = 0x811c9dc5;
  for (let index = 0; index < text.length; index += 1) bits = Math.imul(bits ^ text.charCodeAt(index), 0x01000193);
  bits ^= bits >>> 15;
  const five = (shift: number): string => alphabet[(bits >>> shift) & 31]!;
  return five(0) + five(5) + five(10) + five(15) + five(20);
}
