import { type ICellData, ICommandService, IUniverInstanceService, type Nullable, type Univer, UniverInstanceType, type Workbook } from "@univerjs/core";
import {
  ArrayValueObject, BooleanValueObject, ErrorType, ErrorValueObject, IFormulaRuntimeService, NumberValueObject, SetTriggerFormulaCalculationStartMutation, StringValueObject,
  type BaseReferenceObject, type BaseValueObject, type FunctionVariantType,
} from "@univerjs/engine-formula";
import { isError, longestText, type CellValue } from "../../sheet";
import { isOurs, isVolatile } from "../document/formula-kind";
import { eachCell } from "./stored-sheet";

/** What the file says that a formula answers, beside the cell: the engine is no judge of other people's formulas. */
export interface Figure {
  /** The formula as it was in the file: another one in its place is somebody's who works here. */
  readonly formula: string;
  /** One row of one value, or all that the formula fills; null where the file does not say. */
  readonly values: readonly (readonly CellValue[])[] | null;
  /**
   * "live" where the engine, given the file's inputs, gets the file's figure to 15 digits; "kept" where it does not: then the figure stays.
   * Our own functions are "ours", what answers anew each time is "volatile". Undefined until the engine has computed it once.
   */
  verdict?: "live" | "kept" | "ours" | "volatile";
}

/** Reads the figure of a cell; null where it has none, or holds another formula now. */
export function figureOf(cell: Nullable<ICellData>): Figure | null {
  const figure = (cell?.custom as { figure?: Figure } | null | undefined)?.figure;
  return figure === undefined || (cell?.f && cell.f !== figure.formula) ? null : figure;
}

/** What becomes of figures while a workbook is open. */
export interface KeptFigures {
  /** Ends the opening, once all is computed with the file's figures: from then on our formulas and live ones compute. False where none are to. */
  readonly comeAlive: () => boolean;
}

/**
 * Lets formulas out of a file answer what the file says until it is known that the engine may compute them.
 *
 * Of 22,632 formulas in files of other programs 7.6 % come out of the engine with another figure. Its runtime is handed each result on the way
 * into the sheet; there it is compared with the file's, and replaced by it. With `keepsVolatile` formulas that answer anew each time keep
 * their figures too.
 *
 * The engine also gives a cell a format that fits its function, as for dates and money: a formula out of a file has the format of the file.
 */
export function keepFigures(univer: Univer, { keepsVolatile = false } = {}): KeptFigures {
  const injector = univer.__getInjector();
  const runtime = injector.get(IFormulaRuntimeService);
  const workbooks = injector.get(IUniverInstanceService);
  const alive = new Set<string>();
  const pass = runtime.setRuntimeData.bind(runtime);
  runtime.setRuntimeData = (result) => {
    const { currentUnitId, currentSubUnitId, currentRow, currentColumn } = runtime;
    const workbook = workbooks.getUnit<Workbook>(currentUnitId, UniverInstanceType.UNIVER_SHEET);
    const figure = figureOf(workbook?.getSheetBySheetId(currentSubUnitId)?.getCellRaw(currentRow, currentColumn));
    const fitting = inACell(result);
    pass(figure === null ? fitting : judged(figure, fitting, alive.has(currentUnitId), keepsVolatile));
    const shown = figure === null ? null : runtime.getUnitData()[currentUnitId]?.[currentSubUnitId]?.getValue(currentRow, currentColumn);
    if (shown) delete shown.s;
  };
  return {
    comeAlive() {
      const workbook = workbooks.getCurrentUnitOfType<Workbook>(UniverInstanceType.UNIVER_SHEET);
      if (!workbook || alive.has(workbook.getUnitId())) return false;
      const unitId = workbook.getUnitId();
      alive.add(unitId);
      const dirtyRanges = workbook.getSheets().flatMap((sheet) => {
        const cells: { unitId: string; sheetId: string; range: { startRow: number; endRow: number; startColumn: number; endColumn: number } }[] = [];
        eachCell(sheet.getConfig(), (cell, row, column) => {
          const verdict = figureOf(cell)?.verdict;
          if (verdict !== "ours" && (verdict !== "volatile" || keepsVolatile)) return;
          cells.push({ unitId, sheetId: sheet.getSheetId(), range: { startRow: row, endRow: row, startColumn: column, endColumn: column } });
        });
        return cells;
      });
      if (dirtyRanges.length === 0) return false;
      injector.get(ICommandService).syncExecuteCommand(SetTriggerFormulaCalculationStartMutation.id, { dirtyRanges, forceCalculation: false }, { onlyLocal: true });
      return true;
    },
  };
}

