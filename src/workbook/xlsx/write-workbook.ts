import { areaAddress, foldSheetName } from "../../sheet";
import { ownFilter } from "../document/sheet-filter";
import type { DocumentName, DocumentSheet, Look, WorkbookDocument } from "../document/workbook-document";
import { writeLinks } from "./cell-links";
import { findDynamicMark } from "./dynamic-mark";
import { relationTypes, type FilePackage } from "./file-package";
import { toFileFormula } from "./formula-text";
import { emptyStyles, newFile, stylesType, worksheetType } from "./new-file";
import { patchSheet, writeSheet, type SheetWriting } from "./patch-sheet";
import { isDateFormat } from "./read-looks";
import type { FileSheet, OpenFile } from "./read-workbook";
import { renameSheets, withNewNames } from "./rename-sheets";
import { LookWriter } from "./write-looks";
import { writeNotes } from "./write-notes";
import { writeTables } from "./write-tables";
import { child, childrenOf, descendants, escapeXml, isOn, numberOf, parseXml, prefixOf, relationId, splice, writeAttributes, type Attributes, type Splice, type XmlNode } from "./xml";

/** Number of the calculation of today's programs: a file with an older one is computed anew by them. */
const calculation = 191_029;

/**
 * Makes an .xlsx file of a document: of a file that is open, or a new one.
 *
 * `before` says what the file holds, in the words of `after`: only what differs between the two is written, every other part goes back byte for
 * byte, and of a changed sheet everything but its changed cells and settings stays as it stood. Looks of `after` behind those of the file
 * are added. Uses the open file up.
 */
export function writeFile(open: OpenFile | null, before: WorkbookDocument, after: WorkbookDocument): Uint8Array {
  return new FileWriter(open, before).finish(after);
}

/** Writes a document into a file that is open, or a new one, sheet by sheet, so that nobody needs to hold all of them until the end. */
export class FileWriter {
  private readonly file: FilePackage;
  private readonly workbookPart: string;
  private readonly standing: readonly FileSheet[];
  private readonly looks: Looks;
  private readonly parts = new Map<string, string>();
  private mark: number | undefined;
  private tables = 0;
  private computes = false;
  /** New names of sheets by their old ones, without regard to case. */
  private renamed: ReadonlyMap<string, string> = new Map();

  constructor(private readonly open: OpenFile | null, private readonly before: WorkbookDocument) {
    this.file = open?.file ?? newFile();
    this.workbookPart = open?.workbookPart ?? "xl/workbook.xml";
    this.standing = open?.sheets ?? [];
    this.looks = new Looks(this.file, this.workbookPart, before);
  }

  /** Writes what is on a sheet, once and for all; name, place and visibility are written at the end. `looks` are those of the document so far. */
  writeSheet(sheet: DocumentSheet, looks: readonly Look[]): void {
    const { file, looks: numbers } = this;
    const listed = this.standing.find(({ id }) => id === sheet.id);
    const stood = this.before.sheets.find(({ id }) => id === sheet.id);
    const writing: SheetWriting = {
      styleOf: (look) => numbers.styleOf(look, looks),
      movesDays: (look) => this.open?.from1904 === true && isDateFormat(looks[look]?.format),
      dynamicMark: () => (this.mark ??= findDynamicMark(file, this.workbookPart)),
      addConditionalLook: (look) => numbers.writer.addConditionalLook(look),
    };
    const newTableId = () => (this.tables = Math.max(this.tables, lastTableId(file)) + 1);
    if (listed === undefined || stood === undefined) {
      const part = file.add("xl/worksheets/sheet#.xml", worksheetType, writeSheet(sheet, writing));
      this.parts.set(sheet.id, part);
      writeTables(file, part, sheet, newTableId);
      writeNotes(file, part, [], sheet.notes);
      writeLinks(file, part, new Map(), sheet.cells);
      this.computes = true;
      return;
    }
    const { part } = listed;
    this.parts.set(sheet.id, part);
    if (isUntouched(stood, sheet)) return;
    // Rules followed the new names as they stand in the file: of what only follows, nothing is written anew.
    const old = withNewNames(stood, this.renamed);
    const xml = file.read(part)!;
    const patched = patchSheet(xml, old, sheet, writing);
    if (patched !== xml) {
      file.write(part, patched);
      this.computes = true;
    }
    const lists = ({ tables, filters }: DocumentSheet) => JSON.stringify([tables, filters]);
    if (patched !== xml || lists(old) !== lists(sheet)) writeTables(file, part, sheet, newTableId);
    writeNotes(file, part, stood.notes, sheet.notes);
    writeLinks(file, part, stood.cells, sheet.cells);
  }

