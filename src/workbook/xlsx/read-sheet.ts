import { parseAreas, sheetSize, type Area, type PrintPlan, type TablePlan } from "../../sheet";
import { cellAt, putCell, type DocumentSheet, type FormulaFormat, type LineSetting, type Look, type Note } from "../document/workbook-document";
import { CellReader, type CellContext } from "./read-cells";
import { readCellText } from "./cell-text";
import { limits, tooLarge } from "./file-problems";
import type { FilePackage } from "./file-package";
import { paperOf } from "./paper-sizes";
import { readFilter, readTableFilter } from "./read-filter";
import type { ReadColor } from "./read-looks";
import { readFormulaFormat, readTypingRule, type RawFormat, type RawRule } from "./read-rules";
import { child, childrenOf, descendants, isOn, numberOf, parseXml, relationId, standingAlone, walkXml, type Attributes, type XmlNode } from "./xml";

/** What a sheet needs of its workbook to be read. */
export interface SheetContext extends CellContext {
  /** Parts of sheets in which more than cells may name a sheet: filled as they are read. */
  readonly mayNameSheets: Set<string>;
  readonly conditional: readonly Look[];
  readonly readColor: ReadColor;
}

/** A sheet as its workbook lists it. */
export interface ListedSheet {
  readonly id: string;
  readonly name: string;
  readonly state: DocumentSheet["state"];
  readonly part: string;
}

/** Reads one sheet of cells, with its tables, notes and drawings. */
export function readSheet(file: FilePackage, { id, name, state, part }: ListedSheet, xml: string, context: SheetContext): DocumentSheet {
  if (context.count.cells + countCells(xml) > limits.cells) throw tooLarge(`has more than ${limits.cells.toLocaleString("en")} cells`);
  const reader = new CellReader(context);
  const outside = new SettingsReader(context);
  const path: string[] = [];
  let ownFilter: { readonly start: number; end: number } | undefined;
  walkXml(xml, {
    open(element, attributes, start, end) {
      if (path.length === 1 && element === "autoFilter") ownFilter = { start, end };
      if (path[1] === "sheetData" && path.length > 2) reader.open(element, attributes);
      else if (path[1] === "sheetData" && element === "row") outside.row(reader.openRow(attributes), attributes);
      else outside.open(path, element, standingAlone(attributes));
      path.push(element);
    },
    text(text) {
      if (path[1] === "sheetData") reader.text(text);
      else outside.text(text);
    },
    close(element, _start, end) {
      path.pop();
      if (path.length === 1 && element === "autoFilter" && ownFilter !== undefined) ownFilter.end = end;
      if (path[1] === "sheetData") reader.close(element);
      else outside.close(path, element);
    },
  });
  if (outside.mayNameSheets) context.mayNameSheets.add(part);
  const { cells } = reader;
  const relations = file.relations(part);
  for (const { attributes } of outside.links) {
    const area = parseAreas(attributes["ref"] ?? "")[0];
    const cell = area === undefined ? undefined : cellAt(cells, area.row, area.column);
    const address = relations.find((one) => one.id === relationId(attributes))?.target;
    if (area !== undefined && cell !== undefined && address !== undefined) putCell(cells, area.row, area.column, { ...cell, link: address });
  }
  const textsOf = (kind: string) => relations.filter((one) => one.kind === kind && !one.isOutside && file.has(one.target)).map(({ target }) => file.read(target)!);
  const partsOf = (kind: string) => textsOf(kind).map(parseXml);
  const ofSheet = ownFilter === undefined ? "" : xml.slice(ownFilter.start, ownFilter.end);
  const filters = [ofSheet === "" ? null : readFilter(parseXml(ofSheet), ofSheet), ...textsOf("table").map((table) => readTableFilter(parseXml(table), table))];
  return {
    id, name, state, cells,
    tabColor: outside.tabColor,
    rows: outside.rows,
    columns: outside.columns,
    defaultWidth: outside.defaultWidth,
    defaultHeight: outside.defaultHeight,
    merges: outside.merges,
    frozen: outside.frozen,
    hidesGrid: outside.hidesGrid,
    isProtected: outside.isProtected,
    typingRules: outside.rules.flatMap((rule) => readTypingRule(rule)),
    ...readFormats(outside.formats, context.conditional),
    tables: partsOf("table").flatMap(readTable),
    filters: filters.filter((one) => one !== null),
    print: outside.print,
    notes: partsOf("comments").flatMap(readNotes),
    drawings: partsOf("drawing").reduce((sum, drawing) => sum + drawing.children.filter((one) => one.name.endsWith("Anchor") || one.name === "AlternateContent").length, 0),
  };
}

