import { sameSheetName, type Area, type CellValue, type SheetSnapshot, type TablePlan, type WorkbookSnapshot } from "../../sheet";
import type { OfficeHost } from "./host";

/**
 * Reads sheets whole in one sync, or in two: where all of them are asked for, their names must be learnt first, and so must the
 * names of the tables on those that are asked for.
 */
export async function readWorkbook(host: OfficeHost, context: Excel.RequestContext, names?: readonly string[]): Promise<WorkbookSnapshot> {
  const { worksheets, tables } = context.workbook;
  worksheets.load("items/name,items/visibility,items/protection/protected");
  tables.load("items/name,items/worksheet/name");
  const early = names?.map((name) => requestSheet(host, worksheets.getItemOrNullObject(name)));
  await context.sync();

  const wanted = (name: string) => names === undefined || names.some((one) => sameSheetName(one, name));
  const requests = new Map<string, SheetRequest>();
  for (const sheet of worksheets.items) {
    if (!wanted(sheet.name)) continue;
    const request = early?.[names!.findIndex((one) => sameSheetName(one, sheet.name))] ?? requestSheet(host, sheet);
    requests.set(sheet.name, request);
  }
  const areas = tables.items
    .filter((table) => wanted(table.worksheet.name))
    .map((table) => ({ name: table.name, sheet: table.worksheet.name, range: table.getRange().load("rowIndex,columnIndex,rowCount,columnCount") }));
  if (early === undefined || areas.length > 0) await context.sync();

  return {
    sheets: worksheets.items.map((sheet): SheetSnapshot => {
      const request = requests.get(sheet.name);
      return {
        name: sheet.name,
        visible: sheet.visibility === "Visible",
        protected: sheet.protection.protected,
        ...cellsOf(request?.used),
        tables: areas.filter((one) => one.sheet === sheet.name).map(({ name, range }): TablePlan => ({ name, area: areaOf(range) })),
        attachments: request?.counts.reduce((sum, { value }) => sum + value, 0) ?? 0,
      };
    }),
  };
}

/** Takes the place of a range out of its loaded indexes. */
export function areaOf(range: Excel.Range): Area {
  return { row: range.rowIndex, column: range.columnIndex, rows: range.rowCount, columns: range.columnCount };
}

interface SheetRequest {
  readonly used: Excel.Range;
  readonly counts: readonly OfficeExtension.ClientResult<number>[];
}

function requestSheet(host: OfficeHost, sheet: Excel.Worksheet): SheetRequest {
  const used = sheet.getUsedRangeOrNullObject(true);
  used.load("values,valueTypes,formulas,rowIndex,columnIndex,rowCount,columnCount");
  const counts = [sheet.comments.getCount(), sheet.shapes.getCount(), sheet.charts.getCount()];
  // Notes are members of their own only from 1.18 on.
  if (host.supports("1.18") && "notes" in sheet) counts.push(sheet.notes.getCount());
  return { used, counts };
}

function cellsOf(used: Excel.Range | undefined): Pick<SheetSnapshot, "values" | "formulas"> {
  if (used === undefined || used.isNullObject) return { values: [], formulas: [] };
  const { rowIndex, columnIndex, rowCount, columnCount } = used;
  const values: CellValue[][] = [];
  const formulas: (string | null)[][] = [];
  for (let row = 0; row < rowIndex + rowCount; row += 1) {
    const line = new Array<CellValue>(columnIndex + columnCount).fill(null);
    const written = new Array<string | null>(line.length).fill(null);
    if (row >= rowIndex) {
      for (let column = 0; column < columnCount; column += 1) {
        const value: unknown = used.values[row - rowIndex]![column];
        const type: string = used.valueTypes[row - rowIndex]![column]!;
        const formula: unknown = used.formulas[row - rowIndex]![column];
        line[columnIndex + column] = cellValue(value, type);
        // A text cell that begins with an equals sign shows the same text as its value and as its formula.
        const own = typeof formula === "string" && formula.startsWith("=") && !(type === "String" && formula === value);
        if (own) written[columnIndex + column] = formula;
      }
    }
    values.push(line);
    formulas.push(written);
  }
  return { values, formulas };
}

function cellValue(value: unknown, type: string): CellValue {
  if (type === "Error") return { error: String(value) };
  if (typeof value === "string") return type === "Empty" ? null : value;
  return typeof value === "number" || typeof value === "boolean" ? value : null;
}