  /** Writes all that was not written yet and makes the file. */
  finish(after: WorkbookDocument): Uint8Array {
    const { file, workbookPart, standing, before, parts } = this;
    // First, as what is written from here on knows the new names, and may name a new sheet by an old one.
    this.renamed = new Map(after.sheets.flatMap(({ id, name }) => standing.flatMap((old) => (old.id === id && old.name !== name ? [[foldSheetName(old.name), name] as const] : []))));
    if (this.open !== null && this.renamed.size > 0) renameSheets(this.open, this.renamed);
    for (const sheet of after.sheets) if (!parts.has(sheet.id)) this.writeSheet(sheet, after.looks);
    const kept = new Set(after.sheets.map(({ id }) => id));
    const gone = standing.filter(({ id }) => id !== null && !kept.has(id));
    for (const { part } of gone) removeSheet(file, workbookPart, part);
    this.looks.finish();
    const computes = this.computes || gone.length > 0;
    writeWorkbookPart(file, workbookPart, { standing, before, after, parts, computes });
    if (computes) removeCalcChain(file, workbookPart);
    return file.toBytes();
  }
}

/** Tells whether two are one sheet in all that its own part says. */
function isUntouched(before: DocumentSheet, after: DocumentSheet): boolean {
  return (Object.keys(after) as (keyof DocumentSheet)[]).every((key) => key === "name" || key === "state" || after[key] === before[key]);
}

/** Numbers of looks in the file; new ones are added when the first cell asks for them. */
class Looks {
  readonly writer: LookWriter;
  private readonly added = new Map<number, number>();
  private readonly part: string | undefined;
  private readonly xml: string;

  constructor(private readonly file: FilePackage, private readonly workbookPart: string, private readonly before: WorkbookDocument) {
    this.part = file.relations(workbookPart).find(({ kind, target }) => kind === "styles" && file.has(target))?.target;
    this.xml = this.part === undefined ? emptyStyles : file.read(this.part)!;
    this.writer = new LookWriter(this.xml);
  }

  styleOf(look: number, looks: readonly Look[]): number {
    if (look < this.before.looks.length) return look;
    const known = this.added.get(look);
    if (known !== undefined) return known;
    const one = looks[look]!;
    const number = this.writer.addCellLook(one, one.basedOn === undefined ? {} : this.before.looks[one.basedOn]);
    this.added.set(look, number);
    return number;
  }

  finish(): void {
    const xml = this.writer.toXml();
    if (xml === this.xml) return;
    if (this.part !== undefined) this.file.write(this.part, xml);
    else this.file.relate(this.workbookPart, relationTypes.styles, this.file.add("xl/styles.xml", stylesType, xml));
  }
}

function lastTableId(file: FilePackage): number {
  return Math.max(0, ...file.names().filter((name) => /^xl\/tables\/[^/]+\.xml$/i.test(name)).map((name) => numberOf(parseXml(file.read(name)!).attributes["id"]) ?? 0));
}

/** Takes a sheet out of a file, with the parts that belong to it alone. */
function removeSheet(file: FilePackage, workbookPart: string, part: string): void {
  for (const { kind, target, isOutside } of file.relations(part)) {
    if (!isOutside && (kind === "table" || kind === "comments" || kind === "drawing" || kind === "vmlDrawing")) file.remove(target);
  }
  file.unrelate(workbookPart, part);
  file.remove(part);
}

/** The list of cells that hold formulas is not asked for, and wrong once they change. */
function removeCalcChain(file: FilePackage, workbookPart: string): void {
  for (const { kind, target } of file.relations(workbookPart)) {
    if (kind !== "calcChain") continue;
    file.unrelate(workbookPart, target);
    file.remove(target);
  }
}

interface WorkbookChange {
  readonly standing: readonly FileSheet[];
  readonly before: WorkbookDocument;
  readonly after: WorkbookDocument;
  readonly parts: ReadonlyMap<string, string>;
  /** True where cells of a sheet are other than they were. */
  readonly computes: boolean;
}

function writeWorkbookPart(file: FilePackage, part: string, { standing, before, after, parts, computes }: WorkbookChange): void {
  const xml = file.read(part)!;
  const root = parseXml(xml);
  const p = prefixOf(xml, root);
  const splices: Splice[] = [];
  const listed = (sheets: readonly DocumentSheet[]) => JSON.stringify(sheets.map(({ id, name, state }) => [id, name, state]));
  const isListed = listed(before.sheets) === listed(after.sheets) && standing.length > 0;
  const order = isListed ? standing : inOrder(standing, after.sheets);
  if (!isListed) splices.push(...sheetList(file, part, xml, root, p, standing, order, after, parts));
  const names = namesOf(root, p, standing, order, before, after);
  if (names !== null) splices.push(names);
  if (computes) splices.push(calculationOf(root, p, after));
  if (splices.length > 0) file.write(part, splice(xml, splices));
}

