import { dayOfInstant, parseAreas, parseCell, sheetSize, type Area, type CellValue } from "../../sheet";
import { RowCells } from "../document/row-cells";
import type { CellGrid, DocumentCell, Look } from "../document/workbook-document";
import { readCellText, readPieces, type CellText } from "./cell-text";
import { damaged, limits, tooLarge } from "./file-problems";
import { fromFileFormula, hasUnknownFunction } from "./formula-text";
import { isDateFormat, type ReadColor } from "./read-looks";
import type { FormulaAt, RepeatedCells } from "./repeated-cells";
import { numberOf, parseXml, type Attributes } from "./xml";

/** What the cells of a workbook have in common. */
export interface CellContext {
  readonly texts: readonly CellText[];
  readonly looks: readonly Look[];
  readonly readColor: ReadColor;
  /** True where days are counted from 1904. */
  readonly from1904: boolean;
  /** Keeps what stands on several sheets once. */
  readonly repeated: RepeatedCells;
  /** Cells of all sheets read so far. */
  readonly count: { cells: number };
}

/** Days by which the calendar of 1904 is behind that of 1900: ECMA-376 part 1, section 18.17.4.1. */
export const daysTo1904 = 1_462;

const errors: ReadonlySet<string> = new Set(
  "#NULL! #DIV/0! #VALUE! #REF! #NAME? #NUM! #N/A #SPILL! #CALC! #GETTING_DATA #FIELD! #BLOCKED! #CONNECT! #UNKNOWN! #BUSY! #PYTHON!".split(" "),
);

/** Reads the cells of one sheet as its XML, `xml`, tells of them: `open`, `text` and `close` are called for what is inside its rows, with its places. */
export class CellReader {
  private readonly grid: CellGrid = new Map();
  /** Cells of the row at hand. */
  private readonly line = new Map<number, DocumentCell>();
  private readonly shared = new Map<string, { readonly formulaAt: FormulaAt; readonly row: number; readonly column: number }>();
  private row = -1;
  private column = -1;
  private attributes: Attributes = {};
  private formula: { attributes: Attributes; text: string } | null = null;
  private result: string | null = null;
  private inline: string[] = [];
  /** Where the text of the cell begins that stands in it, and the same in its pieces. */
  private begin = 0;
  private pieces: CellText["pieces"];
  private into: "f" | "v" | "t" | null = null;
  private readings = 0;
  private readonly dateLooks: readonly boolean[];

  constructor(private readonly context: CellContext, private readonly xml: string) {
    this.dateLooks = context.looks.map(({ format }) => isDateFormat(format));
  }

  openRow(attributes: Attributes): number {
    this.endRow();
    const number = numberOf(attributes["r"]);
    this.row = number === undefined ? this.row + 1 : number - 1;
    if (!Number.isInteger(this.row) || this.row < 0 || this.row >= sheetSize.rows) throw damaged();
    this.column = -1;
    return this.row;
  }

  private endRow(): void {
    if (this.line.size === 0) return;
    // A row that is there twice.
    for (const [column, cell] of this.grid.get(this.row) ?? []) if (!this.line.has(column)) this.line.set(column, cell);
    this.grid.set(this.row, RowCells.of(this.line));
    this.line.clear();
  }

  /** The cells that were read; to be asked for when all are. */
  get cells(): CellGrid {
    this.endRow();
    return this.grid;
  }

  open(name: string, attributes: Attributes, start: number): void {
    switch (name) {
      case "c": {
        this.context.count.cells += 1;
        if (this.context.count.cells > limits.cells) throw tooLarge(`has more than ${limits.cells.toLocaleString("en")} cells`);
        const place = attributes["r"] === undefined ? { row: this.row, column: this.column + 1 } : parseCell(attributes["r"].toUpperCase());
        if (place?.row !== this.row || place.column >= sheetSize.columns) throw damaged();
        this.column = place.column;
        this.attributes = attributes;
        this.formula = null;
        this.result = null;
        this.inline = [];
        this.pieces = undefined;
        break;
      }
      case "is":
        this.begin = start;
        break;
      case "rPr":
        this.pieces = [];
        break;
      case "f":
        this.formula = { attributes, text: "" };
        this.into = "f";
        break;
      case "v":
        this.result = "";
        this.into = "v";
        break;
      case "t":
        this.into = "t";
        break;
      case "rPh":
        this.readings += 1;
    }
  }

