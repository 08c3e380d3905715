import type { IMutationInfo, Univer } from "@univerjs/core";
import { COPY_TYPE, ISheetClipboardService, PREDEFINED_HOOK_NAME_PASTE } from "@univerjs/sheets-ui";
import type { LiveWorkbook } from "../../workbook/engine/live-workbook";

/** Ways of pasting in which whole cells come, notes and all; the others bring figures, formulas or looks alone. */
export const wholePastes: ReadonlySet<string> = new Set([PREDEFINED_HOOK_NAME_PASTE.DEFAULT_PASTE, PREDEFINED_HOOK_NAME_PASTE.SPECIAL_PASTE_BESIDES_BORDER]);

/** Lets notes go along with cells that are copied, as their looks do, in the same step of undo; the engine leaves them behind. */
export function copyNotes(univer: Univer, live: LiveWorkbook): void {
  univer.__getInjector().get(ISheetClipboardService).addClipboardHook({
    id: "baywright.copied-notes",
    onPasteCells(from, to, _cells, { copyType, pasteType }) {
      const [redos, undos]: [IMutationInfo[], IMutationInfo[]] = [[], []];
      const [source, target] = [from && live.workbook.getSheetBySheetId(from.subUnitId), live.workbook.getSheetBySheetId(to.subUnitId)];
      // Notes on cells that are cut move with them.
      if (!from || !source || !target || copyType === COPY_TYPE.CUT || !wholePastes.has(pasteType)) return { redos, undos };
      to.range.rows.forEach((row, down) => {
        to.range.cols.forEach((column, across) => {
          // What is pasted over more cells stands there again and again.
          const place = { row: from.range.rows[down % from.range.rows.length]!, column: from.range.cols[across % from.range.cols.length]! };
          const [note, covered] = [live.notes.at(source, place), live.notes.at(target, { row, column })];
          // A thread of comments stays where it is.
          if (note?.isThread === true || covered?.isThread === true) return;
          const change = live.notes.change(live.workbook, target, { row, column }, note?.text ?? "");
          redos.push(...change.redos);
          undos.unshift(...change.undos);
        });
      });
      return { redos, undos };
    },
  });
}
