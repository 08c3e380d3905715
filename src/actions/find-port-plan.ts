import type { SpillPlace } from "../planning/assignment";
import { invalid } from "../planning/text";
import { isInArea } from "../sheet";
import type { WorkbookPort } from "../workbook/port";

/**
 * Finds the spilled PORTPLAN table in which a cell is selected; hand it to `keepPlannedPorts`.
 *
 * Refuses a selection in no such table.
 */
export async function findSelectedPortPlan(port: WorkbookPort): Promise<SpillPlace> {
  const { sheet, area } = await port.selection();
  const found = (await port.read([sheet])).sheets.find(({ name }) => name === sheet);
  const cells = (found?.formulas ?? []).flatMap((line, row) => line.flatMap((formula, column) => (/\bPORTPLAN\s*\(/i.test(formula ?? "") ? [{ sheet, row, column }] : [])));
  const areas = cells.length === 0 ? [] : await port.spillAreas(cells);
  const chosen = areas.find((one) => one !== null && isInArea(area, one));
  if (chosen === null || chosen === undefined) {
    throw invalid("selection", null, "The selected cell is in no table of a BAY.PORTPLAN formula. Select one of its cells, then choose Keep these addresses again.");
  }
  return { sheet, area: chosen };
}
