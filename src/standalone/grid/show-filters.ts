import { CommandType, type ICellDataForSheetInterceptor, ICommandService, InterceptorEffectEnum, LocaleService, LocaleType, type Univer } from "@univerjs/core";
import type { FUniver } from "@univerjs/core/facade";
import { IRenderManagerService } from "@univerjs/engine-render";
import { INTERCEPTOR_POINT, SetWorksheetActiveOperation, SheetInterceptorService, expandToContinuousRange } from "@univerjs/sheets";
import { SheetsRenderService } from "@univerjs/sheets-ui";
import { SortRangeCommand } from "@univerjs/sheets-sort";
import { ContextMenuGroup, ContextMenuPosition, IMenuManagerService, IShortcutService, KeyCode, MenuItemType, MetaKeys } from "@univerjs/ui";
import { defer, of } from "rxjs";
import { cutText } from "../../planning/text";
import { areasMeet, columnLetters, isInArea, showCell, type CellPlace } from "../../sheet";
import { isFiltering } from "../../workbook/document/sheet-filter";
import type { FilterCondition } from "../../workbook/document/workbook-document";
import type { LiveWorkbook } from "../../workbook/engine/live-workbook";
import { filterMutation, type FilterArrow } from "../../workbook/engine/sheet-filters";
import { cellValue } from "../../workbook/engine/sheet-snapshot";
import { extrasOf, toArea, toRange } from "../../workbook/engine/stored-sheet";
import type { FilterCard } from "../filter-card";
import { describeCondition } from "../filter-choices";
import { cellOnPage } from "./cell-on-page";
import { isGridReady } from "./desk-keys";
import { onceAFrame } from "./once-a-frame";

/** What a person may do with filters. */
export const filterCommands = {
  toggle: "baywright.operation.toggle-filter", open: "baywright.operation.open-filter", again: "baywright.operation.apply-filter-again", showAll: "baywright.operation.show-all-rows",
} as const;

const filtersEnglish = {
  baywright: { filters: { toggle: "Filter arrows (Ctrl+Shift+L)", open: "Filter … (Alt+Down)", again: "Apply the filter again (Ctrl+Alt+L)", showAll: "Show all rows" } },
};

/** Pixels of the arrow at the lower right of its cell. */
const arrow = { size: 15, gap: 3 } as const;

/** What of the page around it the filters ask for. */
export interface FilterHands {
  readonly card: FilterCard;
  focus(): void;
  say(sentence: string): void;
  /** Says that rows are out of sight; null where none are. */
  filtered(sentence: string | null, showAll: () => void): void;
}

/**
 * Shows the filters of the sheet in front: an arrow in each header, a card on which a column is asked what it shows, by the pointer or Alt+Down, and a
 * sentence while rows are out of sight. Ctrl+Shift+L puts the arrows there and takes them away.
 */
