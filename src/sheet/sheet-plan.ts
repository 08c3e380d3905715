import type { Area } from "./area";
import type { Scalar } from "./cell-value";

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

/** Paper that sheets are printed on. */
export type Paper = "A4" | "Letter";

/** Margins in millimetres; header and footer begin so far from the edge, at it where nothing is said. */
export interface Margins {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  readonly header?: number;
  readonly footer?: number;
}

/** How a sheet is printed. */
export interface PrintPlan {
  readonly orientation: "portrait" | "landscape";
  /** True where the program is to scale the sheet to the width of a page. Programs may pass over the breaks of such a sheet. */
  readonly fitToWidth: boolean;
  /** Percent at which a sheet prints that is not fitted, 10 to 400; 100 where nothing is said. */
  readonly scale?: number;
  /** Paper that what is printed has to lie on; without it the program's own. */
  readonly paper?: Paper;
  /** Without them the program's own. */
  readonly marginsMm?: Margins;
  /** Number of the first page, also where sheets before it are printed along; without it they are counted on. */
  readonly firstPage?: number;
  /** How many rows at the top stand again on every page: first row and count. */
  readonly titleRows?: { readonly row: number; readonly rows: number };
  readonly header?: string;
  readonly footer?: string;
  /** Rows that begin a new page. */
  readonly breaksBefore: readonly number[];
}

/** A named table on a sheet; its first row is the header, unless it shows none. */
export interface TablePlan {
  readonly name: string;
  readonly area: Area;
  /** How many of its last rows are totals. */
  readonly totalRows?: number;
  /** True for a table that shows no header: its first row is one like the others. */
  readonly isHeadless?: true;
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
