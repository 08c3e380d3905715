import type { BorderLine, Look } from "../document/workbook-document";
import { argb } from "./argb";
import { appendTo } from "./file-package";
import { builtInFormats } from "./read-looks";
import { child, childrenOf, escapeXml, numberOf, parseXml, prefixOf, splice, writeAttributes, type Splice, type XmlNode } from "./xml";

/**
 * Appends looks to the styles of a file; those that are there stay as they are, and keep their numbers.
 *
 * Fonts, fills, borders and formats that a new look has in common with the one it is based on, or with another new one, are written once.
 */
export class LookWriter {
  private readonly root: XmlNode;
  private readonly prefix: string;
  private readonly lists = new Map<string, { readonly texts: string[]; readonly base: number }>();
  private readonly conditional = new Map<string, number>();
  private readonly cells: readonly XmlNode[];

  constructor(private readonly xml: string) {
    this.root = parseXml(xml);
    this.prefix = prefixOf(xml, this.root);
    this.cells = childrenOf(child(this.root, "cellXfs"), "xf");
  }

  /** Numbers of cell looks in the file as it was. */
  get count(): number {
    return this.cells.length;
  }

  /** Adds the look of a cell and answers with its number. */
  addCellLook(look: Look, based: Look = {}): number {
    const from = look.basedOn === undefined ? undefined : this.cells[look.basedOn];
    const old = from?.attributes ?? {};
    const isSame = (...keys: (keyof Look)[]) => from !== undefined && keys.every((key) => JSON.stringify(look[key]) === JSON.stringify(based[key]));
    const part = (name: string, keys: (keyof Look)[], list: string, make: () => string): string | number =>
      (isSame(...keys) ? old[name] : undefined) ?? this.add(list, make());
    const keepsAlignment = isSame("across", "down", "wrap", "turn", "stacks", "indent");
    const alignment = keepsAlignment ? this.standing(from, "alignment") : this.alignment(look);
    const protection = isSame("unlocked") ? this.standing(from, "protection") : look.unlocked ? `<${this.prefix}protection locked="0"/>` : "";
    const attributes = {
      ...old,
      numFmtId: isSame("format") ? (old["numFmtId"] ?? 0) : this.formatNumber(look.format),
      fontId: part("fontId", ["font", "size", "bold", "italic", "underline", "strike", "raised", "color"], "fonts", () => this.font(look)),
      fillId: part("fillId", ["fill"], "fills", () => this.fill(look.fill)),
      borderId: part("borderId", ["top", "left", "bottom", "right", "falling", "rising"], "borders", () => this.border(look)),
      xfId: old["xfId"] ?? 0,
      applyNumberFormat: 1, applyFont: 1, applyFill: 1, applyBorder: 1,
      ...(alignment !== "" && { applyAlignment: 1 }),
      ...(protection !== "" && { applyProtection: 1 }),
    };
    return this.add("cellXfs", `<${this.prefix}xf${writeAttributes(attributes)}>${alignment}${protection}</${this.prefix}xf>`);
  }

  /** Adds a look that a conditional format puts over cells. */
  addConditionalLook({ bold, italic, underline, strike, color, fill }: Look): number {
    const p = this.prefix;
    const font = [bold && `<${p}b/>`, italic && `<${p}i/>`, strike && `<${p}strike/>`, underline && `<${p}u/>`, color && `<${p}color rgb="${argb(color)}"/>`].filter(Boolean).join("");
    const filled = fill ? `<${p}fill><${p}patternFill patternType="solid"><${p}bgColor rgb="${argb(fill)}"/></${p}patternFill></${p}fill>` : "";
    const text = `<${p}dxf>${font && `<${p}font>${font}</${p}font>`}${filled}</${p}dxf>`;
    const known = this.conditional.get(text) ?? this.add("dxfs", text);
    this.conditional.set(text, known);
    return known;
  }

  /** The styles with all that was added. */
  toXml(): string {
    const splices: Splice[] = [];
    for (const [name, { texts, base }] of this.lists) {
      if (texts.length === 0) continue;
      const node = child(this.root, name);
      const text = texts.join("");
      if (node === undefined) {
        const whole = `<${this.prefix}${name} count="${texts.length}">${text}</${this.prefix}${name}>`;
        const at = this.root.children.find((one) => sections.indexOf(one.name) > sections.indexOf(name))?.start ?? this.root.innerEnd;
        splices.push({ start: at, end: at, text: whole });
        continue;
      }
      const opening = `<${this.prefix}${name}${writeAttributes({ ...node.attributes, count: base + texts.length })}>`;
      splices.push({ start: node.start, end: node.inner, text: opening });
      if (node.innerEnd === node.end) splices[splices.length - 1] = { start: node.start, end: node.end, text: `${opening}${text}</${this.prefix}${name}>` };
      else splices.push(appendTo(this.xml, node, text));
    }
    return splice(this.xml, splices);
  }

