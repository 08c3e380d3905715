import Papa from "papaparse";
import { invalid, quote } from "../planning/text";
import type { CellValue, WorkbookSnapshot } from "../sheet";

/** The cells of a list, and what they stood on. */
export interface ListCells {
  readonly cells: readonly (readonly CellValue[])[];
  readonly from: string;
}

/**
 * Reads a list out of a file: the first sheet in sight of a workbook in which anything stands, or a text of separated values.
 *
 * A text is UTF-8 or UTF-16 with its mark, else UTF-8 where that can be read, else Windows-1252; what separates its values is found out.
 */
export async function readListFile(name: string, bytes: Uint8Array, readSnapshot: (bytes: Uint8Array) => Promise<WorkbookSnapshot>): Promise<ListCells> {
  if (bytes.length === 0) throw invalid("list", name, `${quote(name)} is empty. Choose the file in which the list stands.`);
  if (bytes[0] === 0x50 && bytes[1] === 0x4b) {
    const { sheets } = await readSnapshot(bytes);
    const sheet = sheets.find(({ visible, values }) => visible && values.length > 0);
    if (sheet === undefined) throw invalid("list", name, `Nothing stands on the sheets of ${quote(name)}. Choose the file in which the list stands.`);
    return { cells: sheet.values, from: `sheet ${sheet.name} of ${name}` };
  }
  const text = decode(bytes);
  if (noText.test(text)) throw invalid("list", name, `${quote(name)} is no list: it holds what no text holds. Save the list as .xlsx or .csv, then choose that.`);
  return { cells: readListText(text), from: name };
}

/** Characters that stand in files of other kinds, and in no text. */
// eslint-disable-next-line no-control-regex
const noText = /[\u0000-\u0008\u000e-\u001f]/;

/** Reads separated values, as RFC 4180 has them, with whatever separator they have; a value is always text. */
export function readListText(text: string): string[][] {
  if (text.trim() === "") throw invalid("list", null, "Nothing was pasted. Copy the rows of the list with their headers, then paste them here.");
  // A blank last line would count as a row of one value when the separator is guessed, which a short list of two columns does not outweigh.
  const { data, errors } = Papa.parse<string[]>(text.replace(/[\r\n]+$/, ""), { delimitersToGuess: ["\t", ";", "|", ","] });
  const broken = errors.find(({ type }) => type === "Quotes");
  if (broken !== undefined) throw invalid("list", null, `A quotation mark in row ${(broken.row ?? 0) + 1} of the list is not closed. Close it, or write two where one is meant.`);
  return data;
}

function decode(bytes: Uint8Array): string {
  const [first, second] = bytes;
  if (first === 0xff && second === 0xfe) return new TextDecoder("utf-16le").decode(bytes);
  if (first === 0xfe && second === 0xff) return new TextDecoder("utf-16be").decode(bytes);
  try {
    return new TextDecoder("utf-8", { fatal: true }).decode(bytes);
  } catch {
    return new TextDecoder("windows-1252").decode(bytes);
  }
}
