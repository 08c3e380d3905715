/** What one cell holds as plain data; null is an empty cell. */
export type Scalar = string | number | boolean | null;

/** An error shown by a cell, such as `#VALUE!`. */
export interface CellError {
  readonly error: string;
}

export type CellValue = Scalar | CellError;

/** A rectangle of cells, counted from 0. */
export interface Area {
  readonly row: number;
  readonly column: number;
  readonly rows: number;
  readonly columns: number;
}

/**
 * One cell to be written.
 *
 * A string `value` is always text, whatever it begins with: no adapter may let it become a formula, a date or a number. `formula`
 * begins with `=` and uses native functions unless the plan says otherwise; `style` names an entry of the plan's `styles`. A `value`
 * beside a `formula` is what the formula is known to answer while the cells of its sheet stand as planned; it names those cells by
 * columns and rows. An adapter may leave it out.
 */
export interface Cell {
  readonly value?: Scalar;
  readonly formula?: string;
  readonly style?: string;
}

/** How cells look. Colours are `#rrggbb`; sizes are points. */
export interface CellStyle {
  readonly bold?: boolean;
  readonly italic?: boolean;
  readonly color?: string;
  readonly fill?: string;
  readonly fontSize?: number;
  readonly wrap?: boolean;
  readonly align?: "left" | "center" | "right";
  readonly vertical?: "top" | "middle" | "bottom";
  /** Thin lines on all four sides, or along the bottom only. */
  readonly border?: "all" | "bottom";
  readonly borderColor?: string;
  /** Number format of the sheet; "@" is text. */
  readonly format?: string;
  /** False where people may type on a protected sheet. */
  readonly locked?: boolean;
}

/** What may be typed into an area. A list is given by its items or by a formula that yields a range. */
export interface Validation {
  readonly area: Area;
  readonly rule:
    | { readonly kind: "list"; readonly items: readonly string[] }
    | { readonly kind: "list-of"; readonly formula: string }
    | { readonly kind: "number"; readonly least?: number; readonly most?: number }
    | { readonly kind: "whole"; readonly least?: number; readonly most?: number }
    | { readonly kind: "date" };
  /** Sentence shown when something else is typed. */
  readonly message: string;
  /** True when something else is refused; false when it is only remarked on. */
  readonly strict: boolean;
}

/** Cells of an area take on `style` where `formula`, written for the area's first cell, is true. */
export interface ConditionalFormat {
  readonly area: Area;
  readonly formula: string;
  readonly style: string;
}

/** How a sheet is printed. */
export interface PrintPlan {
  readonly orientation: "portrait" | "landscape";
  readonly fitToWidth: boolean;
  /** How many rows at the top stand again on every page: first row and count. */
  readonly titleRows?: { readonly row: number; readonly rows: number };
  readonly header?: string;
  readonly footer?: string;
  /** Rows that begin a new page. */
  readonly breaksBefore: readonly number[];
}

/** A named table on a sheet; its first row is the header. */
export interface TablePlan {
  readonly name: string;
  readonly area: Area;
}

/** A whole sheet as plain data: what the planning modules make and an adapter writes. */
export interface SheetPlan {
  readonly name: string;
  readonly rows: readonly (readonly Cell[])[];
  readonly styles: Readonly<Record<string, CellStyle>>;
  /** Widths in characters, by column; a column without one keeps the default. */
  readonly columnWidths: readonly (number | null)[];
  /** Heights in points, by row. */
  readonly rowHeights?: Readonly<Record<number, number>>;
  readonly hiddenColumns?: readonly number[];
  readonly merges?: readonly Area[];
  readonly freeze?: { readonly rows: number; readonly columns: number };
  readonly validations?: readonly Validation[];
  readonly conditionalFormats?: readonly ConditionalFormat[];
  readonly tables?: readonly TablePlan[];
  readonly print?: PrintPlan;
  readonly tabColor?: string;
}

/** A sheet as it was read, from cell A1 to the last one used. */
export interface SheetSnapshot {
  readonly name: string;
  readonly visible: boolean;
  readonly protected: boolean;
  readonly values: readonly (readonly CellValue[])[];
  /** The formula of each cell that has one of its own, else null; cells that a formula spills into have none. */
  readonly formulas: readonly (readonly (string | null)[])[];
  readonly tables: readonly TablePlan[];
  /** How many comments, notes, pictures, shapes and charts sit on the sheet: things that a rewritten sheet cannot carry along. */
  readonly attachments: number;
}

/** The sheets of a workbook in tab order. Sheets that were not asked for stand with empty `values`. */
export interface WorkbookSnapshot {
  readonly sheets: readonly SheetSnapshot[];
}
