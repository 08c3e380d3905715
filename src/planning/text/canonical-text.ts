import { sha256 } from "@noble/hashes/sha2";
import { base32 } from "@scure/base";
import { isoDateOf, showCell, type CellValue } from "../../sheet";

/**
 * Writes what a cell holds as one text that survives another spreadsheet program.
 *
 * Text in NFC with LF line ends, trimmed, with U+FFFD for half a surrogate pair, which no file can hold; numbers at 15 significant digits; with `isDate`, a day number from 61 on (where the sheet's
 * calendar is true) as an ISO date. A blank is "".
 */
export function canonicalText(cell: CellValue | undefined, isDate = false): string {
  if (typeof cell === "string") return canonicalCharacters(cell).replace(/\r\n?/g, "\n").trim();
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

/** Writes characters that can be written in two ways in one, and half of a pair as what it is: none. Most texts have neither. */
function canonicalCharacters(text: string): string {
  return /[\u0300-\uffff]/.test(text) ? text.normalize("NFC").replace(/\p{Surrogate}/gu, "\ufffd") : text;
}
