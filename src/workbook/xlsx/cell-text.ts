import { walkXml } from "./xml";

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

/** Reads the texts that cells share, by their number; of text in several fonts the text alone, without its readings. */
export function readSharedTexts(xml: string | null): string[] {
  // The second name is that of a program from before the standard.
  const isItem = (name: string) => name === "si" || name === "sstItem";
  const texts: string[] = [];
  if (xml === null) return texts;
  let pieces: string[] = [];
  let [isText, readings] = [false, 0];
  walkXml(xml, {
    open(name) {
      if (isItem(name)) pieces = [];
      if (name === "rPh") readings += 1;
      isText = name === "t";
    },
    text(text) {
      if (isText && readings === 0) pieces.push(text);
    },
    close(name) {
      if (isItem(name)) texts.push(readCellText(pieces.join("")));
      if (name === "rPh") readings -= 1;
      isText = false;
    },
  });
  return texts;
}
