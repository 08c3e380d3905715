import type { Univer } from "@univerjs/core";
import type { LiveWorkbook } from "../../workbook/engine/live-workbook";
import { copyAlong } from "./copied-along";

/** Lets notes go along with cells that are copied, as their looks do. A thread of comments stays where it is. */
export function copyNotes(univer: Univer, live: LiveWorkbook): void {
  copyAlong(univer, live, "baywright.copied-notes", (from, to) => {
    const [note, covered] = [live.notes.at(from.sheet, from.place), live.notes.at(to.sheet, to.place)];
    return note?.isThread === true || covered?.isThread === true ? null : live.notes.change(live.workbook, to.sheet, to.place, note?.text ?? "");
  });
}
