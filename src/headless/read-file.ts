import { isError, type SheetSnapshot, type WorkbookSnapshot } from "../sheet";
import { readSnapshot } from "../workbook/xlsx/read-snapshot";
import { readNamedFile } from "./command";
import { openHeadless } from "./open-headless";

/**
 * Reads a workbook file as it stands, with the results that it carries.
 *
 * Where a formula carries none, or another program did not know it, the engine computes the workbook first.
 */
export async function readWorkbookFile(name: string): Promise<WorkbookSnapshot> {
  const bytes = await readNamedFile(name);
  const snapshot = readSnapshot(bytes);
  if (!snapshot.sheets.some(lacksResults)) return snapshot;
  const workbook = await openHeadless(bytes);
  try {
    await workbook.settle();
    return await workbook.port.read();
  } finally {
    workbook.dispose();
  }
}

function lacksResults({ formulas, values }: SheetSnapshot): boolean {
  return formulas.some((line, row) =>
    line.some((formula, column) => {
      const shown = values[row]?.[column] ?? null;
      return formula !== null && (shown === null || (isError(shown) && shown.error === "#NAME?"));
    }),
  );
}
