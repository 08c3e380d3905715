import { ICommandService, type IRowAutoHeightInfo, type Univer, type Worksheet } from "@univerjs/core";
import type { SpreadsheetSkeleton } from "@univerjs/engine-render";
import { SetWorksheetActiveOperation, SetWorksheetRowAutoHeightMutation, SetWorksheetRowIsAutoHeightMutation, SheetSkeletonService } from "@univerjs/sheets";
import { wrap, yes } from "../../workbook/engine/engine-values";
import type { LiveWorkbook } from "../../workbook/engine/live-workbook";
import { forgetGivenHeight, leastHeight, letGrow } from "../../workbook/engine/row-heights";
import { numbered } from "../../workbook/engine/stored-sheet";

/** How long rows are measured before the page has its turn, in milliseconds. */
const atOnce = 40;

/** What the engine can measure; it leaves merged cells out unless it is told otherwise. */
type Measuring = SpreadsheetSkeleton & { _skipAutoHeightForMergedCells: boolean };

/**
 * Makes rows of the sheet in front as high as the wrapped text in them: a file leaves that to whoever shows it, or gives a height for another font than this screen has.
 *
 * A height that the file gives stays the least, and is what goes into a saved file; only what is seen changes. A sheet is gone through once, from its top
 * and with pauses for the page. After that the engine measures what is typed, but for merged cells, which are measured here. The returned function is to be
 * called once another workbook is open.
 */
export function fitRows(univer: Univer, live: LiveWorkbook): () => void {
  const injector = univer.__getInjector();
  const [commands, skeletons] = [injector.get(ICommandService), injector.get(SheetSkeletonService)];
  const fitted = new WeakSet<Worksheet>();
  const skeletonOf = (sheet: Worksheet) => skeletons.getSkeleton(sheet.getUnitId(), sheet.getSheetId()) as Measuring | undefined;

  const needed = (sheet: Worksheet, row: number): number | null => {
    const skeleton = skeletonOf(sheet);
    const { cellData, rowData, mergeData } = sheet.getConfig();
    if (skeleton === undefined || rowData[row]?.hd === yes) return null;
    const styles = live.workbook.getStyles();
    const wrapped = numbered(cellData[row]).filter(([, cell]) => styles.getStyleByCell(cell)?.tb === wrap);
    if (wrapped.length === 0) return null;
    // What is merged down several rows has the room of them all.
    const isTall = (column: number) => {
      const merged = mergeData.length > 0 ? sheet.getMergedCell(row, column) : null;
      return merged ? merged.endRow > merged.startRow : false;
    };
    skeleton._skipAutoHeightForMergedCells = false;
    const heights = wrapped.map(([column]) => (isTall(column) ? 0 : (skeleton.calculateAutoHeightForCell(row, column) ?? 0)));
    skeleton._skipAutoHeightForMergedCells = true;
    return Math.ceil(Math.max(leastHeight(sheet, row), ...heights));
  };

  const fitFrom = (sheet: Worksheet, rows: readonly number[]) => {
    if (live.workbook.getSheetBySheetId(sheet.getSheetId()) !== sheet) return;
    const until = performance.now() + atOnce;
    const higher: IRowAutoHeightInfo[] = [];
    let place = 0;
    for (; place < rows.length && performance.now() < until; place += 1) {
      const row = rows[place]!;
      const autoHeight = needed(sheet, row);
      if (autoHeight === null) continue;
      letGrow(sheet.getRowManager().getRowOrCreate(row));
      if (autoHeight !== sheet.getRowHeight(row)) higher.push({ row, autoHeight });
    }
    if (higher.length > 0) live.run(SetWorksheetRowAutoHeightMutation.id, { subUnitId: sheet.getSheetId(), rowsAutoHeightInfo: higher });
    if (place < rows.length) setTimeout(() => { fitFrom(sheet, rows.slice(place)); });
  };
  const fitInFront = () => {
    const sheet = live.workbook.getActiveSheet();
    if (fitted.has(sheet)) return;
    fitted.add(sheet);
    fitFrom(sheet, numbered(sheet.getConfig().cellData).map(([row]) => row));
  };

  commands.onCommandExecuted(({ id }) => {
    if (id === SetWorksheetActiveOperation.id) fitInFront();
  });
  commands.beforeCommandExecuted(({ id, params }) => {
    if (live.isOurs) return;
    if (id === SetWorksheetRowAutoHeightMutation.id) {
      const { subUnitId, rowsAutoHeightInfo } = params as { subUnitId: string; rowsAutoHeightInfo: { row: number; autoHeight?: number }[] };
      const sheet = live.workbook.getSheetBySheetId(subUnitId);
      for (const info of sheet ? rowsAutoHeightInfo : []) info.autoHeight = Math.max(info.autoHeight ?? 0, needed(sheet!, info.row) ?? 0);
    }
    if (id === SetWorksheetRowIsAutoHeightMutation.id) {
      const { subUnitId, ranges, autoHeightInfo } = params as { subUnitId: string; ranges: { startRow: number; endRow: number }[]; autoHeightInfo: unknown };
      // Somebody lets rows find their height: what the file gave is no longer wanted.
      const rows = autoHeightInfo === yes ? live.workbook.getSheetBySheetId(subUnitId)?.getRowManager() : undefined;
      for (const { startRow, endRow } of rows ? ranges : []) for (let row = startRow; row <= endRow; row += 1) forgetGivenHeight(rows!.getRow(row));
    }
  });
  fitInFront();
  return fitInFront;
}
