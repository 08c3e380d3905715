import type { ICellData, IRange, ISheetDataValidationRule, IWorkbookData, Nullable, Univer, Workbook, Worksheet } from "@univerjs/core";
import { ICommandService, IResourceLoaderService, IUndoRedoService, IUniverInstanceService, UniverInstanceType } from "@univerjs/core";
import { FormulaDataModel, IActiveDirtyManagerService } from "@univerjs/engine-formula";
import { DataValidationModel, UpdateRuleType } from "@univerjs/data-validation";
import { SheetsSelectionsService } from "@univerjs/sheets";
import { FormulaCalculationSessionService } from "@univerjs/sheets-formula";
import { sheetSize, type Area, type CellValue } from "../../sheet";
import { CellNotes } from "./cell-notes";
import { knowTables } from "./engine-tables";
import { keepExtras } from "./keep-extras";
import { keepFigures, type KeptFigures } from "./kept-figures";
import { leaveRemovedSheets } from "./leave-removed-sheets";
import { computeBehindLostSpills } from "./lost-spills";
import { SheetFilters } from "./sheet-filters";
import { cellValue } from "./sheet-snapshot";
import { eachCell, numbered, toArea, toTheEnd, type Spill, type StoredWorkbook } from "./stored-sheet";
import { undoFromTheLast } from "./undo-order";

/** How long a calculation may take before waiting for it is given up, in milliseconds. */
const longestCalculation = 120_000;
/** How long after a change a calculation may take to begin: the engine gathers changes for a moment first. */
const calculationStart = 200;
/** How often the beginning of a calculation is waited for where the machine is busy. */
const mostWaits = 5;

/** Commands after which formulas and tables may be others: no formula asks for a note. */
const changesCells = /^sheet\.mutation\.(?!\w+-note)/;

/** Shows a sheet larger or smaller, which its file keeps. */
export const zoomOperation = "sheet.operation.set-zoom-ratio";

/** Commands that change what a workbook holds: cells, sheets, rules, names, and the size at which a sheet is shown. */
const changesWorkbook = /^(sheet|data-validation)\.mutation\.|^formula\.mutation\.(set|remove)-defined-name$|^sheet\.operation\.set-zoom-ratio$/;

/** A command of the engine that changed the workbook; name and id of its sheet are "" where it names none. */
export interface EngineChange {
  readonly id: string;
  readonly sheet: string;
  readonly sheetId: string;
  readonly params: unknown;
  /** True where it only put in place what formulas come to. */
  readonly isFigure: boolean;
}

/** A mutation of the engine, and what it is told beside the workbook. */
export type Mutation = readonly [id: string, params: object];

/** The workbook that is open in an engine: what its plain data does not tell. */
export class LiveWorkbook {
  private readonly commands: ICommandService;
  private readonly formulas: FormulaDataModel;
  private readonly selections: SheetsSelectionsService;
  private readonly calculation: FormulaCalculationSessionService;
  private readonly rules: DataValidationModel;
  private restless = true;
  private settling: Promise<void> | null = null;
  private ours = false;
  private readonly closing = new AbortController();

  private readonly figures: KeptFigures;
  private readonly tellTables: () => boolean;
  readonly notes: CellNotes;
  readonly filters: SheetFilters;

  constructor(private readonly univer: Univer, { keepsVolatile = false } = {}) {
    this.figures = keepFigures(univer, { keepsVolatile });
    const injector = univer.__getInjector();
    this.commands = injector.get(ICommandService);
    this.formulas = injector.get(FormulaDataModel);
    this.selections = injector.get(SheetsSelectionsService);
    this.calculation = injector.get(FormulaCalculationSessionService);
    this.rules = injector.get(DataValidationModel);
    this.notes = new CellNotes(univer);
    this.filters = new SheetFilters(univer, () => this.workbook);
    const asking = injector.get(IActiveDirtyManagerService);
    this.commands.onCommandExecuted(({ id }, options) => {
      // Results that are put into their cells ask for no calculation: whoever waited for one would wait until it is clear that none begins.
      if (options?.["applyFormulaCalculationResult"] === true) return;
      if (changesCells.test(id) || id === "formula.mutation.set-formula-data" || asking.get(id) !== undefined) this.restless = true;
    });
    keepExtras(this.commands, (unitId) => (unitId === this.workbook.getUnitId() ? this.workbook.getSheets() : []), () => this.ours);
    computeBehindLostSpills(univer);
    leaveRemovedSheets(univer);
    undoFromTheLast(univer);
    this.tellTables = knowTables(univer);
    this.tellTables();
    this.commands.onCommandExecuted(({ id }) => {
      if (changesCells.test(id)) this.tellTables();
    });
  }

