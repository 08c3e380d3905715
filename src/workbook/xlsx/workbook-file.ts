import type { ISheetDataValidationRule, IWorkbookData, IWorksheetData } from "@univerjs/core";
import type { IConditionFormattingRule } from "@univerjs/sheets-conditional-formatting";
import { Workbook, type Worksheet } from "exceljs";
import type { WorkbookSnapshot } from "../../sheet";
import { assembleWorkbook, makeStyleKeeper } from "../engine/assemble-workbook";
import { sheetSnapshot } from "../engine/sheet-snapshot";
import { extrasOf, readResource, resourceNames, type StoredStyle, type StoredWorkbook } from "../engine/stored-sheet";
import { colorReader } from "./cell-styles";
import { openPackage, type PackagedName } from "./file-package";
import { fromFileFormula, toFileFormula } from "./formula-text";
import { insideOf, keepModelOnly, loadInto } from "./library-parts";
import { readSheet } from "./read-sheet";
import { writeSheet } from "./write-sheet";
import { damaged } from "./zip-directory";

/** Reads the bytes of an .xlsx file as a snapshot, with the results that the file carries. */
export async function readSnapshot(bytes: Uint8Array): Promise<WorkbookSnapshot> {
  const { sheetOrder, sheets } = await readWorkbook(bytes, { spilled: true });
  return { sheets: sheetOrder.map((id) => sheetSnapshot(sheets[id]!)) };
}

/** Reads the bytes of an .xlsx file as a workbook of the engine; refuses with a sentence what is no workbook or too large. */
export async function readWorkbook(bytes: Uint8Array, { spilled = false } = {}): Promise<IWorkbookData> {
  const { sheets: packaged, names, themeColors } = await openPackage(bytes);
  const file = await loadFile(bytes);
  const { styles, keep } = makeStyleKeeper();
  const keepLook = (style: StoredStyle): string | undefined => (JSON.stringify(style) === "{}" ? undefined : keep(style));
  const readColor = colorReader(themeColors);
  const stored = packaged.flatMap((one, index) => {
    // A sheet that is a chart and nothing else is not in the library's list.
    const source = file.getWorksheet(one.name);
    return source === undefined ? [] : [readSheet(source, one, `sheet${index + 1}`, readColor, keepLook, spilled)];
  });
  if (stored.length === 0) throw damaged();
  return assembleWorkbook(stored, styles, { [resourceNames.names]: readNames(names, stored.map(({ sheet }) => sheet)) });
}

/**
 * Makes an .xlsx file of a workbook, every formula with its result.
 *
 * With `original`, the file it was opened from, the sheets are written over that one's: pictures, margins and whatever else the model
 * has no place for stay. Charts are beyond the file library and are lost. Uses the stored workbook up: a large one is not held twice.
 */
export async function writeWorkbook({ data, spills }: StoredWorkbook, original?: Uint8Array): Promise<Uint8Array> {
  const file = original === undefined ? new Workbook() : await loadFile(original);
  const sheets = data.sheetOrder.flatMap((id) => (data.sheets[id] === undefined ? [] : [Object.assign(data.sheets[id], { id })]));
  const targets = placeSheets(file, sheets);
  const validations = (readResource(data, resourceNames.validations) ?? {}) as Record<string, ISheetDataValidationRule[] | undefined>;
  const conditionalFormats = (readResource(data, resourceNames.conditionalFormats) ?? {}) as Record<string, IConditionFormattingRule[] | undefined>;
  sheets.forEach((sheet, index) => {
    writeSheet(
      targets[index]!,
      { sheet, validations: validations[sheet.id] ?? [], conditionalFormats: conditionalFormats[sheet.id] ?? [] },
      spills[sheet.id] ?? [],
      data.styles,
    );
    keepModelOnly(targets[index]!);
    sheet.cellData = {};
  });
  writeNames(file, data, sheets);
  return new Uint8Array(await file.xlsx.writeBuffer());
}

async function loadFile(bytes: Uint8Array): Promise<Workbook> {
  const file = new Workbook();
  try {
    await loadInto(file, bytes);
  } catch {
    throw damaged();
  }
  return file;
}

/** Finds or makes the sheet of the file for each of ours, in our order and under our names; other sheets of the file go. */
function placeSheets(file: Workbook, sheets: readonly Partial<IWorksheetData>[]): Worksheet[] {
  const free = new Map(file.worksheets.map((sheet) => [sheet.name, sheet]));
  const targets = sheets.map((sheet) => {
    const from = extrasOf(sheet).fileSheet;
    const found = from === undefined ? undefined : free.get(from);
    if (found !== undefined) free.delete(found.name);
    return found;
  });
  for (const left of free.values()) file.removeWorksheet(left.id);
  // First out of each other's way: two sheets may have swapped names.
  targets.forEach((target, index) => {
    if (target !== undefined) target.name = `baywright ${index}`;
  });
  return sheets.map((sheet, index) => {
    const target = targets[index] ?? file.addWorksheet(`baywright ${index}`);
    target.name = sheet.name ?? `Sheet${index + 1}`;
    insideOf(target).orderNo = index;
    return target;
  });
}

/** A defined name as the engine keeps it. */
interface EngineName {
  readonly id: string;
  readonly name: string;
  readonly formulaOrRefString: string;
  readonly comment: string;
  readonly localSheetId: string;
  readonly hidden: boolean;
}

const everySheet = "AllDefaultWorkbook";

function readNames(names: readonly PackagedName[], sheets: readonly Partial<IWorksheetData>[]): Record<string, EngineName> {
  return Object.fromEntries(
    names
      // Print areas and titles belong to the print set-up, filters to the sheet.
      .filter(({ name }) => !name.startsWith("_xlnm."))
      .map(({ name, formula, sheet, hidden }, index) => {
        const isReference = /^(?:'(?:[^']|'')+'|[\w.]+)!\$?[A-Z]+\$?\d+(?::\$?[A-Z]+\$?\d+)?$/i.test(formula);
        const localSheetId = sheets.find((one) => one.name === sheet)?.id ?? everySheet;
        return [`n${index}`, { id: `n${index}`, name, formulaOrRefString: isReference ? formula : fromFileFormula(formula), comment: "", localSheetId, hidden }];
      }),
  );
}

function writeNames(file: Workbook, data: IWorkbookData, sheets: readonly Partial<IWorksheetData>[]): void {
  const names = Object.values((readResource(data, resourceNames.names) ?? {}) as Record<string, EngineName>).map(({ name, formulaOrRefString, localSheetId }) => {
    const local = sheets.findIndex(({ id }) => id === localSheetId);
    return { name, ranges: [toFileFormula(formulaOrRefString)], ...(local >= 0 && { localSheetId: local }) };
  });
  // The library keeps only names of cells, and takes their ranges apart; what it writes is the text of `ranges`.
  Object.assign(file, { _definedNames: { model: names } });
}
