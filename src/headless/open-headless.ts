import { LocaleType, Univer, type IWorkbookData } from "@univerjs/core";
import { FUniver } from "@univerjs/core/facade";
import { UniverFormulaEnginePlugin } from "@univerjs/engine-formula";
import "@univerjs/engine-formula/facade";
import { UniverSheetsPlugin } from "@univerjs/sheets";
import "@univerjs/sheets/facade";
import { UniverSheetsFormulaPlugin } from "@univerjs/sheets-formula";
import "@univerjs/sheets-formula/facade";
import { UniverSheetsNumfmtPlugin } from "@univerjs/sheets-numfmt";
import { bayFunctions } from "../workbook/browser/bay-functions";

export function bootEngine(data: Partial<IWorkbookData>) {
  const univer = new Univer({ locale: LocaleType.EN_US, locales: { [LocaleType.EN_US]: {} } });
  univer.registerPlugin(UniverFormulaEnginePlugin, { function: bayFunctions() as never });
  univer.registerPlugin(UniverSheetsPlugin);
  univer.registerPlugin(UniverSheetsFormulaPlugin);
  univer.registerPlugin(UniverSheetsNumfmtPlugin);
  const api = FUniver.newAPI(univer);
  api.createWorkbook(data);
  return { univer, api };
}
