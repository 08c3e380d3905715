import type { BorderLine, LineStyle, Look } from "../document/workbook-document";
import { child, childrenOf, isOn, numberOf, parseXml, type XmlNode } from "./xml";

/** Reads a colour of a file: outright, or by its theme and lightened or darkened. */
export type ReadColor = (node: XmlNode | undefined) => string | undefined;

/** Order in which a theme lists its colours; cells count the first four in pairs the other way round. */
const themeOrder = ["lt1", "dk1", "lt2", "dk2", "accent1", "accent2", "accent3", "accent4", "accent5", "accent6", "hlink", "folHlink"] as const;

/** Makes a reader of colours under a theme. Colours of the old palette, which few files still use, are left out but for black and white. */
export function colorReader(theme: string | null): ReadColor {
  const scheme = theme === null ? undefined : child(child(parseXml(theme), "themeElements"), "clrScheme");
  const colors = themeOrder.map((name) => {
    const one = child(scheme, name);
    return `#${(child(one, "srgbClr")?.attributes["val"] ?? child(one, "sysClr")?.attributes["lastClr"] ?? "000000").toLowerCase()}`;
  });
  return (node) => {
    const { rgb, theme: place, tint, indexed } = node?.attributes ?? {};
    if (rgb !== undefined) return /^[0-9a-f]{6,8}$/i.test(rgb) ? `#${rgb.slice(-6).toLowerCase()}` : undefined;
    const themed = scheme === undefined || place === undefined ? undefined : colors[Number(place)];
    if (themed !== undefined) return tinted(themed, numberOf(tint) ?? 0);
    return indexed === "9" || indexed === "65" ? "#ffffff" : undefined;
  };
}

/** Lightens or darkens a colour as ECMA-376 part 1 section 18.8.19 says; on each channel, which differs little from its luminance. */
function tinted(color: string, tint: number): string {
  const channel = (at: number) => {
    const value = Number.parseInt(color.slice(at, at + 2), 16);
    const changed = tint < 0 ? value * (1 + tint) : value * (1 - tint) + 255 * tint;
    return Math.min(255, Math.max(0, Math.round(changed))).toString(16).padStart(2, "0");
  };
  return `#${channel(1)}${channel(3)}${channel(5)}`;
}

/** The looks that a file has: of cells by their number, and those that conditional formats put over them. */
export interface FileLooks {
  readonly cells: readonly Look[];
  readonly conditional: readonly Look[];
}

/** Number formats that files name without writing them out: ECMA-376 part 1 section 18.8.30. */
export const builtInFormats: ReadonlyMap<number, string> = new Map([
  [1, "0"], [2, "0.00"], [3, "#,##0"], [4, "#,##0.00"], [9, "0%"], [10, "0.00%"], [11, "0.00E+00"], [12, "# ?/?"], [13, "# ??/??"],
  [14, "mm-dd-yy"], [15, "d-mmm-yy"], [16, "d-mmm"], [17, "mmm-yy"], [18, "h:mm AM/PM"], [19, "h:mm:ss AM/PM"], [20, "h:mm"], [21, "h:mm:ss"], [22, "m/d/yy h:mm"],
  [37, "#,##0 ;(#,##0)"], [38, "#,##0 ;[Red](#,##0)"], [39, "#,##0.00;(#,##0.00)"], [40, "#,##0.00;[Red](#,##0.00)"], [45, "mm:ss"], [46, "[h]:mm:ss"], [47, "mmss.0"], [48, "##0.0E+0"], [49, "@"],
]);

/** Reads a file's looks. A file without any has the one look of an empty cell. */
export function readLooks(styles: string | null, readColor: ReadColor): FileLooks {
  if (styles === null) return { cells: [{}], conditional: [] };
  const root = parseXml(styles);
  const formats = new Map(builtInFormats);
  for (const { attributes } of childrenOf(child(root, "numFmts"), "numFmt")) formats.set(Number(attributes["numFmtId"]), attributes["formatCode"] ?? "");
  const fonts = childrenOf(child(root, "fonts"), "font").map((node) => readFont(node, readColor));
  const fills = childrenOf(child(root, "fills"), "fill").map((node) => readFill(node, readColor));
  const borders = childrenOf(child(root, "borders"), "border").map((node) => readBorder(node, readColor));
  const part = (place: string | undefined, list: readonly Look[]): Look => list[Number(place ?? 0)] ?? {};
  const cells = childrenOf(child(root, "cellXfs"), "xf").map((xf): Look => {
    const { numFmtId, fontId, fillId, borderId } = xf.attributes;
    const format = formats.get(Number(numFmtId ?? 0));
    return withoutUndefined({
      ...part(fontId, fonts),
      ...part(fillId, fills),
      ...part(borderId, borders),
      ...readAlignment(child(xf, "alignment")),
      format: format === "General" || format === "" ? undefined : format,
      unlocked: child(xf, "protection")?.attributes["locked"] !== undefined && !isOn(child(xf, "protection")?.attributes["locked"]) ? true : undefined,
    });
  });
  const conditional = childrenOf(child(root, "dxfs"), "dxf").map((dxf): Look => {
    const pattern = child(child(dxf, "fill"), "patternFill");
    // A conditional look keeps its fill in the colour that elsewhere is the pattern's background.
    const fill = readColor(child(pattern, "bgColor")) ?? readColor(child(pattern, "fgColor"));
    return withoutUndefined({ ...readFont(child(dxf, "font"), readColor), fill });
  });
  return { cells: cells.length === 0 ? [{}] : cells, conditional };
}

