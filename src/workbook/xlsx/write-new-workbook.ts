import type { SheetPlan } from "../../sheet";
import { openDocumentPort } from "../document/document-port";
import { emptyDocument } from "../document/workbook-document";
import { writeFile } from "./write-workbook";

/** Makes the bytes of an .xlsx file in which some planned sheets stand, and nothing else. */
export async function writeNewWorkbook(plans: readonly SheetPlan[]): Promise<Uint8Array<ArrayBuffer>> {
  const { port, finish } = openDocumentPort(emptyDocument);
  await port.apply(plans.map((plan) => ({ kind: "add-sheet", plan })));
  return new Uint8Array(writeFile(null, emptyDocument, finish()));
}
