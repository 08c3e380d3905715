import { isTab } from "../planning/commissioning/tab";
import { quote } from "../planning/text";
import { cellAddress, foldSheetName, sheetNamesIn, type WorkbookSnapshot } from "../sheet";

/** Answers where the formulas stand, tabs apart, that look at a sheet, such as `B2 of "Overview"`. */
export type LookingAt = (sheet: string) => readonly string[];

/** Finds in a workbook the formulas of people's own that look at other sheets. A program has them follow a sheet that is renamed, not one that takes its place. */
export function formulasLooking({ sheets }: WorkbookSnapshot): LookingAt {
  const places = new Map<string, Set<string>>();
  for (const sheet of sheets.filter((one) => !isTab(one))) {
    for (const [row, line] of sheet.formulas.entries()) {
      for (const [column, formula] of line.entries()) {
        for (const name of sheetNamesIn(formula ?? "").map(foldSheetName)) {
          places.set(name, (places.get(name) ?? new Set()).add(`${cellAddress({ row, column })} of ${quote(sheet.name)}`));
        }
      }
    }
  }
  return (sheet) => [...(places.get(foldSheetName(sheet)) ?? [])];
}
