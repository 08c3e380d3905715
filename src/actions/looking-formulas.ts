import { isTab } from "../planning/commissioning/tab";
import { quote } from "../planning/text";
import { cellAddress, type WorkbookSnapshot } from "../sheet";

/** Answers where the formulas stand, tabs apart, that look at a sheet, such as `B2 of "Overview"`. */
export type LookingAt = (sheet: string) => readonly string[];

/** Finds in a workbook the formulas of people's own that look at other sheets. A program has them follow a sheet that is renamed, not one that takes its place. */
export function formulasLooking({ sheets }: WorkbookSnapshot): LookingAt {
  const found: { readonly formula: string; readonly place: string }[] = [];
  for (const sheet of sheets.filter((one) => !isTab(one))) {
    for (const [row, line] of sheet.formulas.entries()) {
      for (const [column, formula] of line.entries()) {
        if (formula?.includes("!") === true) found.push({ formula: formula.toLowerCase(), place: `${cellAddress({ row, column })} of ${quote(sheet.name)}` });
      }
    }
  }
  return (sheet) => {
    const [plain, quoted] = [`${sheet}!`.toLowerCase(), `'${sheet.replaceAll("'", "''")}'!`.toLowerCase()];
    return found.flatMap(({ formula, place }) => (formula.includes(quoted) || isNamed(formula, plain) ? [place] : []));
  };
}

/** Tells whether a formula names a sheet without apostrophes, and not one whose name only ends so. */
function isNamed(formula: string, plain: string): boolean {
  const at = formula.indexOf(plain);
  return at >= 0 && !/[\p{L}\p{N}_.']/u.test(formula[at - 1] ?? "");
}