export function showFilters(univer: Univer, api: FUniver, live: LiveWorkbook, container: HTMLElement, hands: FilterHands): void {
  const injector = univer.__getInjector();
  injector.get(LocaleService).load({ [LocaleType.EN_US]: filtersEnglish });
  const commands = injector.get(ICommandService);
  const { filters } = live;
  const inFront = () => live.workbook.getActiveSheet();
  const selected = (): CellPlace | null => {
    const range = live.selectedRange();
    return range === null ? null : { row: range.startRow, column: range.startColumn };
  };
  const arrowSelected = () => (selected() === null ? null : filters.arrowAt(inFront(), selected()!));
  const filteringOn = () => filters.of(inFront()).filter(({ filter }) => isFiltering(filter));
  const headerOf = ({ area, column }: FilterArrow): string => {
    const cell = inFront().getCell(area.row, area.column + column);
    return cutText(showCell(cell ? cellValue(cell, true) : null).trim()) || `column ${columnLetters(area.column + column)}`;
  };
  const describeColumn = (found: FilterArrow, condition: FilterCondition) => `${headerOf(found)} ${describeCondition(condition, filters.inColumn(inFront(), found))}`;

  injector.get(SheetsRenderService).registerSkeletonChangingMutations(filterMutation);
  const drawn = drawArrow((place) => filters.arrowAt(inFront(), place), (place) => {
    // The engine gives the keyboard to the cells once the button is let go.
    window.addEventListener("pointerup", () => setTimeout(() => { openAt(place); }, 60), { once: true });
  });
  injector.get(SheetInterceptorService).intercept(INTERCEPTOR_POINT.CELL_CONTENT, {
    effect: InterceptorEffectEnum.Style,
    handler(cell, { row, col: column, worksheet, rawData }, next) {
      if (filters.arrowAt(worksheet, { row, column }) === null) return next(cell);
      const own = !cell || cell === rawData ? { ...rawData } : cell;
      return next({ ...own, customRender: [...(own.customRender ?? []), drawn], fontRenderExtension: { ...own.fontRenderExtension, rightOffset: arrow.size + arrow.gap } });
    },
  });

  const tell = onceAFrame(() => {
    injector.get(IRenderManagerService).getRenderById(live.workbook.getUnitId())?.mainComponent?.makeForceDirty();
    const sheet = inFront();
    const found = filteringOn();
    const sentences = found.map((placed) => {
      const { rows, shown, otherwise } = filters.count(sheet, placed);
      const columns = placed.filter.columns.flatMap(({ column, condition }) => (condition === undefined ? [] : [describeColumn({ ...placed, column }, condition)]));
      const name = placed.filter.table === undefined || found.length === 1 ? "Filtered" : `${placed.filter.table} is filtered`;
      const since = otherwise === 0 ? "" : ` For ${otherwise === 1 ? "1 row" : `${otherwise} rows`} that no longer holds: Ctrl+Alt+L applies the filter again.`;
      return `${name}: ${shown} of ${rows} rows ${shown === 1 ? "is" : "are"} shown, where ${columns.join(" and ")}.${since}`;
    });
    hands.filtered(sentences.length === 0 ? null : sentences.join(" "), () => {
      void commands.executeCommand(filterCommands.showAll).catch(() => undefined).finally(() => { hands.focus(); });
    });
  });
  commands.onCommandExecuted(({ id }) => {
    // The card is about a header of the sheet that was in front.
    if (id === SetWorksheetActiveOperation.id) hands.card.close();
    if (id.startsWith("sheet.mutation.") || id === SetWorksheetActiveOperation.id) tell();
  });
  tell();

  const openAt = (place: CellPlace) => void commands.executeCommand(filterCommands.open, place).catch(() => undefined);
  const open = (place: CellPlace | null): boolean => {
    const sheet = inFront();
    const found = place === null ? null : filters.arrowAt(sheet, place);
    if (found === null) return false;
    const [name, condition] = [headerOf(found), found.filter.columns.find(({ column }) => column === found.column)?.condition];
    const foreign = found.filter.columns.find((one) => one.column !== found.column && one.condition?.kind === "other");
    const refusal = foreign?.condition === undefined ? null
      : `${describeColumn({ ...found, column: foreign.column }, foreign.condition)}, which is not known here: what else is filtered cannot be changed while it stands.`;
    const box = cellOnPage(api, container, found.area.row, found.area.column + found.column);
    hands.card.ask({ name, condition, cells: refusal === null ? filters.shownInColumn(sheet, found) : [], refusal }, box, (answer) => {
      if (answer !== null && inFront() === sheet) {
        if (answer.does === "filter") filters.set(sheet, found, answer.condition);
        else if (answer.does === "show-all") filters.clear(sheet, found);
        else void commands.executeCommand(SortRangeCommand.id, {
          unitId: sheet.getUnitId(), subUnitId: sheet.getSheetId(), range: toRange(filters.filledPart(sheet, found.area)), hasTitle: true,
          orderRules: [{ type: answer.descending ? "desc" : "asc", colIndex: found.area.column + found.column }],
        }).catch(() => undefined);
      }
      hands.focus();
    });
    return true;
  };

  const toggle = (): boolean => {
    const [sheet, range] = [inFront(), live.selectedRange()];
    if (range === null) return false;
    const place = { row: range.startRow, column: range.startColumn };
    const { tables = [] } = extrasOf(sheet.getConfig());
    const table = tables.find(({ area }) => isInArea(place, area));
    const standing = filters.of(sheet).find(({ filter }) => filter.table === table?.name);
    if (standing !== undefined) filters.remove(sheet, standing);
    else if (table !== undefined) {
      if (table.isHeadless === true) hands.say(`The table ${table.name} shows no header in which arrows could be.`);
      else filters.add(sheet, { table: table.name, columns: [] });
    } else {
      const isOne = range.startRow === range.endRow && range.startColumn === range.endColumn;
      const area = filters.filledPart(sheet, toArea(isOne ? expandToContinuousRange(range, { left: true, right: true, up: true, down: true }, sheet) : range));
      const met = tables.find((one) => areasMeet(one.area, area));
      if (area.rows < 2) hands.say("There is no list to filter here. Select a cell of a list, or the cells that are to be filtered, their headers included.");
      else if (met !== undefined) hands.say(`These cells reach into the table ${met.name}. Select a cell of the table to filter it, or cells beside it.`);
      else filters.add(sheet, { area, columns: [] });
    }
    return true;
  };

  const applyAgain = (): boolean => {
    const again = filters.of(inFront());
    if (again.length === 0) hands.say("There is no filter here. Select a cell of a list and press Ctrl+Shift+L.");
    else filters.applyAgain(inFront(), ...again);
    return true;
  };
  const showAll = (): boolean => {
    if (filteringOn().length > 0) filters.clear(inFront(), ...filteringOn());
    return true;
  };
  const handlers: Readonly<Record<string, (params?: object) => boolean>> = {
    [filterCommands.toggle]: toggle,
    [filterCommands.open]: (params) => open(params !== undefined && "row" in params ? (params as CellPlace) : selected()),
    [filterCommands.again]: applyAgain,
    [filterCommands.showAll]: showAll,
  };
  for (const [id, handler] of Object.entries(handlers)) commands.registerCommand({ id, type: CommandType.OPERATION, handler: (_, params) => handler(params) });
  const shortcuts = injector.get(IShortcutService);
  shortcuts.registerShortcut({ id: filterCommands.toggle, binding: KeyCode.L | MetaKeys.SHIFT | MetaKeys.CTRL_COMMAND, preconditions: isGridReady });
  shortcuts.registerShortcut({ id: filterCommands.again, binding: KeyCode.L | MetaKeys.ALT | MetaKeys.CTRL_COMMAND, preconditions: isGridReady });
  const chosen = `${filterCommands.open}-chosen`;
  // A menu that closes gives the keyboard to the cells: the card is opened after that.
  commands.registerCommand({
    id: chosen,
    type: CommandType.OPERATION,
    handler() {
      setTimeout(() => void commands.executeCommand(filterCommands.open).catch(() => undefined));
      return true;
    },
  });
  const entries = [
    [chosen, "open", () => arrowSelected() === null], [filterCommands.toggle, "toggle", () => false],
    [filterCommands.again, "again", () => filteringOn().length === 0], [filterCommands.showAll, "showAll", () => filteringOn().length === 0],
  ] as const;
  injector.get(IMenuManagerService).mergeMenu({
    [ContextMenuPosition.MAIN_AREA]: {
      [ContextMenuGroup.OTHERS]: Object.fromEntries(entries.map(([id, title, isHidden], place) => [id, {
        order: 1 + place / 10,
        menuItemFactory: () => ({ id, title: `baywright.filters.${title}`, type: MenuItemType.BUTTON, hidden$: defer(() => of(isHidden())) }),
      }])),
    },
  });
}

