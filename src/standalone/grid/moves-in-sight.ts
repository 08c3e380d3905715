import { CanceledError, ICommandService, type IRange, type Nullable, type Univer, type Worksheet } from "@univerjs/core";
import { MoveRangeCommand } from "@univerjs/sheets";
import { COPY_TYPE, ISheetClipboardService } from "@univerjs/sheets-ui";
import type { LiveWorkbook } from "../../workbook/engine/live-workbook";

/**
 * Refuses to move cells, cut or dragged, from or to a place where a filter keeps rows out of sight: the engine would take the cells of these along, or write over them.
 *
 * Nothing is moved then, and `say` is told why.
 */
export function keepMovesInSight(univer: Univer, live: LiveWorkbook, say: (sentence: string) => void): void {
  const injector = univer.__getInjector();
  const refuse = () => {
    say("Cells cannot be moved where a filter keeps rows out of sight. Show all rows first, or copy the cells and empty the old ones.");
  };
  const clipboard = injector.get(ISheetClipboardService);
  clipboard.addClipboardHook({
    id: "baywright.moves-in-sight",
    onBeforePaste({ subUnitId, range: { rows, cols } }) {
      const cache = clipboard.copyContentCache();
      const cut = cache.get(cache.getLastCopyId() ?? "");
      // What another program put on the clipboard since is told from it by its size alone; what was cut and pasted once has no cells any more.
      if (cut?.copyType !== COPY_TYPE.CUT || !cut.matrix || rows.length !== spanOf(cut.range.rows).length || cols.length !== cut.range.cols.length) return true;
      const { workbook } = live;
      if (!holdsUnseen(workbook.getSheetBySheetId(cut.subUnitId), cut.range.rows) && !holdsUnseen(workbook.getSheetBySheetId(subUnitId), rows)) return true;
      refuse();
      return false;
    },
  });
  injector.get(ICommandService).beforeCommandExecuted(({ id, params }) => {
    if (id !== MoveRangeCommand.id || live.isOurs) return;
    const { fromRange, toRange } = params as { readonly fromRange: IRange; readonly toRange: IRange };
    if (![fromRange, toRange].some(({ startRow, endRow }) => holdsUnseen(live.workbook.getActiveSheet(), [startRow, endRow]))) return;
    refuse();
    throw new CanceledError();
  });
}

/** The rows from the first of some to the last. */
function spanOf(rows: readonly number[]): number[] {
  const first = Math.min(...rows);
  return Array.from({ length: Math.max(...rows) - first + 1 }, (_, down) => first + down);
}

function holdsUnseen(sheet: Nullable<Worksheet>, rows: readonly number[]): boolean {
  return spanOf(rows).some((row) => sheet?.getRowFiltered(row) === true);
}
