import { generateRandomId, type IWorkbookData, LocaleType, Univer, UniverInstanceType } from "@univerjs/core";
import { UniverDataValidationPlugin } from "@univerjs/data-validation";
import { RegisterOtherFormulaService, UniverFormulaEnginePlugin } from "@univerjs/engine-formula";
import { UniverSheetsPlugin } from "@univerjs/sheets";
import { UniverSheetsConditionalFormattingPlugin } from "@univerjs/sheets-conditional-formatting";
import { UniverSheetsDataValidationPlugin } from "@univerjs/sheets-data-validation";
import { CalculationMode, UniverSheetsFormulaPlugin } from "@univerjs/sheets-formula";
import { UniverSheetsNotePlugin } from "@univerjs/sheets-note";
import { UniverSheetsNumfmtPlugin } from "@univerjs/sheets-numfmt";
import { cellAddress, type Area } from "../sheet";
import { bayFunctions, faultNote } from "../workbook/engine/bay-functions";
import { createBrowserPort } from "../workbook/engine/browser-port";
import { LiveWorkbook } from "../workbook/engine/live-workbook";
import { eachCell, emptyWorkbook } from "../workbook/engine/stored-sheet";
import type { WorkbookPort } from "../workbook/port";
import { readWorkbook, writeWorkbook, type SavedFile } from "../workbook/engine/workbook-file";
import type { OpenFile } from "../workbook/xlsx/read-workbook";

/** A workbook that is open without a page. */
export interface HeadlessWorkbook {
  readonly port: WorkbookPort;
  /** Waits until every formula shows what it computes. */
  readonly settle: () => Promise<void>;
  /** Makes an .xlsx file of the workbook as it is now, written over the file it was opened from. */
  readonly save: () => Promise<Uint8Array>;
  /** Saves and disposes: what the engine holds is free before the file is made, which takes as much again. */
  readonly close: () => Promise<Uint8Array>;
  /** The same, with the cells whose figures no longer follow from what they look at. */
  readonly closeFile: () => Promise<SavedFile>;
  /** Lists the areas that single formulas fill, each by the id of its sheet. */
  readonly spills: () => { readonly sheet: string; readonly area: Area }[];
  /** Lists the formulas of ours that have no answer, with the sentence that says why. */
  readonly faults: () => { readonly cell: string; readonly error: string; readonly sentence: string }[];
  readonly dispose: () => void;
}

/**
 * Opens an .xlsx file, or a new workbook of one empty sheet, in the engine of the browser workbook.
 *
 * Formulas out of the file keep their figures where the engine gets others; without `keepsFigures` everything is computed anew, with
 * `keepsVolatile` also formulas that answer anew each time keep theirs.
 */
// What is refused is to come out of the promise, not past it.
// eslint-disable-next-line @typescript-eslint/require-await
export async function openHeadless(file?: Uint8Array | OpenFile, { keepsVolatile = false, keepsFigures = true } = {}): Promise<HeadlessWorkbook> {
  const data = file === undefined ? emptyWorkbook() : readWorkbook(file, { keepsFigures });
  const univer = bootEngine(data);
  const live = new LiveWorkbook(univer, { keepsVolatile });
  const closeFile = async () => {
    await live.settle();
    const stored = live.store();
    live.dispose();
    return writeWorkbook(stored, file);
  };
  return {
    port: createBrowserPort(univer, live),
    settle: () => live.settle(),
    async save() {
      await live.settle();
      return writeWorkbook(live.store(), file).bytes;
    },
    async close() {
      return (await closeFile()).bytes;
    },
    closeFile,
    spills: () => live.workbook.getSheets().flatMap((sheet) => live.spills(sheet).map(({ area }) => ({ sheet: sheet.getSheetId(), area }))),
    faults: () =>
      live.workbook.getSheets().flatMap((sheet) => {
        const found: { cell: string; error: string; sentence: string }[] = [];
        eachCell(sheet.getConfig(), (cell, row, column) => {
          const note = faultNote(cell);
          if (note !== null) found.push({ cell: `${sheet.getName()}!${cellAddress({ row, column })}`, ...note });
        });
        return found;
      }),
    dispose: () => {
      live.dispose();
    },
  };
}

/** Starts the engine without a page, with a workbook in it. */
export function bootEngine(data: Partial<IWorkbookData>): Univer {
  const univer = new Univer({ locale: LocaleType.EN_US, locales: { [LocaleType.EN_US]: {} } });
  univer.registerPlugin(UniverFormulaEnginePlugin, { function: bayFunctions() });
  univer.registerPlugin(UniverSheetsPlugin);
  // A file's own results may be stale or another program's: everything is computed anew.
  univer.registerPlugin(UniverSheetsFormulaPlugin, { initialFormulaComputing: CalculationMode.FORCED });
  univer.registerPlugin(UniverSheetsNumfmtPlugin);
  univer.registerPlugin(UniverDataValidationPlugin);
  univer.registerPlugin(UniverSheetsDataValidationPlugin);
  univer.registerPlugin(UniverSheetsConditionalFormattingPlugin);
  univer.registerPlugin(UniverSheetsNotePlugin);
  // Conditional formats are kept, but nobody looks: the engine is not to work them out, which costs it more than all cells of a tab.
  univer.__getInjector().get(RegisterOtherFormulaService).registerFormulaWithRange = () => generateRandomId();
  // Engines of one process share what they have parsed, by the id of the workbook: with one id for two, formulas would read the other's cells.
  univer.createUnit(UniverInstanceType.UNIVER_SHEET, { ...data, id: generateRandomId() });
  return univer;
}
