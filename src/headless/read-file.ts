import type { WorkbookSnapshot } from "../sheet";
import { documentSnapshot } from "../workbook/document/document-snapshot";
import { lacksResults } from "../workbook/document/formula-kind";
import { readFile } from "../workbook/xlsx/read-workbook";
import { readNamedFile } from "./command";

/**
 * Reads a workbook file as it stands, with the results that it carries.
 *
 * Where a formula carries none, or was not known to the program that saved it, the engine computes the workbook first.
 */
export async function readWorkbookFile(name: string): Promise<WorkbookSnapshot> {
  const bytes = await readNamedFile(name);
  const { document } = readFile(bytes);
  if (!lacksResults(document)) return documentSnapshot(document);
  const { openHeadless } = await import("./open-headless");
  const workbook = await openHeadless(bytes);
  try {
    await workbook.settle();
    return await workbook.port.read();
  } finally {
    workbook.dispose();
  }
}
