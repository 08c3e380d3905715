import { SaxesParser } from "saxes";
import { damaged, limits, tooLarge } from "./file-problems";

/** The attributes of an element, by the names they have in the text. */
export type Attributes = Readonly<Record<string, string>>;

/** What is told while an XML text is read. Names come without their prefix; places are indices into the text. Attributes hold on to it: see `standingAlone`. */
export interface XmlListener {
  /** From `start`, where the tag begins, to `end` behind it. */
  readonly open?: (name: string, attributes: Attributes, start: number, end: number) => void;
  readonly text?: (text: string) => void;
  /** `start` is where the closing tag begins; an element without one ends where its opening tag does. */
  readonly close?: (name: string, start: number, end: number) => void;
}

/** Reads an XML text once; refuses one that is not well formed, or that nests or repeats without measure. Entities of its own are not known. */
export function walkXml(xml: string, { open, text, close }: XmlListener): void {
  const parser = new SaxesParser({ xmlns: false });
  let [depth, elements] = [0, 0];
  parser.on("error", () => {
    throw damaged();
  });
  parser.on("opentag", ({ name, attributes }) => {
    depth += 1;
    elements += 1;
    if (depth > limits.depth || elements > limits.elements) throw tooLarge("nests or repeats its parts without measure");
    // A tag holds no other opening bracket than its own: XML 1.0, section 2.4.
    open?.(bare(name), attributes, xml.lastIndexOf("<", parser.position - 1), parser.position);
  });
  if (text !== undefined) {
    const tell = (piece: string) => {
      text(standAlone(piece));
    };
    parser.on("text", tell);
    parser.on("cdata", tell);
  }
  parser.on("closetag", ({ name, isSelfClosing }) => {
    depth -= 1;
    close?.(bare(name), isSelfClosing ? parser.position : xml.lastIndexOf("<", parser.position - 1), parser.position);
  });
  parser.write(xml).close();
}

/** Longest piece of a text that engines copy; a longer one holds on to the whole text that it was cut out of. */
const longestCopied = 12;

/** Copies a piece of a text, so that whoever keeps it does not keep the text of a whole part in memory. */
function standAlone(piece: string): string {
  return piece.length > longestCopied ? [piece.slice(0, 1), piece.slice(1)].join("") : piece;
}

/** Copies attributes, for whoever keeps them. */
export function standingAlone(attributes: Attributes): Attributes {
  return Object.fromEntries(Object.entries(attributes).map(([name, value]) => [name, standAlone(value)]));
}

/** An element of a small part, with the place of itself and of what is in it. */
export interface XmlNode {
  readonly name: string;
  readonly attributes: Attributes;
  readonly children: readonly XmlNode[];
  /** The text directly in it. */
  readonly text: string;
  readonly start: number;
  /** Behind the opening tag, and where the closing one begins; both are `end` where there is none. */
  readonly inner: number;
  readonly innerEnd: number;
  readonly end: number;
}

type Growing = { -readonly [Key in keyof XmlNode]: XmlNode[Key] } & { children: XmlNode[] };

/** Reads a small part as a tree. */
export function parseXml(xml: string): XmlNode {
  const stack: Growing[] = [];
  let root: XmlNode | undefined;
  let nodes = 0;
  walkXml(xml, {
    open(name, attributes, start, end) {
      nodes += 1;
      if (nodes > limits.treeElements) throw tooLarge("nests or repeats its parts without measure");
      const node: Growing = { name, attributes: standingAlone(attributes), children: [], text: "", start, inner: end, innerEnd: end, end };
      stack.at(-1)?.children.push(node);
      root ??= node;
      stack.push(node);
    },
    text(text) {
      const node = stack.at(-1);
      if (node !== undefined) node.text += text;
    },
    close(_name, start, end) {
      Object.assign(stack.pop()!, { innerEnd: start, end });
    },
  });
  if (root === undefined) throw damaged();
  return root;
}

/** Finds the first child called `name`. */
export function child(node: XmlNode | undefined, name: string): XmlNode | undefined {
  return node?.children.find((one) => one.name === name);
}

export function childrenOf(node: XmlNode | undefined, name: string): XmlNode[] {
  return node?.children.filter((one) => one.name === name) ?? [];
}

/** Lists a node's descendants called `name`, in the order of the text. */
export function descendants(node: XmlNode, name: string): XmlNode[] {
  return node.children.flatMap((one) => [...(one.name === name ? [one] : []), ...descendants(one, name)]);
}

/** Finds the attribute of a relation, whatever prefix the part gives its namespace. */
export function relationId(attributes: Attributes): string | undefined {
  return Object.entries(attributes).find(([name]) => name.includes(":") && bare(name) === "id")?.[1];
}

/** Tells whether an attribute that is true or false says true. */
export function isOn(value: string | undefined, otherwise = false): boolean {
  return value === undefined ? otherwise : value === "1" || value === "true" || value === "on";
}

/** The attribute as a number; undefined where it is none. */
export function numberOf(value: string | undefined): number | undefined {
  const number = value === undefined || value.trim() === "" ? NaN : Number(value);
  return Number.isFinite(number) ? number : undefined;
}

export function bare(name: string): string {
  return name.slice(name.indexOf(":") + 1);
}

/** The prefix, with its colon, that a part gives to its own elements. */
export function prefixOf(xml: string, { start, name }: XmlNode): string {
  return xml.slice(start + 1, xml.indexOf(name, start));
}

/**
 * Writes a text for an element or an attribute.
 *
 * Characters of two bytes are written by their numbers: one of them in a sheet makes engines keep the text of the whole sheet in twice the memory.
 */
export function escapeXml(text: string): string {
  return escaped.test(text) ? text.replace(everyEscaped, (one) => named[one] ?? `&#${one.codePointAt(0)!};`) : text;
}

const escaped = /[&<>"\t\n\r\u0100-\ud7ff\ue000-\u{10ffff}]/u;
const everyEscaped = new RegExp(escaped, "gu");

const named: Readonly<Record<string, string>> = { "&": "&amp;", "<": "&lt;", ">": "&gt;", '"': "&quot;" };

/** Writes attributes, those that are undefined left out, each behind a blank. */
export function writeAttributes(attributes: Readonly<Record<string, string | number | undefined>>): string {
  return Object.entries(attributes)
    .map(([name, value]) => (value === undefined ? "" : ` ${name}="${escapeXml(String(value))}"`))
    .join("");
}

/** Takes attributes away. */
export function without(attributes: Attributes, ...names: readonly string[]): Attributes {
  return Object.fromEntries(Object.entries(attributes).filter(([name]) => !names.includes(name)));
}

/** A part of a text and what is to stand in its place. */
export interface Splice {
  readonly start: number;
  readonly end: number;
  readonly text: string;
}

/** Puts texts in the place of parts of another; parts do not meet. */
export function splice(xml: string, splices: readonly Splice[]): string {
  let at = 0;
  const pieces: string[] = [];
  for (const { start, end, text } of [...splices].sort((a, b) => a.start - b.start || a.end - b.end)) {
    pieces.push(xml.slice(at, start), text);
    at = end;
  }
  pieces.push(xml.slice(at));
  return pieces.join("");
}
