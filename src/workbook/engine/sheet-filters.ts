import { CommandType, ICommandService, type IMutationInfo, type IRange, IUndoRedoService, type IUnitRange, type Univer, type Workbook, type Worksheet } from "@univerjs/core";
import { IActiveDirtyManagerService, ISheetRowFilteredService } from "@univerjs/engine-formula";
import { INTERCEPTOR_POINT, RemoveColCommand, RemoveRowCommand, SheetInterceptorService } from "@univerjs/sheets";
import { isInArea, showCell, type Area, type CellPlace } from "../../sheet";
import { areaOfFilter, testOf, withCondition, type ShownCell } from "../document/sheet-filter";
import type { FilterCondition, SheetFilter } from "../document/workbook-document";
import { cellValue } from "./sheet-snapshot";
import { eachCell, extrasOf, isFilteredRow, numbered, toRange, type SheetExtras } from "./stored-sheet";

/** A filter and where it is. */
export interface PlacedFilter {
  readonly filter: SheetFilter;
  readonly area: Area;
}

/** The column of a filter, by the cell that has its arrow. */
export interface FilterArrow extends PlacedFilter {
  /** Counted from the first one of the area. */
  readonly column: number;
}

/** Named as the engine's own, so that whoever keeps what changes hears of it. */
export const filterMutation = "sheet.mutation.set-filters";

/** Which rows are out of sight, and the filters that keep them so, with the tables whose filters they are where these changed too. */
interface FilterState {
  readonly rows: readonly number[];
  readonly lists?: Pick<SheetExtras, "filters" | "tables">;
}

/**
 * The filters of the workbook that is open. The engine is told which rows they keep out of sight: it passes them over where it copies, pastes, fills,
 * empties, deletes, sorts and finds, and in sums of what is shown.
 *
 * A row is out of sight from when a filter was last applied, whatever is typed into it since, and its mark moves with it.
 */
export class SheetFilters {
  private readonly commands: ICommandService;
  private readonly undo: IUndoRedoService;
  private readonly arrows = new WeakMap<SheetExtras, ReadonlyMap<string, FilterArrow>>();

  constructor(univer: Univer, private readonly workbook: () => Workbook) {
    const injector = univer.__getInjector();
    [this.commands, this.undo] = [injector.get(ICommandService), injector.get(IUndoRedoService)];
    this.commands.registerCommand({ id: filterMutation, type: CommandType.MUTATION, handler: (_, params) => this.put(params as { subUnitId: string; state: FilterState }) });
    const interceptors = injector.get(SheetInterceptorService);
    interceptors.intercept(INTERCEPTOR_POINT.ROW_FILTERED, {
      handler: (filtered, { worksheet, row }, next) => (filtered === true || isFilteredRow(worksheet.getRowManager().getRow(row)) ? true : next(filtered)),
    });
    injector.get(ISheetRowFilteredService).register((unitId, subUnitId, row) => {
      const sheet = workbook().getUnitId() === unitId ? workbook().getSheetBySheetId(subUnitId) : undefined;
      return sheet !== null && sheet !== undefined && isFilteredRow(sheet.getRowManager().getRow(row));
    });
    injector.get(IActiveDirtyManagerService).register(filterMutation, {
      commandId: filterMutation,
      // Every formula that looks at the rows would take seconds on a plan; those that ask what is shown are few.
      getDirtyData: () => ({ dirtyRanges: workbook().getSheets().flatMap(cellsThatAskWhatIsShown) }),
    });
    interceptors.interceptCommand({ getMutations: ({ id, params }) => this.alongWith(id, params) });
  }

  /** Lists the filters of a sheet that are somewhere on it. */
  of(sheet: Worksheet): PlacedFilter[] {
    const { tables = [] } = extrasOf(sheet.getConfig());
    return filtersOn(sheet).flatMap((filter) => {
      const area = areaOfFilter(filter, tables);
      return area === null ? [] : [{ filter, area }];
    });
  }

  /** Finds the arrow in a cell. */
  arrowAt(sheet: Worksheet, { row, column }: CellPlace): FilterArrow | null {
    const extras = sheet.getConfig().custom as SheetExtras | undefined;
    if (extras?.filters === undefined) return null;
    let known = this.arrows.get(extras);
    if (known === undefined) {
      known = new Map(this.of(sheet).flatMap((placed) => arrowsOf(placed, sheet.getColumnCount())));
      this.arrows.set(extras, known);
    }
    return known.get(`${row} ${column}`) ?? null;
  }

