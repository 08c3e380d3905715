import type { IBorderStyleData, Nullable } from "@univerjs/core";
import type { BorderLine, LineStyle, Look } from "../document/workbook-document";
import { borderLine, horizontal, nameOf, raisedBy, vertical, wrap, yes } from "./engine-values";
import type { StoredStyle } from "./stored-sheet";

/** Pixels of one step of indent. */
const indentPixels = 9;

/** Turns the look of a cell into the engine's style. */
export function styleOfLook(look: Look): StoredStyle {
  const { font, size, bold, italic, underline, strike, raised, color, fill, across, down, wrap: wraps, turn, stacks, indent, format, unlocked } = look;
  const line = (one: BorderLine | undefined): IBorderStyleData | undefined => one && { s: borderLine[one.line], cl: { rgb: one.color } };
  const borders = withoutUndefined({
    t: line(look.top), l: line(look.left), b: line(look.bottom), r: line(look.right), tl_br: line(look.falling), bl_tr: line(look.rising),
  });
  return withoutUndefined({
    ff: font,
    fs: size,
    bl: bold ? yes : undefined,
    it: italic ? yes : undefined,
    ul: underline ? { s: yes } : undefined,
    st: strike ? { s: yes } : undefined,
    va: raised && raisedBy[raised],
    cl: color === undefined ? undefined : { rgb: color },
    bg: fill === undefined ? undefined : { rgb: fill },
    bd: Object.keys(borders).length === 0 ? undefined : borders,
    ht: across && horizontal[across],
    vt: down && vertical[down],
    tb: wraps ? wrap : undefined,
    tr: stacks ? { a: 0, v: yes } : turn === undefined ? undefined : { a: -turn },
    pd: indent === undefined ? undefined : { l: indent * indentPixels },
    n: format === undefined ? undefined : { pattern: format },
    unlocked: unlocked ? (1 as const) : undefined,
  });
}

/** Turns a style of the engine into the look of a cell. */
export function lookOfStyle({ ff, fs, bl, it, ul, st, cl, bg, bd, ht, vt, tb, tr, pd, n, va, unlocked }: StoredStyle): Look {
  return withoutUndefined<Look>({
    font: ff ?? undefined,
    size: fs,
    bold: bl === yes || undefined,
    italic: it === yes || undefined,
    underline: ul?.s === yes || undefined,
    strike: st?.s === yes || undefined,
    raised: nameOf(raisedBy, va),
    color: hexColor(cl?.rgb),
    fill: hexColor(bg?.rgb),
    top: lineOf(bd?.t),
    left: lineOf(bd?.l),
    bottom: lineOf(bd?.b),
    right: lineOf(bd?.r),
    falling: lineOf(bd?.tl_br),
    rising: lineOf(bd?.bl_tr),
    across: nameOf(horizontal, ht),
    down: nameOf(vertical, vt),
    wrap: tb === wrap || undefined,
    turn: tr?.a && tr.v !== yes ? -tr.a : undefined,
    stacks: tr?.v === yes || undefined,
    indent: pd?.l ? Math.round(pd.l / indentPixels) : undefined,
    format: n?.pattern === "General" ? undefined : n?.pattern,
    unlocked: unlocked === 1 || undefined,
  });
}

function lineOf(line: Nullable<IBorderStyleData>): BorderLine | undefined {
  const name = nameOf(borderLine, line?.s);
  return name === undefined || name === "none" ? undefined : { line: name satisfies LineStyle, color: hexColor(line?.cl.rgb) ?? "#000000" };
}

/** Writes a colour as `#rrggbb`, of `#rgb`, `#rrggbb` or `rgb(r, g, b)`; undefined where it is none of these. */
export function hexColor(color: Nullable<string>): string | undefined {
  if (!color) return undefined;
  const channels = /^rgba?\(\s*(\d+)\s*,\s*(\d+)\s*,\s*(\d+)/.exec(color);
  if (channels !== null) return `#${channels.slice(1).map((one) => Math.min(255, Number(one)).toString(16).padStart(2, "0")).join("")}`;
  const digits = color.replace("#", "").toLowerCase();
  if (!/^(?:[0-9a-f]{3}|[0-9a-f]{6}(?:[0-9a-f]{2})?)$/.test(digits)) return undefined;
  return `#${digits.length === 3 ? digits.replace(/./g, "$&$&") : digits.slice(0, 6)}`;
}

function withoutUndefined<T extends object>(record: T): T {
  return Object.fromEntries(Object.entries(record).filter(([, value]) => value !== undefined)) as T;
}
