import type { Column } from "./column";

/** One planning table: its name, the note above it and its columns in the order in which set-up writes them. */
export interface Table<Columns extends Record<string, Column> = Record<string, Column>> {
  readonly name: string;
  readonly note: string;
  readonly columns: Columns;
  /** True where set-up leaves it out until somebody asks for it: a plan without it is whole, as if it had no rows. */
  readonly further?: true;
}

/** Describes a planning table that set-up adds. */
export function table<Columns extends Record<string, Column>>(name: string, note: string, columns: Columns): Table<Columns> {
  return { name, note, columns };
}

/** Describes a planning table that comes when somebody asks for it. */
export function furtherTable<Columns extends Record<string, Column>>(name: string, note: string, columns: Columns): Table<Columns> {
  return { name, note, columns, further: true };
}
