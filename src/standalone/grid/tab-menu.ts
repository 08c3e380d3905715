import { CommandType, ICommandService, IUndoRedoService, type Univer } from "@univerjs/core";
import { SetWorksheetOrderCommand } from "@univerjs/sheets";
import { RenameSheetOperation } from "@univerjs/sheets-ui";
import { ContextMenuGroup, ContextMenuPosition, IMenuManagerService, IShortcutService, KeyCode, MenuItemType, MetaKeys } from "@univerjs/ui";
import { noPrintPlan } from "../../workbook/document/workbook-document";
import type { PrintPlan } from "../../sheet";
import type { LiveWorkbook } from "../../workbook/engine/live-workbook";
import { extrasOf } from "../../workbook/engine/stored-sheet";
import { isGridReady } from "./desk-keys";

/** How long after a first press a second one is kept from the engine, in milliseconds: it waits 300, counted from when it has done what the first one asks for. */
const doubleClick = 500;

/** Asks a person how a sheet is to be printed; null where it is to stay as it is. */
export type AskPrint = (sheet: string, print: PrintPlan) => Promise<PrintPlan | null>;

/** Puts what the engine lacks into the menu of a sheet's tab: to move it without the mouse, and how it is printed, which Ctrl+P asks too. */
export function extendTabMenu(univer: Univer, live: LiveWorkbook, askPrint: AskPrint): void {
  const injector = univer.__getInjector();
  const commands = injector.get(ICommandService);
  addPrintMutation(univer, live);
  const entries = [
    { id: "baywright.operation.sheet-left", title: "Move left", run: () => moveSheet(-1) },
    { id: "baywright.operation.sheet-right", title: "Move right", run: () => moveSheet(1) },
    { id: "baywright.operation.print-set-up", title: "Print set-up …", run: () => void setUpPrint() },
  ];
  for (const { id, run } of entries) {
    commands.registerCommand({
      id,
      type: CommandType.OPERATION,
      handler() {
        run();
        return true;
      },
    });
  }
  const items = entries.map(({ id, title }, place) => [id, { order: 5 + place / 10, menuItemFactory: () => ({ id, title, type: MenuItemType.BUTTON }) }]);
  injector.get(IMenuManagerService).mergeMenu({ [ContextMenuPosition.FOOTER_TABS]: { [ContextMenuGroup.OTHERS]: Object.fromEntries(items) as object } });
  injector.get(IShortcutService).registerShortcut({ id: "baywright.operation.print-set-up", binding: KeyCode.P | MetaKeys.CTRL_COMMAND, preconditions: isGridReady });

  /** Moves the sheet in front past its neighbour that can be seen. */
  function moveSheet(by: 1 | -1): void {
    const sheets = live.workbook.getSheets();
    const shown = sheets.filter((sheet) => !sheet.isSheetHidden());
    const next = shown[shown.indexOf(live.workbook.getActiveSheet()) + by];
    if (next !== undefined) void commands.executeCommand(SetWorksheetOrderCommand.id, { order: sheets.indexOf(next) });
  }

  async function setUpPrint(): Promise<void> {
    const sheet = live.workbook.getActiveSheet();
    const before = extrasOf(sheet.getConfig()).print ?? noPrintPlan;
    const print = await askPrint(sheet.getName(), before);
    if (print === null) return;
    const [unitId, subUnitId] = [live.workbook.getUnitId(), sheet.getSheetId()];
    const mutation = (to: PrintPlan) => ({ id: printMutation, params: { unitId, subUnitId, print: to } });
    commands.syncExecuteCommand(printMutation, mutation(print).params);
    injector.get(IUndoRedoService).pushUndoRedo({ unitID: unitId, undoMutations: [mutation(before)], redoMutations: [mutation(print)] });
  }
}

/**
 * Opens the name of a tab for typing once a double click is over.
 *
 * The engine opens it while the button is down for the second time, and half a second later takes that for the begin of a drag: a name that is left by then
 * leaves the tab where it is on the page, out of the row of tabs, for good.
 */
export function renameByDoubleClick(univer: Univer, container: HTMLElement): void {
  const commands = univer.__getInjector().get(ICommandService);
  const tabOf = ({ target }: Event) => (target as Element).closest<HTMLElement>("[data-u-comp=slide-tab-item]:not(:has([contenteditable=true]))");
  let last: { readonly tab: Element | null; readonly at: number } = { tab: null, at: 0 };
  container.addEventListener("pointerdown", (event) => {
    const tab = event.button === 0 ? tabOf(event) : null;
    // What is pressed elsewhere in between makes no difference to the engine.
    if (tab === null) return;
    // Counted from when a press is heard of, as the engine does: on a busy page that is later than it was.
    const at = performance.now();
    if (tab === last.tab && at - last.at <= doubleClick) event.stopPropagation();
    last = { tab, at };
  }, { capture: true });
  container.addEventListener("dblclick", (event) => {
    const subUnitId = tabOf(event)?.dataset["id"];
    if (subUnitId !== undefined) void commands.executeCommand(RenameSheetOperation.id, { subUnitId });
  });
}

/** Named as the engine's own, so that whoever keeps what changes hears of it. */
const printMutation = "sheet.mutation.set-print-plan";

function addPrintMutation(univer: Univer, live: LiveWorkbook): void {
  univer.__getInjector().get(ICommandService).registerCommand({
    id: printMutation,
    type: CommandType.MUTATION,
    handler(_, params) {
      const { subUnitId, print } = params as { subUnitId: string; print: PrintPlan };
      const config = live.workbook.getSheetBySheetId(subUnitId)?.getConfig();
      if (config === undefined) return false;
      config.custom = { ...extrasOf(config), print };
      return true;
    },
  });
}
