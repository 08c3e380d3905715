import { CanceledError, ICommandService, type Univer } from "@univerjs/core";
import { IEditorService } from "@univerjs/docs-ui";
import { DeviceInputEventType } from "@univerjs/engine-render";
import { IDescriptionService } from "@univerjs/sheets-formula";
import { IEditorBridgeService, SetCellEditVisibleOperation } from "@univerjs/sheets-ui";
import { KeyCode } from "@univerjs/ui";
import type { LiveWorkbook } from "../../workbook/engine/live-workbook";

/** How the engine calls what it does with a key while it offers functions; the name of the editor follows. */
const offering = "sheet.formula-embedding-editor.search_function.";

/** The functions that are offered, each with its name first. */
const shown = () => [...document.querySelectorAll("[data-u-comp=sheets-formula-editor] li")].map((offered) => offered.textContent.toUpperCase());

/** The name that ends at the cursor. */
const nameAtEnd = /[A-Z][A-Z0-9._]*$/i;

/**
 * Lets Enter and Tab end a formula although functions are still offered for a name in it that is long written.
 *
 * The engine takes its offer back a third of a second after the last key; until then it keeps both keys to itself, and whoever paused
 * inside a name and was quick after it pressed Enter in vain. A function that is still offered for a shorter name is not taken for a longer one.
 */
export function passStaleSuggestions(univer: Univer, live: LiveWorkbook): void {
  const injector = univer.__getInjector();
  const [commands, editors, bridge, functions] = [injector.get(ICommandService), injector.get(IEditorService), injector.get(IEditorBridgeService), injector.get(IDescriptionService)];
  commands.beforeCommandExecuted(({ id, params }) => {
    if (!id.startsWith(offering)) return;
    const { keyCode } = params as { keyCode: KeyCode };
    if (keyCode !== KeyCode.ENTER && keyCode !== KeyCode.TAB) return;
    const editor = editors.getEditor(id.slice(offering.length));
    const cursor = editor?.getSelectionRanges()[0]?.startOffset ?? 0;
    const written = editor?.getDocumentDataModel()?.getPlainText().slice(0, cursor) ?? "";
    const name = nameAtEnd.exec(written)?.[0];
    if (name !== undefined && functions.getSearchListByNameFirstLetter(name).length > 0) {
      if (shown().some((text) => text.startsWith(name.toUpperCase()))) return;
      throw new CanceledError();
    }
    bridge.disableForceKeepVisible();
    void commands.executeCommand(SetCellEditVisibleOperation.id, { visible: false, eventType: DeviceInputEventType.Keyboard, keycode: keyCode, unitId: live.workbook.getUnitId() });
    throw new CanceledError();
  });
}
