import type { Area, SheetSnapshot, TablePlan, WorkbookSnapshot } from "../../sheet";
import { chosenBy, type SheetChoice } from "../sheet-choice";
import type { OfficeHost } from "./host";
import { readCells, type UsedSheet } from "./read-cells";

/** What is loaded of a range to know its place. */
export const place = "rowIndex,columnIndex,rowCount,columnCount";

/**
 * Reads the chosen sheets whole, or all of them.
 *
 * The first request learns names, the second how far the sheets go and where tables are, the rest read cells.
 */
export async function readWorkbook(host: OfficeHost, context: Excel.RequestContext, choice?: SheetChoice): Promise<WorkbookSnapshot> {
  const { worksheets, tables } = context.workbook;
  worksheets.load("items/name,items/visibility,items/protection/protected");
  tables.load("items/name,items/worksheet/name");
  await context.sync();

  const isChosen = chosenBy(choice);
  const chosen = worksheets.items.filter((sheet) => isChosen({ name: sheet.name, visible: isVisible(sheet) }));
  const extents = chosen.map((sheet) => ({ sheet, used: sheet.getUsedRangeOrNullObject(true).load(place), ...countsOf(host, sheet) }));
  const areas = tables.items
    .filter((table) => chosen.some(({ name }) => name === table.worksheet.name))
    .map((table) => ({ name: table.name, sheet: table.worksheet.name, range: table.getRange().load(place) }));
  if (chosen.length > 0) await context.sync();

  const used = extents.flatMap(({ sheet, used: range }): UsedSheet[] => (range.isNullObject ? [] : [{ sheet, used: areaOf(range) }]));
  const cells = new Map((await readCells(context, used)).map((one, index) => [used[index]!.sheet, one]));
  const extentOf = new Map(extents.map((one) => [one.sheet, one]));
  return {
    sheets: worksheets.items.map((sheet): SheetSnapshot => ({
      name: sheet.name,
      visible: isVisible(sheet),
      protected: sheet.protection.protected,
      ...(cells.get(sheet) ?? { values: [], formulas: [] }),
      tables: areas.filter((one) => one.sheet === sheet.name).map(({ name, range }): TablePlan => ({ name, area: areaOf(range) })),
      attachments: extentOf.get(sheet)?.counts.reduce((sum, { value }) => sum + value, 0) ?? 0,
      ...(extentOf.get(sheet)?.mayHoldNotes === true ? { mayHoldNotes: true } : {}),
    })),
  };
}

function isVisible(sheet: Excel.Worksheet): boolean {
  return sheet.visibility === "Visible";
}

/** Takes the place of a range out of its loaded indexes. */
export function areaOf(range: Excel.Range): Area {
  return { row: range.rowIndex, column: range.columnIndex, rows: range.rowCount, columns: range.columnCount };
}

interface Counts {
  readonly counts: readonly OfficeExtension.ClientResult<number>[];
  readonly mayHoldNotes: boolean;
}

/** Notes are members of their own only from 1.18 on, and not even then in every build of the client. */
function countsOf(host: OfficeHost, sheet: Excel.Worksheet): Counts {
  const counts = [sheet.comments.getCount(), sheet.shapes.getCount(), sheet.charts.getCount()];
  if (host.supports("1.18") && "notes" in sheet) return { counts: [...counts, sheet.notes.getCount()], mayHoldNotes: false };
  return { counts, mayHoldNotes: true };
}
