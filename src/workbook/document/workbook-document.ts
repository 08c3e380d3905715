import type { Area, CellPlace, CellValue, PrintPlan, TablePlan } from "../../sheet";

/** One cell as a file holds it, in the calendar of 1900 whatever the file counts from. */
export interface DocumentCell {
  readonly value: CellValue;
  /** As people type it, with its equals sign. */
  readonly formula?: string | undefined;
  /** Cells that an array formula fills; the formula stands in the first of them. */
  readonly array?: Area | undefined;
  /** True for an array formula that finds its own size, false for one that somebody fixed to its cells. */
  readonly isDynamic?: boolean | undefined;
  /** What a formula computes that no cell can say: the cells of a what-if table. */
  readonly isDataTable?: boolean | undefined;
  /** False where a formula has no result in the file. */
  readonly hasResult?: boolean | undefined;
  /** True where the formula keeps the figure it came with, whatever it looks at. */
  readonly keepsFigure?: boolean | undefined;
  /** Where the cell leads: an address, or `#` and a place in this workbook. */
  readonly link?: string | undefined;
  /** The text in pieces, where they do not look alike: together they are the value. */
  readonly pieces?: readonly TextPiece[] | undefined;
  /** Place of its look in the looks of the workbook. */
  readonly look: number;
}

/** A piece of a text, and the font it has; without one it is written in that of the cell. */
export interface TextPiece {
  readonly text: string;
  readonly look?: Look | undefined;
}

/** The cells of a sheet: rows by number, cells by column, what is empty left out. */
export type CellGrid = Map<number, ReadonlyMap<number, DocumentCell>>;

export type LineStyle =
  | "thin" | "hair" | "dotted" | "dashed" | "dashDot" | "dashDotDot" | "double" | "medium" | "mediumDashed" | "mediumDashDot" | "mediumDashDotDot" | "slantDashDot" | "thick";

export interface BorderLine {
  readonly line: LineStyle;
  readonly color: string;
}

/** How a cell looks. Colours are `#rrggbb`, sizes points. What a file says beyond it stays in the file. */
export interface Look {
  readonly font?: string | undefined;
  readonly size?: number | undefined;
  readonly bold?: boolean | undefined;
  readonly italic?: boolean | undefined;
  readonly underline?: boolean | undefined;
  readonly strike?: boolean | undefined;
  /** Small letters above the line, or below it. */
  readonly raised?: "superscript" | "subscript" | undefined;
  readonly color?: string | undefined;
  readonly fill?: string | undefined;
  readonly top?: BorderLine | undefined;
  readonly left?: BorderLine | undefined;
  readonly bottom?: BorderLine | undefined;
  readonly right?: BorderLine | undefined;
  /** Lines across the cell; a file has one kind of line for both. */
  readonly falling?: BorderLine | undefined;
  readonly rising?: BorderLine | undefined;
  readonly across?: "left" | "center" | "right" | "justify" | undefined;
  readonly down?: "top" | "middle" | "bottom" | undefined;
  readonly wrap?: boolean | undefined;
  /** Degrees by which text is turned against the clock. */
  readonly turn?: number | undefined;
  /** True where letters stand one below the other. */
  readonly stacks?: boolean | undefined;
  readonly indent?: number | undefined;
  /** Number format; none is General. */
  readonly format?: string | undefined;
  /** True where people may type on a protected sheet. */
  readonly unlocked?: boolean | undefined;
  /** Place of the look of the file that this one began as; what a look does not say stays as there. */
  readonly basedOn?: number | undefined;
}

/** Rows or columns from the first to the last, counted from 0. Widths are characters, heights points. */
export interface LineSetting {
  readonly first: number;
  readonly last: number;
  readonly size?: number | undefined;
  readonly hidden?: boolean | undefined;
  readonly look?: number | undefined;
}

/** What may be typed into areas; formulas as people type them, lists and bounds as plain text. */
export interface TypingRule {
  readonly areas: readonly Area[];
  /** "any" forbids nothing, and may have words to show. */
  readonly type: "any" | "list" | "whole" | "decimal" | "date" | "time" | "textLength" | "custom";
  readonly operator?: string | undefined;
  readonly formulas: readonly string[];
  readonly allowsBlank: boolean;
  readonly hidesArrow?: boolean | undefined;
  readonly refuses: boolean;
  readonly shows: boolean;
  readonly weight: "stop" | "warning" | "information";
  readonly error?: string | undefined;
  readonly errorTitle?: string | undefined;
  readonly prompt?: string | undefined;
  readonly promptTitle?: string | undefined;
}

