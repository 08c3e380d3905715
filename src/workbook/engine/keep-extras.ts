import type { ICommandService, IRange, IWorksheetData, Worksheet } from "@univerjs/core";
import { foldSheetName, type Area, type TablePlan } from "../../sheet";
import { moveArea, moveSpan } from "../document/move-lines";
import { moveFilter } from "../document/sheet-filter";
import type { LineMove } from "../document/workbook-document";
import { extrasOf, type SheetExtras } from "./stored-sheet";

/**
 * Keeps tables, filters and print set-up with the cells they belong to, which the engine does not know of: they move when rows or
 * columns come and go, which is remembered for whoever saves, and a table grows over what somebody types right below it, as tables in the spreadsheet host do.
 *
 * `ours` tells that a change is the program's own: that says itself how tables grow. `sheetsOf` lists the sheets of a workbook.
 */
export function keepExtras(
  commands: ICommandService,
  sheetOf: (unitId: string, sheetId: string) => Worksheet | null,
  ours: () => boolean,
  sheetsOf: (unitId: string) => readonly Worksheet[],
): void {
  let isCopying = false;
  commands.beforeCommandExecuted(({ id, params }) => {
    isCopying ||= id === "sheet.command.copy-sheet";
    if (id !== "sheet.mutation.insert-sheet" || !isCopying) return;
    isCopying = false;
    const { unitId, sheet } = params as { unitId: string; sheet: IWorksheetData };
    change(sheet, (extras) => copiedExtras(extras, sheetsOf(unitId).flatMap((one) => extrasOf(one.getConfig()).tables ?? [])));
  });
  commands.onCommandExecuted(({ id, params }) => {
    const { unitId, subUnitId, range } = (params ?? {}) as { unitId?: string; subUnitId?: string; range?: IRange };
    if (unitId === undefined || subUnitId === undefined) return;
    const sheet = sheetOf(unitId, subUnitId)?.getConfig();
    if (sheet === undefined) return;
    const shift = range === undefined ? null : shiftOf(id, range);
    if (shift !== null) change(sheet, (extras) => shiftExtras(extras, shift));
    if (id === "sheet.command.set-range-values" && !ours()) {
      const written = writtenBy(params as { range?: IRange; value?: unknown });
      if (written !== null) change(sheet, (extras) => ({ ...extras, tables: extras.tables?.map((table) => grownOver(table, written)) }));
    }
  });
}

function change(sheet: IWorksheetData, by: (extras: SheetExtras) => SheetExtras): void {
  sheet.custom = by(extrasOf(sheet));
}

function shiftOf(command: string, { startRow, endRow, startColumn, endColumn }: IRange): LineMove | null {
  switch (command) {
    case "sheet.mutation.insert-row":
      return { axis: "row", at: startRow, by: endRow - startRow + 1 };
    case "sheet.mutation.remove-rows":
      return { axis: "row", at: startRow, by: startRow - endRow - 1 };
    case "sheet.mutation.insert-col":
      return { axis: "column", at: startColumn, by: endColumn - startColumn + 1 };
    case "sheet.mutation.remove-col":
      return { axis: "column", at: startColumn, by: startColumn - endColumn - 1 };
    default:
      return null;
  }
}

/** What a copy of a sheet carries along: its tables under names of their own, as a workbook has each name once, and nothing that only the file of the first one holds. */
export function copiedExtras(extras: SheetExtras, tables: readonly TablePlan[]): SheetExtras {
  const taken = new Set(tables.map(({ name }) => foldSheetName(name)));
  const names = new Map<string, string>();
  for (const { name } of extras.tables ?? []) {
    let number = 2;
    while (taken.has(foldSheetName(`${name}${number}`))) number += 1;
    names.set(name, `${name}${number}`);
    taken.add(foldSheetName(`${name}${number}`));
  }
  return {
    ...extras,
    moves: undefined,
    drawings: undefined,
    ...(extras.tables && { tables: extras.tables.map((table) => ({ ...table, name: names.get(table.name)! })) }),
    ...(extras.filters && { filters: extras.filters.map((filter) => (filter.table === undefined ? filter : { ...filter, table: names.get(filter.table) ?? filter.table })) }),
  };
}

/** Moves everything that is tied to rows or columns; what stood wholly on rows or columns that went goes with them. */
export function shiftExtras(extras: SheetExtras, shift: LineMove): SheetExtras {
  const { tables, filters, print, wideMerges, moves = [] } = extras;
  const titles = print?.titleRows;
  const movedTitles = titles === undefined || shift.axis === "column" ? titles : movedRows(titles.row, titles.rows, shift);
  return {
    ...extras,
    moves: [...moves, shift],
    ...(tables && { tables: tables.flatMap((table) => movedTable(table, shift)) }),
    ...(filters && { filters: filters.flatMap((filter) => moveFilter(filter, tables ?? [], shift) ?? []) }),
    ...(wideMerges && { wideMerges: wideMerges.flatMap((area) => movedArea(area, shift)) }),
    ...(print &&
      shift.axis === "row" && {
        print: {
          ...print,
          titleRows: movedTitles ?? undefined,
          breaksBefore: print.breaksBefore.flatMap((row) => {
            const moved = movedRows(row, 1, shift);
            return moved === null ? [] : [moved.row];
          }),
        },
      }),
  };
}

/** Moves a table, whose rows of totals may go and leave it without any. */
function movedTable({ totalRows = 0, ...table }: TablePlan, shift: LineMove): TablePlan[] {
  const { row, rows } = table.area;
  const totals = shift.axis === "column" || totalRows === 0 ? totalRows : (moveSpan(row + rows - totalRows, totalRows, shift)?.count ?? 0);
  return movedArea(table.area, shift).map((area) => ({ ...table, area, ...(totals > 0 && { totalRows: totals }) }));
}

function movedArea(area: Area, shift: LineMove): Area[] {
  const moved = moveArea(area, shift);
  return moved === null ? [] : [moved];
}

function movedRows(row: number, rows: number, shift: LineMove): { readonly row: number; readonly rows: number } | null {
  const moved = moveSpan(row, rows, shift);
  return moved === null ? null : { row: moved.first, rows: moved.count };
}

function writtenBy({ range, value }: { range?: IRange; value?: unknown }): IRange | null {
  if (range !== undefined) return range;
  const cells = Object.entries((value ?? {}) as Record<string, object>).flatMap(([row, line]) => Object.keys(line).map((column) => [Number(row), Number(column)] as const));
  if (cells.length === 0 || cells.some(([row, column]) => !Number.isInteger(row) || !Number.isInteger(column))) return null;
  const [rows, columns] = [cells.map(([row]) => row), cells.map(([, column]) => column)];
  return { startRow: Math.min(...rows), endRow: Math.max(...rows), startColumn: Math.min(...columns), endColumn: Math.max(...columns) };
}

/** Grows a table over cells that were written in the row right below it, within its columns; rows of totals are its end. */
function grownOver(table: TablePlan, { startRow, endRow, startColumn, endColumn }: IRange): TablePlan {
  const { area, totalRows = 0 } = table;
  const below = area.row + area.rows;
  const inside = startColumn >= area.column && endColumn < area.column + area.columns;
  const grows = totalRows === 0 && inside && startRow <= below && endRow >= below && startRow >= area.row;
  return grows ? { ...table, area: { ...area, rows: endRow - area.row + 1 } } : table;
}
