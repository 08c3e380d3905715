import type { Univer } from "@univerjs/core";
import type { FUniver } from "@univerjs/core/facade";
import { IFunctionService } from "@univerjs/engine-formula";
import { SheetsSelectionsService } from "@univerjs/sheets";
import { CellAlertManagerService, HoverManagerService } from "@univerjs/sheets-ui";
import { faultNote } from "../../workbook/engine/bay-functions";
import type { LiveWorkbook } from "../../workbook/engine/live-workbook";
import { isInCircle, type CellOnSheet } from "./circle";
import { cellOnPage } from "./cell-on-page";
import { errorSentence } from "./error-sentences";
import { onceAFrame } from "./once-a-frame";

/** Where the sentence of an error is shown. */
export interface FaultDisplay {
  /** Shows the sentence for the selected cell, or null. */
  selected(sentence: string | null): void;
  /** Shows the sentence for the cell under the pointer, below the area of the page that the cell takes, or null. */
  pointed(sentence: string | null, cell?: { readonly left: number; readonly bottom: number }): void;
}

/** Shows the sentence of an error for the cell under the pointer, and for the selected one, which the keyboard reaches too. */
export function showFaultNotes(univer: Univer, api: FUniver, live: LiveWorkbook, container: HTMLElement, display: FaultDisplay): void {
  const injector = univer.__getInjector();
  const names = new Set([...injector.get(IFunctionService).getExecutors().keys()].map(String));
  const formulaOf = ({ sheet: name, row, column }: CellOnSheet) => {
    const sheet = live.workbook.getSheetBySheetName(name);
    return sheet ? live.formulaAt(sheet, row, column, sheet.getCellRaw(row, column)) : null;
  };
  const sentenceOf = (error: string, formula: string) => errorSentence(error, formula, names, live.workbook.getSheets().map((sheet) => sheet.getName()));
  const sentenceAt = (row: number, column: number) => {
    const sheet = live.workbook.getActiveSheet();
    const shown = sheet.getCell(row, column);
    const note = faultNote(shown);
    if (note !== null) return `${note.error}: ${note.sentence}`;
    const { v: value } = shown ?? {};
    const formula = live.formulaAt(sheet, row, column, sheet.getCellRaw(row, column)) ?? "";
    if (typeof value !== "string" || !value.startsWith("#")) {
      const isCircular = formula !== "" && isInCircle({ sheet: sheet.getName(), row, column }, formulaOf);
      return isCircular ? `Circular reference: ${sentenceOf("#CYCLE!", formula)}` : null;
    }
    const sentence = sentenceOf(value, formula);
    return sentence === null ? null : `${value}: ${sentence}`;
  };
  // The engine's own bubble knows only the code of an error: it would say less than we know.
  const alerts = injector.get(CellAlertManagerService);
  const showAlert = alerts.showAlert.bind(alerts);
  alerts.showAlert = (alert) => {
    if (sentenceAt(alert.location.row, alert.location.col) === null) showAlert(alert);
  };
  injector.get(HoverManagerService).currentCell$.subscribe((place) => {
    const sentence = place ? sentenceAt(place.location.row, place.location.col) : null;
    if (!place || sentence === null) {
      display.pointed(null);
      return;
    }
    display.pointed(sentence, cellOnPage(api, container, place.location.row, place.location.col));
  });
  const { selectionChanged$, selectionMoveEnd$, selectionSet$ } = injector.get(SheetsSelectionsService);
  const showSelected = () => {
    const range = live.selectedRange();
    display.selected(range ? sentenceAt(range.startRow, range.startColumn) : null);
  };
  for (const moves of [selectionChanged$, selectionMoveEnd$, selectionSet$]) moves.subscribe(showSelected);
  // A build changes thousands of cells in a moment, and whether a cell is in a circle is looked for in hundreds.
  live.onChange(onceAFrame(showSelected));
}
