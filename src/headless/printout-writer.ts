import { extname } from "node:path";
import type { Printout } from "../planning/printouts";
import { invalid, quote } from "../planning/text";
import type { SheetPlan } from "../sheet";
import { writeNewWorkbook } from "../workbook/xlsx/write-new-workbook";

/** Makes the bytes of a printout, or of its sheet in a workbook of its own, and says which sheets are in them. */
type PrintoutWriter = (printout: Printout, sheet: SheetPlan) => Promise<{ readonly bytes: Uint8Array; readonly sheets: readonly string[] }>;

const writers: Readonly<Record<string, PrintoutWriter>> = {
  ".xlsx": async (_, sheet) => ({ bytes: await writeNewWorkbook([sheet]), sheets: [sheet.name] }),
  ".pdf": async (printout) => ({ bytes: await (await import("../pdf/write-printout")).writePrintout(printout), sheets: [] }),
};

/** Finds what makes a file by the end of its name; refuses a name that ends otherwise. */
export function printoutWriter(out: string): PrintoutWriter {
  const writer = writers[extname(out).toLowerCase()];
  if (writer === undefined) throw invalid("output", out, `${quote(out)} is neither a workbook nor a PDF. Name a file that ends in .xlsx or .pdf.`);
  return writer;
}
