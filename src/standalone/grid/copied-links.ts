import type { IMutationInfo, Univer } from "@univerjs/core";
import { SetRangeValuesMutation } from "@univerjs/sheets";
import { COPY_TYPE, ISheetClipboardService } from "@univerjs/sheets-ui";
import { keptLink } from "../../workbook/engine/cell-link";
import type { LiveWorkbook } from "../../workbook/engine/live-workbook";
import { wholePastes } from "./copied-notes";

/** Lets cells that are copied lead where they led before, in the same step of undo; the engine leaves that behind. What is cut takes it along. */
export function copyLinks(univer: Univer, live: LiveWorkbook): void {
  univer.__getInjector().get(ISheetClipboardService).addClipboardHook({
    id: "baywright.copied-links",
    onPasteCells(from, to, _cells, { copyType, pasteType }) {
      const [redos, undos]: [IMutationInfo[], IMutationInfo[]] = [[], []];
      const [source, target] = [from && live.workbook.getSheetBySheetId(from.subUnitId), live.workbook.getSheetBySheetId(to.subUnitId)];
      if (!from || !source || !target || copyType === COPY_TYPE.CUT || !wholePastes.has(pasteType)) return { redos, undos };
      const put = (row: number, column: number, custom: object | null): IMutationInfo => ({
        id: SetRangeValuesMutation.id, params: { unitId: to.unitId, subUnitId: to.subUnitId, cellValue: { [row]: { [column]: { custom } } } },
      });
      to.range.rows.forEach((row, down) => {
        to.range.cols.forEach((column, across) => {
          // What is pasted over more cells stands there again and again.
          const copied = source.getCellRaw(from.range.rows[down % from.range.rows.length]!, from.range.cols[across % from.range.cols.length]!);
          const [link, before] = [copied ? keptLink(copied) : undefined, target.getCellRaw(row, column)?.custom ?? null];
          if (link === undefined || (before as { link?: string } | null)?.link === link) return;
          redos.push(put(row, column, { link }));
          undos.unshift(put(row, column, before));
        });
      });
      return { redos, undos };
    },
  });
}
