import type { Area, CellValue, TablePlan } from "../../../src/sheet";
import { HostError } from "./client-object";

/** What a formula of the mock workbook comes to: one value, or rows that spill. */
export type Calculate = (formula: string) => CellValue | readonly (readonly CellValue[])[];

interface MockCell {
  readonly value: CellValue;
  readonly formula?: string;
}

let sheetsMade = 0;

/** Widest sheet: cells are kept by one number, row by row. */
const width = 16_384;
const placeOf = (row: number, column: number): number => row * width + column;

/** One sheet of the mock workbook, with the habits of a real one that lose what people wrote. */
export class MockSheet {
  readonly id = `{sheet-${(sheetsMade += 1)}}`;
  visibility: "Visible" | "Hidden" = "Visible";
  protected = false;
  comments = 0;
  /** True once a cell was entered, until somebody sets it back. */
  touched = false;
  tables: TablePlan[] = [];
  /** What was set of looks, widths, validations, print and so on: where, which property, which value. */
  readonly settings: { readonly address: string; readonly property: string; readonly value: unknown }[] = [];
  private readonly cells = new Map<number, MockCell>();
  private readonly formats = new Map<number, string>();

  constructor(
    public name: string,
    private readonly calculate: Calculate,
  ) {}

  format(row: number, column: number): string {
    return this.formats.get(placeOf(row, column)) ?? "General";
  }

  setFormat(row: number, column: number, format: string): void {
    this.formats.set(placeOf(row, column), format);
  }

  /**
   * Enters something as if typed: in a text cell all is text; elsewhere text that looks like a formula, a number, a date or a truth
   * value becomes one.
   */
  enter(row: number, column: number, input: string | number | boolean): void {
    if (this.protected) throw new HostError("AccessDenied");
    this.touched = true;
    const cell = input === "" ? null : this.format(row, column) === "@" ? { value: String(input) } : understood(input);
    if (cell === null) this.cells.delete(placeOf(row, column));
    else this.cells.set(placeOf(row, column), cell);
  }

  formula(row: number, column: number): string | null {
    return this.cells.get(placeOf(row, column))?.formula ?? null;
  }

  /** The area into which the formula of a cell spills; null where it does not. */
  spill(row: number, column: number): Area | null {
    const formula = this.formula(row, column);
    const result = formula === null ? null : this.calculate(formula);
    return Array.isArray(result) ? { row, column, rows: result.length, columns: (result[0] as CellValue[]).length } : null;
  }

  value(row: number, column: number): CellValue {
    return this.view()(row, column);
  }

  /** Computes every formula once and tells what a cell shows, spilled ones too, until something is entered. */
  view(): (row: number, column: number) => CellValue {
    const shown = new Map<number, CellValue>();
    for (const [place, { formula }] of this.cells) {
      if (formula === undefined) continue;
      const result = this.calculate(formula);
      if (!Array.isArray(result)) shown.set(place, result as CellValue);
      else (result as CellValue[][]).forEach((line, y) => line.forEach((value, x) => shown.set(place + placeOf(y, x), value)));
    }
    return (row, column) => {
      const place = placeOf(row, column);
      const own = this.cells.get(place);
      return own !== undefined && own.formula === undefined ? own.value : (shown.get(place) ?? null);
    };
  }

  used(): Area | null {
    let [top, left, bottom, right] = [Infinity, Infinity, 0, 0];
    for (const [place, { formula }] of this.cells) {
      const [row, column] = [Math.floor(place / width), place % width];
      const area = formula === undefined ? null : this.spill(row, column);
      top = Math.min(top, row);
      left = Math.min(left, column);
      bottom = Math.max(bottom, row + (area?.rows ?? 1));
      right = Math.max(right, column + (area?.columns ?? 1));
    }
    return bottom === 0 ? null : { row: top, column: left, rows: bottom - top, columns: right - left };
  }
}

function understood(input: string | number | boolean): MockCell {
  if (typeof input !== "string") return { value: input };
  if (input.startsWith("'")) return { value: input.slice(1) };
  if (input.startsWith("=")) return { value: null, formula: input };
  if (input.startsWith("@")) return { value: null, formula: `=${input}` };
  if (/^(true|false)$/i.test(input)) return { value: input.toLowerCase() === "true" };
  if (input.trim() !== "" && Number.isFinite(Number(input))) return { value: Number(input) };
  if (/^\d+(\.\d+)?%$/.test(input)) return { value: Number(input.slice(0, -1)) / 100 };
  // Whichever day it is: the text is gone.
  if (/^\d{1,4}[-/.]\d{1,2}([-/.]\d{1,4})?$|^\d{1,2}:\d{2}$/.test(input)) return { value: 46_000 };
  if (/^[+-]/.test(input)) return { value: null, formula: `=${input}` };
  return { value: input };
}
