import {
  BooleanNumber, BorderStyleTypes, BorderType, CommandType, EDITOR_ACTIVATED, FOCUSING_SHEET, FOCUSING_UNIVER_EDITOR, ICommandService, RANGE_TYPE,
  type IContextService, type IRange, type Univer, type Worksheet,
} from "@univerjs/core";
import { IRenderManagerService, SHEET_VIEWPORT_KEY } from "@univerjs/engine-render";
import { GoToNextMatchOperation, GoToPreviousMatchOperation } from "@univerjs/find-replace";
import { SetBorderBasicCommand, SetSelectionsOperation, SetWorksheetActiveOperation } from "@univerjs/sheets";
import { SheetPasteValueCommand, SheetSkeletonManagerService } from "@univerjs/sheets-ui";
import { IShortcutService, KeyCode, MetaKeys } from "@univerjs/ui";
import type { CellPlace } from "../../sheet";
import { selectionOf, selectionOfCell } from "../../workbook/engine/cell-selection";
import type { LiveWorkbook } from "../../workbook/engine/live-workbook";

/** Codes of keys, which the engine has no names for. */
export const keys = { pageUp: 33, pageDown: 34, end: 35, home: 36 } as const;

/** A key that leads to another cell; `to` tells which from where one is. */
interface Move {
  readonly id: string;
  readonly key: number;
  readonly to: (sheet: Worksheet, from: CellPlace, rowsSeen: number) => CellPlace;
}

const moves: readonly Move[] = [
  { id: "row-begin", key: keys.home, to: (_, { row }) => ({ row, column: 0 }) },
  { id: "sheet-begin", key: keys.home | MetaKeys.CTRL_COMMAND, to: (sheet) => firstThatMoves(sheet) },
  { id: "sheet-end", key: keys.end | MetaKeys.CTRL_COMMAND, to: (sheet) => lastFilled(sheet) },
  { id: "page-down", key: keys.pageDown, to: (sheet, { row, column }, seen) => ({ row: Math.min(row + seen, sheet.getRowCount() - 1), column }) },
  { id: "page-up", key: keys.pageUp, to: (_, { row, column }, seen) => ({ row: Math.max(row - seen, 0), column }) },
];

/** A key that selects more than is selected. */
interface Growth {
  readonly id: string;
  readonly key: number;
  readonly to: (sheet: Worksheet, range: IRange) => IRange;
}

const growths: readonly Growth[] = [
  { id: "whole-rows", key: KeyCode.SPACE | MetaKeys.SHIFT, to: (sheet, range) => ({ ...range, startColumn: 0, endColumn: sheet.getColumnCount() - 1, rangeType: RANGE_TYPE.ROW }) },
  { id: "whole-columns", key: KeyCode.SPACE | MetaKeys.CTRL_COMMAND, to: (sheet, range) => ({ ...range, startRow: 0, endRow: sheet.getRowCount() - 1, rangeType: RANGE_TYPE.COLUMN }) },
  { id: "to-row-begin", key: keys.home | MetaKeys.SHIFT, to: (_, range) => ({ ...range, startColumn: 0 }) },
  { id: "to-sheet-begin", key: keys.home | MetaKeys.SHIFT | MetaKeys.CTRL_COMMAND, to: (sheet, range) => reaching(range, firstThatMoves(sheet)) },
  { id: "to-sheet-end", key: keys.end | MetaKeys.SHIFT | MetaKeys.CTRL_COMMAND, to: (sheet, range) => reaching(range, lastFilled(sheet)) },
];

/**
 * Gives the grid the keys of desk spreadsheets that the engine lacks: Home, Ctrl+Home, Ctrl+End, with Shift to select as far, a page up or down,
 * whole rows and columns with Shift or Ctrl and Space, the figures alone pasted with Ctrl+Shift+V, a line round what is selected with Ctrl+Shift+7 and none
 * with Ctrl+Shift+Minus, and to the next sheet or the one before with Ctrl, or with Alt where the browser keeps the other for itself.
 */
