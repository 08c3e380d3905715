import { sheetSize } from "./area";
import { columnNumber } from "./column-letters";

/** Text in quotes, what stands in brackets, and cells such as A1 or $A1; whole rows such as 2:3 too. */
const parts = /"(?:[^"]|"")*"|'(?:[^']|'')*'!|\[|(?<![\w.$])\$?\d+:\$?\d+|(?<![\w.])(\$?)([A-Z]{1,3})(\$?)(\d{1,7})(?![\w.(!])/gi;

/**
 * Writes a formula so that it is the same text wherever it says the same of its own row: A5 in row 7 becomes A(-2), while A$5 stays.
 *
 * Columns are left as they are, so only formulas of one column compare. What is not understood safely, such as whole rows and columns of
 * a table, comes out as it is behind its row, and is the same as nothing else.
 */
export function relativeForm(formula: string, row: number): string {
  const unclear: string[] = [];
  const form = formula.replace(parts, (part: string, dollar = "", letters?: string, fixed?: string, digits?: string) => {
    if (part.startsWith('"') || part.startsWith("'")) return part;
    const number = Number(digits);
    if (letters === undefined) unclear.push(part);
    else if (fixed === "" && number <= sheetSize.rows && columnNumber(letters) !== null) return `${dollar}${letters}(${number - 1 - row})`;
    return part;
  });
  return unclear.length > 0 ? `${row} ${formula}` : form;
}
