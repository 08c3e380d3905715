import type { Nullable } from "@univerjs/core";
import type { BaseValueObject, FunctionVariantType, IFunctionInfo } from "@univerjs/engine-formula";
import { ArrayValueObject, BaseFunction, BooleanValueObject, ErrorType, ErrorValueObject, FunctionType, NumberValueObject, StringValueObject } from "@univerjs/engine-formula";
import { catalogue, type CatalogueEntry } from "../../functions/catalogue";
import { CellFault, installCustomFunctions } from "../../functions/support/custom-functions";
import { no, yes } from "./engine-values";
import { readFormulaLiteralsAsWritten } from "./formula-literals";

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
 * the function answers with a sentence that names the argument.
 */
export function bayFunctions(): [new (name: string) => BaseFunction, string][] {
  installCustomFunctions();
  readFormulaLiteralsAsWritten();
  return catalogue.map((one) => [engineClass(one), `${namespace}.${one.id}`]);
}

/** Describes every worksheet function for the engine's autocomplete and argument help. */
export function bayFunctionHelp(): IFunctionInfo[] {
  return catalogue.map((one) => ({
    functionName: `${namespace}.${one.id}`,
    functionType: FunctionType.User,
    description: one.description,
    abstract: one.description,
    functionParameter: one.parameters.map((parameter) => ({
      name: parameter.name,
      detail: parameter.description,
      example: one.examples[0] ?? "",
      require: parameter.optional ? no : yes,
      repeat: no,
    })),
  }));
}

function engineClass(one: CatalogueEntry): new (name: string) => BaseFunction {
  const most = one.parameters.length;
  return class extends BaseFunction {
    override isArgumentsIgnoreNumberPattern(): boolean {
      return true;
    }

    override calculate(...variants: FunctionVariantType[]): BaseValueObject {
      if (variants.length > most) return fault({ error: ErrorType.VALUE, sentence: `${namespace}.${one.id} takes at most ${most} arguments, not ${variants.length}.` });
      try {
        return engineValue(one.call(...(variants as BaseValueObject[]).map(plainArgument)));
      } catch (thrown) {
        if (thrown instanceof CellFault) return fault({ error: thrown.code, sentence: thrown.message });
        return fault({ error: ErrorType.VALUE, sentence: `${one.id} failed inside the add-in, not in your sheet.` });
      }
    }
  };
}

function plainArgument(value: BaseValueObject): unknown {
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
