import {
  CanceledError, CommandType, Direction, EDITOR_ACTIVATED, FOCUSING_UNIVER_EDITOR, getReverseDirection, ICommandService, Rectangle,
  type IContextService, type IRange, type Univer,
} from "@univerjs/core";
import { DeviceInputEventType } from "@univerjs/engine-render";
import { SetSelectionsOperation, SheetsSelectionsService } from "@univerjs/sheets";
import { IEditorBridgeService, MoveSelectionCommand, MoveSelectionEnterAndTabCommand, SetCellEditVisibleOperation } from "@univerjs/sheets-ui";
import { IShortcutService, KeyCode, MetaKeys } from "@univerjs/ui";
import { selectionOfCell } from "../../workbook/engine/cell-selection";
import type { LiveWorkbook } from "../../workbook/engine/live-workbook";

/** A row being filled with Tab, or a column being filled with Enter across cells that are merged. */
interface TabRun {
  readonly sheetId: string;
  /** Column of the cell in which Tab was pressed first, or Enter before the merged cells. */
  readonly column: number;
  /** Where the last key led. */
  readonly at: IRange;
}

/**
 * Lets Enter go below the cell in which a run of Tabs began, as long as that run is unbroken, and else below the cell it is pressed in.
 *
 * The engine remembers the first Tab ever pressed on a sheet: after a click elsewhere or a jump by the name box its Enter still leads to that
 * column, and what is typed there writes over another table. Held with Shift both keys also end what is being typed, and go the other way.
 * From merged cells, as the words above the steps of a tab, Enter goes on in the column that it came from; the engine would go on in their first one.
 */
export function keepTabRuns(univer: Univer, live: LiveWorkbook): void {
  const injector = univer.__getInjector();
  const [commands, selections] = [injector.get(ICommandService), injector.get(SheetsSelectionsService)];
  let run: TabRun | null = null;
  let goesBack = false;
  for (const [key, keycode] of [["tab", KeyCode.TAB], ["enter", KeyCode.ENTER]] as const) {
    const id = `baywright.operation.end-typing-${key}`;
    commands.registerCommand({
      id,
      type: CommandType.OPERATION,
      handler() {
        goesBack = true;
        injector.get(IEditorBridgeService).disableForceKeepVisible();
        const end = { visible: false, eventType: DeviceInputEventType.Keyboard, keycode, unitId: live.workbook.getUnitId() };
        return commands.syncExecuteCommand(SetCellEditVisibleOperation.id, end);
      },
    });
    const preconditions = (context: IContextService) => context.getContextValue(FOCUSING_UNIVER_EDITOR) && context.getContextValue(EDITOR_ACTIVATED);
    injector.get(IShortcutService).registerShortcut({ id, binding: keycode | MetaKeys.SHIFT, preconditions });
  }
  commands.beforeCommandExecuted(({ id, params }) => {
    if (id !== MoveSelectionEnterAndTabCommand.id) return;
    const { keycode, direction: forward } = params as { keycode: KeyCode; direction: Direction };
    const direction = goesBack ? getReverseDirection(forward) : forward;
    goesBack = false;
    const [selection, ...others] = selections.getCurrentSelections();
    // Inside several selected cells both keys go round them, which the engine does well.
    if (!selection?.primary || others.length > 0 || !Rectangle.equals(selection.range, selection.primary)) return;
    const sheet = live.workbook.getActiveSheet();
    const { range } = selection;
    if (run !== null && (run.sheetId !== sheet.getSheetId() || !Rectangle.equals(run.at, range))) run = null;
    const began = run?.column ?? range.startColumn;
    if (keycode === KeyCode.ENTER && direction === Direction.DOWN && began !== range.startColumn) selectCell(sheet.getSheetId(), range.endRow, began);
    void commands.executeCommand(MoveSelectionCommand.id, { direction }).then(() => {
      const at = live.selectedRange();
      run = at !== null && (keycode === KeyCode.TAB || at.endColumn > at.startColumn) ? { sheetId: sheet.getSheetId(), column: began, at } : null;
    });
    throw new CanceledError();
  });

  function selectCell(subUnitId: string, row: number, column: number): void {
    commands.syncExecuteCommand(SetSelectionsOperation.id, { unitId: live.workbook.getUnitId(), subUnitId, selections: [selectionOfCell(row, column)] });
  }
}