/** Counts the cells of a sheet as nearly every program writes them, at a glance: reading a million and a half only to refuse them takes its time. */
function countCells(xml: string): number {
  let count = 0;
  for (let at = xml.indexOf(openingCell); at >= 0; at = xml.indexOf(openingCell, at + openingCell.length)) count += 1;
  return count;
}

const openingCell = "<c ";

/** Gathers what a sheet says beside its cells. */
class SettingsReader {
  tabColor: string | undefined;
  readonly rows: LineSetting[] = [];
  readonly columns: LineSetting[] = [];
  defaultWidth: number | undefined;
  defaultHeight: number | undefined;
  readonly merges: Area[] = [];
  frozen = { rows: 0, columns: 0 };
  hidesGrid = false;
  isProtected = false;
  readonly rules: RawRule[] = [];
  readonly formats: RawFormat[] = [];
  readonly links: { readonly attributes: Attributes }[] = [];
  private setUp: Attributes = {};
  private readonly breaks: number[] = [];
  private readonly headers: { header?: string; footer?: string } = {};
  private fitsPage = false;
  /** Whether anything that is read here, as a link or a rule, may name a sheet, which takes an exclamation mark. */
  mayNameSheets = false;
  private sqref = "";
  private words = "";

  constructor(private readonly context: SheetContext) {}

  row(row: number, attributes: Attributes): void {
    const size = numberOf(attributes["ht"]);
    const look = isOn(attributes["customFormat"]) ? this.lookOf(attributes["s"]) : undefined;
    const hidden = isOn(attributes["hidden"]) || undefined;
    if (size === undefined && hidden === undefined && look === undefined) return;
    // Rows that are alike stand side by side, hundreds on a tab.
    const before = this.rows.at(-1);
    const goesOn = before?.last === row - 1 && before.size === size && before.hidden === hidden && before.look === look;
    if (goesOn) this.rows.pop();
    this.rows.push({ first: goesOn ? before.first : row, last: row, size, hidden, look });
  }

  open(path: readonly string[], element: string, attributes: Attributes): void {
    this.words = "";
    this.mayNameSheets ||= Object.values(attributes).some((value) => value.includes("!"));
    const section = path[1] ?? element;
    switch (section === "extLst" ? element : `${section}/${element}`) {
      case "sheetPr/tabColor":
        this.tabColor = this.context.readColor({ name: element, attributes, children: [], text: "", start: 0, inner: 0, innerEnd: 0, end: 0 });
        break;
      case "sheetPr/pageSetUpPr":
        this.fitsPage = isOn(attributes["fitToPage"]);
        break;
      case "sheetViews/sheetView":
        this.hidesGrid = !isOn(attributes["showGridLines"], true);
        break;
      case "sheetViews/pane":
        if (attributes["state"]?.startsWith("frozen")) this.frozen = { rows: wholeNumber(attributes["ySplit"], sheetSize.rows), columns: wholeNumber(attributes["xSplit"], sheetSize.columns) };
        break;
      case "sheetFormatPr/sheetFormatPr":
        this.defaultWidth = numberOf(attributes["defaultColWidth"]);
        this.defaultHeight = numberOf(attributes["defaultRowHeight"]);
        break;
      case "cols/col": {
        const [first, last] = [wholeNumber(attributes["min"], sheetSize.columns) - 1, wholeNumber(attributes["max"], sheetSize.columns) - 1];
        if (first < 0 || last < first) break;
        this.columns.push({ first, last, size: numberOf(attributes["width"]), hidden: isOn(attributes["hidden"]) || undefined, look: this.lookOf(attributes["style"]) });
        break;
      }
      case "sheetProtection/sheetProtection":
        this.isProtected = isOn(attributes["sheet"]);
        break;
      case "mergeCells/mergeCell":
        this.merges.push(...parseAreas(attributes["ref"] ?? ""));
        if (this.merges.length > limits.merges) throw tooLarge(`joins cells in more than ${limits.merges.toLocaleString("en")} places on one sheet`);
        break;
      case "conditionalFormatting/conditionalFormatting":
        this.sqref = attributes["sqref"] ?? "";
        break;
      case "conditionalFormatting/cfRule":
        this.formats.push({ attributes, sqref: this.sqref, formulas: [] });
        break;
      case "dataValidations/dataValidation":
      case "dataValidation":
        this.rules.push({ attributes, sqref: attributes["sqref"] ?? "", formulas: [] });
        break;
      case "hyperlinks/hyperlink":
        this.links.push({ attributes });
        break;
      case "pageSetup/pageSetup":
        this.setUp = attributes;
        break;
      case "rowBreaks/brk":
        this.breaks.push(wholeNumber(attributes["id"], sheetSize.rows));
    }
    if (this.rules.length + this.formats.length > limits.rules) throw tooLarge(`has more than ${limits.rules.toLocaleString("en")} rules on one sheet`);
  }

