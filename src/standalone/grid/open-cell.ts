import { DOCS_NORMAL_EDITOR_UNIT_ID_KEY, ICommandService, type Univer } from "@univerjs/core";
import { RichTextEditingMutation } from "@univerjs/docs";
import { IEditorService } from "@univerjs/docs-ui";
import { IEditorBridgeService } from "@univerjs/sheets-ui";
import { cellAddress } from "../../sheet";
import type { LiveWorkbook } from "../../workbook/engine/live-workbook";

/** What is being typed into a cell that is still open: it stands in no cell yet. */
export interface OpenCell {
  /** What is typed, with the cell that it is for; null where no cell is open, or nothing was typed into it. */
  read(): Typing | null;
  /** Calls `listener` when something is typed, and when the cell is closed. */
  onChange(listener: () => void): void;
}

export interface Typing {
  /** Sheet and cell, such as Arrays!C5. */
  readonly place: string;
  readonly text: string;
}

/** Watches the cell that is open for typing. */
export function watchOpenCell(univer: Univer, live: LiveWorkbook): OpenCell {
  const injector = univer.__getInjector();
  const [commands, editors, bridge] = [injector.get(ICommandService), injector.get(IEditorService), injector.get(IEditorBridgeService)];
  return {
    read() {
      const at = bridge.getEditLocation();
      const sheet = at && bridge.isVisible().visible && bridge.getEditorDirty() ? live.workbook.getSheetBySheetId(at.sheetId) : null;
      const text = editors.getEditor(DOCS_NORMAL_EDITOR_UNIT_ID_KEY)?.getDocumentDataModel()?.getPlainText() ?? "";
      return at && sheet ? { place: `${sheet.getName()}!${cellAddress(at)}`, text } : null;
    },
    onChange(listener) {
      commands.onCommandExecuted(({ id }) => {
        if (id === RichTextEditingMutation.id) listener();
      });
      bridge.visible$.subscribe(({ visible }) => {
        if (!visible) listener();
      });
    },
  };
}
