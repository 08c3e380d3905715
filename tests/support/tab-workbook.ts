import { stateCell, tabStates } from "../../src/planning/commissioning/tab";
import type { Scalar, SheetPlan, SheetSnapshot } from "../../src/sheet";
import { snapshotOf } from "./plain-workbook";

/** Reads a planned tab as it stands once it is in place, with what `type` puts into its cells. */
export function tabSheet(plan: SheetPlan, name: string, typed: readonly { readonly row: number; readonly column: number; readonly value: Scalar }[] = []): SheetSnapshot {
  const sheet = snapshotOf([plan]).sheets[0]!;
  const values = sheet.values.map((line) => [...line]);
  values[stateCell.row]![stateCell.column] = tabStates.whole;
  for (const { row, column, value } of typed) values[row]![column] = value;
  return { ...sheet, name, values };
}
