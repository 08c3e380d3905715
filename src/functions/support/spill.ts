import { noAnswer } from "../../planning/text";
import { count, orNone } from "./numbers";

/** Rows of a sheet: no answer can be longer. */
export const mostRows = 1_048_576;

/** Reads the most rows to list; null where it is left out. */
export const rowLimit = orNone(count({ min: 1, max: mostRows, example: 100 }));

/** Passes on what a column is to hold; nothing at all is no answer, and `sentence` says why. */
export function filled(texts: readonly string[], argument: string, sentence: string): readonly string[] {
  if (texts.length === 0) throw noAnswer(argument, texts, sentence);
  return texts;
}

/** Says in a last row of `width` cells how many rows were left out; nothing where none were. */
export function rowsLeftOut(left: number, width: number): string[][] {
  return left > 0 ? [[`and ${left} more`, ...Array.from({ length: width - 1 }, () => "")]] : [];
}
