import type { ICommandService, IRange, IWorksheetData, Worksheet } from "@univerjs/core";
import { cellArea, type Area } from "../../sheet";
import { extrasOf, type SheetExtras } from "./stored-sheet";

/** Rows or columns that came or went. */
interface Shift {
  readonly axis: "row" | "column";
  readonly at: number;
  /** How many came; below 0 how many went. */
  readonly by: number;
}

/**
 * Keeps tables, notes, pictures and print set-up with the cells they belong to, which the engine does not know of: they move when rows or
 * columns come and go, and a table grows over what somebody types right below it, as tables in the spreadsheet host do.
 *
 * `ours` tells that a change is the program's own: that says itself how tables grow.
 */
export function keepExtras(commands: ICommandService, sheetOf: (unitId: string, sheetId: string) => Worksheet | null, ours: () => boolean): void {
  commands.onCommandExecuted(({ id, params }) => {
    const { unitId, subUnitId, range } = (params ?? {}) as { unitId?: string; subUnitId?: string; range?: IRange };
    if (unitId === undefined || subUnitId === undefined) return;
    const sheet = sheetOf(unitId, subUnitId)?.getConfig();
    if (sheet === undefined) return;
    const shift = range === undefined ? null : shiftOf(id, range);
    if (shift !== null) change(sheet, (extras) => shiftExtras(extras, shift));
    if (id === "sheet.command.set-range-values" && !ours()) {
      const written = writtenBy(params as { range?: IRange; value?: unknown });
      if (written !== null) change(sheet, (extras) => ({ ...extras, tables: extras.tables?.map((table) => ({ ...table, area: grownOver(table.area, written) })) }));
    }
  });
}

function change(sheet: IWorksheetData, by: (extras: SheetExtras) => SheetExtras): void {
  sheet.custom = by(extrasOf(sheet));
}

function shiftOf(command: string, { startRow, endRow, startColumn, endColumn }: IRange): Shift | null {
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

/** Moves everything that is tied to rows or columns; what stood wholly on rows or columns that went goes with them. */
export function shiftExtras(extras: SheetExtras, shift: Shift): SheetExtras {
  const { tables, notes, pictures, print } = extras;
  const titles = print?.titleRows;
  const movedTitles = titles === undefined || shift.axis === "column" ? titles : spanOf(titles.row, titles.rows, shift);
  return {
    ...extras,
    ...(tables && { tables: tables.flatMap((table) => shiftArea(table.area, shift).map((area) => ({ ...table, area }))) }),
    ...(notes && { notes: notes.flatMap((note) => shiftArea(cellArea(note), shift).map(({ row, column }) => ({ ...note, row, column }))) }),
    // A picture whose cell went stays where the cell was: the picture is still there.
    ...(pictures && { pictures: pictures.map((cell) => shiftArea(cellArea(cell), shift)[0] ?? { ...cell, [shift.axis]: shift.at }).map(({ row, column }) => ({ row, column })) }),
    ...(print &&
      shift.axis === "row" && {
        print: {
          ...print,
          titleRows: movedTitles ?? undefined,
          breaksBefore: print.breaksBefore.flatMap((row) => {
            const moved = spanOf(row, 1, shift);
            return moved === null ? [] : [moved.row];
          }),
        },
      }),
  };
}

function shiftArea(area: Area, shift: Shift): Area[] {
  const moved = shift.axis === "row" ? spanOf(area.row, area.rows, shift) : spanOf(area.column, area.columns, shift);
  if (moved === null) return [];
  return [shift.axis === "row" ? { ...area, ...moved } : { ...area, column: moved.row, columns: moved.rows }];
}

/** Moves a run of rows, or columns; null when all of it went. */
function spanOf(row: number, rows: number, { at, by }: Shift): { row: number; rows: number } | null {
  if (by > 0) {
    if (at <= row) return { row: row + by, rows };
    return at < row + rows ? { row, rows: rows + by } : { row, rows };
  }
  const [gone, end] = [at - by, row + rows];
  const left = rows - Math.max(0, Math.min(gone, end) - Math.max(at, row));
  if (left === 0) return null;
  return { row: row - Math.max(0, Math.min(gone, row) - at), rows: left };
}

function writtenBy({ range, value }: { range?: IRange; value?: unknown }): IRange | null {
  if (range !== undefined) return range;
  const cells = Object.entries((value ?? {}) as Record<string, object>).flatMap(([row, line]) => Object.keys(line).map((column) => [Number(row), Number(column)] as const));
  if (cells.length === 0 || cells.some(([row, column]) => !Number.isInteger(row) || !Number.isInteger(column))) return null;
  const [rows, columns] = [cells.map(([row]) => row), cells.map(([, column]) => column)];
  return { startRow: Math.min(...rows), endRow: Math.max(...rows), startColumn: Math.min(...columns), endColumn: Math.max(...columns) };
}

/** Grows a table over cells that were written in the row right below it, within its columns. */
function grownOver(area: Area, { startRow, endRow, startColumn, endColumn }: IRange): Area {
  const below = area.row + area.rows;
  const inside = startColumn >= area.column && endColumn < area.column + area.columns;
  return inside && startRow <= below && endRow >= below && startRow >= area.row ? { ...area, rows: endRow - area.row + 1 } : area;
}