  /** The workbook that is open now. */
  get workbook(): Workbook {
    const workbook = this.univer.__getInjector().get(IUniverInstanceService).getCurrentUnitOfType<Workbook>(UniverInstanceType.UNIVER_SHEET);
    if (workbook === null || workbook === undefined) throw new Error("No workbook is open.");
    return workbook;
  }

  /** True while a command of the program's own runs, not one of a person. */
  get isOurs(): boolean {
    return this.ours;
  }

  /** The range selected last. */
  selectedRange(): IRange | null {
    return this.selections.getCurrentLastSelection()?.range ?? null;
  }

  /** Carries out a command that only changes what is seen; where there is no page, or nothing is drawn yet, nothing is done. */
  async look(command: string, params: object): Promise<void> {
    if (!this.commands.hasCommand(command)) return;
    await this.commands.executeCommand(command, { unitId: this.workbook.getUnitId(), ...params }).catch(() => undefined);
  }

  /** Carries out a command of the engine. */
  run(command: string, params: object): boolean {
    this.ours = true;
    try {
      return this.commands.syncExecuteCommand(command, { unitId: this.workbook.getUnitId(), ...params });
    } finally {
      this.ours = false;
    }
  }

  /** Carries out mutations, which by themselves nobody could undo, so that `undos` take them back. */
  change(redos: readonly Mutation[], undos: readonly Mutation[]): void {
    for (const [id, params] of redos) this.run(id, params);
    const unitID = this.workbook.getUnitId();
    const steps = (mutations: readonly Mutation[]) => mutations.map(([id, params]) => ({ id, params: { unitId: unitID, ...params } }));
    this.univer.__getInjector().get(IUndoRedoService).pushUndoRedo({ unitID, redoMutations: steps(redos), undoMutations: steps(undos) });
  }

  /**
   * Gives a sheet so many rows and columns where it has fewer, and some to spare; false where no sheet can have so many.
   *
   * Rules that reach to its end reach to its end afterwards.
   */
  makeRoom(sheet: Worksheet, { rows, columns }: Pick<Area, "rows" | "columns">): boolean {
    if (rows > sheetSize.rows || columns > sheetSize.columns) return false;
    const [subUnitId, had] = [sheet.getSheetId(), { rows: sheet.getRowCount(), columns: sheet.getColumnCount() }];
    if (rows <= had.rows && columns <= had.columns) return true;
    const rules = this.rules.getRules(this.workbook.getUnitId(), subUnitId) as readonly ISheetDataValidationRule[];
    const reaching = rules.filter(({ uid }) => uid.endsWith(toTheEnd));
    if (rows > had.rows) this.run("sheet.mutation.set-worksheet-row-count", { subUnitId, rowCount: Math.min(rows + 50, sheetSize.rows) });
    if (columns > had.columns) this.run("sheet.mutation.set-worksheet-column-count", { subUnitId, columnCount: Math.min(columns + 6, sheetSize.columns) });
    const stretched = (range: IRange): IRange => ({
      ...range,
      ...(range.endRow === had.rows - 1 && { endRow: sheet.getRowCount() - 1 }),
      ...(range.endColumn === had.columns - 1 && { endColumn: sheet.getColumnCount() - 1 }),
    });
    for (const { uid, ranges } of reaching) {
      this.run("data-validation.mutation.updateRule", { subUnitId, ruleId: uid, payload: { type: UpdateRuleType.RANGE, payload: ranges.map(stretched) } });
    }
    return true;
  }

  /** Tells that another workbook was opened, of which nothing is computed yet. */
  wake(): void {
    this.restless = true;
    this.tellTables();
  }

  /** Waits until every formula shows what it computes; whoever asks meanwhile waits for the same. */
  settle(): Promise<void> {
    this.settling ??= this.comeToRest().finally(() => (this.settling = null));
    return this.settling;
  }

  private async comeToRest(): Promise<void> {
    while (this.tellTables() || this.restless) {
      this.restless = false;
      // The engine takes note of a new formula a moment after its cell was set.
      if (!this.hasFormulas()) await nextTurn();
      else await this.calculated();
      if (this.figures.comeAlive()) this.restless = true;
    }
  }

  /** Waits for the calculation that a change has called for, or until it is clear that none begins. */
  private async calculated(): Promise<void> {
    for (let waits = 0; waits < mostWaits; waits += 1) {
      const [before, asked] = [this.calculation.state.id, performance.now()];
      await within(this.calculation.waitForLatestApplied(undefined, calculationStart), longestCalculation, this.closing.signal);
      // Where the machine is busy with other things, the time to begin runs out at once with the moment in which the engine gathers changes, which is no
      // waiting: the figures would be those of before, and be saved. A thread that is busy for ever would never be waited for in time, so there is an end to it.
      if (this.calculation.state.id !== before || performance.now() - asked < 1.5 * calculationStart) return;
    }
  }