/**
 * How cells of areas look by what stands in them: ECMA-376 part 1, section 18.3.1.10. Of several that hold the first one wins, and behind one that `stops`
 * none is asked any more.
 */
export type CellFormat = FormatRule & { readonly areas: readonly Area[]; readonly stops?: true | undefined };

export type FormatRule = LookRule | ScaleRule | BarRule | IconRule;

/** Cells take on a look where this holds; it says nothing of font, size, borders and place. */
export type LookRule = { readonly look: Look } & (
  /** Written for the first cell of the first area. */
  | { readonly kind: "formula"; readonly formula: string }
  /** Holds a cell against one number, or two. */
  | { readonly kind: "compare"; readonly operator: Comparison["operator"] | "between" | "notBetween"; readonly bounds: readonly number[] }
  /** Without regard to case; what asks for blanks and errors has no text. */
  | { readonly kind: "text"; readonly operator: TextOperator; readonly text: string }
  | { readonly kind: "period"; readonly period: string }
  | { readonly kind: "rank"; readonly count: number; readonly isPercent: boolean; readonly isBottom: boolean }
  | { readonly kind: "average"; readonly operator: AverageOperator }
  | { readonly kind: "repeats"; readonly isUnique: boolean }
);

export type TextOperator =
  | "containsText" | "notContainsText" | "beginsWith" | "endsWith" | "equal" | "notEqual" | "containsBlanks" | "notContainsBlanks" | "containsErrors" | "notContainsErrors";

export type AverageOperator = "greaterThan" | "greaterThanOrEqual" | "lessThan" | "lessThanOrEqual";

/** A place on the scale of the numbers of a format; the value is a number, or a formula with its equals sign. */
export interface FormatPoint {
  readonly at: "min" | "max" | "num" | "percent" | "percentile" | "formula";
  readonly value?: number | string | undefined;
}

/** Colours cells between two or three points, the lowest first. */
export interface ScaleRule {
  readonly kind: "scale";
  readonly points: readonly (FormatPoint & { readonly color: string })[];
}

/** Draws a bar in a cell. */
export interface BarRule {
  readonly kind: "bar";
  readonly least: FormatPoint;
  readonly most: FormatPoint;
  readonly color: string;
  readonly hidesValue?: true | undefined;
  /** How it looks beyond what the standard says; without it a program chooses. */
  readonly more?: { readonly isPlain: boolean; readonly below: string } | undefined;
}

/** Puts an icon into a cell: the first one of its set below the second point. */
export interface IconRule {
  readonly kind: "icons";
  /** Such as 3Arrows: ECMA-376 part 1, section 18.18.42. */
  readonly set: string;
  readonly isReversed?: true | undefined;
  readonly hidesValue?: true | undefined;
  /** As many as there are icons; one that `excludes` its value begins above it. */
  readonly points: readonly (FormatPoint & { readonly excludes?: true | undefined })[];
}

/** What somebody noted beside a cell. */
export interface Note extends CellPlace {
  readonly text: string;
  /** True for the words that a file keeps of a thread of comments, for programs that know no threads: they change with the thread alone. */
  readonly isThread?: boolean | undefined;
}

/** Shows rows of an area by what stands in its columns: ECMA-376 part 1, section 18.3.1.2. Which rows are out of sight is told by the rows. */
export interface SheetFilter {
  /** The table whose rows it shows; without one it is the filter of the sheet itself, of which there is one, and has an area of its own. */
  readonly table?: string | undefined;
  /** With the row above it in which its arrows are. */
  readonly area?: Area | undefined;
  readonly columns: readonly FilterColumn[];
}

export interface FilterColumn {
  /** Counted from the first one of the area. */
  readonly column: number;
  readonly hidesArrow?: true | undefined;
  readonly condition?: FilterCondition | undefined;
}

/** What a row must have in a column to be shown. */
export type FilterCondition =
  /** One of these texts, as cells show them, or nothing. */
  | { readonly kind: "list"; readonly texts: readonly string[]; readonly blank: boolean }
  /** One or two comparisons; `joins` tells whether both must hold. */
  | { readonly kind: "compare"; readonly joins: boolean; readonly comparisons: readonly Comparison[] }
  /** What only the program knows that wrote it, such as a colour: it stays as the file has it. */
  | { readonly kind: "other"; readonly xml: string };

