import { CommandType, ICommandService, InterceptorEffectEnum, LocaleService, LocaleType, type Univer } from "@univerjs/core";
import type { FUniver } from "@univerjs/core/facade";
import { IRenderManagerService } from "@univerjs/engine-render";
import { INTERCEPTOR_POINT, SheetInterceptorService, SheetsSelectionsService } from "@univerjs/sheets";
import { HoverManagerService, IEditorBridgeService } from "@univerjs/sheets-ui";
import { ContextMenuGroup, ContextMenuPosition, IMenuManagerService, IShortcutService, KeyCode, MenuItemType, MetaKeys } from "@univerjs/ui";
import { defer, of } from "rxjs";
import { cellAddress, type CellPlace } from "../../sheet";
import type { LiveWorkbook } from "../../workbook/engine/live-workbook";
import type { NoteCard } from "../note-card";
import { cellOnPage } from "./cell-on-page";
import { isGridReady } from "./desk-keys";
import { onceAFrame } from "./once-a-frame";

/** What a person may do with the note of the selected cell. */
export const noteCommands = { write: "baywright.operation.write-note", choose: "baywright.operation.choose-note", remove: "baywright.operation.delete-note" } as const;

/** What the menu of a cell calls it. */
const notesEnglish = { baywright: { notes: { write: "Note (Shift+F2)", remove: "Delete the note" } } };

/** The corner of a cell that has a note. */
const corner = { color: "#b0480f", size: 7 };

const threadCaption = "A thread of comments. It stays in the file as it is, and is answered in the program it came from.";

/**
 * Shows the notes of cells: a mark in the corner of the cell, and its text on a card while the pointer or the selection is on the cell. Shift+F2 and the
 * menu of the cell lead into the card.
 */
export function showNotes(univer: Univer, api: FUniver, live: LiveWorkbook, container: HTMLElement, card: NoteCard, hands: { focus(): void; say(sentence: string): void }): void {
  const injector = univer.__getInjector();
  injector.get(LocaleService).load({ [LocaleType.EN_US]: notesEnglish });
  const commands = injector.get(ICommandService);
  let pointed: CellPlace | null = null;
  let isTyping = false;

  /** A cell, or the first one of those that it is merged with: that one has the note. */
  const wholeCell = ({ row, column }: CellPlace): CellPlace => {
    const merged = live.workbook.getActiveSheet().getMergedCell(row, column);
    return merged ? { row: merged.startRow, column: merged.startColumn } : { row, column };
  };
  const selected = (): CellPlace | null => {
    const range = live.selectedRange();
    return range === null ? null : wholeCell({ row: range.startRow, column: range.startColumn });
  };
  const noteAt = (place: CellPlace | null) => (place === null ? null : live.notes.at(live.workbook.getActiveSheet(), place));
  const boxOf = ({ row, column }: CellPlace) => cellOnPage(api, container, row, column);
  const show = () => {
    const note = isTyping ? null : (noteAt(pointed) ?? noteAt(selected()));
    const box = note === null ? null : boxOf(note);
    if (note === null || box?.isSeen !== true) card.show(null);
    else card.show({ text: note.text, caption: note.isThread === true ? threadCaption : undefined }, box);
  };

  injector.get(SheetInterceptorService).intercept(INTERCEPTOR_POINT.CELL_CONTENT, {
    effect: InterceptorEffectEnum.Style,
    handler(cell, place, next) {
      const { row, col: column, worksheet, rawData } = place;
      if (live.notes.at(worksheet, { row, column }) === null) return next(cell);
      const own = !cell || cell === rawData ? { ...rawData } : cell;
      return next({ ...own, markers: { ...own.markers, tr: corner } });
    },
  });
  // A row that comes moves every note below it, one after the other: they are drawn once.
  live.notes.onChange(onceAFrame(() => {
    injector.get(IRenderManagerService).getRenderById(live.workbook.getUnitId())?.mainComponent?.makeForceDirty();
    show();
  }));
  injector.get(HoverManagerService).currentCell$.subscribe((place) => {
    pointed = place ? wholeCell({ row: place.location.row, column: place.location.col }) : null;
    show();
  });
  const { selectionChanged$, selectionMoveEnd$, selectionSet$ } = injector.get(SheetsSelectionsService);
  for (const moves of [selectionChanged$, selectionMoveEnd$, selectionSet$]) moves.subscribe(show);
  injector.get(IEditorBridgeService).visible$.subscribe(({ visible }) => {
    isTyping = visible;
    // A pointer that rests where it last clicked points at nothing any more once somebody types.
    if (visible) pointed = null;
    show();
  });
  commands.onCommandExecuted(({ id }) => {
    if (id === "sheet.operation.set-scroll") show();
  });

  const change = (text: (place: CellPlace) => void) => (): boolean => {
    const place = selected();
    if (place === null) return false;
    if (noteAt(place)?.isThread === true) hands.say(threadCaption);
    else text(place);
    return true;
  };
  const write = change((place) => {
    const { workbook } = live;
    const sheet = workbook.getActiveSheet();
    card.write(cellAddress(place), noteAt(place)?.text ?? "", boxOf(place), (text, goesBack) => {
      live.notes.write(workbook, sheet, place, text);
      if (goesBack) hands.focus();
      show();
    });
  });
  const remove = change((place) => {
    live.notes.write(live.workbook, live.workbook.getActiveSheet(), place, "");
  });
  // A menu that closes gives the keyboard to the cells: the card is opened after that.
  const choose = () => {
    setTimeout(write);
    return true;
  };
  for (const [id, handler] of [[noteCommands.write, write], [noteCommands.choose, choose], [noteCommands.remove, remove]] as const) {
    commands.registerCommand({ id, type: CommandType.OPERATION, handler });
  }
  injector.get(IShortcutService).registerShortcut({ id: noteCommands.write, binding: KeyCode.F2 | MetaKeys.SHIFT, preconditions: isGridReady });
  const item = (id: string, title: string, isHidden: () => boolean) => ({
    order: 0,
    menuItemFactory: () => ({ id, title, type: MenuItemType.BUTTON, hidden$: defer(() => of(isHidden())) }),
  });
  injector.get(IMenuManagerService).mergeMenu({
    [ContextMenuPosition.MAIN_AREA]: {
      [ContextMenuGroup.OTHERS]: {
        order: 9,
        [noteCommands.choose]: item(noteCommands.choose, "baywright.notes.write", () => false),
        [noteCommands.remove]: item(noteCommands.remove, "baywright.notes.remove", () => noteAt(selected()) === null),
      },
    },
  });
}
