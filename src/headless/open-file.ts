import { answersOfTab } from "../planning/commissioning/tab";
import { tableKeys } from "../planning/plan/schema";
import { readPlan } from "../planning/plan/read";
import { invalid, quote } from "../planning/text";
import { cellAddress } from "../sheet";
import { openDocumentPort } from "../workbook/document/document-port";
import { documentSnapshot } from "../workbook/document/document-snapshot";
import { cellsWithoutResult, lacksResults } from "../workbook/document/formula-kind";
import type { WorkbookDocument } from "../workbook/document/workbook-document";
import type { WorkbookPort } from "../workbook/port";
import { pointingParts } from "../workbook/xlsx/pointing-parts";
import { readFile } from "../workbook/xlsx/read-workbook";
import { FileWriter } from "../workbook/xlsx/write-workbook";
import { readNamedFile } from "./command";
import { withKnownAnswers } from "./known-answers";
import { nodeDeflater } from "./node-deflater";

/** A workbook file that is open without anything that computes. */
export interface OpenWorkbookFile {
  readonly port: WorkbookPort;
  /** Makes the file with what was changed; formulas that nobody computed meanwhile have no result in it. To be called once. */
  readonly save: () => { readonly bytes: Uint8Array; /** Sentences on what in it is to be looked at. */ readonly complaints: readonly string[] };
  /** Writes the sheets that were added into the file to be, so that they are no longer held: they are read without their cells from then on. */
  readonly putAway: () => void;
}

/**
 * Opens a workbook file as it stands, with the results that it carries.
 *
 * What formulas of commissioning tabs answer is known of what was typed. Where another formula carries no result, or was not known to the
 * program that saved it, the engine computes the workbook first; a planning table in which one still has none is refused, by cell.
 */
export async function openWorkbookFile(name: string): Promise<OpenWorkbookFile> {
  const bytes = await readNamedFile(name);
  let open = readFile(bytes, nodeDeflater);
  let document = withKnownAnswers(open.document);
  if (lacksResults(document)) {
    const { computeFile } = await import("./compute-file");
    open = readFile((await computeFile({ ...open, document })).bytes, nodeDeflater);
    document = withKnownAnswers(open.document);
    refuseOpen(document);
  }
  const { port, finish, putAway } = openDocumentPort(document, answersOfTab);
  const writer = new FileWriter(open, open.document);
  const came = open.file.names();
  return {
    port,
    save: () => {
      const after = finish();
      const renamed = open.sheets.filter(({ id, name }) => after.sheets.some((sheet) => sheet.id === id && sheet.name !== name));
      const bytes = writer.finish(after);
      // What followed the new names by now is not complained of.
      const pointing = pointingParts(open, renamed.map((sheet) => ({ ...sheet, moved: false })), came);
      return { bytes, complaints: pointing.map((part) => `${quote(part)} in the file names a sheet that was renamed, and is not known here. Check where it points.`) };
    },
    putAway: () => {
      putAway((sheet, looks) => {
        writer.writeSheet(sheet, looks);
      });
    },
  };
}

/** Refuses a plan in whose tables a formula has no result. */
function refuseOpen(document: WorkbookDocument): void {
  const plan = readPlan(documentSnapshot(document));
  const tables = tableKeys.flatMap((key) => plan[key] ?? []);
  for (const { sheet, row, column } of cellsWithoutResult(document)) {
    const isRead = tables.some((table) => table.sheet === sheet && row > table.headerRow && row <= table.lastRow && column >= table.firstColumn && column <= table.lastColumn);
    if (!isRead) continue;
    const place = `${sheet}!${cellAddress({ row, column })}`;
    throw invalid("file", place, `The formula in ${quote(place)} has no result, and cannot be computed here. Let a spreadsheet program compute and save the file.`);
  }
}