export interface Comparison {
  readonly operator: "equal" | "notEqual" | "greaterThan" | "greaterThanOrEqual" | "lessThan" | "lessThanOrEqual";
  /** A number, or a text in which `*` stands for any letters, `?` for one and `~` before either of them for itself; a blank alone is an empty cell. */
  readonly value: string;
}

/** One sheet of cells. */
export interface DocumentSheet {
  /** Stays the same while the workbook is open, whatever the sheet is called. */
  readonly id: string;
  readonly name: string;
  readonly state: "visible" | "hidden" | "veryHidden";
  readonly tabColor?: string | undefined;
  readonly cells: CellGrid;
  readonly rows: readonly LineSetting[];
  readonly columns: readonly LineSetting[];
  readonly defaultWidth?: number | undefined;
  readonly defaultHeight?: number | undefined;
  readonly merges: readonly Area[];
  readonly frozen: { readonly rows: number; readonly columns: number };
  readonly hidesGrid: boolean;
  /** Percent at which it is shown, 100 where nothing is said. */
  readonly zoom?: number | undefined;
  readonly isProtected: boolean;
  readonly typingRules: readonly TypingRule[];
  readonly formats: readonly CellFormat[];
  /** Conditional formats that are not told of, which stay in the file as they are. */
  readonly otherFormats: number;
  readonly tables: readonly TablePlan[];
  /** Filters of tables and of the sheet itself; where nothing is said of them they stay as the file has them. */
  readonly filters?: readonly SheetFilter[] | undefined;
  readonly print: PrintPlan;
  readonly notes: readonly Note[];
  /** Pictures, shapes and charts on the sheet. */
  readonly drawings: number;
  /** Rows and columns that came (above 0) or went (below 0) since the file was read, in that order. */
  readonly moves?: readonly LineMove[] | undefined;
}

/** Rows or columns that came before `at`, or went from there on. */
export interface LineMove {
  readonly axis: "row" | "column";
  readonly at: number;
  readonly by: number;
}

export interface DocumentName {
  readonly name: string;
  /** As people type it, without an equals sign where it is a plain reference. */
  readonly formula: string;
  /** Id of the sheet on which alone it is known. */
  readonly sheet?: string | undefined;
  readonly hidden?: boolean | undefined;
  readonly comment?: string | undefined;
}

/** A workbook without any program behind it: what a file says, and nothing that was computed of it. */
export interface WorkbookDocument {
  readonly sheets: readonly DocumentSheet[];
  /** Looks of cells; a cell names one by its place. The first is the look of an empty cell. */
  readonly looks: readonly Look[];
  readonly names: readonly DocumentName[];
}

/** How a sheet is printed that says nothing of it. */
export const noPrintPlan: PrintPlan = { orientation: "portrait", fitToWidth: false, breaksBefore: [] };

/** A workbook in which nothing stands yet, not even a sheet. */
export const emptyDocument: WorkbookDocument = { sheets: [], looks: [{}], names: [] };

/** Finds a cell; undefined where there is none. */
export function cellAt(cells: CellGrid, row: number, column: number): DocumentCell | undefined {
  return cells.get(row)?.get(column);
}

/** Puts a cell into a grid; undefined takes it out. */
export function putCell(cells: CellGrid, row: number, column: number, cell: DocumentCell | undefined): void {
  const line = cells.get(row);
  const open: Map<number, DocumentCell> = isOpen(line) ? line : new Map(line);
  if (cell !== undefined) open.set(column, cell);
  else open.delete(column);
  if (line !== open && open.size > 0) cells.set(row, open);
}

/** Tells a row that is being made from one that was read and is not changed. */
function isOpen(line: ReadonlyMap<number, DocumentCell> | undefined): line is Map<number, DocumentCell> {
  return line instanceof Map;
}

/** Changes the formulas of a conditional format. */
export function changedFormat(format: CellFormat, change: (formula: string) => string): CellFormat {
  const changedPoint = <Point extends FormatPoint>(point: Point): Point => (typeof point.value === "string" ? { ...point, value: change(point.value) } : point);
  switch (format.kind) {
    case "formula": {
      const formula = change(format.formula);
      return formula === format.formula ? format : { ...format, formula };
    }
    case "scale":
      return { ...format, points: format.points.map(changedPoint) };
    case "icons":
      return { ...format, points: format.points.map(changedPoint) };
    case "bar":
      return { ...format, least: changedPoint(format.least), most: changedPoint(format.most) };
    default:
      return format;
  }
}