export function addDeskKeys(univer: Univer, live: LiveWorkbook): void {
  const injector = univer.__getInjector();
  const [commands, shortcuts] = [injector.get(ICommandService), injector.get(IShortcutService)];
  shortcuts.registerShortcut({ id: SheetPasteValueCommand.id, binding: KeyCode.V | MetaKeys.SHIFT | MetaKeys.CTRL_COMMAND, preconditions: isGridReady });
  for (const [type, key] of [[BorderType.OUTSIDE, KeyCode.Digit7], [BorderType.NONE, KeyCode.MINUS]] as const) {
    const value = { type, style: BorderStyleTypes.THIN, color: "#000000" };
    shortcuts.registerShortcut({ id: SetBorderBasicCommand.id, binding: key | MetaKeys.SHIFT | MetaKeys.CTRL_COMMAND, preconditions: isGridReady, staticParameters: { value } });
  }
  // The engine knows the box of what is sought only until the keyboard has left it once.
  for (const [id, held] of [[GoToNextMatchOperation.id, 0], [GoToPreviousMatchOperation.id, MetaKeys.SHIFT]] as const) {
    shortcuts.registerShortcut({ id, binding: KeyCode.ENTER | held, priority: 1_001, preconditions: isInFindBox });
  }
  for (const { id, key, to } of growths) {
    const command = `baywright.operation.${id}`;
    commands.registerCommand({
      id: command,
      type: CommandType.OPERATION,
      handler() {
        const [sheet, range] = [live.workbook.getActiveSheet(), live.selectedRange()];
        if (range === null) return false;
        const selection = { ...selectionOf(range), range: { rangeType: RANGE_TYPE.NORMAL, ...to(sheet, range) } };
        return commands.syncExecuteCommand(SetSelectionsOperation.id, { unitId: live.workbook.getUnitId(), subUnitId: sheet.getSheetId(), selections: [selection] });
      },
    });
    shortcuts.registerShortcut({ id: command, binding: key, preconditions: isGridReady });
  }
  for (const { id, key, to } of moves) {
    const command = `baywright.operation.${id}`;
    commands.registerCommand({
      id: command,
      type: CommandType.OPERATION,
      handler() {
        const sheet = live.workbook.getActiveSheet();
        const from = live.selectedRange();
        const { row, column } = to(sheet, { row: from?.startRow ?? 0, column: from?.startColumn ?? 0 }, rowsSeen(univer, live));
        return commands.syncExecuteCommand(SetSelectionsOperation.id, {
          unitId: live.workbook.getUnitId(), subUnitId: sheet.getSheetId(), selections: [selectionOfCell(row, column)], reveal: true,
        });
      },
    });
    shortcuts.registerShortcut({ id: command, binding: key, preconditions: isGridReady });
  }
  for (const [id, key, step] of [["next-sheet", keys.pageDown, 1], ["sheet-before", keys.pageUp, -1]] as const) {
    const command = `baywright.operation.${id}`;
    commands.registerCommand({
      id: command,
      type: CommandType.OPERATION,
      handler() {
        const shown = live.workbook.getSheets().filter((sheet) => sheet.isSheetHidden() === BooleanNumber.FALSE);
        const next = shown[shown.indexOf(live.workbook.getActiveSheet()) + step];
        return next !== undefined && commands.syncExecuteCommand(SetWorksheetActiveOperation.id, { unitId: live.workbook.getUnitId(), subUnitId: next.getSheetId() });
      },
    });
    for (const held of [MetaKeys.CTRL_COMMAND, MetaKeys.ALT]) shortcuts.registerShortcut({ id: command, binding: key | held, preconditions: isGridReady });
  }
}

/** Tells whether a key goes to the cells, none of which is being typed into. */
export function isGridReady(context: IContextService): boolean {
  return context.getContextValue(FOCUSING_SHEET) && context.getContextValue(FOCUSING_UNIVER_EDITOR) && !context.getContextValue(EDITOR_ACTIVATED);
}

function isInFindBox(): boolean {
  return document.activeElement?.closest("[data-u-comp=find-replace-dialog] [data-u-comp=search-input]") instanceof Element;
}

/** The first cell that is not frozen: what is frozen is always in sight. */
function firstThatMoves(sheet: Worksheet): CellPlace {
  const { xSplit, ySplit } = sheet.getFreeze();
  return { row: ySplit, column: xSplit };
}

/** The smallest range that holds a range and a cell. */
function reaching({ startRow, endRow, startColumn, endColumn }: IRange, { row, column }: CellPlace): IRange {
  return { startRow: Math.min(startRow, row), endRow: Math.max(endRow, row), startColumn: Math.min(startColumn, column), endColumn: Math.max(endColumn, column) };
}

function lastFilled(sheet: Worksheet): CellPlace {
  const { endRow, endColumn } = sheet.getDataRangeScope();
  return { row: Math.max(endRow, 0), column: Math.max(endColumn, 0) };
}

function rowsSeen(univer: Univer, live: LiveWorkbook): number {
  const render = univer.__getInjector().get(IRenderManagerService).getRenderById(live.workbook.getUnitId());
  const seen = render?.with(SheetSkeletonManagerService).getCurrentSkeleton()?.getVisibleRangeByViewport(SHEET_VIEWPORT_KEY.VIEW_MAIN);
  return seen === undefined ? 1 : Math.max(1, seen.endRow - seen.startRow - 1);
}
