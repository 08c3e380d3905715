import { areaAddress, foldSheetName, showCell, type TablePlan } from "../../sheet";
import { areaOfFilter } from "../document/sheet-filter";
import { cellAt, type DocumentSheet, type SheetFilter } from "../document/workbook-document";
import { relationTypes, type FilePackage } from "./file-package";
import { insertionOf } from "./patch-sheet";
import { readTableFilter } from "./read-filter";
import { outlineSheet } from "./sheet-outline";
import { writeFilter } from "./write-filter";
import { child, childrenOf, escapeXml, parseXml, prefixOf, relationId, splice, writeAttributes, type Splice, type XmlNode } from "./xml";

const namespace = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
const relationNamespace = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
const tableType = "application/vnd.openxmlformats-officedocument.spreadsheetml.table+xml";

/** The header texts of a table, unique and filled, as programs that read tables ask for. */
function headersOf({ cells }: DocumentSheet, { area }: TablePlan): string[] {
  const taken = new Set<string>();
  return Array.from({ length: area.columns }, (_, column) => {
    const shown = showCell(cellAt(cells, area.row, area.column + column)?.value) || `Column${column + 1}`;
    let [header, number] = [shown, 2];
    while (taken.has(foldSheetName(header))) header = `${shown}${number++}`;
    taken.add(foldSheetName(header));
    return header;
  });
}

/** Tells whether an area can be a table in a file: a header row of different texts over at least one row. */
function canBeTable(sheet: DocumentSheet, { area }: TablePlan): boolean {
  const headers = Array.from({ length: area.columns }, (_, column) => cellAt(sheet.cells, area.row, area.column + column)?.value);
  const texts = headers.filter((header) => typeof header === "string" && header !== "").map(String);
  return area.rows >= 2 && texts.length === area.columns && new Set(texts.map(foldSheetName)).size === area.columns;
}

/** Brings the tables of a sheet's file up to what the sheet says: areas, headers and filters, new ones, and those that went. */
export function writeTables(file: FilePackage, part: string, sheet: DocumentSheet, newId: () => number): void {
  const standing = file.relations(part).filter(({ kind, target }) => kind === "table" && file.has(target));
  const left = new Map(standing.map((relation) => [foldSheetName(tableName(parseXml(file.read(relation.target)!))), relation]));
  const added: string[] = [];
  for (const table of sheet.tables) {
    const relation = left.get(foldSheetName(table.name));
    left.delete(foldSheetName(table.name));
    const filter = sheet.filters?.find((one) => one.table === table.name);
    if (relation !== undefined) {
      const xml = file.read(relation.target)!;
      const patched = patchTable(sheet.filters === undefined ? xml : withFilter(xml, table, filter), table, headersOf(sheet, table));
      if (patched !== xml) file.write(relation.target, patched);
    } else if (canBeTable(sheet, table)) {
      const target = file.add("xl/tables/table#.xml", tableType, newTable(table, headersOf(sheet, table), newId(), sheet.filters === undefined ? { columns: [] } : filter));
      added.push(file.relate(part, relationTypes.table, target));
    }
  }
  const gone = [...left.values()];
  if (added.length === 0 && gone.length === 0) return;
  file.write(part, withTableParts(file.read(part)!, added, new Set(gone.map(({ id }) => id))));
  for (const { target } of gone) {
    file.unrelate(part, target);
    file.remove(target);
  }
}

function tableName({ attributes }: XmlNode): string {
  return attributes["displayName"] ?? attributes["name"] ?? "";
}

/** Gives the part of a table another filter, where it has not that one. */
function withFilter(xml: string, table: TablePlan, filter: SheetFilter | undefined): string {
  const root = parseXml(xml);
  const area = areaOfFilter({ ...filter, table: table.name, columns: [] }, [table]);
  const columns = readTableFilter(root, xml)?.columns;
  if (area === null || JSON.stringify(columns) === JSON.stringify(filter?.columns)) return xml;
  const standing = child(root, "autoFilter");
  const place = standing ?? { start: root.inner, end: root.inner };
  const old = standing === undefined ? undefined : xml.slice(standing.start, standing.end);
  return splice(xml, [{ start: place.start, end: place.end, text: filter === undefined ? "" : writeFilter(old, prefixOf(xml, root), area, filter.columns) }]);
}

