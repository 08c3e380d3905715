import { isBlank, isError, type CellValue } from "./cell-value";
import type { SheetSnapshot } from "./snapshot";

/** Tells whether two sheets that were read show the same, with as much attached to them; a sheet that is not there shows nothing. */
export function sameValues(one: SheetSnapshot | null | undefined, other: SheetSnapshot | null | undefined): boolean {
  if (!one || !other) return !one && !other;
  return one.attachments === other.attachments && one.values.length === other.values.length && one.values.every((line, row) => line === other.values[row] || sameLine(line, other.values[row]!));
}

function sameLine(one: readonly CellValue[], other: readonly CellValue[]): boolean {
  return one.length === other.length && one.every((value, column) => sameValue(value, other[column]!));
}

/** A blank cell shows what a formula does that answers nothing. */
function sameValue(one: CellValue, other: CellValue): boolean {
  return Object.is(one, other) || (isBlank(one) && isBlank(other)) || (isError(one) && isError(other) && one.error === other.error);
}
