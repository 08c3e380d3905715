import { showCell, type Scalar } from "../../../sheet";

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

/** Writes what was typed without its spaces, those that do not break included; "" where nothing else was typed. */
export function withoutSpaces(value: Scalar): string {
  return showCell(value).replace(/[ \u00a0]/g, "");
}

/** Tells whether a text was typed, in whatever capitals: the sheet's own `=`. A number or a tick is no text. */
export function isText(value: Scalar, text: string): boolean {
  return typeof value === "string" && value.toLowerCase() === text.toLowerCase();
}
