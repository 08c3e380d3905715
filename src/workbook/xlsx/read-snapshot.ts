import type { WorkbookSnapshot } from "../../sheet";
import { documentSnapshot } from "../document/document-snapshot";
import { readFile } from "./read-workbook";

/** Reads the bytes of an .xlsx file as a snapshot, with the results that the file carries. */
export function readSnapshot(bytes: Uint8Array): WorkbookSnapshot {
  return documentSnapshot(readFile(bytes).document);
}
