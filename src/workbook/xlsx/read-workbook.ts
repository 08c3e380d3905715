import { parseAreas, sameSheetName } from "../../sheet";
import type { DocumentName, DocumentSheet, WorkbookDocument } from "../document/workbook-document";
import { readSharedTexts } from "./cell-text";
import { FilePackage, type Relation } from "./file-package";
import { damaged, holdsMacros, limits, noWorkbook, tooLarge } from "./file-problems";
import { fromFileFormula } from "./formula-text";
import { colorReader, readLooks } from "./read-looks";
import { readSheet } from "./read-sheet";
import { RepeatedCells } from "./repeated-cells";
import { child, childrenOf, isOn, parseXml, relationId, type XmlNode } from "./xml";
import type { Deflater } from "./zip-archive";

/** A sheet as the workbook part lists it, whatever kind it is. */
export interface FileSheet {
  /** Id of the sheet in the document; null for a sheet that is a chart or a dialog. */
  readonly id: string | null;
  readonly name: string;
  readonly part: string;
}

/** A workbook file that is open: its parts, and what they say. */
export interface OpenFile {
  readonly file: FilePackage;
  readonly workbookPart: string;
  readonly sheets: readonly FileSheet[];
  readonly from1904: boolean;
  readonly document: WorkbookDocument;
  /** Parts of sheets in which more than cells may name a sheet. */
  readonly mayNameSheets: ReadonlySet<string>;
}

/** Opens the bytes of an .xlsx file; refuses with a sentence what is no workbook, locked, damaged or over the limits. */
export function readFile(bytes: Uint8Array, deflater?: Deflater): OpenFile {
  const open = readPackage(FilePackage.open(bytes, deflater));
  // What is damaged anywhere is known before anything is done.
  open.file.checkRest();
  return open;
}

/** Reads what the parts of a file say. */
export function readPackage(file: FilePackage): OpenFile {
  const workbookPart = findWorkbook(file);
  const root = parseXml(file.read(workbookPart)!);
  const relations = file.relations(workbookPart);
  const sheets = listSheets(file, root, relations);
  const from1904 = isOn(child(root, "workbookPr")?.attributes["date1904"]);
  const partText = (kind: string) => {
    const found = relations.find((one) => one.kind === kind && !one.isOutside);
    if (found === undefined) return null;
    const xml = file.read(found.target);
    // Without its looks a sheet would say something else; a text that is missing is missed by its cell.
    if (xml === null && kind === "styles") throw damaged();
    return xml;
  };
  const readColor = colorReader(partText("theme"));
  const { cells: looks, conditional } = readLooks(partText("styles"), readColor);
  const texts = readSharedTexts(partText("sharedStrings"), readColor);
  const context = { texts, looks, from1904, repeated: new RepeatedCells(), count: { cells: 0 }, mayNameSheets: new Set<string>(), conditional, readColor };
  const names = readNames(root, sheets);
  const read = sheets.flatMap(({ id, name, part, state }) => {
    if (id === null) return [];
    const sheet = readSheet(file, { id, name, part, state }, file.read(part)!, context);
    return [withTitles(sheet, names.titles.get(id))];
  });
  if (read.length === 0) throw noWorkbook();
  return { file, workbookPart, sheets, from1904, document: { sheets: read, looks, names: names.names }, mayNameSheets: context.mayNameSheets };
}

function findWorkbook(file: FilePackage): string {
  const part = mainPart(file);
  const type = file.typeOf(part);
  if (!file.has(part) || part.endsWith(".bin") || /wordprocessing|presentation|drawing/.test(type)) throw noWorkbook();
  if (/macroEnabled/i.test(type)) throw holdsMacros();
  return part;
}

/** Finds the part of the workbook by the relations of the whole file; where nobody can read them, by where every program puts it. */
function mainPart(file: FilePackage): string {
  const usual = "xl/workbook.xml";
  try {
    return file.relations("").find(({ kind, isOutside }) => kind === "officeDocument" && !isOutside)?.target ?? usual;
  } catch (thrown) {
    if (!file.has(usual)) throw thrown;
    return usual;
  }
}

interface StatedSheet extends FileSheet {
  readonly state: DocumentSheet["state"];
}

function listSheets(file: FilePackage, root: XmlNode, relations: readonly Relation[]): StatedSheet[] {
  const listed = childrenOf(child(root, "sheets"), "sheet");
  if (listed.length === 0) throw noWorkbook();
  if (listed.length > limits.sheets) throw tooLarge(`has ${listed.length} sheets; ${limits.sheets} is the most`);
  const sheets = listed.map(({ attributes }, index): StatedSheet => {
    const { state, name = "" } = attributes;
    const id = relationId(attributes);
    // A program that left a sheet out, and its name in: nothing was ever there.
    if (!id) return { id: null, name, part: `nowhere ${index}`, state: "hidden" };
    const relation = relations.find((one) => one.id === id);
    if (relation === undefined || !file.has(relation.target)) throw damaged();
    return {
      id: relation.kind === "worksheet" ? `sheet${index + 1}` : null,
      name,
      part: relation.target,
      state: state === "hidden" || state === "veryHidden" ? state : "visible",
    };
  });
  if (sheets.some(({ name }, index) => sheets.slice(0, index).some((other) => sameSheetName(other.name, name)))) throw damaged();
  return sheets;
}

function readNames(root: XmlNode, sheets: readonly FileSheet[]): { names: DocumentName[]; titles: Map<string, string> } {
  const titles = new Map<string, string>();
  const names = childrenOf(child(root, "definedNames"), "definedName").flatMap(({ attributes, text }): DocumentName[] => {
    const { name = "", localSheetId, hidden, comment } = attributes;
    const sheet = localSheetId === undefined ? undefined : (sheets[Number(localSheetId)]?.id ?? undefined);
    if (name === "_xlnm.Print_Titles" && sheet !== undefined) titles.set(sheet, text);
    // Print areas and titles belong to the print set-up, filters to the sheet.
    if (name.startsWith("_xlnm.") || text === "") return [];
    const isReference = /^(?:'(?:[^']|'')+'|[\w.]+)!\$?[A-Z]+\$?\d+(?::\$?[A-Z]+\$?\d+)?$/i.test(text);
    return [{ name, formula: isReference ? text : fromFileFormula(text), sheet, hidden: isOn(hidden) || undefined, comment }];
  });
  return { names, titles };
}

/** Adds the rows that are printed again on every page, which the workbook says by a name. */
function withTitles(sheet: DocumentSheet, titles: string | undefined): DocumentSheet {
  const rows = (titles ?? "").split(",").map((part) => /!?(\$\d+:\$\d+)$/.exec(part)?.[1]).find((part) => part !== undefined);
  const area = rows === undefined ? undefined : parseAreas(rows)[0];
  return area === undefined ? sheet : { ...sheet, print: { ...sheet.print, titleRows: { row: area.row, rows: area.rows } } };
}
