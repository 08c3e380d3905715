import { ArrayValueObject, BaseFunction, BooleanValueObject, compareToken, ErrorType, ErrorValueObject, type BaseValueObject } from "@univerjs/engine-formula";
import type { Nullable } from "@univerjs/core";

/**
 * Compares two values, or the cells of two ranges, as spreadsheet programs do; stands in the place of the engine's own `=`, `<>`, `<`, `>`, `<=` and `>=`.
 *
 * Left alone the engine takes 0 and digits typed as text for the empty text and for numbers where cells are named, reads `*` and `?` as a pattern, answers
 * no where an error is compared, and answers a single comparison as a range that NOT does not understand. Here an error is the answer, numbers come
 * before text and text before ticks, capitals do not count, and an empty cell is what the other side is: ISO/IEC 29500-1, section 18.17.2.4.
 */
export class Comparison extends BaseFunction {
  private operator = compareToken.EQUALS;

  /** Is told by the engine which of the six is meant before each call. */
  setCompareType(operator: compareToken): void {
    this.operator = operator;
  }

  override calculate(left: BaseValueObject, right: BaseValueObject): BaseValueObject {
    const [one, other] = [sidesOf(left), sidesOf(right)];
    const rowCount = Math.max(one.rows, other.rows);
    const columnCount = Math.max(one.columns, other.columns);
    if (rowCount === 1 && columnCount === 1) return this.compare(one.at(0, 0), other.at(0, 0));
    const calculateValueList = Array.from({ length: rowCount }, (_, row) =>
      Array.from({ length: columnCount }, (_line, column) => this.compare(one.at(row, column), other.at(row, column))),
    );
    return ArrayValueObject.create({ calculateValueList, rowCount, columnCount, unitId: "", sheetId: "", row: -1, column: -1 });
  }

  private compare(left: Nullable<BaseValueObject>, right: Nullable<BaseValueObject>): BaseValueObject {
    if (left instanceof ErrorValueObject) return left;
    if (right instanceof ErrorValueObject) return right;
    return BooleanValueObject.create(holds[this.operator](orderOf(plain(left), plain(right))));
  }
}

const holds: Readonly<Record<compareToken, (order: number) => boolean>> = {
  [compareToken.EQUALS]: (order) => order === 0,
  [compareToken.NOT_EQUAL]: (order) => order !== 0,
  [compareToken.LESS_THAN]: (order) => order < 0,
  [compareToken.GREATER_THAN]: (order) => order > 0,
  [compareToken.LESS_THAN_OR_EQUAL]: (order) => order <= 0,
  [compareToken.GREATER_THAN_OR_EQUAL]: (order) => order >= 0,
};

interface Side {
  readonly rows: number;
  readonly columns: number;
  /** A side of one row or column stands for all of them; behind the last one there is nothing to compare. */
  readonly at: (row: number, column: number) => Nullable<BaseValueObject>;
}

function sidesOf(value: BaseValueObject): Side {
  if (!(value instanceof ArrayValueObject)) return { rows: 1, columns: 1, at: () => value };
  const [rows, columns] = [value.getRowCount(), value.getColumnCount()];
  const missing = ErrorValueObject.create(ErrorType.NA);
  return {
    rows,
    columns,
    at: (row, column) => {
      const [down, across] = [rows === 1 ? 0 : row, columns === 1 ? 0 : column];
      return down >= rows || across >= columns ? missing : value.get(down, across);
    },
  };
}

type Plain = string | number | boolean | null;

function plain(value: Nullable<BaseValueObject>): Plain {
  return !value || value.isNull() ? null : value.getValue();
}

/** Below 0 where the first comes before the second, 0 where the two are the same. */
function orderOf(left: Plain, right: Plain): number {
  const [one, other] = [left ?? blankAs(right), right ?? blankAs(left)];
  if (typeof one === "number" && typeof other === "number") return isSameNumber(one, other) ? 0 : one - other;
  if (typeof one === "string" && typeof other === "string") return orderOfTexts(one, other);
  if (typeof one === "boolean" && typeof other === "boolean") return Number(one) - Number(other);
  return rankOf(one) - rankOf(other);
}

/** What an empty cell is beside a value: 0, no text, or no. */
function blankAs(other: Plain): string | number | boolean {
  return typeof other === "string" ? "" : typeof other === "boolean" ? false : 0;
}

function rankOf(value: string | number | boolean): number {
  return typeof value === "number" ? 0 : typeof value === "string" ? 1 : 2;
}

/** Numbers are the same that are written with the same 15 digits. */
function isSameNumber(one: number, other: number): boolean {
  return one === other || (Math.abs(one - other) <= 1e-14 * Math.abs(one) && one.toPrecision(15) === other.toPrecision(15));
}

const letters = new Intl.Collator("en", { sensitivity: "accent" });

/** Orders texts as `letters` does; where plain letters or digits tell two apart, as they mostly do of thousands of names, without asking it. */
export function orderOfTexts(one: string, other: string): number {
  for (let at = 0; ; at += 1) {
    const [left, right] = [plainAt(one, at), plainAt(other, at)];
    if (left === right && left !== null) {
      if (left === end) return 0;
      continue;
    }
    return isDecisive(left) && isDecisive(right) ? left - right : letters.compare(one, other);
  }
}

/** What stands behind the last letter of a text: it comes before all others. */
const end = 0;

/** The code of a plain sign of a text, as a small letter, `end` behind the last one; null for any other sign. */
function plainAt(text: string, at: number): number | null {
  if (at === text.length) return end;
  const code = text.charCodeAt(at);
  if (code >= 65 && code <= 90) return code + 32;
  return code >= 32 && code <= 126 ? code : null;
}

/** Tells whether a code is that of a letter or a digit, or the end: digits come before letters, and both in the order of their codes. */
function isDecisive(code: number | null): code is number {
  return code !== null && (code === end || (code >= 48 && code <= 57) || (code >= 97 && code <= 122));
}
