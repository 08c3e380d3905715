import { isError, type CellValue } from "./cell-value";
import type { SheetSnapshot } from "./snapshot";

/** Tells whether the same values and formulas stand on two sheets that were read, with as much attached to them; a sheet that is not there holds nothing. */
export function sameCells(one: SheetSnapshot | null | undefined, other: SheetSnapshot | null | undefined): boolean {
  if (!one || !other) return !one && !other;
  return one.attachments === other.attachments && sameRows(one.values, other.values, sameValue) && sameRows(one.formulas, other.formulas, Object.is);
}

type Rows<Item> = readonly (readonly Item[])[];

function sameRows<Item>(one: Rows<Item>, other: Rows<Item>, isSame: (one: Item, other: Item) => boolean): boolean {
  return one.length === other.length && one.every((line, row) => line === other[row] || sameLine(line, other[row]!, isSame));
}

function sameLine<Item>(one: readonly Item[], other: readonly Item[], isSame: (one: Item, other: Item) => boolean): boolean {
  return one.length === other.length && one.every((item, column) => isSame(item, other[column]!));
}

function sameValue(one: CellValue, other: CellValue): boolean {
  return Object.is(one, other) || (isError(one) && isError(other) && one.error === other.error);
}