  /** Finds the filter that a cell is in. */
  around(sheet: Worksheet, place: CellPlace): PlacedFilter | null {
    return this.of(sheet).find(({ area }) => isInArea(place, area)) ?? null;
  }

  /**
   * Counts the rows of a filter in which something stands, those of them that it shows, and those that it would not leave as they are if it was applied now.
   */
  count(sheet: Worksheet, placed: PlacedFilter): { readonly rows: number; readonly shown: number; readonly otherwise: number } {
    const rows = rowsOf(sheet, placed.area).filter((row) => isFilled(sheet, placed.area, row));
    const out = new Set(rows.filter((row) => sheet.getRowFiltered(row)));
    const applied = new Set(rowsOut(sheet, [...out], placed));
    return { rows: rows.length, shown: rows.length - out.size, otherwise: rows.filter((row) => out.has(row) !== applied.has(row)).length };
  }

  /** What the cells of a column show, with those rows alone that the conditions of other columns let through. */
  shownInColumn(sheet: Worksheet, { filter, area, column }: FilterArrow): ShownCell[] {
    const tests = testsOf(withCondition(filter, column, undefined), area);
    return rowsOf(sheet, area).flatMap((row) => (passes(sheet, row, tests) ? [shownCell(sheet, row, area.column + column)] : []));
  }

  /** What the cells of a column show, out of sight or not: as far as somebody looks. */
  inColumn(sheet: Worksheet, { area, column }: FilterArrow): Iterable<ShownCell> {
    return {
      *[Symbol.iterator]() {
        for (const row of rowsOf(sheet, area)) yield shownCell(sheet, row, area.column + column);
      },
    };
  }

  /** An area without the empty rows at its end, of which whole columns have many. */
  filledPart(sheet: Worksheet, area: Area): Area {
    let rows = Math.min(area.rows, sheet.getDataRangeScope().endRow + 1 - area.row);
    while (rows > 1 && !isFilled(sheet, area, area.row + rows - 1)) rows -= 1;
    return { ...area, rows };
  }

  /** Puts arrows over a table, or over an area as the sheet's own filter in place of one that it has: one step of undo. */
  add(sheet: Worksheet, filter: SheetFilter): void {
    const replaced = this.of(sheet).filter((one) => one.filter.table === filter.table);
    this.change(sheet, [...filtersOn(sheet).filter(({ table }) => table !== filter.table), filter], replaced.map(withoutColumns));
  }

  /** Takes the arrows of a filter away, with its conditions: one step of undo. */
  remove(sheet: Worksheet, placed: PlacedFilter): void {
    this.change(sheet, filtersOn(sheet).filter((one) => one !== placed.filter), [withoutColumns(placed)]);
  }

  /** Gives a column of a filter a condition, or takes it away, and applies the filter: one step of undo. */
  set(sheet: Worksheet, { filter, area, column }: FilterArrow, condition: FilterCondition | undefined): void {
    this.apply(sheet, new Map([[filter, { filter: withCondition(filter, column, condition), area }]]));
  }

  /** Takes every condition of filters away, in one step of undo; their arrows stay. */
  clear(sheet: Worksheet, ...cleared: readonly PlacedFilter[]): void {
    const without = ({ columns, ...filter }: SheetFilter): SheetFilter => ({ ...filter, columns: columns.flatMap(({ column, hidesArrow }) => (hidesArrow === true ? [{ column, hidesArrow }] : [])) });
    this.change(sheet, filtersOn(sheet).map((one) => (cleared.some(({ filter }) => filter === one) ? without(one) : one)), cleared.map(withoutColumns));
  }

  /**
   * Brings rows into sight of which somebody is led to one, where filters keep all of them out of it.
   *
   * As going there is none, it is no step of undo.
   */
  reveal(sheet: Worksheet, { row: first, rows: count }: Area): void {
    const { rows } = stateOf(sheet);
    const isIn = (row: number) => row >= first && row < first + count;
    if (rows.filter(isIn).length < count) return;
    const { id, params } = this.mutation(sheet, { rows: rows.filter((row) => !isIn(row)) });
    this.commands.syncExecuteCommand(id, params);
  }

