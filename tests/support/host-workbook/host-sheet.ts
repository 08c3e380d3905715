import type { Area, CellPlace, CellValue, TablePlan } from "../../../src/sheet";
import { areasMeet, isInArea } from "../../../src/sheet";
import { Refusal } from "./host-object";
import { renamedFormula, renamedSetting } from "./moved-formula";

/** What a formula of a sheet comes to: one value, or rows that spill. */
export type Result = CellValue | readonly (readonly CellValue[])[];

/** Tells what the formulas of a sheet come to, as its workbook stands now; throws `Computing` where that takes a while. */
export type Formulas = (sheet: HostSheet) => (formula: string, place: number) => Result;

/** Says that formulas are being computed, and when they are done: whoever needed them asks again then. */
export class Computing extends Error {
  constructor(readonly done: Promise<void>) {
    super("The formulas of the workbook are not computed yet: wait for them with settle()");
  }
}

interface HostCell {
  readonly value: CellValue;
  readonly formula?: string;
}

/** Something that was set on an area, such as `format.font.bold`; without an area on the sheet itself. */
export interface Setting {
  readonly address: string;
  readonly property: string;
  readonly value: unknown;
}

interface View {
  readonly shown: Map<number, CellValue>;
  readonly spills: Map<number, Area>;
}

let sheetsMade = 0;

/** Widest sheet: cells are kept by one number, row by row. */
const width = 16_384;
export const placeOf = (row: number, column: number): number => row * width + column;

/** What cells of sheets have held so far, each with its number. */
const contentsNumbers = new Map<string, number>();

/** Longest text and longest formula of a cell, in characters, as the host's published limits give them. */
const longest = { text: 32_767, formula: 8_192 };

/** One sheet of the workbook that stands in, with the habits of a real one that lose what people wrote. */
export class HostSheet {
  visibility: "Visible" | "Hidden" | "VeryHidden" = "Visible";
  protected = false;
  comments = 0;
  notes = 0;
  /** True once a cell was entered, until somebody sets it back. */
  touched = false;
  tables: TablePlan[] = [];
  merges: Area[] = [];
  /** Conditional formats, the one that wins first: the host puts each new one before the others. */
  conditionalFormats: { readonly area: Area; readonly settings: Map<string, unknown> }[] = [];
  /** What was set of looks, widths, validations, print and so on. */
  settings: Setting[] = [];
  private cells = new Map<number, HostCell>();
  private formats = new Map<number, string>();
  private computed: View | null = null;
  private contentsNumber: number | null = null;

  constructor(
    public name: string,
    private readonly formulas: Formulas,
    readonly id = `{sheet-${(sheetsMade += 1)}}`,
  ) {}

  /** Makes a sheet of the same id, cells and looks, which goes its own way from then on. */
  copy(formulas: Formulas): HostSheet {
    const { visibility, comments, notes } = this;
    const lists = { tables: [...this.tables], merges: [...this.merges], conditionalFormats: [...this.conditionalFormats], settings: [...this.settings] };
    const own = { cells: new Map(this.cells), formats: new Map(this.formats), protected: this.protected, contentsNumber: this.contentsNumber };
    return Object.assign(new HostSheet(this.name, formulas, this.id), { visibility, comments, notes }, lists, own);
  }

  format(row: number, column: number): string {
    return this.formats.get(placeOf(row, column)) ?? "General";
  }

  /** Sets a number format; "" resets it. */
  setFormat(row: number, column: number, format: string): void {
    this.formats.set(placeOf(row, column), format === "" ? "General" : format);
  }

  /**
   * Enters something as if typed: in a text cell all is text; elsewhere text that looks like a formula, a number, a date or a truth
   * value becomes one.
   */
  enter(row: number, column: number, input: string | number | boolean): void {
    if (this.protected) throw new Refusal("AccessDenied");
    if (typeof input === "string" && input.length > (this.isFormula(row, column, input) ? longest.formula : longest.text)) throw new Refusal("InvalidArgument");
    // Of merged cells only the first holds anything.
    if (this.merges.some((area) => isInArea({ row, column }, area) && (area.row !== row || area.column !== column))) return;
    this.touched = true;
    this.forgetView();
    const cell = input === "" ? null : this.format(row, column) === "@" ? { value: String(input) } : understood(input);
    if (cell === null) this.cells.delete(placeOf(row, column));
    else this.cells.set(placeOf(row, column), cell);
  }