function patchTable(xml: string, { area, totalRows = 0 }: TablePlan, headers: readonly string[]): string {
  const root = parseXml(xml);
  const prefix = prefixOf(xml, root);
  const ref = areaAddress(area);
  const splices: Splice[] = [];
  const reference = (node: XmlNode, to: string, more: Readonly<Record<string, number | undefined>> = {}) => {
    const attributes = writeAttributes({ ...node.attributes, ref: to, ...more });
    if (attributes === writeAttributes(node.attributes)) return;
    const opening = `<${prefix}${node.name}${attributes}`;
    splices.push({ start: node.start, end: node.inner, text: node.inner === node.end ? `${opening}/>` : `${opening}>` });
  };
  const hasTotals = Number(root.attributes["totalsRowCount"] ?? 0);
  reference(root, ref, hasTotals === totalRows ? {} : { totalsRowCount: totalRows === 0 ? undefined : totalRows });
  const filter = child(root, "autoFilter");
  if (filter !== undefined) reference(filter, areaAddress({ ...area, rows: Math.max(1, area.rows - totalRows) }));
  if (root.attributes["headerRowCount"] === "0") return splice(xml, splices);
  const columns = child(root, "tableColumns");
  const old = childrenOf(columns, "tableColumn");
  if (columns === undefined || (old.length === headers.length && old.every(({ attributes }, index) => sameHeader(attributes["name"], headers[index]!)))) return splice(xml, splices);
  // A column keeps what is said of it as long as its header is there, or at its place where none came or went.
  const byName = new Map(old.map((node) => [node.attributes["name"], node]));
  let next = Math.max(0, ...old.map(({ attributes }) => Number(attributes["id"]) || 0));
  const written = headers.map((header, index) => {
    const node = old.length === headers.length ? old[index] : old.find(({ attributes }) => sameHeader(attributes["name"], header)) ?? byName.get(header);
    if (node === undefined) return `<${prefix}tableColumn${writeAttributes({ id: (next += 1), name: writeHeader(header) })}/>`;
    const inside = xml.slice(node.inner, node.end);
    return `<${prefix}tableColumn${writeAttributes({ ...node.attributes, name: writeHeader(header) })}${node.inner === node.end ? "/>" : `>${inside}`}`;
  });
  splices.push({ start: columns.start, end: columns.end, text: `<${prefix}tableColumns count="${headers.length}">${written.join("")}</${prefix}tableColumns>` });
  return splice(xml, splices);
}

/** Line ends stand in the names of columns as `_x000a_`. */
function writeHeader(header: string): string {
  return header.replaceAll("\r", "_x000d_").replaceAll("\n", "_x000a_");
}

function sameHeader(name: string | undefined, header: string): boolean {
  return name === writeHeader(header) || name === header || name?.replace(/\s+/g, " ") === header.replace(/\s+/g, " ");
}

function newTable(table: TablePlan, headers: readonly string[], id: number, filter: SheetFilter | undefined): string {
  const { name, area } = table;
  const [ref, filtered] = [areaAddress(area), areaOfFilter({ table: name, columns: [] }, [table])];
  const columns = headers.map((header, index) => `<tableColumn${writeAttributes({ id: index + 1, name: writeHeader(header) })}/>`).join("");
  const arrows = filter === undefined || filtered === null ? "" : writeFilter(undefined, "", filtered, filter.columns);
  return (
    `<table xmlns="${namespace}"${writeAttributes({ id, name, displayName: name, ref, totalsRowShown: 0 })}>${arrows}` +
    `<tableColumns count="${headers.length}">${columns}</tableColumns><tableStyleInfo name="TableStyleLight1" showFirstColumn="0" showLastColumn="0" showRowStripes="1" showColumnStripes="0"/></table>`
  );
}

function withTableParts(xml: string, added: readonly string[], gone: ReadonlySet<string>): string {
  const outline = outlineSheet(xml, () => false);
  const { prefix } = outline;
  const standing = outline.sections.find(({ name }) => name === "tableParts");
  const old = standing === undefined ? [] : childrenOf(parseXml(xml.slice(standing.start, standing.end)), "tablePart").map(({ attributes }) => relationId(attributes) ?? "");
  const ids = [...old.filter((id) => !gone.has(id)), ...added];
  const parts = ids.map((id) => `<${prefix}tablePart xmlns:r="${relationNamespace}" r:id="${escapeXml(id)}"/>`).join("");
  const text = ids.length === 0 ? "" : `<${prefix}tableParts count="${ids.length}">${parts}</${prefix}tableParts>`;
  return splice(xml, [{ ...(standing === undefined ? insertionOf(outline, "tableParts") : { start: standing.start, end: standing.end }), text }]);
}
