import type { WorkbookPort } from "../workbook/port";
import { withOurNames } from "./bay-formula";
import { cellsEdit } from "./cells-edit";
import { ourFormulas } from "./values-and-back";

/**
 * Enters again every formula of ours that shows #NAME?, as it does where it was typed or opened before the add-in had loaded.
 *
 * Returns how many there were.
 */
export async function reEnterFormulas(port: WorkbookPort): Promise<number> {
  const workbook = await port.read();
  const stuck = ourFormulas(workbook, "workbook").filter(({ sheet, row, column }) => {
    const value = workbook.sheets.find(({ name }) => name === sheet)?.values[row]?.[column];
    return typeof value === "object" && value?.error === "#NAME?";
  });
  const sheets = [...new Set(stuck.map(({ sheet }) => sheet))];
  if (stuck.length > 0) {
    await port.apply(
      sheets.map((sheet) =>
        cellsEdit(sheet, stuck.filter((one) => one.sheet === sheet).map(({ row, column, formula }) => ({ row, column, cell: { formula: withOurNames(formula) } }))),
      ),
    );
  }
  return stuck.length;
}
