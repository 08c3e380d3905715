import { ICommandService, IUniverInstanceService, type Univer, UniverInstanceType, type Workbook } from "@univerjs/core";
import { RemoveSheetMutation, SetWorksheetActiveOperation } from "@univerjs/sheets";
import { no } from "./engine-values";

/**
 * Brings another sheet to the front before the one there is removed: the last one before it that is shown, else the first.
 *
 * The engine does so a moment after it is gone; what is written meanwhile it would draw on a sheet that is no more, which throws.
 */
export function leaveRemovedSheets(univer: Univer): void {
  const injector = univer.__getInjector();
  const [commands, workbooks] = [injector.get(ICommandService), injector.get(IUniverInstanceService)];
  commands.beforeCommandExecuted(({ id, params }) => {
    if (id !== RemoveSheetMutation.id) return;
    const { unitId, subUnitId } = params as { unitId: string; subUnitId: string };
    const workbook = workbooks.getUnit<Workbook>(unitId, UniverInstanceType.UNIVER_SHEET);
    if (workbook?.getActiveSheet().getSheetId() !== subUnitId) return;
    const shown = workbook.getSheets().filter((sheet) => sheet.isSheetHidden() === no || sheet.getSheetId() === subUnitId);
    const place = shown.findIndex((sheet) => sheet.getSheetId() === subUnitId);
    const next = shown[place - 1] ?? shown[place + 1];
    if (next !== undefined) commands.syncExecuteCommand(SetWorksheetActiveOperation.id, { unitId, subUnitId: next.getSheetId() });
  });
}