/** The sheets of the file in the order of the document; one that is a chart stays behind the sheet it stood behind. */
function inOrder(standing: readonly FileSheet[], sheets: readonly DocumentSheet[]): (FileSheet | DocumentSheet)[] {
  const order: (FileSheet | DocumentSheet)[] = [...sheets];
  standing.forEach((sheet, index) => {
    if (sheet.id !== null) return;
    const before = standing.slice(0, index).filter((one) => order.some((other) => (other.id === null ? other === one : other.id === one.id))).at(-1);
    const at = before === undefined ? 0 : order.findIndex((other) => other === before || (other.id !== null && other.id === before.id)) + 1;
    order.splice(at, 0, sheet);
  });
  return order;
}

function sheetList(
  file: FilePackage, part: string, xml: string, root: XmlNode, p: string, standing: readonly FileSheet[], order: readonly (FileSheet | DocumentSheet)[], after: WorkbookDocument,
  parts: ReadonlyMap<string, string>,
): Splice[] {
  const list = child(root, "sheets")!;
  const nodes = childrenOf(list, "sheet");
  const relations = file.relations(part);
  const nodeOf = new Map(nodes.map((node, index) => [standing[index]?.part, node]));
  let last = Math.max(0, ...nodes.map(({ attributes }) => Number(attributes["sheetId"]) || 0));
  const written = order.map((sheet) => {
    const target = "part" in sheet ? sheet.part : parts.get(sheet.id)!;
    const node = nodeOf.get(target);
    const shown = after.sheets.find(({ id }) => id === sheet.id);
    if (node === undefined) {
      const id = file.relate(part, relationTypes.worksheet, target);
      const state = shown === undefined || shown.state === "visible" ? undefined : shown.state;
      return `<${p}sheet${writeAttributes({ name: sheet.name, sheetId: (last += 1), state })} xmlns:r="http://schemas.openxmlformats.org/officeDocument/2006/relationships" r:id="${id}"/>`;
    }
    if (shown === undefined) return xml.slice(node.start, node.end);
    return `<${p}sheet${writeAttributes({ ...node.attributes, name: shown.name, state: shown.state === "visible" ? undefined : shown.state })}/>`;
  });
  const splices: Splice[] = [{ start: list.start, end: list.end, text: `<${p}sheets>${written.join("")}</${p}sheets>` }];
  // The sheet in front is told by its place: the same sheet, or else the first in sight.
  for (const view of descendants(root, "workbookView")) {
    const front = relations.find(({ id }) => id === relationId(nodes[numberOf(view.attributes["activeTab"]) ?? 0]?.attributes ?? {}))?.target;
    const place = order.findIndex((sheet) => ("part" in sheet ? sheet.part : parts.get(sheet.id)) === front);
    const isShown = after.sheets.find(({ id }) => id === order[place]?.id)?.state === "visible";
    const visible = order.findIndex((sheet) => after.sheets.find(({ id }) => id === sheet.id)?.state === "visible");
    const attributes = { ...view.attributes, activeTab: place >= 0 && isShown ? place : Math.max(0, visible), firstSheet: undefined };
    const opening = `<${p}workbookView${writeAttributes(attributes)}`;
    splices.push({ start: view.start, end: view.inner, text: view.inner === view.end ? `${opening}/>` : `${opening}>` });
  }
  return splices;
}