  /** Applies filters once more, to what stands in their rows now: one step of undo. */
  applyAgain(sheet: Worksheet, ...again: readonly PlacedFilter[]): void {
    this.apply(sheet, new Map(again.map((placed) => [placed.filter, placed])));
  }

  /** Applies filters, by those in whose place they come; one of the sheet itself takes in the rows that people typed below it. */
  private apply(sheet: Worksheet, changed: ReadonlyMap<SheetFilter, PlacedFilter>): void {
    const grown = new Map([...changed].map(([old, { filter, area }]): [SheetFilter, PlacedFilter] => {
      if (filter.table !== undefined) return [old, { filter, area }];
      const whole = withRowsBelow(sheet, area);
      return [old, { filter: { ...filter, area: whole }, area: whole }];
    }));
    this.change(sheet, filtersOn(sheet).map((one) => grown.get(one)?.filter ?? one), [...grown.values()]);
  }

  /** Puts filters in place, and the rows of those that are applied as they let them through; all others stay as they are. */
  private change(sheet: Worksheet, filters: SheetFilter[], applied: readonly PlacedFilter[]): void {
    const before = stateOf(sheet);
    const rows = applied.reduce((out, placed) => rowsOut(sheet, out, placed), before.rows);
    const [undo, redo] = [before, { rows, lists: { ...before.lists, filters } }].map((state) => this.mutation(sheet, state));
    this.commands.syncExecuteCommand(redo!.id, redo!.params);
    this.undo.pushUndoRedo({ unitID: this.workbook().getUnitId(), undoMutations: [undo!], redoMutations: [redo!] });
  }

  private mutation(sheet: Worksheet, state: FilterState): IMutationInfo {
    return { id: filterMutation, params: { unitId: this.workbook().getUnitId(), subUnitId: sheet.getSheetId(), state } };
  }

  private put({ subUnitId, state: { rows, lists } }: { readonly subUnitId: string; readonly state: FilterState }): boolean {
    const sheet = this.workbook().getSheetBySheetId(subUnitId);
    if (!sheet) return false;
    const config = sheet.getConfig();
    if (lists !== undefined) config.custom = { ...extrasOf(config), ...lists };
    const out = new Set(rows);
    for (const [row, data] of numbered(config.rowData)) if (isFilteredRow(data) && !out.has(row)) data.custom = { ...data.custom, isFiltered: undefined };
    for (const row of out) {
      const data = sheet.getRowManager().getRowOrCreate(row);
      data.custom = { ...data.custom, isFiltered: true };
    }
    return true;
  }

  /** What happens along with a command that takes rows or columns away: rows that a column kept out of sight are shown, and what was comes back with them. */
  private alongWith(id: string, params: unknown): { redos: IMutationInfo[]; undos: IMutationInfo[] } {
    const range = (params as { range?: IRange } | undefined)?.range;
    const takes = id === RemoveRowCommand.id || id === RemoveColCommand.id;
    const sheet = this.workbook().getActiveSheet();
    if (!takes || range === undefined || filtersOn(sheet).length === 0) return { redos: [], undos: [] };
    const state = stateOf(sheet);
    const isGone = (column: number) => id === RemoveColCommand.id && column >= range.startColumn && column <= range.endColumn;
    const loses = this.of(sheet).filter(({ filter, area }) => filter.columns.some(({ column }) => isGone(area.column + column)));
    const rows = loses.reduce((out, { filter, area }) => {
      const columns = filter.columns.filter(({ column }) => !isGone(area.column + column));
      return rowsOut(sheet, out, { filter: { ...filter, columns }, area });
    }, state.rows);
    return { redos: loses.length === 0 ? [] : [this.mutation(sheet, { rows })], undos: [this.mutation(sheet, state)] };
  }
}

