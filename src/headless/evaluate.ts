import { LocaleType, type Nullable, Univer, UniverInstanceType } from "@univerjs/core";
import {
  BaseReferenceObject,
  type BaseValueObject,
  CalculateFormulaService,
  ErrorValueObject,
  ICalculateFormulaService,
  IFormulaCurrentConfigService,
  IFormulaRuntimeService,
  UniverFormulaEnginePlugin,
} from "@univerjs/engine-formula";
import { sheetSize } from "../sheet";
import { bayFunctions } from "../workbook/engine/bay-functions";

/** What one formula answered: a value, the cells of a table, or an error with a sentence. */
export type Evaluation =
  | { readonly formula: string; readonly value: string | number | boolean }
  | { readonly formula: string; readonly values: readonly (readonly (string | number | boolean)[])[] }
  | { readonly formula: string; readonly error: string; readonly message: string };

/** Makes an evaluator of single formulas: the engine of the browser workbook, with no sheet behind it. */
export function createEvaluator(): (formula: string) => Promise<Evaluation> {
  const univer = new Univer({ locale: LocaleType.EN_US, locales: { [LocaleType.EN_US]: {} } });
  univer.registerPlugin(UniverFormulaEnginePlugin, { function: bayFunctions() });
  // The engine wakes up with the first workbook, an empty one here.
  univer.createUnit(UniverInstanceType.UNIVER_SHEET, { id: "calc", sheetOrder: ["sheet"], sheets: { sheet: { id: "sheet", name: "Sheet", ...extent } } });
  const injector = univer.__getInjector();
  // The service is declared to answer nothing; the one that the engine registers answers with the result.
  const engine = injector.get(ICalculateFormulaService);
  if (!(engine instanceof CalculateFormulaService)) throw new Error("The engine computes formulas by another service than it did.");
  injector.get(IFormulaCurrentConfigService).loadDataLite();
  injector.get(IFormulaRuntimeService).setCurrent(0, 0, extent.rowCount, extent.columnCount, "sheet", "calc");
  return async (formula) => {
    const unreadable = { formula, error: "#ERROR!", message: "This is no formula that can be read. Check its brackets, commas and quotation marks." };
    if (!formula.startsWith("=")) return { ...unreadable, message: 'A formula begins with =, such as =BAY.USABLE("RAID 6",12,4).' };
    if (formula.length > mostCharacters) return { ...unreadable, message: `A formula holds at most ${mostCharacters.toLocaleString("en")} characters. Split it.` };
    let answer: Awaited<ReturnType<typeof engine.calculate>>;
    try {
      answer = await engine.calculate(formula);
    } catch {
      // The engine goes down into a formula by calls, and comes to the end of them before the formula does.
      return { ...unreadable, message: "This formula is nested too deeply to be computed. Split it." };
    }
    if (answer === undefined) return unreadable;
    const result = answer instanceof BaseReferenceObject ? answer.toArrayValueObject() : answer;
    if (!result.isArray()) return result instanceof ErrorValueObject ? failure(formula, result) : { formula, value: plain(result) };
    const cells = result.getArrayValue();
    const only = cells.length === 1 && cells[0]!.length === 1 ? cells[0]![0] : undefined;
    if (only instanceof ErrorValueObject) return failure(formula, only);
    return only ? { formula, value: plain(only) } : { formula, values: cells.map((row) => row.map(plain)) };
  };
}

function failure(formula: string, error: ErrorValueObject): Evaluation {
  const code = error.getErrorType();
  return { formula, error: code, message: error.getErrorContent() || (meanings[code] ?? "The formula has no answer.") };
}

function plain(cell: Nullable<BaseValueObject>): string | number | boolean {
  if (!cell || cell.isNull()) return "";
  return cell instanceof ErrorValueObject ? cell.getErrorType() : cell.getValue();
}

/** What a cell holds of a formula. */
const mostCharacters = 8192;

/** Room for whatever a formula spills. */
const extent = { rowCount: sheetSize.rows, columnCount: sheetSize.columns };

/** What the errors mean that native functions answer with; those of ours bring their own sentence. */
const meanings: Readonly<Record<string, string>> = {
  "#NAME?": "There is no function or name so spelt. Ours begin with BAY. and are listed in the function pages.",
  "#VALUE!": "An argument is of the wrong kind, such as text where a number belongs.",
  "#DIV/0!": "A number is divided by zero.",
  "#N/A": "There is no such value, or the number of arguments is wrong.",
  "#NUM!": "A number is out of the range in which the function has an answer.",
  "#REF!": "The formula refers to cells that are not there.",
  "#NULL!": "Two ranges that do not meet are joined by a blank.",
};