/** Reads how a font makes letters look. A piece of a text names its font by another element. */
export function readFont(node: XmlNode | undefined, readColor: ReadColor): Look {
  const flag = (name: string): true | undefined => {
    const one = child(node, name);
    return one !== undefined && isOn(one.attributes["val"], true) ? true : undefined;
  };
  const underline = child(node, "u");
  const raised = child(node, "vertAlign")?.attributes["val"];
  return withoutUndefined({
    font: (child(node, "name") ?? child(node, "rFont"))?.attributes["val"],
    size: numberOf(child(node, "sz")?.attributes["val"]),
    bold: flag("b"),
    italic: flag("i"),
    underline: underline !== undefined && underline.attributes["val"] !== "none" ? true : undefined,
    strike: flag("strike"),
    raised: raised === "superscript" || raised === "subscript" ? raised : undefined,
    color: readColor(child(node, "color")),
  });
}

function readFill(node: XmlNode, readColor: ReadColor): Look {
  const pattern = child(node, "patternFill");
  return pattern?.attributes["patternType"] === "solid" ? withoutUndefined({ fill: readColor(child(pattern, "fgColor")) }) : {};
}

const lines: readonly string[] = [
  "thin", "hair", "dotted", "dashed", "dashDot", "dashDotDot", "double", "medium", "mediumDashed", "mediumDashDot", "mediumDashDotDot", "slantDashDot", "thick",
] satisfies readonly LineStyle[];

function readBorder(node: XmlNode, readColor: ReadColor): Look {
  const side = (...names: readonly string[]): BorderLine | undefined => {
    const one = names.map((name) => child(node, name)).find((found) => found !== undefined);
    const line = one?.attributes["style"];
    return line !== undefined && isLine(line) ? { line, color: readColor(child(one, "color")) ?? "#000000" } : undefined;
  };
  // The strict form of the standard speaks of start and end.
  const across = side("diagonal");
  const [falls, rises] = [isOn(node.attributes["diagonalDown"]), isOn(node.attributes["diagonalUp"])];
  return withoutUndefined({
    top: side("top"), left: side("left", "start"), bottom: side("bottom"), right: side("right", "end"), falling: falls ? across : undefined, rising: rises ? across : undefined,
  });
}

function isLine(text: string): text is LineStyle {
  return lines.includes(text);
}

function readAlignment(node: XmlNode | undefined): Look {
  const { horizontal: across, vertical: down, wrapText, textRotation, indent } = node?.attributes ?? {};
  const turn = numberOf(textRotation) ?? 0;
  return {
    across: across === "left" || across === "center" || across === "right" || across === "justify" ? across : undefined,
    down: down === "center" ? "middle" : down === "top" || down === "bottom" ? down : undefined,
    wrap: isOn(wrapText) ? true : undefined,
    // 91 to 180 turn with the clock; 255 stacks letters.
    turn: turn === 0 || turn > 180 ? undefined : turn > 90 ? 90 - turn : turn,
    stacks: turn === 255 ? true : undefined,
    indent: numberOf(indent) ? numberOf(indent) : undefined,
  };
}

function withoutUndefined(look: Look): Look {
  return Object.fromEntries(Object.entries(look).filter(([, value]) => value !== undefined));
}

/** Tells whether a number format shows dates or times: outside its texts, colours and escapes it names a part of one. */
export function isDateFormat(format: string | undefined): boolean {
  if (format === undefined) return false;
  const bare = format.replace(/"[^"]*"|\\.|_.|\*./g, "").replace(/\[(?!h+\]|m+\]|s+\])[^\]]*\]/gi, "");
  return !/general/i.test(bare) && /[ymdhs]/i.test(bare);
}
