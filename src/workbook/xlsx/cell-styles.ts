import type { IBorderStyleData, Nullable } from "@univerjs/core";
import type { Border, Borders, Color, Font, Style } from "exceljs";
import { borderLine, horizontal, nameOf, vertical, wrap, yes } from "../engine/engine-values";
import type { StoredStyle } from "../engine/stored-sheet";

/** A colour as files give it: outright, or by the theme and lightened or darkened. */
type FileColor = Partial<Color> & { readonly tint?: number; readonly indexed?: number };

/** Reads the colours of a file, of which those of its theme stand elsewhere. */
export type ReadColor = (color: FileColor | undefined) => string | undefined;

/** Makes a reader of colours under a theme. Colours of the old palette, which few files still use, are left out but for black and white. */
export function colorReader(theme: readonly string[]): ReadColor {
  return (color) => {
    if (color === undefined) return undefined;
    if (color.argb !== undefined) return `#${color.argb.slice(-6).toLowerCase()}`;
    if (color.theme !== undefined && theme[color.theme] !== undefined) return tinted(theme[color.theme]!, color.tint ?? 0);
    return color.indexed === 9 || color.indexed === 65 ? "#ffffff" : undefined;
  };
}

/** Lightens or darkens a colour as ECMA-376 part 1 section 18.8.19 says; on each channel, which differs little from its luminance. */
function tinted(color: string, tint: number): string {
  const channel = (at: number) => {
    const value = Number.parseInt(color.slice(at, at + 2), 16);
    const changed = tint < 0 ? value * (1 + tint) : value * (1 - tint) + 255 * tint;
    return Math.round(changed).toString(16).padStart(2, "0");
  };
  return `#${channel(1)}${channel(3)}${channel(5)}`;
}

/** Turns the look of a cell in a file into the engine's. */
export function readStyle(style: Partial<Style>, readColor: ReadColor): StoredStyle {
  const { font, fill, border, alignment, numFmt, protection } = style;
  const background = fill?.type === "pattern" && fill.pattern === "solid" ? readColor(fill.fgColor) : undefined;
  const across = alignment?.horizontal;
  const down = alignment?.vertical;
  return withoutUndefined({
    ...readFont(font, readColor),
    bg: background === undefined ? undefined : { rgb: background },
    bd: border === undefined ? undefined : readBorders(border, readColor),
    ht: across === "left" || across === "center" || across === "right" || across === "justify" ? horizontal[across] : undefined,
    vt: down === "top" || down === "middle" || down === "bottom" ? vertical[down] : undefined,
    tb: alignment?.wrapText === true ? wrap : undefined,
    tr: typeof alignment?.textRotation === "number" && alignment.textRotation !== 0 ? { a: -alignment.textRotation } : undefined,
    pd: alignment?.indent ? { l: alignment.indent * 9 } : undefined,
    n: numFmt && numFmt !== "General" ? { pattern: numFmt } : undefined,
    unlocked: protection?.locked === false ? 1 : undefined,
  });
}

/** Turns the look of a cell in the engine into that of a file. */
export function writeStyle(style: StoredStyle): Partial<Style> {
  const { bg, bd, ht, vt, tb, tr, pd, n, unlocked } = style;
  const across = nameOf(horizontal, ht);
  const down = nameOf(vertical, vt);
  const alignment = withoutUndefined({
    horizontal: across,
    vertical: down,
    wrapText: tb === wrap ? true : undefined,
    textRotation: tr?.a ? -tr.a : undefined,
    indent: pd?.l ? Math.round(pd.l / 9) : undefined,
  });
  return withoutUndefined({
    font: writeFont(style),
    fill: bg?.rgb ? { type: "pattern", pattern: "solid", fgColor: { argb: argb(bg.rgb) } } : undefined,
    border: bd ? withoutUndefined({ top: writeLine(bd.t), left: writeLine(bd.l), bottom: writeLine(bd.b), right: writeLine(bd.r) }) : undefined,
    alignment: Object.keys(alignment).length > 0 ? alignment : undefined,
    numFmt: n?.pattern,
    protection: unlocked === 1 ? { locked: false } : undefined,
  });
}

/** Makes the eight digits that files write for a colour, of `#rgb`, `#rrggbb` or `rgb(r, g, b)`. */
export function argb(color: string): string {
  const channels = /^rgba?\(\s*(\d+)\s*,\s*(\d+)\s*,\s*(\d+)/.exec(color);
  if (channels !== null) return `FF${channels.slice(1).map((one) => Number(one).toString(16).padStart(2, "0")).join("")}`.toUpperCase();
  const digits = color.replace("#", "");
  return `FF${digits.length === 3 ? digits.replace(/./g, "$&$&") : digits}`.toUpperCase();
}

/** A style that sets no font comes without one, or with null in its place. */
function readFont(font: Partial<Font> | null | undefined, readColor: ReadColor): StoredStyle {
  if (font === undefined || font === null) return {};
  const color = readColor(font.color);
  return {
    ff: font.name,
    fs: font.size,
    bl: font.bold ? yes : undefined,
    it: font.italic ? yes : undefined,
    ul: font.underline && font.underline !== "none" ? { s: yes } : undefined,
    st: font.strike ? { s: yes } : undefined,
    cl: color === undefined ? undefined : { rgb: color },
  };
}

const standardFont: Partial<Font> = { name: "Calibri", size: 11 };

function writeFont({ ff, fs, bl, it, ul, st, cl }: StoredStyle): Partial<Font> | undefined {
  const font: Partial<Font> = withoutUndefined({
    name: ff ?? undefined,
    size: fs,
    bold: bl === yes ? true : undefined,
    italic: it === yes ? true : undefined,
    underline: ul?.s === yes ? true : undefined,
    strike: st?.s === yes ? true : undefined,
    color: cl?.rgb ? { argb: argb(cl.rgb) } : undefined,
  });
  // A font without name and size is nobody's: the file's own standard is Calibri 11.
  return Object.keys(font).length === 0 ? undefined : { ...standardFont, ...font };
}

function readBorders(border: Partial<Borders>, readColor: ReadColor): StoredStyle["bd"] {
  const line = (side: Partial<Border> | undefined): IBorderStyleData | undefined =>
    side?.style === undefined ? undefined : { s: borderLine[side.style], cl: { rgb: readColor(side.color) ?? "#000000" } };
  return withoutUndefined({ t: line(border.top), l: line(border.left), b: line(border.bottom), r: line(border.right) });
}

function writeLine(line: Nullable<IBorderStyleData>): Partial<Border> | undefined {
  const style = nameOf(borderLine, line?.s);
  return style === undefined || style === "none" ? undefined : { style, color: { argb: argb(line?.cl.rgb ?? "#000000") } };
}

function withoutUndefined<T extends object>(record: T): T {
  return Object.fromEntries(Object.entries(record).filter(([, value]) => value !== undefined)) as T;
}
