import type { SavedFile } from "../workbook/engine/workbook-file";
import { openHeadless } from "./open-headless";

/** A file that was computed. */
export interface ComputedFile extends Omit<SavedFile, "pointing"> {
  /** Formulas of ours that have no answer, with the sentence that says why. */
  readonly failed: readonly { readonly cell: string; readonly error: string; readonly sentence: string }[];
}

/** Computes a workbook file in the engine: our formulas, those without a result, and live ones behind them; all others keep their figures. */
export async function computeFile(bytes: Uint8Array): Promise<ComputedFile> {
  const workbook = await openHeadless(bytes, { keepsVolatile: true });
  try {
    await workbook.settle();
    const failed = workbook.faults();
    const { bytes, outOfDate } = await workbook.closeFile();
    return { bytes, outOfDate, failed };
  } finally {
    workbook.dispose();
  }
}
