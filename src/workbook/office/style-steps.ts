import type { Area, Cell, CellStyle, SheetPlan } from "../../sheet";
import { stepBytes } from "./step";
import { addressTexts, styleAreas } from "./style-areas";

/** A piece of work on one sheet. */
export interface SheetStep {
  readonly bytes: number;
  readonly queue: (sheet: Excel.Worksheet) => void;
}

/** One side of how cells look, which different styles share: taken by itself it needs fewer and larger areas than style by style. */
interface Facet {
  readonly of: (style: CellStyle) => Partial<CellStyle>;
  readonly set: (format: Excel.RangeFormat, style: CellStyle) => void;
  /** Objects it comes by below the format, and properties it sets, at most. */
  readonly objects: number;
  readonly calls: number;
}

const horizontal = { left: "Left", center: "Center", right: "Right" } as const;
const vertical = { top: "Top", middle: "Center", bottom: "Bottom" } as const;
const sides = {
  all: ["EdgeTop", "EdgeBottom", "EdgeLeft", "EdgeRight", "InsideHorizontal", "InsideVertical"],
  bottom: ["EdgeBottom", "InsideHorizontal"],
} as const;

const facets: readonly Facet[] = [
  {
    of: ({ bold, italic, color, fontSize }) => ({ bold, italic, color, fontSize }),
    set: ({ font }, { bold, italic, color, fontSize }) => {
      if (bold !== undefined) font.bold = bold;
      if (italic !== undefined) font.italic = italic;
      if (color !== undefined) font.color = color;
      if (fontSize !== undefined) font.size = fontSize;
    },
    objects: 1,
    calls: 4,
  },
  { of: ({ fill }) => ({ fill }), set: (format, { fill }) => { if (fill !== undefined) format.fill.color = fill; }, objects: 1, calls: 1 },
  { of: ({ wrap }) => ({ wrap }), set: (format, { wrap }) => { if (wrap !== undefined) format.wrapText = wrap; }, objects: 0, calls: 1 },
  { of: ({ align }) => ({ align }), set: (format, { align }) => { if (align !== undefined) format.horizontalAlignment = horizontal[align]; }, objects: 0, calls: 1 },
  { of: ({ vertical: at }) => ({ vertical: at }), set: (format, { vertical: at }) => { if (at !== undefined) format.verticalAlignment = vertical[at]; }, objects: 0, calls: 1 },
  { of: ({ locked }) => ({ locked }), set: (format, { locked }) => { if (locked !== undefined) format.protection.locked = locked; }, objects: 1, calls: 1 },
  {
    of: ({ border, borderColor }) => (border === undefined ? {} : { border, borderColor }),
    set: ({ borders }, { border, borderColor }) => {
      for (const side of border === undefined ? [] : sides[border]) {
        const line = borders.getItem(side);
        line.style = "Continuous";
        line.weight = "Thin";
        if (borderColor !== undefined) line.color = borderColor;
      }
    },
    objects: 7,
    calls: 18,
  },
];

/** Lists the steps that give cells their look, number formats apart: one for each value of each facet, and more where its areas are many. */
export function styleSteps(rows: readonly (readonly Cell[])[], styles: SheetPlan["styles"]): SheetStep[] {
  return facets.flatMap(({ of, set, objects, calls }) => {
    const values = new Map(Object.entries(styles).map(([name, style]) => [name, keyOf(of(style))]));
    const inFacet = rows.map((line) => line.map(({ style }): Cell => ({ style: style === undefined ? undefined : (values.get(style) ?? undefined) })));
    return [...styleAreas(inFacet)].flatMap(([key, areas]) => {
      const value = JSON.parse(key) as CellStyle;
      return areaSteps(areas, { objects, calls }, (ranges) => { set(ranges.format, value); });
    });
  });
}

/** Names what a style says of one facet; null where it says nothing. */
function keyOf(value: Partial<CellStyle>): string | null {
  const key = JSON.stringify(value);
  return key === "{}" ? null : key;
}

/** Steps that do the same to areas all over a sheet, in as many calls as their addresses need. */
export function areaSteps(areas: readonly Area[], cost: { readonly objects: number; readonly calls: number; readonly sent?: unknown }, queue: (ranges: Excel.RangeAreas) => void): SheetStep[] {
  return addressTexts(areas).map((address) => ({
    // The ranges themselves and their format are two more objects.
    bytes: stepBytes({ ...cost, objects: cost.objects + 2 }) + address.length,
    queue: (sheet) => { queue(sheet.getRanges(address)); },
  }));
}
