import type { Nullable } from "@univerjs/core";
import type { BaseReferenceObject, BaseValueObject, FunctionVariantType, IFunctionInfo } from "@univerjs/engine-formula";
import { ArrayValueObject, BaseFunction, BooleanValueObject, ErrorType, ErrorValueObject, FunctionType, NumberValueObject, StringValueObject } from "@univerjs/engine-formula";
import { catalogue, type CatalogueEntry } from "../../functions/catalogue";
import { sheetSize } from "../../sheet";
import { CellFault, installCustomFunctions } from "../../functions/support/custom-functions";
import { leaveUnaskedBranches } from "./asked-branches";
import { Comparison } from "./comparison";
import { no, yes } from "./engine-values";
import { readFormulaLiteralsAsWritten } from "./formula-literals";
import { keepNodes } from "./kept-nodes";
import { indexOnlyLookups } from "./lookup-index";
import { readRangesWithoutLostSpills } from "./lost-spills";
import { shareFormulas } from "./shared-formulas";

/** Prefix of every worksheet function of ours. */
export const namespace = "BAY";

/** What a cell whose formula failed carries beside its value: the sentence of the error, and the error it belongs to. */
export interface FaultNote {
  readonly error: string;
  readonly sentence: string;
}

/**
 * Makes an engine function out of every entry of the catalogue, for the engine's `formula.function` setting.
 *
 * Arguments arrive as the spreadsheet host gives them: a range as rows of cells, an empty cell as null, an error as its text, which
 * the function answers with a sentence that names the argument. Comparisons, which the engine knows as a function too, are ours as well.
 */
export function bayFunctions(): [new (name: string) => BaseFunction, string][] {
  installCustomFunctions();
  readFormulaLiteralsAsWritten();
  indexOnlyLookups();
  readRangesWithoutLostSpills();
  shareFormulas();
  keepNodes();
  leaveUnaskedBranches();
  const ours = catalogue.map((one): [new (name: string) => BaseFunction, string] => [engineClass(one), `${namespace}.${one.id}`]);
  return [...ours, [Comparison, "COMPARE"]];
}

/** Describes every worksheet function for the engine's autocomplete and argument help. */
export function bayFunctionHelp(): IFunctionInfo[] {
  return catalogue.map((one) => ({ one, written: argumentsOf(one.examples[0] ?? "") })).map(({ one, written }) => ({
    functionName: `${namespace}.${one.id}`,
    functionType: FunctionType.User,
    description: one.description,
    abstract: one.description,
    functionParameter: one.parameters.map((parameter, place) => ({
      name: parameter.name,
      detail: parameter.description,
      // The engine puts the example of the whole together of these.
      example: written[place] ?? "",
      require: parameter.optional ? no : yes,
      repeat: no,
    })),
  }));
}

/** Lists the arguments of the function with which a formula begins, as they are written. */
function argumentsOf(formula: string): string[] {
  const [, inside = ""] = /^=[\w.]+\(([^]*)\)$/.exec(formula) ?? [];
  const found = [""];
  let depth = 0;
  for (const piece of inside.match(/"(?:[^"]|"")*"|[^"]/g) ?? []) {
    if ("({".includes(piece)) depth += 1;
    if (")}".includes(piece)) depth -= 1;
    if (piece === "," && depth === 0) found.push("");
    else found.push(`${found.pop() ?? ""}${piece}`);
  }
  return found;
}

function engineClass(one: CatalogueEntry): new (name: string) => BaseFunction {
  const most = one.parameters.length;
  return class extends BaseFunction {
    // Ranges are asked for what is filled, so that a whole column costs no more than what stands in it.
    override needsReferenceObject = true;

    override isArgumentsIgnoreNumberPattern(): boolean {
      return true;
    }

    override calculate(...variants: FunctionVariantType[]): BaseValueObject {
      if (variants.length > most) return fault({ error: ErrorType.VALUE, sentence: `${namespace}.${one.id} takes at most ${most} arguments, not ${variants.length}.` });
      try {
        return engineValue(one.call(...variants.map((variant, place) => plainArgument(variant, one.parameters[place]!.name))));
      } catch (thrown) {
        if (thrown instanceof CellFault) return fault({ error: thrown.code, sentence: thrown.message });
        return fault({ error: ErrorType.VALUE, sentence: `${one.id} failed inside the add-in, not in your sheet.` });
      }
    }
  };
}

/** Cells up to which a range is read whole, as the engine keeps it for all who ask for the same one. */
const readWhole = 100_000;
/** Most cells that one argument may span: twenty whole columns. */
const mostCells = 20 * sheetSize.rows;

