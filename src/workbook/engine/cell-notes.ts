import { ICommandService, IUndoRedoService, type IMutationInfo, type Univer, type Workbook, type Worksheet, generateRandomId } from "@univerjs/core";
import { RemoveNoteMutation, SheetsNoteModel, UpdateNoteMutation } from "@univerjs/sheets-note";
import type { CellPlace } from "../../sheet";
import type { Note } from "../document/workbook-document";
import { plainNote, storedNote, type StoredNote } from "./stored-notes";

/** The notes on the cells of the workbook that is open; the engine moves them with their cells. */
export class CellNotes {
  private readonly model: SheetsNoteModel;
  private readonly commands: ICommandService;
  private readonly undo: IUndoRedoService;
  /** Notes by their cells, sheet by sheet: the engine would go through all of them for each cell it draws. */
  private byCell = new Map<string, ReadonlyMap<string, StoredNote>>();

  constructor(univer: Univer) {
    const injector = univer.__getInjector();
    [this.model, this.commands, this.undo] = [injector.get(SheetsNoteModel), injector.get(ICommandService), injector.get(IUndoRedoService)];
    this.model.change$.subscribe(() => {
      this.byCell = new Map();
    });
  }

  /** Lists the notes of a sheet, in no order. */
  of(sheet: Worksheet): Note[] {
    return [...this.onSheet(sheet.getUnitId(), sheet.getSheetId()).values()].map(plainNote);
  }

  /** Finds the note of a cell. */
  at(sheet: Worksheet, { row, column }: CellPlace): Note | null {
    const found = this.onSheet(sheet.getUnitId(), sheet.getSheetId()).get(`${row} ${column}`);
    return found === undefined ? null : plainNote(found);
  }

  /** Writes the note of a cell, or takes it away where the text is empty: one step of undo. */
  write(workbook: Workbook, sheet: Worksheet, place: CellPlace, text: string): void {
    const { redos, undos } = this.change(workbook, sheet, place, text);
    if (redos.length === 0) return;
    for (const { id, params } of redos) this.commands.syncExecuteCommand(id, params);
    this.undo.pushUndoRedo({ unitID: workbook.getUnitId(), redoMutations: redos, undoMutations: undos });
  }

  /** Lists what writes the note of a cell, or takes it away where the text is empty, and what takes that back: nothing where it says so already. */
  change(workbook: Workbook, sheet: Worksheet, place: CellPlace, text: string): { readonly redos: IMutationInfo[]; readonly undos: IMutationInfo[] } {
    const [unitId, sheetId] = [workbook.getUnitId(), sheet.getSheetId()];
    const before = this.onSheet(unitId, sheetId).get(`${place.row} ${place.column}`);
    if (text === (before?.note ?? "")) return { redos: [], undos: [] };
    const after = text === "" ? undefined : storedNote(before?.id ?? generateRandomId(6), { ...place, text });
    const remove = (note: StoredNote | undefined): IMutationInfo[] => (note === undefined ? [] : [{ id: RemoveNoteMutation.id, params: { unitId, sheetId, noteId: note.id } }]);
    const put = (note: StoredNote | undefined): IMutationInfo[] => (note === undefined ? [] : [{ id: UpdateNoteMutation.id, params: { unitId, sheetId, row: note.row, col: note.col, note } }]);
    // Taken away first: the engine brings a note that went with its row back with the text under which it was put there.
    return { redos: [...remove(before), ...put(after)], undos: [...remove(after), ...put(before)] };
  }

  /** Calls `listener` after each change of notes. */
  onChange(listener: () => void): void {
    this.model.change$.subscribe(listener);
  }

  private onSheet(unitId: string, sheetId: string): ReadonlyMap<string, StoredNote> {
    const key = `${unitId} ${sheetId}`;
    const known = this.byCell.get(key);
    if (known !== undefined) return known;
    const notes = this.model.getSheetNotes(unitId, sheetId)?.values() ?? [];
    const found = new Map([...notes].map((note) => [`${note.row} ${note.col}`, note]));
    this.byCell.set(key, found);
    return found;
  }
}
