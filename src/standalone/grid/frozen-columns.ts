import { ICommandService, type Univer } from "@univerjs/core";
import { SetFrozenMutation, SetWorksheetActiveOperation } from "@univerjs/sheets";
import type { LiveWorkbook } from "../../workbook/engine/live-workbook";
import { extrasOf } from "../../workbook/engine/stored-sheet";

/** The largest share of the grid's width that frozen columns may take: the others are to be read beside them. */
const mostFrozen = 0.6;

/**
 * Lets frozen columns move with the others while the grid is so narrow that they would leave those no room, and freezes them again once there is.
 *
 * How many were frozen stays with the sheet, and in a saved file.
 */
export function giveWay(univer: Univer, live: LiveWorkbook, container: HTMLElement): void {
  const commands = univer.__getInjector().get(ICommandService);
  const fit = () => {
    const sheet = live.workbook.getActiveSheet();
    const config = sheet.getConfig();
    const { xSplit, ySplit, startRow } = config.freeze;
    const { frozenColumns = xSplit, ...extras } = extrasOf(config);
    if (frozenColumns === 0 || container.clientWidth === 0) return;
    const width = Array.from({ length: frozenColumns }, (_, column) => sheet.getColumnWidth(column)).reduce((sum, one) => sum + one, 0);
    const columns = width > mostFrozen * container.clientWidth ? 0 : frozenColumns;
    if (columns === xSplit) return;
    config.custom = columns === 0 ? { ...extras, frozenColumns } : extras;
    live.run(SetFrozenMutation.id, { subUnitId: sheet.getSheetId(), startRow, ySplit, xSplit: columns, startColumn: columns === 0 ? -1 : columns });
  };
  commands.onCommandExecuted(({ id }) => {
    if (id === SetWorksheetActiveOperation.id) fit();
    if (id !== SetFrozenMutation.id || live.isOurs) return;
    // Somebody freezes other columns, or none.
    const config = live.workbook.getActiveSheet().getConfig();
    config.custom = { ...extrasOf(config), frozenColumns: undefined };
  });
  new ResizeObserver(fit).observe(container);
}
