import { CellValueType, getDisplayValueFromCell, type ICellData, type IStyleData, type Nullable } from "@univerjs/core";
import { DEFAULT_PADDING_DATA, Font, FontCache } from "@univerjs/engine-render";
import { fitNumber } from "./fit-number";

/** What the engine knows of a cell whose text it draws. */
interface TextOfCell {
  readonly fontCache?: Nullable<{ readonly cellData?: Nullable<ICellData>; readonly style?: Nullable<IStyleData>; readonly fontString: string; readonly vertexAngle?: number }>;
  readonly startX: number;
  readonly endX: number;
}

type DrawText = (context: unknown, row: number, column: number, text: TextOfCell, ...rest: unknown[]) => void;

let isMended = false;

/**
 * Shows a number that is wider than its cell in a shorter form, or as hashes; the engine cuts its last digits off, which leaves another number.
 *
 * Only what is drawn changes. Applies to every grid of the page; calling it again does nothing.
 */
export function showWhatFits(): void {
  if (isMended) return;
  isMended = true;
  const drawing = Font.prototype as unknown as { _renderText: DrawText };
  const draw = drawing._renderText;
  drawing._renderText = function (this: unknown, context, row, column, text, ...rest) {
    draw.call(this, context, row, column, fitted(text), ...rest);
  };
}

function fitted(text: TextOfCell): TextOfCell {
  const { fontCache, startX, endX } = text;
  const cell = fontCache?.cellData;
  // What is turned has its length along another side.
  if (!fontCache || !cell || cell.t !== CellValueType.NUMBER || (fontCache.vertexAngle ?? 0) !== 0) return text;
  const { l: left = DEFAULT_PADDING_DATA.l, r: right = DEFAULT_PADDING_DATA.r } = fontCache.style?.pd ?? {};
  const width = endX - startX - left - right;
  const shown = getDisplayValueFromCell(cell);
  const fits = (form: string) => FontCache.getMeasureText(form, fontCache.fontString).width <= width;
  const form = fitNumber(shown, typeof cell.v === "number" ? cell.v : null, fits);
  return form === shown ? text : { ...text, fontCache: { ...fontCache, cellData: { ...cell, v: form } } };
}
