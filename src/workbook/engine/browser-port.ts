import { BooleanNumber, type ICellData, IUndoRedoService, type Univer, type Worksheet, generateRandomId } from "@univerjs/core";
import { noAnswer } from "../../planning/text";
import { cellArea, sameSheetName, sheetSize, type Area } from "../../sheet";
import { checkEdits } from "../check-edits";
import type { Edit, WorkbookPort } from "../port";
import { readChosen } from "../sheet-choice";
import { keptLink } from "./cell-link";
import { selectionOf } from "./cell-selection";
import { no, yes } from "./engine-values";
import { LiveWorkbook, type Mutation, zoomOperation } from "./live-workbook";
import { storedCell, storeSheet } from "./store-sheet";
import { estimateRowHeights } from "./row-heights";
import { filterMutation } from "./sheet-filters";
import { sheetSnapshot } from "./sheet-snapshot";
import { extrasOf, toArea, toRange, type StoredStyle } from "./stored-sheet";

/**
 * Joins the workbook that is open in an engine, on a page or without one, to the rest of the program.
 *
 * Once another workbook is open there every call is refused: what was begun for the one must not be written into the other.
 */
export function createBrowserPort(univer: Univer, live = new LiveWorkbook(univer)): WorkbookPort {
  const injector = univer.__getInjector();
  const unit = live.workbook.getUnitId();
  const rest = async () => {
    stay();
    await live.settle();
    stay();
  };
  const stay = () => {
    if (live.workbook.getUnitId() !== unit) throw noAnswer("workbook", "", "Another workbook was opened meanwhile. Open the one before again and choose that once more.");
  };

  const sheetNamed = (name: string): Worksheet => {
    const found = live.workbook.getSheets().find((sheet) => sameSheetName(sheet.getName(), name));
    if (found === undefined) throw noAnswer("sheet", name, `There is no sheet "${name}" any more. It may have been renamed or deleted.`);
    return found;
  };

  return {
    async read(choice) {
      await rest();
      return {
        sheets: live.workbook.getSheets().map((sheet) => {
          const facts = { name: sheet.getName(), visible: sheet.isSheetHidden() === BooleanNumber.FALSE, hasTables: (extrasOf(sheet.getConfig()).tables ?? []).length > 0 };
          const [formulaAt, spills] = [(row: number, column: number, cell: ICellData) => live.formulaAt(sheet, row, column, cell), live.spills(sheet)];
          return readChosen(choice, facts, (rows) => sheetSnapshot(sheet.getConfig(), { rows, formulaAt, spills, notes: live.notes.of(sheet).length }));
        }),
      };
    },

    // What is refused is to come out of the promise, not past it.
    // eslint-disable-next-line @typescript-eslint/require-await
    async apply(edits) {
      stay();
      checkEdits(
        edits,
        live.workbook.getSheets().map((sheet) => {
          const { name, visible, protected: locked } = sheetSnapshot(sheet.getConfig(), { rows: 0 });
          return { name, visible, protected: locked };
        }),
      );
      // One step of undo for the person, however many edits it takes.
      // The engine has no lasting way of its own to say so yet.
      // eslint-disable-next-line @typescript-eslint/no-deprecated
      const batch = injector.get(IUndoRedoService).__tempBatchingUndoRedo(live.workbook.getUnitId());
      try {
        for (const edit of edits) carryOut(live, edit, sheetNamed);
      } finally {
        batch.dispose();
      }
    },

    async spillAreas(cells) {
      await rest();
      return cells.map(({ sheet, row, column }) => {
        const found = live.workbook.getSheets().find((one) => sameSheetName(one.getName(), sheet));
        return found === undefined ? null : (live.spills(found).find(({ area }) => area.row === row && area.column === column)?.area ?? null);
      });
    },

    // What is refused is to come out of the promise, not past it.
    // eslint-disable-next-line @typescript-eslint/require-await
    async selection() {
      stay();
      const sheet = live.workbook.getActiveSheet();
      const range = live.selectedRange();
      const area: Area = range ? toArea(range) : cellArea({ row: 0, column: 0 });
      return { sheet: sheet.getName(), area };
    },

    watch(listener) {
      return Promise.resolve(live.onChange(({ id }) => {
        if (id.startsWith("sheet.") && !quietMutations.has(id)) listener();
      }));
    },
  };
}

/** Mutations that change how a sheet is looked at, not what it holds. */
const quietMutations = new Set([
  zoomOperation, filterMutation,
  "sheet.mutation.set-frozen", "sheet.mutation.set-worksheet-row-auto-height", "sheet.mutation.set-worksheet-row-height", "sheet.mutation.set-worksheet-col-width",
]);

function carryOut(live: LiveWorkbook, edit: Edit, sheetNamed: (name: string) => Worksheet): void {
  switch (edit.kind) {
    case "add-sheet":
      addSheet(live, edit);
      return;
    case "write":
      write(live, sheetNamed(edit.sheet), edit);
      return;
    case "resize-table":
      resizeTable(sheetNamed(edit.sheet), edit.table, edit.area);
      return;
    case "rename-sheet":
      live.run("sheet.command.set-worksheet-name", { subUnitId: sheetNamed(edit.sheet).getSheetId(), name: edit.name });
      return;
    case "show-sheet":
    case "hide-sheet": {
      const sheet = sheetNamed(edit.sheet);
      const hidden = (to: BooleanNumber): Mutation => ["sheet.mutation.set-worksheet-hidden", { subUnitId: sheet.getSheetId(), hidden: to }];
      live.change([hidden(edit.kind === "hide-sheet" ? yes : no)], [hidden(sheet.isSheetHidden())]);
      return;
    }
    case "delete-sheet":
      live.run("sheet.command.remove-sheet", { subUnitId: sheetNamed(edit.sheet).getSheetId() });
      return;
    case "select":
      select(live, sheetNamed(edit.sheet), edit.area);
  }
}

