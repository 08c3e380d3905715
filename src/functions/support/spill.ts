import { noAnswer } from "../../planning/text";
import { readScalar } from "./cells";
import { readCount } from "./numbers";

/** Rows of a sheet: no answer can be longer. */
export const mostRows = 1_048_576;

/** Reads the most rows to list; null where it is left out. */
export function readMostRows(received: unknown, argument: string): number | null {
  return readScalar(received, argument) === null ? null : readCount(received, argument, { min: 1, max: mostRows, example: 100 });
}

/** Stands texts one below the other. */
export function column(texts: readonly string[]): string[][] {
  return texts.map((text) => [text]);
}

/** Does as `column`; a column with nothing in it is no answer, and `sentence` says why. */
export function filledColumn(texts: readonly string[], argument: string, sentence: string): string[][] {
  if (texts.length === 0) throw noAnswer(argument, texts, sentence);
  return column(texts);
}

/** Says in a last row of `width` cells how many rows were left out; nothing where none were. */
export function rowsLeftOut(count: number, width: number): string[][] {
  return count > 0 ? [[`and ${count} more`, ...Array.from({ length: width - 1 }, () => "")]] : [];
}
