// The engine's own numbers for what a cell and its look can be, by the names that sheet plans and files use. They load the engine's core,
// which the page has no time for at its start: what it needs at once stands in stored-sheet.
import { BaselineOffset, BooleanNumber, BorderStyleTypes, CellValueType, HorizontalAlign, VerticalAlign, WrapStrategy, type Nullable } from "@univerjs/core";

export const cellKind = { text: CellValueType.STRING, number: CellValueType.NUMBER, boolean: CellValueType.BOOLEAN } as const;
export const horizontal = { left: HorizontalAlign.LEFT, center: HorizontalAlign.CENTER, right: HorizontalAlign.RIGHT, justify: HorizontalAlign.JUSTIFIED } as const;
export const vertical = { top: VerticalAlign.TOP, middle: VerticalAlign.MIDDLE, bottom: VerticalAlign.BOTTOM } as const;
export const raisedBy = { superscript: BaselineOffset.SUPERSCRIPT, subscript: BaselineOffset.SUBSCRIPT } as const;
export const borderLine = {
  none: BorderStyleTypes.NONE,
  thin: BorderStyleTypes.THIN,
  hair: BorderStyleTypes.HAIR,
  dotted: BorderStyleTypes.DOTTED,
  dashed: BorderStyleTypes.DASHED,
  dashDot: BorderStyleTypes.DASH_DOT,
  dashDotDot: BorderStyleTypes.DASH_DOT_DOT,
  double: BorderStyleTypes.DOUBLE,
  medium: BorderStyleTypes.MEDIUM,
  mediumDashed: BorderStyleTypes.MEDIUM_DASHED,
  mediumDashDot: BorderStyleTypes.MEDIUM_DASH_DOT,
  mediumDashDotDot: BorderStyleTypes.MEDIUM_DASH_DOT_DOT,
  slantDashDot: BorderStyleTypes.SLANT_DASH_DOT,
  thick: BorderStyleTypes.THICK,
} as const;
export const yes = BooleanNumber.TRUE;
export const no = BooleanNumber.FALSE;
export const wrap = WrapStrategy.WRAP;

/** Finds the name under which one of the tables above holds a number of the engine's. */
export function nameOf<Name extends string>(table: Readonly<Record<Name, number>>, value: Nullable<number>): Name | undefined {
  return (Object.keys(table) as Name[]).find((name) => table[name] === value);
}
