import { CanceledError, Direction, ICommandService, type Univer } from "@univerjs/core";
import { SheetsSelectionsService } from "@univerjs/sheets";
import { MoveSelectionCommand } from "@univerjs/sheets-ui";
import type { LiveWorkbook } from "../../workbook/engine/live-workbook";

/** What the engine is told of a move: a jump goes to the edge of what is filled, and writing a formula moves what it speaks of. */
interface SelectionMove {
  readonly direction: Direction;
  readonly jumpOver?: number;
  readonly extra?: string;
}

/**
 * Keeps whoever goes on past the edge of a sheet there at its begin, and gives the sheet more rows or columns at its end.
 *
 * The engine leads round to the other side, one line on, where what is typed next writes over something else.
 */
export function keepToEdges(univer: Univer, live: LiveWorkbook): void {
  const injector = univer.__getInjector();
  const selections = injector.get(SheetsSelectionsService);
  injector.get(ICommandService).beforeCommandExecuted(({ id, params }) => {
    if (id !== MoveSelectionCommand.id) return;
    const { direction, jumpOver, extra } = params as SelectionMove;
    const range = selections.getCurrentLastSelection()?.range;
    if (!range || jumpOver !== undefined || extra !== undefined) return;
    const sheet = live.workbook.getActiveSheet();
    const [isAcross, isOn] = [direction === Direction.LEFT || direction === Direction.RIGHT, direction === Direction.DOWN || direction === Direction.RIGHT];
    const [first, last, count] = isAcross ? [range.startColumn, range.endColumn, sheet.getColumnCount()] : [range.startRow, range.endRow, sheet.getRowCount()];
    const isHidden = (line: number) => line >= 0 && line < count && !(isAcross ? sheet.getColVisible(line) : sheet.getRowVisible(line));
    let next = isOn ? last + 1 : first - 1;
    while (isHidden(next)) next += isOn ? 1 : -1;
    if (next >= 0 && next < count) return;
    if (next < 0 || !live.makeRoom(sheet, isAcross ? { rows: 0, columns: next + 1 } : { rows: next + 1, columns: 0 })) throw new CanceledError();
  });
}
