import type { CellStyle, SheetPlan } from "../../src/sheet";

/** Writes a style in words, such as `bold 12 pt #17352d on #cfe0da, wrapped, top, frame all #b9c4c0`. */
export function lookOf({ bold, italic, fontSize, color, fill, wrap, align, vertical, border, borderColor, format, locked }: CellStyle): string {
  const font = [bold && "bold", italic && "italic", fontSize !== undefined && `${fontSize} pt`, color, fill !== undefined && `on ${fill}`];
  const parts = [
    font.filter(Boolean).join(" "),
    wrap && "wrapped",
    align,
    vertical,
    border !== undefined && `frame ${border} ${borderColor ?? "black"}`,
    format !== undefined && `as ${format}`,
    locked === false && "typed into",
  ];
  return parts.filter(Boolean).join(", ");
}

/**
 * Lists what would not be seen as it is meant: cells in a style that is not there or beyond the last column, and text too faint to read.
 *
 * Faint is a contrast below 4.5 : 1 (WCAG 2.1, success criterion 1.4.3).
 */
export function lookFaults({ rows, styles, columnWidths }: SheetPlan): string[] {
  const cells = rows.flatMap((row, at) =>
    row.flatMap(({ style }, column) => [
      ...(style === undefined || style in styles ? [] : [`${at + 1}: no style ${style}`]),
      ...(column < columnWidths.length ? [] : [`${at + 1}: no column ${column + 1}`]),
    ]),
  );
  const faint = Object.entries(styles).filter(([, { color = "#000000", fill = "#ffffff" }]) => contrast(color, fill) < 4.5);
  return [...cells, ...faint.map(([name]) => `${name} is faint`)];
}

/** Contrast of two colours by their relative luminance (WCAG 2.1, definition of contrast ratio); throws where one is no colour. */
function contrast(one: string, other: string): number {
  const [dark, light] = [luminance(one), luminance(other)].sort((a, b) => a - b);
  return (light! + 0.05) / (dark! + 0.05);
}

function luminance(color: string): number {
  const hex = /^#([0-9a-f]{2})([0-9a-f]{2})([0-9a-f]{2})$/.exec(color);
  if (hex === null) throw new Error(`${color} is no colour`);
  const [red, green, blue] = hex.slice(1).map((two) => {
    const share = parseInt(two, 16) / 255;
    return share <= 0.040_45 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * red! + 0.7152 * green! + 0.0722 * blue!;
}