/** Names are written anew, each with all that the file says of it, where they, the titles of printed pages or the places of sheets changed; what only programs know stays. */
function namesOf(
  root: XmlNode, p: string, standing: readonly FileSheet[], order: readonly (FileSheet | DocumentSheet)[], before: WorkbookDocument, after: WorkbookDocument,
): Splice | null {
  const list = child(root, "definedNames");
  const nodes = childrenOf(list, "definedName");
  const placeNow = (old: number): number => order.findIndex((sheet) => sheet === standing[old] || (sheet.id !== null && sheet.id === standing[old]?.id));
  const titles = (document: WorkbookDocument) => document.sheets.map(({ id, name, print }) => [id, print.titleRows ? name : "", print.titleRows]);
  const changesTitles = JSON.stringify(titles(before)) !== JSON.stringify(titles(after));
  const changesNames = JSON.stringify(before.names) !== JSON.stringify(after.names);
  const moves = nodes.some(({ attributes }) => attributes["localSheetId"] !== undefined && placeNow(Number(attributes["localSheetId"])) !== Number(attributes["localSheetId"]));
  const changesFilter = ({ id, filters }: DocumentSheet): boolean => {
    const [was, is] = [before.sheets.find((sheet) => sheet.id === id)?.filters, filters].map((list) => JSON.stringify(ownFilter(list)?.area));
    return filters !== undefined && was !== is;
  };
  const filtered = after.sheets.filter(changesFilter);
  if (!changesTitles && !changesNames && !moves && filtered.length === 0) return null;
  const name = (attributes: Record<string, string | number | undefined>, text: string) => `<${p}definedName${writeAttributes(attributes)}>${escapeXml(text)}</${p}definedName>`;
  const placeOf = (id: string) => order.findIndex((sheet) => sheet.id === id);
  const sheetOf = (local: string | undefined) => (local === undefined ? undefined : (standing[Number(local)]?.id ?? undefined));
  const isOf = ({ name, localSheetId }: Attributes) => (one: DocumentName) => one.name === name && one.sheet === sheetOf(localSheetId);
  const stays = nodes.flatMap(({ attributes, text }) => {
    const isProgramName = (attributes["name"] ?? "").startsWith("_xlnm.");
    if (attributes["name"] === "_xlnm.Print_Titles" && changesTitles) return [];
    if (attributes["name"] === filterName && filtered.some(({ id }) => id === sheetOf(attributes["localSheetId"]))) return [];
    const now = isProgramName || text === "" ? undefined : after.names.find(isOf(attributes));
    if (!isProgramName && text !== "" && now === undefined) return [];
    const said = now === undefined || now.formula === before.names.find(isOf(attributes))?.formula ? text : toFileFormula(now.formula);
    const local = attributes["localSheetId"];
    const kept = isProgramName ? attributes : { ...attributes, comment: now?.comment };
    if (local === undefined) return [name(kept, said)];
    const place = placeNow(Number(local));
    return place < 0 ? [] : [name({ ...kept, localSheetId: place }, said)];
  });
  const added = after.names.filter((one) => !nodes.some(({ attributes, text }) => text !== "" && isOf(attributes)(one)));
  const ours = added.map((one) => {
    const localSheetId = one.sheet === undefined ? undefined : placeOf(one.sheet);
    return name({ name: one.name, comment: one.comment, localSheetId, hidden: one.hidden === true ? 1 : undefined }, toFileFormula(one.formula));
  });
  const titled = !changesTitles ? [] : after.sheets.flatMap(({ id, name: sheet, print: { titleRows } }) => {
    if (titleRows === undefined) return [];
    const quoted = `'${sheet.replaceAll("'", "''")}'`;
    const old = nodes.find(({ attributes }) => attributes["name"] === "_xlnm.Print_Titles" && placeNow(Number(attributes["localSheetId"])) === placeOf(id));
    const columns = old?.text.split(",").find((part) => /\$[A-Z]+:\$[A-Z]+$/.test(part));
    return [name({ name: "_xlnm.Print_Titles", localSheetId: placeOf(id) }, `${columns === undefined ? "" : `${columns},`}${quoted}!$${titleRows.row + 1}:$${titleRows.row + titleRows.rows}`)];
  });
  // Programs find the filter of a sheet by a name for its area too.
  const areas = filtered.flatMap(({ id, name: sheet, filters }) => {
    const area = ownFilter(filters)?.area;
    const ends = area === undefined ? "" : areaAddress(area).replace(/([A-Z]+)(\d+)/g, "$$$1$$$2");
    return area === undefined ? [] : [name({ name: filterName, localSheetId: placeOf(id), hidden: 1 }, `'${sheet.replaceAll("'", "''")}'!${ends}`)];
  });
  const all = [...stays, ...ours, ...titled, ...areas];
  const text = all.length === 0 ? "" : `<${p}definedNames>${all.join("")}</${p}definedNames>`;
  const sheets = ["externalReferences", "functionGroups", "sheets"].map((one) => child(root, one)).find((one) => one !== undefined)!;
  return list === undefined ? { start: sheets.end, end: sheets.end, text } : { start: list.start, end: list.end, text };
}

const filterName = "_xlnm._FilterDatabase";

/** Says that formulas are computed as today; and, where one has no result, that they are to be computed when the file is opened. */
function calculationOf(root: XmlNode, p: string, after: WorkbookDocument): Splice {
  const node = child(root, "calcPr");
  const isOpen = after.sheets.some(({ cells }) => [...cells.values()].some((line) => [...line.values()].some(({ formula, hasResult }) => formula !== undefined && hasResult === false)));
  const attributes = { ...node?.attributes, calcId: calculation, fullCalcOnLoad: isOpen || isOn(node?.attributes["fullCalcOnLoad"]) ? 1 : undefined };
  const text = `<${p}calcPr${writeAttributes(attributes)}/>`;
  if (node !== undefined) return { start: node.start, end: node.end, text };
  const before = ["definedNames", "externalReferences", "functionGroups", "sheets"].map((name) => child(root, name)).find((one) => one !== undefined)!;
  return { start: before.end, end: before.end, text };
}
