import { meetsLeftOut, neededCells } from "../workbook/document/needed-cells";
import type { WorkbookDocument } from "../workbook/document/workbook-document";
import type { SavedFile } from "../workbook/engine/workbook-file";
import type { OpenFile } from "../workbook/xlsx/read-workbook";
import { openHeadless } from "./open-headless";

/** A file that was computed. */
export interface ComputedFile extends Omit<SavedFile, "pointing"> {
  /** Formulas of ours that have no answer, with the sentence that says why. */
  readonly failed: readonly { readonly cell: string; readonly error: string; readonly sentence: string }[];
}

/**
 * Computes a workbook file in the engine: our formulas, those without a result, and live ones behind them; all others keep their figures. Uses the open
 * file up.
 *
 * The engine is given what these formulas look at. Only where one fills cells that were left out it is given the whole workbook.
 */
export async function computeFile(open: OpenFile): Promise<ComputedFile> {
  const needed = neededCells(open.document);
  return (await computed(open, needed)) ?? (await computed(open, open.document))!;
}

async function computed(open: OpenFile, document: WorkbookDocument): Promise<ComputedFile | null> {
  const workbook = await openHeadless({ ...open, document }, { keepsVolatile: true });
  try {
    await workbook.settle();
    if (document !== open.document && meetsLeftOut(open.document, document, workbook.spills())) return null;
    const failed = workbook.faults();
    const { bytes, outOfDate } = await workbook.closeFile();
    return { bytes, outOfDate, failed };
  } finally {
    workbook.dispose();
  }
}
