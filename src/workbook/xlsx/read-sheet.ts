import { parseAreas, sheetSize, type Area, type PrintPlan, type TablePlan } from "../../sheet";
import type { DocumentSheet, LineSetting, Look, Note } from "../document/workbook-document";
import { CellReader, type CellContext } from "./read-cells";
import { putLinks } from "./cell-links";
import { readCellText } from "./cell-text";
import { limits, tooLarge } from "./file-problems";
import type { FilePackage } from "./file-package";
import { paperOf } from "./paper-sizes";
import { readFilter, readTableFilter } from "./read-filter";
import { readBars, readFormats } from "./read-formats";
import { readTypingRule, type RawRule } from "./read-rules";
import { child, childrenOf, descendants, isOn, numberOf, parseXml, standingAlone, walkXml, type Attributes, type XmlNode } from "./xml";

/** What a sheet needs of its workbook to be read. */
export interface SheetContext extends CellContext {
  /** Parts of sheets in which more than cells may name a sheet: filled as they are read. */
  readonly mayNameSheets: Set<string>;
  readonly conditional: readonly Look[];
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
  const reader = new CellReader(context, xml);
  const outside = new SettingsReader(context);
  const path: string[] = [];
  const places: { readonly name: string; readonly start: number; end: number }[] = [];
  walkXml(xml, {
    open(element, attributes, start, end) {
      if (path.length === 1 && wholeElements.has(element)) places.push({ name: element, start, end });
      if (path[1] === "sheetData" && path.length > 2) reader.open(element, attributes, start);
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
      if (path.length === 1 && wholeElements.has(element)) places.at(-1)!.end = end;
      if (path[1] === "sheetData") reader.close(element, end);
      else outside.close(path, element);
    },
  });
  if (outside.mayNameSheets) context.mayNameSheets.add(part);
  const { cells } = reader;
  const relations = file.relations(part);
  putLinks(cells, outside.links, relations);
  const textsOf = (kind: string) => relations.filter((one) => one.kind === kind && !one.isOutside && file.has(one.target)).map(({ target }) => file.read(target)!);
  const partsOf = (kind: string) => textsOf(kind).map(parseXml);
  const textsIn = (element: string) => places.filter((place) => place.name === element).map(({ start, end }) => xml.slice(start, end));
  const [ofSheet = ""] = textsIn("autoFilter");
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
    zoom: outside.zoom,
    isProtected: outside.isProtected,
    typingRules: outside.rules.flatMap((rule) => readTypingRule(rule)),
    ...formatsOf(textsIn("conditionalFormatting"), textsIn("extLst")[0], context),
    tables: partsOf("table").flatMap(readTable),
    filters: filters.filter((one) => one !== null),
    print: outside.print,
    notes: partsOf("comments").flatMap(readNotes),
    drawings: partsOf("drawing").reduce((sum, drawing) => sum + drawing.children.filter((one) => one.name.endsWith("Anchor") || one.name === "AlternateContent").length, 0),
  };
}

/** Elements of a sheet that are read as a whole. */
const wholeElements: ReadonlySet<string> = new Set(["autoFilter", "conditionalFormatting", "extLst"]);

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
  zoom: number | undefined;
  isProtected = false;
  readonly rules: RawRule[] = [];
  private formats = 0;
  readonly links: Attributes[] = [];
  private setUp: Attributes = {};
  private readonly breaks: number[] = [];
  private readonly headers: { header?: string; footer?: string } = {};
  private fitsPage = false;
  /** Whether anything that is read here, as a link or a rule, may name a sheet, which takes an exclamation mark. */
  mayNameSheets = false;
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
        this.zoom = numberOf(attributes["zoomScale"]);
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
      case "conditionalFormatting/cfRule":
        this.formats += 1;
        break;
      case "dataValidations/dataValidation":
      case "dataValidation":
        this.rules.push({ attributes, sqref: attributes["sqref"] ?? "", formulas: [] });
        break;
      case "hyperlinks/hyperlink":
        this.links.push(attributes);
        break;
      case "pageSetup/pageSetup":
        this.setUp = attributes;
        break;
      case "rowBreaks/brk":
        this.breaks.push(wholeNumber(attributes["id"], sheetSize.rows));
    }
    if (this.rules.length + this.formats > limits.rules) throw tooLarge(`has more than ${limits.rules.toLocaleString("en")} rules on one sheet`);
  }

  text(text: string): void {
    this.words += text;
    this.mayNameSheets ||= text.includes("!");
  }

  close(path: readonly string[], element: string): void {
    const [, section, , parent] = path;
    if (element === "oddHeader") this.headers.header = this.words;
    if (element === "oddFooter") this.headers.footer = this.words;
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

function formatsOf(elements: readonly string[], extensions: string | undefined, { conditional, readColor }: SheetContext): Pick<DocumentSheet, "formats" | "otherFormats"> {
  const bars = extensions?.includes("dataBar") !== true ? new Map() : readBars(parseXml(extensions), readColor);
  const found = elements.flatMap((element) => readFormats(parseXml(element), { looks: conditional, readColor, bars }));
  const formats = found.sort((one, other) => one.priority - other.priority).flatMap(({ format }) => format ?? []);
  return { formats, otherFormats: found.length - formats.length };
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
