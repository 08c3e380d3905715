/** How one argument, or one cell of a range, is read; and what help and sentences say of it. */
export interface Reader<Value> {
  /** Reads what the host hands over. `place` is what a sentence calls it, such as `drives` or `needs row 2 hosts`. Throws a `Problem`. */
  readonly read: (received: unknown, place: string) => Value;
  /** What a person would write, as it stands in a formula. */
  readonly example?: string;
  /** What a blank means, as it stands in a formula; left out where a blank is refused or needs words of its own. */
  readonly default?: string;
  /** What the sheet offers while somebody types; other input may be read too. */
  readonly offers?: readonly Offer[];
  /** Takes a range of cells. */
  readonly range?: true;
  /** Takes any text for a value, that of a header too. */
  readonly anyText?: boolean;
}

/** One thing to choose, as it is handed over, and what it means where that is not plain. */
export interface Offer {
  readonly value: string | number;
  readonly meaning?: string;
}

/** Makes a reader of something else out of what `reader` reads; `change` may refuse it. */
export function mapped<Read, Value>(reader: Reader<Read>, change: (value: Read, place: string) => Value): Reader<Value> {
  return { ...reader, read: (received, place) => change(reader.read(received, place), place) };
}

/** Writes a number or a truth as people type it into a formula. */
export function asTyped(value: number | boolean): string {
  return String(value).toUpperCase();
}