  text(text: string): void {
    this.words += text;
    this.mayNameSheets ||= text.includes("!");
  }

  close(path: readonly string[], element: string): void {
    const [, section, , parent] = path;
    if (element === "oddHeader") this.headers.header = this.words;
    if (element === "oddFooter") this.headers.footer = this.words;
    if (section === "conditionalFormatting" && element === "formula") this.formats.at(-1)?.formulas.push(this.words);
    if (section === "dataValidations" && (element === "formula1" || element === "formula2")) this.rules.at(-1)?.formulas.push(this.words);
    // Rules that look at other sheets may stand in an extension, where formula and areas are elements of their own.
    if (section === "extLst" && parent === "dataValidations") {
      const rule = this.rules.at(-1);
      if (rule !== undefined && element === "f") rule.formulas.push(this.words);
      if (rule !== undefined && element === "sqref") rule.sqref = this.words;
    }
  }

  get print(): PrintPlan {
    const { header, footer } = this.headers;
    const paper = paperOf(this.setUp["paperSize"]);
    return {
      orientation: this.setUp["orientation"] === "landscape" ? "landscape" : "portrait",
      fitToWidth: this.fitsPage && (numberOf(this.setUp["fitToWidth"]) ?? 1) === 1,
      ...(paper && { paper }),
      ...(header && { header: centred(header) }),
      ...(footer && { footer: centred(footer) }),
      breaksBefore: this.breaks,
    };
  }

  private lookOf(place: string | undefined): number | undefined {
    const look = numberOf(place);
    return look === undefined || this.context.looks[look] === undefined ? undefined : look;
  }
}

/** Takes off the code for the middle of the page where a header has nothing else. */
function centred(text: string): string {
  return text.startsWith("&C") && !/&[LR]/.test(text) ? text.slice(2) : text;
}

function wholeNumber(text: string | undefined, most: number): number {
  return Math.min(most, Math.max(0, Math.floor(numberOf(text) ?? 0)));
}

function readFormats(raw: readonly RawFormat[], looks: readonly Look[]): { formats: FormulaFormat[]; otherFormats: number } {
  const found = raw.map((format) => ({ priority: numberOf(format.attributes["priority"]) ?? 0, format: readFormulaFormat(format, looks) }));
  const formats = found.sort((a, b) => a.priority - b.priority).flatMap(({ format }) => (format === null ? [] : [format]));
  return { formats, otherFormats: raw.length - formats.length };
}

function readTable({ attributes }: XmlNode): TablePlan[] {
  const area = parseAreas(attributes["ref"] ?? "")[0];
  const name = attributes["displayName"] ?? attributes["name"];
  const totalRows = numberOf(attributes["totalsRowCount"]) ?? 0;
  const isHeadless = attributes["headerRowCount"] === "0";
  return area === undefined || name === undefined ? [] : [{ name, area, ...(totalRows > 0 && totalRows < area.rows && { totalRows }), ...(isHeadless && { isHeadless }) }];
}

function readNotes(comments: XmlNode): Note[] {
  const authors = childrenOf(child(comments, "authors"), "author");
  return childrenOf(child(comments, "commentList"), "comment").flatMap((comment) => {
    const area = parseAreas(comment.attributes["ref"] ?? "")[0];
    const text = descendants(child(comment, "text") ?? comment, "t").map((one) => readCellText(one.text)).join("");
    // What stands for a thread of comments has the thread as its author: [MS-XLSX], threaded comments.
    const isThread = authors[Number(comment.attributes["authorId"])]?.text.startsWith("tc=") === true ? true : undefined;
    return area === undefined ? [] : [{ row: area.row, column: area.column, text, isThread }];
  });
}