/** What draws into a cell beside its text, and is told where it was pressed. */
type Drawn = Extract<ICellDataForSheetInterceptor["customRender"], readonly unknown[]>[number];

/** Draws the arrow of a column: open, or full where the column has a condition. */
function drawArrow(arrowAt: (place: CellPlace) => FilterArrow | null, press: (place: CellPlace) => void): Drawn {
  const box = ({ endX, endY, startY }: { readonly endX: number; readonly endY: number; readonly startY: number }) => {
    const size = Math.min(arrow.size, endY - startY - 2);
    return { x: endX - size - 2, y: endY - size - 2, size };
  };
  type Info = Parameters<Drawn["drawWith"]>[1];
  const boxOf = ({ primaryWithCoord: cell }: Info) => box(cell.isMergedMainCell ? cell.mergeInfo : cell);
  return {
    zIndex: 20,
    drawWith(context, info) {
      const found = arrowAt({ row: info.row, column: info.col });
      if (found === null) return;
      const { x, y, size } = boxOf(info);
      const isSet = found.filter.columns.some(({ column, condition }) => column === found.column && condition !== undefined);
      context.save();
      context.beginPath();
      context.rect(x + 0.5, y + 0.5, size - 1, size - 1);
      context.fillStyle = isSet ? "#0b5f6b" : "#f4f6f6";
      context.fill();
      context.lineWidth = 1;
      context.strokeStyle = isSet ? "#06363d" : "#9aa8ab";
      context.stroke();
      context.beginPath();
      const [left, upper, unit] = [x + size / 2, y + size / 2, size / 15];
      if (isSet) for (const [across, down] of [[-4.5, -4], [4.5, -4], [1.2, 0.5], [1.2, 4.5], [-1.2, 3.2], [-1.2, 0.5]] as const) context.lineTo(left + across * unit, upper + down * unit);
      else for (const [across, down] of [[-4, -2], [4, -2], [0, 3]] as const) context.lineTo(left + across * unit, upper + down * unit);
      context.closePath();
      context.fillStyle = isSet ? "#ffffff" : "#3c4b50";
      context.fill();
      context.restore();
    },
    isHit({ x: atX, y: atY }, info) {
      const { x, y, size } = boxOf(info);
      return atX >= x - 1 && atX <= x + size + 1 && atY >= y - 1 && atY <= y + size + 1;
    },
    onPointerDown(info, event: { readonly button?: number }) {
      if (event.button !== 2) press({ row: info.row, column: info.col });
    },
  };
}
