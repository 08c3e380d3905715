import type { IMutationInfo, Univer } from "@univerjs/core";
import { SetRangeValuesMutation } from "@univerjs/sheets";
import { keptLink } from "../../workbook/engine/cell-link";
import type { LiveWorkbook } from "../../workbook/engine/live-workbook";
import { copyAlong, type CopiedCell } from "./copied-along";

/** Lets cells that are copied lead where they led before. */
export function copyLinks(univer: Univer, live: LiveWorkbook): void {
  copyAlong(univer, live, "baywright.copied-links", (from, to) => {
    const copied = from.sheet.getCellRaw(from.place.row, from.place.column);
    const [link, before] = [copied ? keptLink(copied) : undefined, to.sheet.getCellRaw(to.place.row, to.place.column)?.custom ?? null];
    if (link === undefined || (before as { link?: string } | null)?.link === link) return null;
    return { redos: [put(to, { link })], undos: [put(to, before)] };
  });
}

function put({ sheet, place: { row, column } }: CopiedCell, custom: object | null): IMutationInfo {
  return { id: SetRangeValuesMutation.id, params: { unitId: sheet.getUnitId(), subUnitId: sheet.getSheetId(), cellValue: { [row]: { [column]: { custom } } } } };
}
