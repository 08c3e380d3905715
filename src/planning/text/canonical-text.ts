import { sha256 } from "@noble/hashes/sha2";
import { base32 } from "@scure/base";
import { isoDateOf, type CellValue } from "../../sheet";

/**
 * Writes what a cell holds as one text that survives another spreadsheet program.
 *
 * Text in NFC with LF line ends, trimmed; numbers at 15 significant digits; with `isDate`, a day number from 61 on (where the sheet's
 * calendar is true) as an ISO date. A blank is "".
 */
export function canonicalText(cell: CellValue | undefined, isDate = false): string {
  if (cell === null || cell === undefined) return "";
  if (typeof cell === "object") return cell.error;
  if (typeof cell === "boolean") return cell ? "TRUE" : "FALSE";
  if (typeof cell === "string") return cell.normalize("NFC").replace(/\r\n?/g, "\n").trim();
  return (isDate ? isoDateOf(cell) : null) ?? String(Number(cell.toPrecision(15)));
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