  private add(list: string, text: string): number {
    const known = this.lists.get(list) ?? { texts: [], base: childrenOf(child(this.root, list), elementOf[list]!).length };
    this.lists.set(list, known);
    const found = known.texts.indexOf(text);
    return known.base + (found >= 0 ? found : known.texts.push(text) - 1);
  }

  private standing(node: XmlNode | undefined, name: string): string {
    const found = child(node, name);
    return found === undefined ? "" : this.xml.slice(found.start, found.end);
  }

  private formatNumber(format: string | undefined): number {
    if (format === undefined) return 0;
    for (const [number, text] of builtInFormats) if (text === format) return number;
    const standing = childrenOf(child(this.root, "numFmts"), "numFmt");
    const found = standing.find(({ attributes }) => attributes["formatCode"] === format);
    if (found !== undefined) return Number(found.attributes["numFmtId"]);
    // Numbers below 164 are the standard's own: ECMA-376 part 1, section 18.8.30.
    const first = Math.max(163, ...standing.map(({ attributes }) => numberOf(attributes["numFmtId"]) ?? 0)) + 1;
    const text = (number: number) => `<${this.prefix}numFmt${writeAttributes({ numFmtId: number, formatCode: format })}/>`;
    const added = this.lists.get("numFmts")?.texts ?? [];
    const known = added.findIndex((one, place) => one === text(first + place));
    if (known >= 0) return first + known;
    const number = first + added.length;
    this.add("numFmts", text(number));
    return number;
  }

  private font({ font = "Calibri", size = 11, ...look }: Look): string {
    return `<${this.prefix}font>${writeFont(this.prefix, { font, size, ...look }, "name", `<${this.prefix}color theme="1"/>`)}</${this.prefix}font>`;
  }

  private fill(color: string | undefined): string {
    const p = this.prefix;
    if (color === undefined) return `<${p}fill><${p}patternFill patternType="none"/></${p}fill>`;
    return `<${p}fill><${p}patternFill patternType="solid"><${p}fgColor rgb="${argb(color)}"/><${p}bgColor indexed="64"/></${p}patternFill></${p}fill>`;
  }

  private border({ left, right, top, bottom, falling, rising }: Look): string {
    const p = this.prefix;
    const side = (name: string, one: BorderLine | undefined) => (one === undefined ? `<${p}${name}/>` : `<${p}${name} style="${one.line}"><${p}color rgb="${argb(one.color)}"/></${p}${name}>`);
    const across = writeAttributes({ diagonalUp: rising && 1, diagonalDown: falling && 1 });
    return `<${p}border${across}>${side("left", left)}${side("right", right)}${side("top", top)}${side("bottom", bottom)}${side("diagonal", falling ?? rising)}</${p}border>`;
  }

  private alignment({ across, down, wrap, turn, stacks, indent }: Look): string {
    const attributes = {
      horizontal: across,
      vertical: down === "middle" ? "center" : down,
      wrapText: wrap ? 1 : undefined,
      textRotation: stacks ? 255 : turn === undefined ? undefined : turn < 0 ? 90 - turn : turn,
      indent,
    };
    return Object.values(attributes).every((value) => value === undefined) ? "" : `<${this.prefix}alignment${writeAttributes(attributes)}/>`;
  }
}

/** Order of the lists of a styles part, and what they hold: ECMA-376 part 1, section 18.8.39. */
const sections: readonly string[] = ["numFmts", "fonts", "fills", "borders", "cellStyleXfs", "cellXfs", "cellStyles", "dxfs", "tableStyles", "colors", "extLst"];
const elementOf: Readonly<Record<string, string>> = { numFmts: "numFmt", fonts: "font", fills: "fill", borders: "border", cellXfs: "xf", dxfs: "dxf" };

/** Writes what a font says of letters, in the order that programs ask for; `unsaid` stands for a colour that is not said. */
export function writeFont(p: string, { font, size, bold, italic, underline, strike, raised, color }: Look, nameElement: string, unsaid = ""): string {
  return [
    bold && `<${p}b/>`,
    italic && `<${p}i/>`,
    strike && `<${p}strike/>`,
    underline && `<${p}u/>`,
    raised && `<${p}vertAlign val="${raised}"/>`,
    size !== undefined && `<${p}sz val="${size}"/>`,
    color === undefined ? unsaid : `<${p}color rgb="${argb(color)}"/>`,
    font !== undefined && `<${p}${nameElement} val="${escapeXml(font)}"/>`,
  ].filter(Boolean).join("");
}