  /** Says what looks at a sheet anew after that was renamed. */
  followRename(from: string, to: string): void {
    for (const [place, cell] of this.cells) {
      const renamed = cell.formula === undefined ? undefined : renamedFormula(cell.formula, from, to);
      if (renamed !== cell.formula) this.cells.set(place, { ...cell, formula: renamed });
    }
    this.settings = this.settings.map((one) => ({ ...one, value: renamedSetting(one.value, from, to) }));
    for (const { settings } of this.conditionalFormats) for (const [property, value] of settings) settings.set(property, renamedSetting(value, from, to));
    this.forgetView();
  }

  private isFormula(row: number, column: number, input: string): boolean {
    return this.format(row, column) !== "@" && input.startsWith("=");
  }

  merge(area: Area): void {
    if (this.protected) throw new Refusal("AccessDenied");
    if (this.tables.some((table) => areasMeet(table.area, area))) throw new Refusal("InvalidOperation");
    this.merges = [...this.merges.filter((one) => !areasMeet(one, area)), area];
    const first = placeOf(area.row, area.column);
    for (const place of this.cells.keys()) if (place !== first && isInArea(cellOf(place), area)) this.cells.delete(place);
    this.forgetView();
  }

  /** What people and programs entered, cell by cell. */
  entered(): readonly (HostCell & CellPlace)[] {
    return [...this.cells].map(([place, cell]) => ({ ...cellOf(place), ...cell }));
  }

  /** A number for what the cells hold: two sheets of the same number hold the same. */
  contents(): number {
    if (this.contentsNumber !== null) return this.contentsNumber;
    const text = JSON.stringify([...this.cells]);
    const number = contentsNumbers.get(text) ?? contentsNumbers.size;
    contentsNumbers.set(text, number);
    return (this.contentsNumber = number);
  }

  formula(row: number, column: number): string | null {
    return this.cells.get(placeOf(row, column))?.formula ?? null;
  }

  /** The area into which the formula of a cell spills; null where it does not. */
  spill(row: number, column: number): Area | null {
    return this.view().spills.get(placeOf(row, column)) ?? null;
  }

  /** The formula whose spilled cells this one is among; null where it is none. */
  spilledFormula(row: number, column: number): string | null {
    const [from] = [...this.view().spills.values()].filter((area) => isInArea({ row, column }, area));
    return from === undefined ? null : this.formula(from.row, from.column);
  }

  value(row: number, column: number): CellValue {
    const place = placeOf(row, column);
    const own = this.cells.get(place);
    return own !== undefined && own.formula === undefined ? own.value : (this.view().shown.get(place) ?? null);
  }

  /** Asks anew what formulas come to when a value is next wanted: cells they look at may have changed, here or on another sheet. */
  recalculate(): void {
    this.computed = null;
  }

  private forgetView(): void {
    this.computed = null;
    this.contentsNumber = null;
  }

  /** What formulas show, and where they spill. A formula in whose way something stands shows that, and spills nowhere. */
  private view(): View {
    if (this.computed !== null) return this.computed;
    const view: View = { shown: new Map(), spills: new Map() };
    const formulas = [...this.cells].filter(([, { formula }]) => formula !== undefined);
    const resultOf = formulas.length === 0 ? null : this.formulas(this);
    for (const [place, { formula }] of formulas) {
      const result = resultOf!(formula!, place);
      if (!isRows(result)) {
        view.shown.set(place, result);
        continue;
      }
      const area = { ...cellOf(place), rows: result.length, columns: result[0]!.length };
      const spilled = result.flatMap((line, y) => line.map((value, x) => ({ at: place + placeOf(y, x), value })));
      if (spilled.some(({ at }) => at !== place && this.cells.has(at))) view.shown.set(place, { error: "#SPILL!" });
      else {
        for (const { at, value } of spilled) view.shown.set(at, value);
        view.spills.set(place, area);
      }
    }
    return (this.computed = view);
  }

  used(): Area | null {
    let [top, left, bottom, right] = [Infinity, Infinity, 0, 0];
    const cover = (row: number, column: number, rows: number, columns: number) => {
      top = Math.min(top, row);
      left = Math.min(left, column);
      bottom = Math.max(bottom, row + rows);
      right = Math.max(right, column + columns);
    };
    for (const place of this.cells.keys()) cover(Math.floor(place / width), place % width, 1, 1);
    for (const { row, column, rows, columns } of this.view().spills.values()) cover(row, column, rows, columns);
    return bottom === 0 ? null : { row: top, column: left, rows: bottom - top, columns: right - left };
  }
}

function isRows(result: Result): result is readonly (readonly CellValue[])[] {
  return Array.isArray(result);
}

function cellOf(place: number): CellPlace {
  return { row: Math.floor(place / width), column: place % width };
}

function understood(input: string | number | boolean): HostCell {
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
