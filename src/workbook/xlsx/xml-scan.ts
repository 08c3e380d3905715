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
  // Bounded, so that a hostile text costs no more than its length.
  const opening = new RegExp(`<([\\w.-]{1,40}:)?${name}(?=[\\s/>])((?:[^>"']|"[^"]{0,40000}"|'[^']{0,40000}'){0,4000}?)(/?)>`, "g");
  for (let found = opening.exec(xml); found !== null; found = opening.exec(xml)) {
    const [, prefix = "", attributes = "", closed] = found;
    if (closed === "/") {
      yield { attributes: readAttributes(attributes), inner: "" };
      continue;
    }
    const end = xml.indexOf(`</${prefix}${name}`, opening.lastIndex);
    if (end < 0) return;
    yield { attributes: readAttributes(attributes), inner: xml.slice(opening.lastIndex, end) };
    opening.lastIndex = end;
  }
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
