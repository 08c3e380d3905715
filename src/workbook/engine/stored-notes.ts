import type { IWorkbookData } from "@univerjs/core";
import type { ISheetNote } from "@univerjs/sheets-note";
import type { Note } from "../document/workbook-document";
import { numbered, readResource, resourceNames } from "./stored-sheet";

/** A note as the engine keeps it, and what the engine does not know of it. */
export type StoredNote = ISheetNote & { isThread?: true };

/** The notes of a sheet as the engine stores them, by row and column. */
export type SheetNotes = Readonly<Record<number, Readonly<Record<number, StoredNote>>>>;

/** The size in pixels that the engine asks for; a note of ours is as large as its text. */
const size = { width: 160, height: 72 };

/** Makes a note of the engine. `id` is the note's own on its sheet, wherever its cell moves. */
export function storedNote(id: string, { row, column, text, isThread }: Note): StoredNote {
  return { id, row, col: column, note: text, ...size, ...(isThread === true && { isThread }) };
}

/** Puts the notes of sheets as the engine's plug-in stores them. */
export function storedNotes(sheets: readonly { readonly id: string; readonly notes: readonly Note[] }[]): Readonly<Record<string, SheetNotes>> {
  const stored: Record<string, Record<number, Record<number, StoredNote>>> = {};
  for (const { id, notes } of sheets) notes.forEach((note, index) => (((stored[id] ??= {})[note.row] ??= {})[note.column] = storedNote(`note${index}`, note)));
  return stored;
}

/** Lists the notes of a sheet, row by row. */
export function notesOf(notes: SheetNotes): Note[] {
  return numbered(notes).flatMap(([, line]) => numbered(line).map(([, note]) => plainNote(note)));
}

export function plainNote({ row, col, note, isThread }: StoredNote): Note {
  return { row, column: col, text: note, isThread };
}

/** Gives the engine the notes that a plan kept by an earlier release carries along with its sheets. */
export function bringUpNotes(data: IWorkbookData): IWorkbookData {
  const sheets = Object.entries(data.sheets).flatMap(([id, { custom }]) => {
    const kept = (custom as { notes?: { row: number; column: number; note: unknown }[] } | undefined)?.notes;
    return kept === undefined ? [] : [{ id, notes: kept.map(({ row, column, note }) => ({ row, column, text: typeof note === "string" ? note : "" })) }];
  });
  if (sheets.length === 0 || readResource(data, resourceNames.notes) !== undefined) return data;
  return { ...data, resources: [...(data.resources ?? []), { name: resourceNames.notes, data: JSON.stringify(storedNotes(sheets)) }] };
}
