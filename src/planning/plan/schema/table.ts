import type { Column } from "./column";

/** One planning table: its name, the note above it and its columns in the order in which set-up writes them. */
export interface Table<Columns extends Record<string, Column> = Record<string, Column>> {
  readonly name: string;
  readonly note: string;
  readonly columns: Columns;
}

/** Describes a planning table. */
export function table<Columns extends Record<string, Column>>(name: string, note: string, columns: Columns): Table<Columns> {
  return { name, note, columns };
}
