import { type Injector, type Nullable, type Univer } from "@univerjs/core";
import { SheetsSelectionsService } from "@univerjs/sheets";
import { CellAlertManagerService } from "@univerjs/sheets-ui";
import { faultNote } from "../workbook/browser/bay-functions";
import type { LiveWorkbook } from "../workbook/browser/live-workbook";

/**
 * Shows the sentence of an error of ours: in the bubble over the cell that the pointer rests on, and through `say` for the selected
 * cell, which the keyboard reaches too.
 */
export function showFaultNotes(univer: Univer, live: LiveWorkbook, say: (sentence: string | null) => void): void {
  const injector: Injector = univer.__getInjector();
  const alerts = injector.get(CellAlertManagerService);
  const showPlain = alerts.showAlert.bind(alerts);
  alerts.showAlert = (alert) => {
    const { row, col } = alert.location;
    const note = faultNote(live.workbook.getActiveSheet().getCell(row, col));
    showPlain(note === null ? alert : { ...alert, title: note.error, message: note.sentence, width: 320, height: 110 });
  };
  const sayForSelected = () => {
    const range = injector.get(SheetsSelectionsService).getCurrentLastSelection()?.range as Nullable<{ startRow: number; startColumn: number }>;
    const note = range ? faultNote(live.workbook.getActiveSheet().getCell(range.startRow, range.startColumn)) : null;
    say(note === null ? null : `${note.error}: ${note.sentence}`);
  };
  injector.get(SheetsSelectionsService).selectionChanged$.subscribe(sayForSelected);
  live.onChange(sayForSelected);
}

