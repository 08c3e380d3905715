import { cellAddress, isInArea, parseAreas, parseCell, type Area } from "../../sheet";
import { cellAt, putCell, type CellGrid } from "../document/workbook-document";
import { decoded, relationTypes, type FilePackage, type Relation } from "./file-package";
import { insertionOf } from "./patch-sheet";
import { outlineSheet } from "./sheet-outline";
import { childrenOf, parseXml, relationId, splice, writeAttributes, type Attributes } from "./xml";

const relationNamespace = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";

/** Says where a link leads: an address, or `#` and a place in the workbook itself; undefined where it leads nowhere. ECMA-376 part 1, section 18.3.1.47. */
function addressOf(attributes: Attributes, relations: readonly Relation[]): string | undefined {
  const id = relationId(attributes);
  const target = id === undefined ? "" : (relations.find((one) => one.id === id)?.target ?? "");
  const place = (attributes["location"] ?? "").replace(/^#/, "");
  // Some programs say a place in the workbook as an address too.
  if (target.startsWith("#")) return `#${place || decoded(target.slice(1))}`;
  return `${target}${place === "" ? "" : `#${place}`}` || undefined;
}

/** Gives cells the links of their sheet. Of an area, those in which something stands have it, and its first. */
export function putLinks(cells: CellGrid, links: readonly Attributes[], relations: readonly Relation[]): void {
  for (const attributes of links) {
    const [area] = parseAreas(attributes["ref"] ?? "");
    const link = addressOf(attributes, relations);
    if (area === undefined || link === undefined) continue;
    for (const { row, column } of cellsIn(cells, area)) putCell(cells, row, column, { ...(cellAt(cells, row, column) ?? { value: null, look: 0 }), link });
  }
}

function cellsIn(cells: CellGrid, area: Area): { readonly row: number; readonly column: number }[] {
  const found = [{ row: area.row, column: area.column }];
  if (area.rows * area.columns === 1) return found;
  for (const [row, line] of cells) {
    if (row < area.row || row >= area.row + area.rows) continue;
    for (const column of line.keys()) if (isInArea({ row, column }, area) && (row > area.row || column > area.column)) found.push({ row, column });
  }
  return found;
}

/** Lists the links of cells by their address. */
function linksOf(cells: CellGrid): Map<string, string> {
  const links = new Map<string, string>();
  for (const [row, line] of cells) {
    line.forEach(({ link }, column) => {
      if (link !== undefined) links.set(cellAddress({ row, column }), link);
    });
  }
  return links;
}

/** Brings the links of a sheet's file up to those of its cells. A link that leads from the same cells to the same place keeps all that the file says of it. */
export function writeLinks(file: FilePackage, part: string, before: CellGrid, after: CellGrid): void {
  if (before === after) return;
  const [old, now] = [linksOf(before), linksOf(after)];
  if (old.size === now.size && [...now].every(([cell, link]) => old.get(cell) === link)) return;
  const xml = file.read(part)!;
  const outline = outlineSheet(xml, () => false);
  const { prefix } = outline;
  const place = outline.sections.find(({ name }) => name === "hyperlinks");
  const standing = place === undefined ? "" : xml.slice(place.start, place.end);
  const left = new Map(now);
  const written: string[] = [];
  for (const node of standing === "" ? [] : childrenOf(parseXml(standing), "hyperlink")) {
    const [area] = parseAreas(node.attributes["ref"] ?? "");
    const cells = area === undefined ? [] : area.rows * area.columns === 1 ? [cellAddress(area)].filter((cell) => old.has(cell)) : [...old.keys()].filter((cell) => isInArea(parseCell(cell)!, area));
    if (cells.length > 0 && cells.some((cell) => now.get(cell) !== old.get(cell))) {
      const id = relationId(node.attributes);
      if (id !== undefined) file.unrelateId(part, id);
      continue;
    }
    for (const cell of cells) left.delete(cell);
    written.push(standing.slice(node.start, node.end));
  }
  for (const [ref, link] of left) {
    const isInside = link.startsWith("#");
    const id = isInside ? "" : file.relate(part, relationTypes.hyperlink, link, true);
    const namespace = isInside ? "" : ` xmlns:r="${relationNamespace}" r:id="${id}"`;
    written.push(`<${prefix}hyperlink${writeAttributes({ ref, location: isInside ? link.slice(1) : undefined })}${namespace}/>`);
  }
  const text = written.length === 0 ? "" : `<${prefix}hyperlinks>${written.join("")}</${prefix}hyperlinks>`;
  file.write(part, splice(xml, [place === undefined ? { ...insertionOf(outline, "hyperlinks"), text } : { start: place.start, end: place.end, text }]));
}
