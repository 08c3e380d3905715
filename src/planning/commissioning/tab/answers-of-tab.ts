import type { SheetSnapshot } from "../../../sheet";
import { readTab } from "./read-tab";
import { tabAnswers, type TwinCell } from "./twin-cells";

/** Says what formulas of ours on a commissioning tab answer; nothing of another sheet. */
export function answersOfTab(sheet: SheetSnapshot): Pick<TwinCell, "row" | "column" | "value">[] {
  const tab = readTab(sheet);
  return tab === null ? [] : tabAnswers(sheet, tab);
}
