import { ICommandService, IUniverInstanceService, type Univer, UniverInstanceType, type Workbook } from "@univerjs/core";
import { FormulaDataModel } from "@univerjs/engine-formula";

/**
 * Lets the engine remember the formulas of each sheet until something on the sheet changes.
 *
 * Left alone it looks for formulas in every cell of the workbook at every change, which with a hundred tabs is most of its work.
 */
export function rememberFormulas(univer: Univer): void {
  const injector = univer.__getInjector();
  const [commands, model, workbooks] = [injector.get(ICommandService), injector.get(FormulaDataModel), injector.get(IUniverInstanceService)];
  const known = new Map<string, ReturnType<FormulaDataModel["getSheetFormulaData"]>>();
  const forget = ({ id, params }: { readonly id: string; readonly params?: object }) => {
    if (!id.startsWith("sheet.mutation.")) return;
    const { subUnitId } = (params ?? {}) as { subUnitId?: string };
    if (subUnitId !== undefined) known.delete(subUnitId);
    else if (id !== "sheet.mutation.insert-sheet") known.clear();
  };
  // Before a change, for the engine reads them as soon as it is made; after it too, for the engine writes into what it has read.
  commands.beforeCommandExecuted(forget);
  commands.onCommandExecuted(forget);
  model.getFormulaData = () =>
    Object.fromEntries(
      workbooks.getAllUnitsForType<Workbook>(UniverInstanceType.UNIVER_SHEET).map((workbook) => {
        const unitId = workbook.getUnitId();
        const sheets = workbook.getSheets().map((sheet) => {
          const sheetId = sheet.getSheetId();
          const formulas = known.get(sheetId) ?? model.getSheetFormulaData(unitId, sheetId);
          known.set(sheetId, formulas);
          return [sheetId, formulas];
        });
        return [unitId, Object.fromEntries(sheets)];
      }),
    );
}
