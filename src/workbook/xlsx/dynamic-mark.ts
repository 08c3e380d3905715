import { appendTo, relationTypes, type FilePackage } from "./file-package";
import { metadataType } from "./new-file";
import { child, childrenOf, descendants, parseXml, prefixOf, splice } from "./xml";

const main = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
const dynamicArrays = "http://schemas.microsoft.com/office/spreadsheetml/2017/dynamicarray";
const typeAttributes =
  'name="XLDAPR" minSupportedVersion="120000" copy="1" pasteAll="1" pasteValues="1" merge="1" splitFirst="1" rowColShift="1" clearFormats="1" clearComments="1" assign="1" coerce="1" cellMeta="1"';
const extension = `<ext uri="{bdbb8cdc-fa1e-496e-a857-3c3f30c029c3}"><xda:dynamicArrayProperties xmlns:xda="${dynamicArrays}" fDynamic="1" fCollapsed="0"/></ext>`;

/**
 * Finds or makes the mark by which cells say that their formula finds its own size, and answers with its number, counted from 1.
 *
 * Without it a program of today shows such a formula as one fixed to its cells: Office Open XML extensions [MS-XLSX], sections 2.3.5 and 2.6.204.
 */
export function findDynamicMark(file: FilePackage, workbookPart: string): number {
  const relation = file.relations(workbookPart).find(({ kind, target }) => kind === "sheetMetadata" && file.has(target));
  if (relation === undefined) {
    const text =
      `<metadata xmlns="${main}"><metadataTypes count="1"><metadataType ${typeAttributes}/></metadataTypes>` +
      `<futureMetadata name="XLDAPR" count="1"><bk><extLst>${extension}</extLst></bk></futureMetadata><cellMetadata count="1"><bk><rc t="1" v="0"/></bk></cellMetadata></metadata>`;
    file.relate(workbookPart, relationTypes.metadata, file.add("xl/metadata.xml", metadataType, text));
    return 1;
  }
  const xml = file.read(relation.target)!;
  const root = parseXml(xml);
  const p = prefixOf(xml, root);
  const types = childrenOf(child(root, "metadataTypes"), "metadataType");
  const type = types.findIndex(({ attributes }) => attributes["name"] === "XLDAPR") + 1;
  const marks = childrenOf(child(root, "cellMetadata"), "bk");
  const found = marks.findIndex((bk) => childrenOf(bk, "rc").some(({ attributes }) => type > 0 && Number(attributes["t"]) === type));
  if (found >= 0) return found + 1;
  const future = root.children.find(({ name, attributes }) => name === "futureMetadata" && attributes["name"] === "XLDAPR");
  const place = future === undefined ? 0 : childrenOf(future, "bk").length;
  const bk = `<${p}bk><${p}extLst>${extension.replace("<ext ", `<${p}ext `).replace("</ext>", `</${p}ext>`)}</${p}extLst></${p}bk>`;
  const list = child(root, "metadataTypes");
  const cells = child(root, "cellMetadata");
  const mark = `<${p}bk><${p}rc t="${type > 0 ? type : types.length + 1}" v="${place}"/></${p}bk>`;
  const end = { start: root.innerEnd, end: root.innerEnd };
  // Counts are not asked for by any program; those that are there would be wrong.
  const typeText = `<${p}metadataType ${typeAttributes}/>`;
  const typeSplice = list === undefined ? { start: root.inner, end: root.inner, text: `<${p}metadataTypes>${typeText}</${p}metadataTypes>` } : appendTo(xml, list, typeText);
  const beforeCells = cells === undefined ? end : { start: cells.start, end: cells.start };
  const patched = splice(xml, [
    ...(type > 0 ? [] : [typeSplice]),
    future === undefined ? { ...beforeCells, text: `<${p}futureMetadata name="XLDAPR" count="1">${bk}</${p}futureMetadata>` } : appendTo(xml, future, bk),
    ...(cells === undefined ? [{ ...end, text: `<${p}cellMetadata count="1">${mark}</${p}cellMetadata>` }] : [appendTo(xml, cells, mark)]),
  ]);
  file.write(relation.target, withoutCounts(patched));
  return marks.length + 1;
}

function withoutCounts(xml: string): string {
  const root = parseXml(xml);
  return splice(
    xml,
    ["metadataTypes", "futureMetadata", "cellMetadata"].flatMap((name) => descendants(root, name)).flatMap(({ start, inner }) => {
      const tag = xml.slice(start, inner);
      return [{ start, end: inner, text: tag.replace(/\scount="\d*"/, "") }];
    }),
  );
}