function addSheet(live: LiveWorkbook, { plan, after }: Extract<Edit, { kind: "add-sheet" }>): void {
  const { workbook } = live;
  const { sheet, validations, conditionalFormats } = storeSheet(plan, (style) => keepStyle(live, style), generateRandomId);
  estimateRowHeights(sheet, workbook.getConfig().styles);
  const names = workbook.getSheets().map((one) => one.getName());
  const index = after === undefined ? names.length : names.findIndex((name) => sameSheetName(name, after)) + 1;
  live.run("sheet.command.insert-sheet", { index, sheet });
  const subUnitId = sheet.id;
  const redos: Mutation[] = [
    ...(validations.length > 0 ? [["data-validation.mutation.addRule", { subUnitId, rule: validations }] as const] : []),
    // The engine puts each new rule before those that are there; the last one added is asked first.
    ...[...conditionalFormats].reverse().map((rule) => ["sheet.mutation.add-conditional-rule", { subUnitId, rule }] as const),
  ];
  const undos: Mutation[] = [
    ...(validations.length > 0 ? [["data-validation.mutation.removeRule", { subUnitId, ruleId: validations.map(({ uid }) => uid) }] as const] : []),
    ...conditionalFormats.map(({ cfId }) => ["sheet.mutation.delete-conditional-rule", { subUnitId, cfId }] as const),
  ];
  live.change(redos, undos);
}

/** Finds the id of a style that the workbook has already, or gives it to the workbook under a new one. */
function keepStyle({ workbook }: LiveWorkbook, style: StoredStyle): string {
  const known = workbook.getConfig().styles;
  const text = JSON.stringify(style);
  const found = Object.entries(known).find(([, one]) => JSON.stringify(one) === text);
  if (found !== undefined) return found[0];
  const id = generateRandomId(6);
  workbook.addStyles({ [id]: style });
  return id;
}

function write(live: LiveWorkbook, sheet: Worksheet, { row, column, cells }: Extract<Edit, { kind: "write" }>): void {
  const matrix: Record<number, Record<number, ICellData>> = {};
  cells.forEach((line, down) => {
    line.forEach((cell, across) => {
      if (cell === null) return;
      const stored = storedCell(cell);
      const link = keptLink(sheet.getCellRaw(row + down, column + across) ?? {});
      const text = typeof cell.value === "string" && cell.value !== "" && cell.formula === undefined;
      (matrix[row + down] ??= {})[column + across] = {
        v: null, t: null, f: null, si: null, p: null, custom: link === undefined ? null : { link },
        ...stored,
        // Typed over by hand it stays text too.
        ...(text && { s: { n: { pattern: "@" } } }),
        ...(cell.formula !== undefined && isTextFormat(live, sheet, row + down, column + across) && { s: { n: null } }),
      };
    });
  });
  if (Object.keys(matrix).length === 0) return;
  const area = { row, column, rows: cells.length, columns: Math.max(...cells.map((line) => line.length)) };
  live.makeRoom(sheet, { rows: row + area.rows, columns: column + area.columns });
  live.run("sheet.command.set-range-values", { subUnitId: sheet.getSheetId(), range: toRange(area), value: matrix });
}

function isTextFormat({ workbook }: LiveWorkbook, sheet: Worksheet, row: number, column: number): boolean {
  return workbook.getStyles().getStyleByCell(sheet.getCellRaw(row, column))?.n?.pattern === "@";
}

function resizeTable(sheet: Worksheet, name: string, area: Area): void {
  const config = sheet.getConfig();
  const tables = (extrasOf(config).tables ?? []).map((table) => (sameSheetName(table.name, name) ? { ...table, area } : table));
  config.custom = { ...config.custom, tables };
}

function select(live: LiveWorkbook, sheet: Worksheet, area: Area): void {
  const subUnitId = sheet.getSheetId();
  if (sheet.isSheetHidden() === yes) live.run("sheet.mutation.set-worksheet-hidden", { subUnitId, hidden: 0 });
  live.run("sheet.operation.set-worksheet-active", { subUnitId });
  live.filters.reveal(sheet, area);
  // Of whole columns and rows those cells are selected that the engine has.
  const whole = { rows: area.rows === sheetSize.rows, columns: area.columns === sheetSize.columns };
  live.makeRoom(sheet, { rows: whole.rows ? 0 : area.row + area.rows, columns: whole.columns ? 0 : area.column + area.columns });
  const range = toRange({ ...area, ...(whole.rows && { rows: sheet.getRowCount() }), ...(whole.columns && { columns: sheet.getColumnCount() }) });
  live.run("sheet.operation.set-selections", { subUnitId, selections: [selectionOf(range)] });
  void live.look("sheet.command.scroll-to-cell", { range });
}