  private hasFormulas(): boolean {
    return this.workbook.getSheets().some((sheet) => numbered(sheet.getConfig().cellData).some(([, line]) => numbered(line).some(([, cell]) => Boolean(cell.f) || Boolean(cell.si))));
  }

  /** Tells the formula of a cell that has one of its own: formulas that were filled down share one text in the engine. */
  formulaAt(sheet: Worksheet, row: number, column: number, cell: Nullable<ICellData>): string | null {
    if (!cell?.f && !cell?.si) return null;
    const text = this.formulas.getFormulaStringByCell(row, column, sheet.getSheetId(), this.workbook.getUnitId());
    return text === null || text === undefined || text === "" ? null : text;
  }

  /** Lists the formulas of a sheet that fill more cells than their own. */
  spills(sheet: Worksheet): Spill[] {
    const [unit, id] = [this.workbook.getUnitId(), sheet.getSheetId()];
    const ranges = this.formulas.getArrayFormulaRange()[unit]?.[id] ?? {};
    const cells = this.formulas.getArrayFormulaCellData()[unit]?.[id];
    const spills: Spill[] = [];
    for (const [, line] of numbered(ranges)) {
      for (const [, range] of numbered(line)) {
        const area = toArea(range);
        const shown = sheet.getCellRaw(area.row, area.column)?.v;
        if (shown === "#SPILL!" || area.rows * area.columns < 2) continue;
        spills.push({ area, values: Array.from({ length: area.rows }, (_, row) => Array.from({ length: area.columns }, (_, column) => spilled(cells?.[area.row + row]?.[area.column + column]))) });
      }
    }
    return spills;
  }

  /**
   * Closes the workbook for good: the engine lets go of all it holds, and whoever still waits for a calculation is refused.
   *
   * No timer is left that keeps a process alive; the engine on its own leaves the limit of a calculation running for two minutes.
   */
  dispose(): void {
    this.closing.abort();
    this.univer.dispose();
  }

  /** Copies the whole workbook as plain data, every formula written out. */
  store(): StoredWorkbook {
    const { workbook } = this;
    const data = this.univer.__getInjector().get(IResourceLoaderService).saveUnit<IWorkbookData>(workbook.getUnitId())!;
    const spills: Record<string, Spill[]> = {};
    for (const sheet of workbook.getSheets()) {
      spills[sheet.getSheetId()] = this.spills(sheet);
      eachCell(data.sheets[sheet.getSheetId()] ?? {}, (cell, row, column) => {
        if (!cell.si) return;
        cell.f = this.formulaAt(sheet, row, column, cell);
        delete cell.si;
      });
    }
    return { data, spills };
  }

  /** Calls `listener` with the engine's commands that change what the workbook holds, until the returned function is called. */
  onChange(listener: (change: EngineChange) => void): () => void {
    const subscription = this.commands.onCommandExecuted(({ id, params }, options) => {
      // Those of notes call their sheet by another name.
      const { unitId, sheetId, subUnitId = sheetId } = (params ?? {}) as { unitId?: string; sheetId?: string; subUnitId?: string };
      if (!changesWorkbook.test(id) || unitId !== this.workbook.getUnitId()) return;
      const sheet = subUnitId === undefined ? undefined : this.workbook.getSheetBySheetId(subUnitId);
      listener({ id, sheet: sheet?.getName() ?? "", sheetId: subUnitId ?? "", params, isFigure: options?.["applyFormulaCalculationResult"] === true });
    });
    return () => {
      subscription.dispose();
    };
  }
}

/** Waits for `work`, but not longer than `milliseconds`, nor after `signal`; what gives up the waiting leaves no timer behind. */
function within(work: Promise<void>, milliseconds: number, signal: AbortSignal): Promise<void> {
  return new Promise((resolve, reject) => {
    const giveUp = (why: string) => () => {
      clearTimeout(timer);
      reject(new Error(why));
    };
    const timer = setTimeout(giveUp(`The formulas were not computed within ${milliseconds / 1000} s.`), milliseconds);
    const closed = giveUp("The workbook was closed before its formulas were computed.");
    signal.addEventListener("abort", closed);
    void work.then(resolve, reject).finally(() => {
      clearTimeout(timer);
      signal.removeEventListener("abort", closed);
    });
  });
}

function nextTurn(): Promise<void> {
  return new Promise((resolve) => {
    setTimeout(resolve, 0);
  });
}

function spilled(cell: Nullable<ICellData>): CellValue {
  return cell ? cellValue(cell, true) : null;
}