  text(text: string): void {
    if (this.into === "f") this.formula!.text += text;
    else if (this.into === "v") this.result = `${this.result ?? ""}${text}`;
    else if (this.into === "t" && this.readings === 0) this.inline.push(text);
  }

  close(name: string, end: number): void {
    this.into = null;
    if (name === "is" && this.pieces !== undefined) this.pieces = readPieces(parseXml(this.xml.slice(this.begin, end)), this.context.readColor);
    if (name === "rPh") this.readings -= 1;
    if (name !== "c") return;
    const look = this.lookOf(this.attributes["s"]);
    const value = this.readValue(look);
    if (this.formula === null) {
      if (value !== null) this.line.set(this.column, this.context.repeated.cell({ value, look, ...(this.pieces !== undefined && { pieces: this.pieces }) }));
      else if (look !== 0) this.line.set(this.column, this.context.repeated.blank(look));
      return;
    }
    const cell: DocumentCell = { value, look, ...this.readFormula(this.formula) };
    if (cell.formula === undefined && value === null && look === 0) return;
    this.line.set(this.column, this.context.repeated.cell(cell));
  }

  /** A look that the file does not have is that of an empty cell. */
  private lookOf(place: string | undefined): number {
    const look = Number(place ?? 0);
    return this.context.looks[look] === undefined ? 0 : look;
  }

  private readValue(look: number): CellValue {
    const { texts, from1904 } = this.context;
    const text = this.result;
    switch (this.attributes["t"]) {
      case "s": {
        if (text === null) return null;
        const shared = texts[Number(text)];
        if (shared === undefined) throw damaged();
        this.pieces = shared.pieces;
        return shared.text === "" ? null : shared.text;
      }
      case "inlineStr":
        return readCellText(this.inline.join("")) || null;
      case "str":
        return text === null ? null : readCellText(text) || null;
      case "b":
        return text === null ? null : text.trim() === "1" || text.trim() === "true";
      case "e":
        return text === null ? null : { error: errors.has(text) ? text : "#VALUE!" };
      case "d":
        return text === null ? null : (dayOf(text) ?? text);
      default: {
        if (text === null || text === "") return null;
        const number = numberOf(text);
        // Not a number, though it says so: what stands there is shown, so that nothing is lost.
        if (number === undefined) return text;
        return from1904 && this.dateLooks[look] === true ? number + daysTo1904 : number;
      }
    }
  }

  private readFormula({ attributes, text }: { readonly attributes: Attributes; readonly text: string }): Partial<DocumentCell> {
    // Nothing between the tags is a text without characters, or the work of a program that does not compute.
    const isUnknown = this.result === "#NAME?" && hasUnknownFunction(text);
    const hasResult = this.result !== null && (this.result !== "" || this.attributes["t"] === "str") && !isUnknown;
    const { t: kind, ref, si } = attributes;
    if (kind === "dataTable") return { isDataTable: true, hasResult };
    if (kind === "shared" && si !== undefined) {
      if (text !== "") this.shared.set(si, { formulaAt: this.context.repeated.formula(text), row: this.row, column: this.column });
      const first = this.shared.get(si);
      // The first of them is gone: what it showed is all that is known.
      if (first === undefined) return {};
      return { formula: first.formulaAt(this.row - first.row, this.column - first.column), hasResult };
    }
    if (text === "") return {};
    if (kind !== "array") return { formula: fromFileFormula(text), hasResult };
    const array: Area | undefined = parseAreas(ref ?? "")[0];
    return { formula: fromFileFormula(text), hasResult, array: array ?? { row: this.row, column: this.column, rows: 1, columns: 1 }, isDynamic: (numberOf(this.attributes["cm"]) ?? 0) > 0 };
  }
}

/** Reads a day that is written out, as ISO 8601 has it; a time without a zone is that of the sheet. Null where it is none. */
function dayOf(text: string): number | null {
  const instant = new Date(/Z$|[+-]\d\d:\d\d$/.test(text) ? text : `${text}${text.includes("T") ? "Z" : "T00:00:00Z"}`);
  return Number.isNaN(instant.getTime()) ? null : Math.round(dayOfInstant(instant) * 1e9) / 1e9;
}