const asksWhatIsShown = /\b(?:SUBTOTAL|AGGREGATE)\s*\(/i;

/** Finds the formulas of a sheet whose answer depends on which rows are shown. */
function cellsThatAskWhatIsShown(sheet: Worksheet): IUnitRange[] {
  const found: IUnitRange[] = [];
  const shared = new Set<string>();
  eachCell(sheet.getConfig(), ({ f, si }, row, column) => {
    // A formula that was filled down stands in its first cell alone, which comes first.
    const asks = f ? asksWhatIsShown.test(f) : shared.has(si ?? "");
    if (asks && si) shared.add(si);
    if (asks) found.push({ unitId: sheet.getUnitId(), sheetId: sheet.getSheetId(), range: toRange({ row, column, rows: 1, columns: 1 }) });
  });
  return found;
}

function filtersOn(sheet: Worksheet): readonly SheetFilter[] {
  return extrasOf(sheet.getConfig()).filters ?? [];
}

function stateOf(sheet: Worksheet): FilterState {
  const { filters, tables } = extrasOf(sheet.getConfig());
  const rows = numbered(sheet.getConfig().rowData).flatMap(([row, data]) => (isFilteredRow(data) ? [row] : []));
  return { rows, lists: { filters, tables } };
}

function withoutColumns({ filter, area }: PlacedFilter): PlacedFilter {
  return { filter: { ...filter, columns: [] }, area };
}

function arrowsOf({ filter, area }: PlacedFilter, columnCount: number): [string, FilterArrow][] {
  const columns = Math.min(area.columns, columnCount - area.column);
  return Array.from({ length: Math.max(0, columns) }, (_, column): FilterArrow => ({ filter, area, column }))
    .filter(({ column }) => filter.columns.find((one) => one.column === column)?.hidesArrow !== true)
    .map((arrow) => [`${area.row} ${area.column + arrow.column}`, arrow]);
}

/** The rows that a filter may keep out of sight; where it goes on past the cells that the engine has, those in which something stands. */
function rowsOf(sheet: Worksheet, area: Area): number[] {
  const end = area.row + area.rows;
  const last = end <= sheet.getRowCount() ? end : sheet.getDataRangeScope().endRow + 1;
  return Array.from({ length: Math.max(0, last - area.row - 1) }, (_, down) => area.row + 1 + down);
}

/** An area together with the rows that go on right below it, as people type them below a list. */
function withRowsBelow(sheet: Worksheet, area: Area): Area {
  let { rows } = area;
  while (isFilled(sheet, area, area.row + rows)) rows += 1;
  return { ...area, rows };
}

function isFilled(sheet: Worksheet, { column: first, columns }: Area, row: number): boolean {
  return numbered(sheet.getConfig().cellData[row]).some(([column, cell]) => column >= first && column < first + columns && cellValue(cell, false) !== null);
}

/** Lists the rows of a sheet that are out of sight once a filter is applied. Under a condition that is not known here, none comes back into sight. */
function rowsOut(sheet: Worksheet, before: readonly number[], { filter, area }: PlacedFilter): number[] {
  const tests = testsOf(filter, area);
  const stays = filter.columns.some(({ condition }) => condition?.kind === "other");
  const old = new Set(before);
  const inside = rowsOf(sheet, area);
  const within = new Set(inside);
  return [...before.filter((row) => !within.has(row)), ...inside.filter((row) => (stays && old.has(row)) || !passes(sheet, row, tests))].sort((one, other) => one - other);
}

/** Tests of columns, by their place on the sheet. */
type ColumnTest = readonly [column: number, test: (cell: ShownCell) => boolean];

function testsOf({ columns }: SheetFilter, area: Area): ColumnTest[] {
  return columns.flatMap(({ column, condition }): ColumnTest[] => (condition === undefined || column >= area.columns ? [] : [[area.column + column, testOf(condition)]]));
}

function passes(sheet: Worksheet, row: number, tests: readonly ColumnTest[]): boolean {
  return tests.every(([column, test]) => test(shownCell(sheet, row, column)));
}

/** A cell as a person sees it. */
function shownCell(sheet: Worksheet, row: number, column: number): ShownCell {
  const [raw, shown] = [sheet.getCellRaw(row, column), sheet.getCell(row, column)];
  const value = cellValue(raw?.v === undefined || raw.v === null ? (shown ?? {}) : raw, Boolean(raw?.f) || Boolean(raw?.si));
  // A number with a format is shown as a text.
  return { value, text: typeof value === "number" && typeof shown?.v === "string" ? shown.v : showCell(value) };
}
