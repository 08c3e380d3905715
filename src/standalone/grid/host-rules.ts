import { CanceledError, ICommandService, type Nullable, type Univer, type Worksheet } from "@univerjs/core";
import { sameSheetName, sheetNameFault } from "../../sheet";
import type { LiveWorkbook } from "../../workbook/engine/live-workbook";
import { extrasOf, type StoredStyle } from "../../workbook/engine/stored-sheet";
import { whyNotKept } from "./offered-choices";
import { filterCommands } from "./show-filters";
import { noteCommands } from "./show-notes";

/** Commands by which a person changes cells of the sheet in front. */
const changing = new Set([
  "sheet.command.set-range-values", "sheet.command.clear-selection-content", "sheet.command.clear-selection-all",
  "sheet.command.delete-range-move-left", "sheet.command.delete-range-move-up", ...Object.values(noteCommands),
]);

const filtering = new Set<string>(Object.values(filterCommands));

/**
 * Keeps a person to what the spreadsheet host allows and the engine does not watch: names that can be a sheet's, and protected sheets.
 *
 * A change that is refused is not made; `say` is told why.
 */
export function keepHostRules(univer: Univer, live: LiveWorkbook, say: (sentence: string) => void): void {
  const refuse = (sentence: string): never => {
    say(sentence);
    throw new CanceledError();
  };
  univer.__getInjector().get(ICommandService).beforeCommandExecuted(({ id, params }) => {
    if (live.isOurs) return;
    if (id === "sheet.command.set-worksheet-name") {
      const { name = "", subUnitId } = params as { name?: string; subUnitId?: string };
      const fault = sheetNameFault(name);
      if (fault !== null) refuse(`The sheet name "${name}" ${fault}. Choose another name.`);
      const taken = live.workbook.getSheets().some((sheet) => sheet.getSheetId() !== subUnitId && sameSheetName(sheet.getName(), name));
      if (taken) refuse(`There is a sheet "${name}" already. Choose another name.`);
    }
    const unkept = whyNotKept(id, params);
    if (unkept !== null) refuse(unkept);
    if (filtering.has(id) && extrasOf(live.workbook.getActiveSheet().getConfig()).protection !== undefined) {
      refuse(`Sheet "${live.workbook.getActiveSheet().getName()}" is protected. Which of its rows are shown cannot be changed.`);
    }
    if (changing.has(id) || isEditStart(id, params)) {
      const sheet = live.workbook.getActiveSheet();
      if (isLocked(live, sheet)) refuse(`Sheet "${sheet.getName()}" is protected. Only its open cells can be changed.`);
    }
  });
}

function isEditStart(id: string, params: unknown): boolean {
  return id === "sheet.operation.set-cell-edit-visible" && (params as { visible?: boolean }).visible === true;
}

/** Tells whether the selected cell is closed on a protected sheet. */
function isLocked(live: LiveWorkbook, sheet: Worksheet): boolean {
  if (extrasOf(sheet.getConfig()).protection === undefined) return false;
  const selected = live.selectedRange();
  const style = selected && (live.workbook.getStyles().getStyleByCell(sheet.getCellRaw(selected.startRow, selected.startColumn)) as Nullable<StoredStyle>);
  return !style || style.unlocked !== 1;
}
