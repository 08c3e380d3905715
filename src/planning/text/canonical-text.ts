import { sha256 } from "@noble/hashes/sha2";
import { base32 } from "@scure/base";
import { isoDateOf, showCell, type CellValue } from "../../sheet";

/**
 * Writes what a cell holds as one text that survives another spreadsheet program.
 *
 * Text in NFC with LF line ends, trimmed; numbers at 15 significant digits; with `isDate`, a day number from 61 on (where the sheet's
 * calendar is true) as an ISO date. A blank is "".
 */
export function canonicalText(cell: CellValue | undefined, isDate = false): string {
  // Most texts are below the first character that can join another.
  if (typeof cell === "string") return (/[\u0300-\uffff]/.test(cell) ? cell.normalize("NFC") : cell).replace(/\r\n?/g, "\n").trim();
  return (isDate && typeof cell === "number" ? isoDateOf(cell) : null) ?? showCell(cell);
}

/**
 * Computes the digest of a list of texts: SHA-256 (FIPS 180-4) over them, in base32 (RFC 4648), cut to `characters`.
 *
 * Each text is preceded by its length, so that moving a character from one to the next changes the digest.
 */
export function digestOf(texts: readonly string[], characters: number): string {
  const joined = texts.map((text) => `${text.length}:${text}`).join("\n");
  return base32.encode(sha256(joined)).slice(0, characters);
}
