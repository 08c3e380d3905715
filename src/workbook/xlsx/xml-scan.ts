/** One element of an XML text: its attributes, and its text with the markup in it. */
export interface XmlElement {
  readonly attributes: Readonly<Record<string, string>>;
  readonly inner: string;
}

/**
 * Finds every element called `name`, with whatever prefix, in an XML text. For elements that do not hold their own kind.
 *
 * Enough for the few parts of a workbook file that the file library leaves out; it is no parser for XML at large.
 */
export function* elements(xml: string, name: string): Generator<XmlElement> {
  const pattern = new RegExp(`<(?:[\\w.-]+:)?${name}(?=[\\s/>])((?:[^>"']|"[^"]*"|'[^']*')*?)(?:/>|>([\\s\\S]*?)</(?:[\\w.-]+:)?${name}\\s*>)`, "g");
  for (const [, attributes = "", inner = ""] of xml.matchAll(pattern)) yield { attributes: readAttributes(attributes), inner };
}

/** Finds the first element called `name`. */
export function element(xml: string, name: string): XmlElement | undefined {
  return elements(xml, name).next().value as XmlElement | undefined;
}

/** Turns the text of an element into what it says. */
export function unescapeXml(text: string): string {
  return text.replace(/&(?:#x([0-9a-f]+)|#(\d+)|(\w+));/gi, (whole, hex?: string, decimal?: string, name?: string) => {
    if (hex !== undefined) return String.fromCodePoint(Number.parseInt(hex, 16));
    if (decimal !== undefined) return String.fromCodePoint(Number.parseInt(decimal, 10));
    return name === undefined ? whole : (named[name] ?? whole);
  });
}

const named: Readonly<Record<string, string>> = { lt: "<", gt: ">", amp: "&", quot: '"', apos: "'" };

function readAttributes(text: string): Record<string, string> {
  const found: Record<string, string> = {};
  for (const [, name, double, single] of text.matchAll(/([\w:.-]+)\s*=\s*(?:"([^"]*)"|'([^']*)')/g)) found[name!] = unescapeXml(double ?? single ?? "");
  return found;
}
