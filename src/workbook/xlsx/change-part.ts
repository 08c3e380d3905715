import type { FilePackage } from "./file-package";
import { escapeXml, splice, walkXml, without, writeAttributes, type Attributes, type Splice } from "./xml";

/** Elements of a sheet that hold formulas. */
export const sheetFormulas: readonly string[] = ["f", "formula", "formula1", "formula2"];
/** Elements of a table that hold formulas. */
export const tableFormulas: readonly string[] = ["calculatedColumnFormula", "totalsRowFormula"];
/** A shape may show the text of a cell. */
export const shapeLinks: Readonly<Record<string, string>> = { sp: "textlink" };
/** Attributes in which an element of a sheet says a formula: where a link leads to, and from which cell a scale or a row of icons takes its ends. */
export const formulaAttributes: Readonly<Record<string, string>> = { hyperlink: "location", cfvo: "val" };

/** Elements that say of which cells a pivot table is made: one area, or several that are put together. */
export const isPivotSource = (element: string): boolean => element === "worksheetSource" || element === "rangeSet";

/** Changes the text of a part, if there is one; writes it where it differs. */
export function rewrite(file: FilePackage, part: string, change: (xml: string) => string): void {
  const xml = file.read(part);
  if (xml === null) return;
  const changed = change(xml);
  if (changed !== xml) file.write(part, changed);
}

/** Changes the formulas in attributes of elements, by the name of the element. One that would lead to a cell that went stays as it was. */
export function changeAttributes(xml: string, names: Readonly<Record<string, string>>, change: (formula: string) => string): string {
  return patchElements(xml, (element, attributes) => {
    const attribute = names[element];
    const formula = attribute === undefined ? undefined : attributes[attribute];
    if (attribute === undefined || formula === undefined) return null;
    const changed = change(formula);
    return changed.includes("#REF!") ? null : { [attribute]: changed };
  });
}

/** Changes the texts of elements of these names. */
export function changeTexts(xml: string, elements: readonly string[], change: (text: string) => string, isMeant: (attributes: Attributes) => boolean = () => true): string {
  const splices: Splice[] = [];
  let open: { readonly end: number; text: string } | null = null;
  walkXml(xml, {
    open(element, attributes, _start, end) {
      open = elements.includes(element) && isMeant(attributes) ? { end, text: "" } : null;
    },
    text(text) {
      if (open !== null) open.text += text;
    },
    close(_element, start) {
      if (open !== null) {
        const moved = change(open.text);
        if (moved !== open.text) splices.push({ start: open.end, end: start, text: escapeXml(moved) });
      }
      open = null;
    },
  });
  return splices.length === 0 ? xml : splice(xml, splices);
}

/** Changes attributes of elements. */
export function patchElements(xml: string, changesOf: (name: string, attributes: Attributes) => Record<string, string> | null): string {
  const splices: Splice[] = [];
  walkXml(xml, {
    open(name, attributes, start, end) {
      const changes = changesOf(name, attributes);
      if (changes !== null && Object.entries(changes).some(([key, value]) => attributes[key] !== value)) splices.push(retag(xml, name, attributes, changes, start, end));
    },
  });
  return splice(xml, splices);
}

/** Writes the opening tag of an element anew, with changed attributes. */
export function retag(xml: string, name: string, attributes: Attributes, changes: Readonly<Record<string, string>>, start: number, end: number): Splice {
  // What a row says of its first and last cell may no longer be so.
  const kept = without(attributes, "spans");
  const qualified = xml.slice(start + 1, xml.indexOf(name, start) + name.length);
  return { start, end, text: `<${qualified}${writeAttributes({ ...kept, ...changes })}${xml[end - 2] === "/" ? "/>" : ">"}` };
}