function plainArgument(variant: FunctionVariantType, argument: string): unknown {
  if (!variant.isReferenceObject()) return plainValue(variant as BaseValueObject);
  const reference = variant as BaseReferenceObject;
  const { startRow, endRow, startColumn, endColumn } = reference.getRangePosition();
  const cells = (endRow - startRow + 1) * (endColumn - startColumn + 1);
  if (cells <= readWhole) return plainValue(reference.toArrayValueObject());
  if (cells <= mostCells) return filledPart(reference);
  throw new CellFault(ErrorType.VALUE, `${argument} spans ${cells} cells. Give the part of the sheet that is meant, such as A2:A1000.`);
}

/** Takes the part of a large range down to its last filled row and as far as its last filled column: of a whole column, what stands in it. */
function filledPart(reference: BaseReferenceObject): unknown[][] {
  const { startRow, endRow, startColumn, endColumn } = reference.getRangePosition();
  const filled = new Map<number, Set<number>>();
  // Never one cell: a range stays a range, however little stands in it.
  let [height, width] = [2, 1];
  const layers = [
    reference.getCurrentActiveSheetData().cellData,
    reference.getCurrentRuntimeSheetData(),
    reference.getCurrentActiveArrayFormulaCellData(),
    reference.getCurrentRuntimeActiveArrayFormulaCellData(),
  ];
  for (const layer of layers) {
    layer?.forValue((row, column) => {
      if (row < startRow || row > endRow || column < startColumn || column > endColumn) return;
      const columns = filled.get(row) ?? new Set();
      filled.set(row, columns.add(column));
      height = Math.max(height, row - startRow + 1);
      width = Math.max(width, column - startColumn + 1);
    });
  }
  const blank: unknown[] = new Array<unknown>(width).fill(null);
  const rows: unknown[][] = new Array<unknown[]>(height).fill(blank);
  for (const [row, columns] of filled) {
    const cells = [...blank];
    for (const column of columns) {
      const cell = reference.getCellData(row, column);
      if (cell) cells[column - startColumn] = plainCell(reference.getCellValueObject(cell));
    }
    rows[row - startRow] = cells;
  }
  return rows;
}

function plainValue(value: BaseValueObject): unknown {
  if (!(value instanceof ArrayValueObject)) return plainCell(value);
  // A range is asked cell by cell: its own list leaves out the cells that another formula spilled into.
  const rows: unknown[][] = Array.from({ length: value.getRowCount() }, () => new Array<unknown>(value.getColumnCount()).fill(null));
  value.iterator((cell, row, column) => {
    rows[row]![column] = plainCell(cell);
  });
  return rows;
}

function plainCell(cell: Nullable<BaseValueObject>): unknown {
  if (!cell || cell.isNull()) return null;
  return cell instanceof ErrorValueObject ? cell.getErrorType() : cell.getValue();
}

function engineValue(answer: unknown): BaseValueObject {
  if (!Array.isArray(answer)) return engineCell(answer);
  const rows = answer as unknown[][];
  return ArrayValueObject.create({
    calculateValueList: rows.map((row) => row.map(engineCell)),
    rowCount: rows.length,
    columnCount: rows[0]?.length ?? 0,
    unitId: "",
    sheetId: "",
    row: -1,
    column: -1,
  });
}

function engineCell(answer: unknown): BaseValueObject {
  if (typeof answer === "number") return NumberValueObject.create(answer);
  if (typeof answer === "boolean") return BooleanValueObject.create(answer);
  if (answer instanceof CellFault) return fault({ error: answer.code, sentence: answer.message });
  return StringValueObject.create(typeof answer === "string" ? answer : "");
}

const errorTypes: ReadonlyMap<string, ErrorType> = new Map(Object.values(ErrorType).map((type) => [type, type]));

// The note rides on the cell itself, so that it stays with it when rows are inserted, deleted or sorted.
function fault(note: FaultNote): BaseValueObject {
  return ErrorValueObject.create(errorTypes.get(note.error) ?? ErrorType.VALUE, note.sentence).withCustomData({ fault: note });
}

/** Reads the note off a cell's own data; null where the cell shows no error of ours, or another error than the note is about. */
export function faultNote(cell: Nullable<{ readonly v?: unknown; readonly custom?: unknown }>): FaultNote | null {
  const note = (cell?.custom as { fault?: FaultNote } | null | undefined)?.fault;
  return note !== undefined && note.error === cell?.v ? note : null;
}
