import { ArrayValueObject, NumberValueObject, StringValueObject, ValueObjectFactory, type BaseValueObject } from "@univerjs/engine-formula";
import { isNumberText } from "../../planning/text";

const textLiteral = /^"(?:[^"]|"")*"$/;
const arrayLiteral = /^\{(?:[^"]|"(?:[^"]|"")*")*\}$/;
/** An item of a written-out array, with the separator behind it. */
const arrayItem = /((?:[^",;]|"(?:[^"]|"")*")*)([,;]|$)/y;

/**
 * Makes the engine read the literals of a formula as they are written.
 *
 * Left alone it takes a number for text unless it is spelt as a program would print it (0.20, 1E-15), text inside a written-out array
 * for a date ("1-2"), and a comma inside such text for the end of the item. Applies to every engine of the page or process; calling it
 * again does nothing.
 */
export function readFormulaLiteralsAsWritten(): void {
  const factory = ValueObjectFactory as typeof ValueObjectFactory & { readsAsWritten?: true };
  if (factory.readsAsWritten) return;
  const readOtherwise = factory.create.bind(factory);
  factory.readsAsWritten = true;
  factory.create = (raw, ignoresPatterns) => (typeof raw === "string" ? readLiteral(raw.trim()) : null) ?? readOtherwise(raw, ignoresPatterns);
}

function readLiteral(literal: string): BaseValueObject | null {
  if (textLiteral.test(literal)) return StringValueObject.create(literal.slice(1, -1).replaceAll('""', '"'));
  if (isNumberText(literal) && Number.isFinite(Number(literal))) return NumberValueObject.create(Number(literal));
  return arrayLiteral.test(literal) ? readArray(literal.slice(1, -1)) : null;
}

function readArray(inside: string): BaseValueObject {
  const rows: BaseValueObject[][] = [[]];
  arrayItem.lastIndex = 0;
  for (let end = false; !end; ) {
    const [, item = "", separator = ""] = arrayItem.exec(inside) ?? [];
    rows.at(-1)!.push(ValueObjectFactory.create(item.trim()));
    if (separator === ";") rows.push([]);
    end = separator === "";
  }
  const columnCount = Math.max(...rows.map((row) => row.length));
  return ArrayValueObject.create({ calculateValueList: rows, rowCount: rows.length, columnCount, unitId: "", sheetId: "", row: -1, column: -1 });
}
