import { canonicalText } from "../../text";
import { isBlank, isError, type CellValue } from "../../../sheet";

/** What stands in each cell of a row as a text that other programs leave alone, by the name of its column; empty cells are left out. */
export type RowTokens = ReadonlyMap<string, string>;

/** Tokens of cells whose text does not count: a formula of ours, which is the twin's matter, and an entry, which is carried as a record. */
export const tokens = { formula: "=", entry: "~" } as const;

const empty = ".";
const alphabet = "ABCDEFGHIJKLMNOPQRSTUVWXYZ234567";
/** Characters of a code: 25 bits, so that one text in 33 million passes for another. */
const codeLength = 5;

/** Says what a cell holds: what kind it is, so that 4 is not "4", then its text; a formula counts with what it shows. */
export function cellToken(value: CellValue | undefined, hasFormula: boolean): string {
  if (hasFormula) return `f${isBlank(value) ? "" : cellToken(value, false)}`;
  if (isBlank(value)) return "";
  const kind = isError(value) ? "e" : typeof value === "number" ? "n" : typeof value === "boolean" ? "b" : "t";
  return kind + canonicalText(value);
}

/**
 * Writes what stands in a row as one short text: a code for each of the columns in their order, one character where there is nothing to tell
 * apart, then name and code of every other cell.
 */
export function writeRowCode(columns: readonly string[], row: RowTokens): string {
  const codes = columns.map((name) => codeOf(row.get(name) ?? "")).join("");
  const others = [...row].filter(([name]) => !columns.includes(name)).map(([name, token]) => `+${hash(name)}${codeOf(token)}`);
  return codes.replace(/\.+$/, "") + others.join("");
}

/** Codes of a row by column, as they were read back. */
export interface RowCode {
  /** Tells whether a cell holds what it held when the code was written; "" for an empty one. */
  readonly holds: (name: string, token: string) => boolean;
  /** Tells whether a cell held a formula of ours. */
  readonly isFormula: (name: string) => boolean;
  /** Names of those of the columns in which something stood. */
  readonly filled: readonly string[];
  /** How many other cells held something. */
  readonly others: number;
}

const rowCodeText = /^((?:[.=~]|[A-Z2-7]{5})*)((?:\+[A-Z2-7]{5}(?:[=~]|[A-Z2-7]{5}))*)$/;

/** Reads what `writeRowCode` has written; null where the text is none. */
export function readRowCode(columns: readonly string[], text: string): RowCode | null {
  const match = rowCodeText.exec(text);
  if (text === "" || match === null) return null;
  const codes = match[1]!.match(/[.=~]|[A-Z2-7]{5}/g) ?? [];
  if (codes.length > columns.length) return null;
  const others = new Map((match[2]!.match(/\+[A-Z2-7]{5}(?:[=~]|[A-Z2-7]{5})/g) ?? []).map((one) => [one.slice(1, 1 + codeLength), one.slice(1 + codeLength)]));
  const known = new Map(columns.map((name, index) => [name, codes[index] ?? empty]));
  const codeIn = (name: string): string => known.get(name) ?? others.get(hash(name)) ?? empty;
  return {
    holds: (name, token) => codeIn(name) === codeOf(token),
    isFormula: (name) => codeIn(name) === tokens.formula,
    filled: columns.filter((name) => codeIn(name) !== empty),
    others: others.size,
  };
}

function codeOf(token: string): string {
  if (token === "") return empty;
  return token === tokens.formula || token === tokens.entry ? token : hash(token);
}

/** Hashes a text by FNV-1a over its UTF-16 units, 32 bits of which 25 are written in base32 (RFC 4648): fast, and no proof of anything. */
function hash(text: string): string {
  let bits = 0x811c9dc5;
  for (let index = 0; index < text.length; index += 1) bits = Math.imul(bits ^ text.charCodeAt(index), 0x01000193);
  bits ^= bits >>> 15;
  return Array.from({ length: codeLength }, (_, index) => alphabet[(bits >>> (5 * index)) & 31]).join("");
}
