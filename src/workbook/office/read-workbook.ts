import { noAnswer, quote, type Problem } from "../../planning/text";
import { cellAddress, sameSheetName, type Area, type SheetSnapshot, type TablePlan, type WorkbookSnapshot } from "../../sheet";
import { chosenBy, type ByHead, type SheetChoice } from "../sheet-choice";
import type { OfficeHost } from "./host";
import { readCells, type Cells, type UsedSheet } from "./read-cells";

/** What is loaded of a range to know its place. */
export const place = "rowIndex,columnIndex,rowCount,columnCount";

/**
 * Reads the chosen sheets, or all of them: whole, or only their values.
 *
 * The first request learns names, and how far sheets go that are chosen by name; the second how far others go and where tables are; the rest
 * read cells, first the heads of sheets that are chosen by them.
 */
export async function readWorkbook(host: OfficeHost, context: Excel.RequestContext, choice?: SheetChoice, only?: "values"): Promise<WorkbookSnapshot> {
  const { worksheets, tables } = context.workbook;
  worksheets.load("items/name,items/visibility,items/protection/protected");
  tables.load("items/name,items/worksheet/name");
  const isByName = typeof choice === "object";
  const named = isByName ? choice.map((name) => ({ name, ...extentOf(host, worksheets.getItemOrNullObject(name)) })) : [];
  await context.sync();

  const chosen = chosenSheets(worksheets.items, tables.items, choice);
  const extents = new Map(chosen.map(({ sheet }) => [sheet, named.find(({ name }) => sameSheetName(name, sheet.name)) ?? extentOf(host, sheet)]));
  const areas = tables.items
    .filter((table) => chosen.some(({ sheet }) => sheet.name === table.worksheet.name))
    .map((table) => ({ name: table.name, sheet: table.worksheet.name, range: table.getRange().load(place) }));
  if (areas.length > 0 || (!isByName && chosen.length > 0)) await context.sync();

  const cells = new Map<Excel.Worksheet, Cells>();
  const readAll = async (asked: readonly UsedSheet[]): Promise<void> => {
    for (const { sheet, used } of asked) if (used.rows * used.columns > mostCells) throw tooFarApart(sheet.name, used);
    for (const [index, one] of (await readCells(context, asked)).entries()) cells.set(asked[index]!.sheet, one);
  };
  const snapshotOf = (sheet: Excel.Worksheet): SheetSnapshot => ({
    name: sheet.name,
    visible: isVisible(sheet),
    protected: sheet.protection.protected,
    ...(cells.get(sheet) ?? { values: [], formulas: [] }),
    tables: areas.filter((one) => one.sheet === sheet.name).map(({ name, range }): TablePlan => ({ name, area: areaOf(range) })),
    attachments: extents.get(sheet)?.counts.reduce((sum, { value }) => sum + value, 0) ?? 0,
    ...(extents.get(sheet)?.mayHoldNotes === true ? { mayHoldNotes: true } : {}),
  });

  const used = chosen.flatMap(({ sheet, head }) => {
    const { range } = extents.get(sheet)!;
    return range.isNullObject ? [] : [{ sheet, head, used: areaOf(range), hasFormulas: only === undefined }];
  });
  await readAll(used.flatMap(({ head, ...whole }): UsedSheet[] => (head === null ? [whole] : headOf(whole, head.rows))));
  const isRest = ({ sheet, head, used: area, hasFormulas }: (typeof used)[number]): boolean =>
    head !== null && (hasFormulas || area.row + area.rows > head.rows) && head.isWanted(snapshotOf(sheet));
  await readAll(used.filter(isRest));
  return { sheets: worksheets.items.map(snapshotOf) };
}

/** Most cells of a sheet that are read, empty ones between those that hold something included: as many as the host takes in one range. */
const mostCells = 5_000_000;

function tooFarApart(name: string, { row, column, rows, columns }: Area): Problem {
  const last = cellAddress({ row: row + rows - 1, column: column + columns - 1 });
  return noAnswer("sheet", name, `Cells of ${quote(name)} stand as far apart as ${last}: too many to read. Delete the rows and columns of what stands far from the rest.`);
}

interface ChosenSheet {
  readonly sheet: Excel.Worksheet;
  /** How its first rows are to decide; null where it is wanted anyway. */
  readonly head: ByHead | null;
}

function chosenSheets(sheets: readonly Excel.Worksheet[], tables: readonly Excel.Table[], choice: SheetChoice | undefined): ChosenSheet[] {
  const isChosen = chosenBy(choice);
  const withTables = new Set(tables.map(({ worksheet }) => worksheet.name));
  return sheets.flatMap((sheet) => {
    const asked = isChosen({ name: sheet.name, visible: isVisible(sheet), hasTables: withTables.has(sheet.name) });
    return asked === false ? [] : [{ sheet, head: asked === true ? null : asked }];
  });
}

/** Leaves the first rows of a sheet, without formulas; nothing where the first used one comes later. */
function headOf({ sheet, used }: UsedSheet, rows: number): UsedSheet[] {
  const left = Math.min(used.rows, rows - used.row);
  return left > 0 ? [{ sheet, used: { ...used, rows: left }, hasFormulas: false }] : [];
}

function isVisible(sheet: Excel.Worksheet): boolean {
  return sheet.visibility === "Visible";
}

/** Takes the place of a range out of its loaded indexes. */
export function areaOf(range: Excel.Range): Area {
  return { row: range.rowIndex, column: range.columnIndex, rows: range.rowCount, columns: range.columnCount };
}

interface Extent {
  readonly range: Excel.Range;
  readonly counts: readonly OfficeExtension.ClientResult<number>[];
  readonly mayHoldNotes: boolean;
}

/** Asks how far a sheet goes and what sits on it. Notes are members of their own only from 1.18 on, and not even then in every build of the client. */
function extentOf(host: OfficeHost, sheet: Excel.Worksheet): Extent {
  const range = sheet.getUsedRangeOrNullObject(true).load(place);
  const counts = [sheet.comments.getCount(), sheet.shapes.getCount(), sheet.charts.getCount()];
  if (host.supports("1.18") && "notes" in sheet) return { range, counts: [...counts, sheet.notes.getCount()], mayHoldNotes: false };
  return { range, counts, mayHoldNotes: true };
}
