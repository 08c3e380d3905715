import type { IMutationInfo, Univer, Worksheet } from "@univerjs/core";
import { COPY_TYPE, ISheetClipboardService, PREDEFINED_HOOK_NAME_PASTE } from "@univerjs/sheets-ui";
import type { CellPlace } from "../../sheet";
import type { LiveWorkbook } from "../../workbook/engine/live-workbook";

/** A cell and its sheet. */
export interface CopiedCell {
  readonly sheet: Worksheet;
  readonly place: CellPlace;
}

/** What is done in a cell, and what takes that back. */
export interface CellChange {
  readonly redos: readonly IMutationInfo[];
  readonly undos: readonly IMutationInfo[];
}

/** Ways of pasting in which whole cells come, notes and all; the others bring figures, formulas or looks alone. */
const wholePastes: ReadonlySet<string> = new Set([PREDEFINED_HOOK_NAME_PASTE.DEFAULT_PASTE, PREDEFINED_HOOK_NAME_PASTE.SPECIAL_PASTE_BESIDES_BORDER]);

/** Lets something go along with each cell that is copied, in the same step of undo, which the engine leaves behind. With cells that are cut it moves by itself. */
export function copyAlong(univer: Univer, live: LiveWorkbook, id: string, changeOf: (from: CopiedCell, to: CopiedCell) => CellChange | null): void {
  univer.__getInjector().get(ISheetClipboardService).addClipboardHook({
    id,
    onPasteCells(from, to, _cells, { copyType, pasteType }) {
      const [redos, undos]: [IMutationInfo[], IMutationInfo[]] = [[], []];
      const [source, target] = [from && live.workbook.getSheetBySheetId(from.subUnitId), live.workbook.getSheetBySheetId(to.subUnitId)];
      if (!from || !source || !target || copyType === COPY_TYPE.CUT || !wholePastes.has(pasteType)) return { redos, undos };
      to.range.rows.forEach((row, down) => {
        to.range.cols.forEach((column, across) => {
          // What is pasted over more cells stands there again and again.
          const place = { row: from.range.rows[down % from.range.rows.length]!, column: from.range.cols[across % from.range.cols.length]! };
          const change = changeOf({ sheet: source, place }, { sheet: target, place: { row, column } });
          if (change === null) return;
          redos.push(...change.redos);
          undos.unshift(...change.undos);
        });
      });
      return { redos, undos };
    },
  });
}
