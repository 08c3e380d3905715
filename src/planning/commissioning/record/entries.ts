import type { Scalar } from "../../../sheet";

/** What people typed, by field; null where nothing was. */
export type Entries<Field extends string> = Readonly<Record<Field, Scalar>>;

/** Collects what stands in each of some fields. */
export function entriesOf<Field extends string>(fields: readonly Field[], valueOf: (field: Field) => Scalar): Entries<Field> {
  return Object.fromEntries(fields.map((field) => [field, valueOf(field)])) as Record<Field, Scalar>;
}

/** Lists the fields of a table of labels in its order. */
export function fieldsOf<Field extends string>(labels: Readonly<Record<Field, string>>): readonly Field[] {
  return Object.keys(labels) as Field[];
}

/** Tells whether people typed into any of the fields. */
export function isFilled(entries: Entries<string>): boolean {
  return Object.values(entries).some((value) => value !== null);
}
