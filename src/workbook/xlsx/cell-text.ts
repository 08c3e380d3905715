import type { Look, TextPiece } from "../document/workbook-document";
import { readFont, type ReadColor } from "./read-looks";
import { child, childrenOf, escapeXml, parseXml, walkXml, type XmlNode } from "./xml";
import { writeFont } from "./write-looks";

/**
 * Reads a text of a cell as it is meant: `_x000D_` stands for the character that XML cannot hold or would change.
 *
 * ECMA-376 part 1, section 22.9.2.19.
 */
export function readCellText(text: string): string {
  return text.includes("_x") ? text.replace(/_x([0-9a-f]{4})_/gi, (_, code: string) => String.fromCharCode(Number.parseInt(code, 16))) : text;
}

/**
 * Writes a text of a cell so that it is read again as it is, control characters too.
 *
 * Half of a surrogate pair is no character: it becomes U+FFFD, as in any text that is encoded (Unicode Standard, section 3.9). Escaped like the
 * others it would come back here, but other programs drop it without a sign.
 */
export function writeCellText(text: string): string {
  const halves = /[\ud800-\udbff](?![\udc00-\udfff])|(?<![\ud800-\udbff])[\udc00-\udfff]/g;
  // eslint-disable-next-line no-control-regex
  const unwritable = /[\u0000-\u0008\u000b\u000c\u000d\u000e-\u001f\ufffe\uffff]/g;
  return text
    .replace(halves, "\ufffd")
    .replace(/_(?=x[0-9a-f]{4}_)/gi, "_x005F_")
    .replace(unwritable, (one) => {
      return `_x${one.charCodeAt(0).toString(16).toUpperCase().padStart(4, "0")}_`;
    });
}

/** A text of a cell, in pieces where they have fonts of their own. */
export interface CellText {
  readonly text: string;
  readonly pieces?: readonly TextPiece[] | undefined;
}

/** Reads the texts that cells share, by their number, without their readings. */
export function readSharedTexts(xml: string | null, readColor: ReadColor): CellText[] {
  // The second name is that of a program from before the standard.
  const isItem = (name: string) => name === "si" || name === "sstItem";
  const texts: CellText[] = [];
  if (xml === null) return texts;
  let pieces: string[] = [];
  let [isText, readings, begin, hasFonts] = [false, 0, 0, false];
  walkXml(xml, {
    open(name, _attributes, start) {
      if (isItem(name)) [pieces, begin, hasFonts] = [[], start, false];
      if (name === "rPh") readings += 1;
      hasFonts ||= name === "rPr";
      isText = name === "t";
    },
    text(text) {
      if (isText && readings === 0) pieces.push(text);
    },
    close(name, _start, end) {
      if (isItem(name)) texts.push({ text: readCellText(pieces.join("")), pieces: hasFonts ? readPieces(parseXml(xml.slice(begin, end)), readColor) : undefined });
      if (name === "rPh") readings -= 1;
      isText = false;
    },
  });
  return texts;
}

/** Reads a text in its pieces: ECMA-376 part 1, section 18.4.4. A piece that says nothing of its font has that of the cell. */
export function readPieces(item: XmlNode, readColor: ReadColor): TextPiece[] {
  return childrenOf(item, "r").flatMap((run) => {
    const text = readCellText(childrenOf(run, "t").map((one) => one.text).join(""));
    const font = child(run, "rPr");
    return text === "" ? [] : [{ text, look: font === undefined ? undefined : readFont(font, readColor) }];
  });
}

/** Writes a text of a cell, or its pieces. */
export function writePieces(prefix: string, { text, pieces }: CellText): string {
  const written = (piece: string) => {
    const escaped = escapeXml(writeCellText(piece));
    const spaces = escaped !== escaped.trim() || escaped.includes("  ") ? ' xml:space="preserve"' : "";
    return `<${prefix}t${spaces}>${escaped}</${prefix}t>`;
  };
  if (pieces === undefined) return written(text);
  const font = (look: Look | undefined) => (look === undefined ? "" : `<${prefix}rPr>${writeFont(prefix, { ...look, font: look.font ?? "Calibri", size: look.size ?? 11 }, "rFont")}</${prefix}rPr>`);
  return pieces.map((piece) => `<${prefix}r>${font(piece.look)}${written(piece.text)}</${prefix}r>`).join("");
}