function judged(figure: Figure, result: FunctionVariantType, isAlive: boolean, keepsVolatile: boolean): FunctionVariantType {
  if (figure.values === null) return result;
  if (!isAlive) {
    figure.verdict = isOurs(figure.formula) ? "ours" : isVolatile(figure.formula) ? "volatile" : figure.verdict ?? (isSameFigure(figure.values, valuesOf(result)) ? "live" : "kept");
    return engineValues(figure.values);
  }
  if (figure.verdict === "kept" || (figure.verdict === "volatile" && keepsVolatile)) return engineValues(figure.values);
  // What agrees to 15 digits is the file's figure to the last bit, and has the look of the file.
  return figure.verdict !== "volatile" && isSameFigure(figure.values, valuesOf(result)) ? engineValues(figure.values) : result;
}

/** Gives an error in the place of a text that no cell holds: sixty cells that each double the one before would fill the memory. */
function inACell(result: FunctionVariantType): FunctionVariantType {
  let isLong = result instanceof StringValueObject && result.getValue().length > longestText;
  if (result instanceof ArrayValueObject) result.iterator((cell) => (isLong ||= cell instanceof StringValueObject && cell.getValue().length > longestText));
  return isLong ? ErrorValueObject.create(ErrorType.VALUE) : result;
}

function valuesOf(result: FunctionVariantType): CellValue[][] | null {
  const value = result.isReferenceObject() ? (result as BaseReferenceObject).toArrayValueObject() : (result as BaseValueObject);
  if (!(value instanceof ArrayValueObject)) return [[plain(value)]];
  if (value.getRowCount() * value.getColumnCount() > 1_000_000) return null;
  const rows = Array.from({ length: value.getRowCount() }, () => new Array<CellValue>(value.getColumnCount()).fill(null));
  value.iterator((cell, row, column) => {
    rows[row]![column] = plain(cell);
  });
  return rows;
}

function plain(value: Nullable<BaseValueObject>): CellValue {
  if (!value || value.isNull()) return null;
  return value instanceof ErrorValueObject ? { error: value.getErrorType() } : value.getValue();
}

function isSameFigure(file: readonly (readonly CellValue[])[], computed: CellValue[][] | null): boolean {
  return (
    computed !== null && file.length === computed.length &&
    file.every((line, row) => line.length === computed[row]!.length && line.every((value, column) => isSameValue(value, computed[row]![column]!)))
  );
}

function isSameValue(file: CellValue, computed: CellValue): boolean {
  if (typeof file === "number" && typeof computed === "number") return file === computed || file.toPrecision(15) === computed.toPrecision(15);
  if (isError(file)) return isError(computed) && file.error === computed.error;
  // An empty cell that a formula refers to is 0, and empty text is stored as nothing.
  return file === computed || (file === 0 && computed === null) || (file === null && computed === "");
}

const errorTypes: ReadonlyMap<string, ErrorType> = new Map(Object.values(ErrorType).map((type) => [type, type]));

function engineValues(values: readonly (readonly CellValue[])[]): BaseValueObject {
  const rows = values.map((line) => line.map(engineValue));
  const [columnCount, rowCount] = [rows[0]!.length, rows.length];
  if (columnCount === 1 && rowCount === 1) return rows[0]![0]!;
  return ArrayValueObject.create({ calculateValueList: rows, rowCount, columnCount, unitId: "", sheetId: "", row: -1, column: -1 });
}

function engineValue(value: CellValue): BaseValueObject {
  // A formula never leaves its cell blank: a file that shows nothing there means the empty text.
  if (value === null) return StringValueObject.create("");
  if (typeof value === "number") return NumberValueObject.create(value);
  if (typeof value === "boolean") return BooleanValueObject.create(value);
  return isError(value) ? ErrorValueObject.create(errorTypes.get(value.error) ?? ErrorType.VALUE) : StringValueObject.create(value);
}
