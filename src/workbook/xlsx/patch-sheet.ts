import { areaAddress, cellAddress, type Area, type Margins } from "../../sheet";
import { ownFilter } from "../document/sheet-filter";
import type { CellGrid, DocumentSheet, LineSetting, Look } from "../document/workbook-document";
import { appendTo } from "./file-package";
import { outlineSheet, type SheetOutline } from "./sheet-outline";
import { blankSheet, closeSheet, openSheet } from "./new-file";
import { paperSizes } from "./paper-sizes";
import { cellSplices, changedCells, writeRows, type CellWriting } from "./write-cells";
import { writeFilter } from "./write-filter";
import { withBars, writeFormats } from "./write-formats";
import { writeTypingRules } from "./write-rules";
import { child, escapeXml, parseXml, splice, without, writeAttributes, type Attributes, type Splice } from "./xml";

/** What writing a sheet needs of the workbook. */
export interface SheetWriting extends CellWriting {
  readonly addConditionalLook: (look: Look) => number;
}

/** The elements of a sheet in the order they must have: ECMA-376 part 1, section 18.3.1.99. */
const order: readonly string[] = [
  "sheetPr", "dimension", "sheetViews", "sheetFormatPr", "cols", "sheetData", "sheetCalcPr", "sheetProtection", "protectedRanges", "scenarios", "autoFilter", "sortState",
  "dataConsolidate", "customSheetViews", "mergeCells", "phoneticPr", "conditionalFormatting", "dataValidations", "hyperlinks", "printOptions", "pageMargins", "pageSetup",
  "headerFooter", "rowBreaks", "colBreaks", "customProperties", "cellWatches", "ignoredErrors", "smartTags", "drawing", "legacyDrawing", "legacyDrawingHF", "drawingHF",
  "picture", "oleObjects", "controls", "webPublishItems", "tableParts", "extLst",
];

/** Writes an element of a sheet anew; `standing` is the one that is there. */
type WriteSection = (standing: string | undefined, prefix: string) => string;

/** Writes the text of a new sheet in pieces, from front to back. */
export function writeSheet(sheet: DocumentSheet, writing: SheetWriting): string[] {
  const sections = changedSections({ ...blankSheet, id: sheet.id, name: sheet.name }, sheet, writing);
  const formats = writeFormats("", [], sheet.formats, [], writing.addConditionalLook);
  sections.push(["conditionalFormatting", () => formats.elements], ["extLst", () => withBars("", "", formats)]);
  const data = order.indexOf("sheetData");
  const write = (isMeant: (rank: number) => boolean) => inOrder(sections).flatMap(([name, section]) => (isMeant(order.indexOf(name)) ? [section(undefined, "")] : []));
  const rows = writeRows("", sheet.cells, changedRowSettings([], sheet.rows), writing);
  return [openSheet, ...write((rank) => rank < data), "<sheetData>", ...rows, "</sheetData>", ...write((rank) => rank > data), closeSheet];
}

/**
 * Turns the text of a sheet into one that says what `after` says, where that differs from `before`; everything else stays as it stands.
 *
 * Answers the very text where nothing differs. Tables, drawings and notes are parts of their own.
 */
export function patchSheet(xml: string, before: DocumentSheet, after: DocumentSheet, writing: SheetWriting): string {
  const cells = changedCells(before.cells, after.cells);
  const rows = changedRowSettings(before.rows, after.rows);
  const sections = changedSections(before, after, writing);
  const formats = differs(before, after, "formats");
  if (cells.size === 0 && rows.size === 0 && sections.length === 0 && !formats) return xml;
  const outline = outlineSheet(xml, (row) => cells.has(row));
  if (!outline.sections.some(({ name }) => name === "sheetData")) return patchSheet(withData(xml, outline), before, after, writing);
  const { prefix } = outline;
  const written = cellSplices(xml, outline, cells, rows, after.cells, writing);
  const splices = [...outsideOf(written, outline.numbering), ...written];
  const extension = { change: (standing: string) => standing };
  if (formats) {
    const standing = outline.sections.filter(({ name }) => name === "conditionalFormatting");
    const written = writeFormats(prefix, before.formats, after.formats, standing.map(({ start, end }) => xml.slice(start, end)), writing.addConditionalLook);
    for (const { start, end } of standing) splices.push({ start, end, text: "" });
    sections.push(["conditionalFormatting", () => written.elements]);
    extension.change = (text) => withBars(text, prefix, written);
  }
  const rules = differs(before, after, "typingRules");
  if (formats || rules) sections.push(["extLst", (text = "") => extension.change(rules ? withoutRules(text) : text)]);
  // What goes in at one place goes in in the order that it must have.
  for (const [name, write] of inOrder(sections)) {
    const standing = name === "conditionalFormatting" ? undefined : outline.sections.find((section) => section.name === name);
    const text = write(standing === undefined ? undefined : xml.slice(standing.start, standing.end), prefix);
    splices.push(standing === undefined ? { ...insertionOf(outline, name), text } : { start: standing.start, end: standing.end, text });
  }
  return splice(xml, splices.filter(({ start, end, text }) => start !== end || text !== ""));
}

/** Leaves out what lies inside a part that is written anew: rows and cells that are say their places themselves. */
function outsideOf(written: readonly Splice[], numbering: readonly Splice[]): Splice[] {
  const parts = written.filter(({ start, end }) => start < end).sort((a, b) => a.start - b.start);
  let next = 0;
  return numbering.filter(({ start }) => {
    while (next < parts.length && parts[next]!.end <= start) next += 1;
    return next === parts.length || start <= parts[next]!.start;
  });
}

function inOrder<Section extends readonly [name: string, ...unknown[]]>(sections: readonly Section[]): Section[] {
  return [...sections].sort(([one], [other]) => order.indexOf(one) - order.indexOf(other));
}

function differs(before: DocumentSheet, after: DocumentSheet, ...keys: (keyof DocumentSheet)[]): boolean {
  return keys.some((key) => before[key] !== after[key] && JSON.stringify(before[key]) !== JSON.stringify(after[key]));
}

/** Lists the elements of a sheet that are to be written anew, rows and conditional formats apart. */
function changedSections(before: DocumentSheet, after: DocumentSheet, writing: SheetWriting): [name: string, write: WriteSection][] {
  const changed = (...keys: (keyof DocumentSheet)[]) => differs(before, after, ...keys);
  const used = before.cells === after.cells ? "" : areaAddress(extentOf(after.cells));
  const sections: [string, WriteSection][] = [];
  if (changed("tabColor") || before.print.fitToWidth !== after.print.fitToWidth) sections.push(["sheetPr", (standing, prefix) => writeProperties(standing, prefix, after)]);
  if (used !== "" && used !== areaAddress(extentOf(before.cells))) sections.push(["dimension", (_standing, prefix) => `<${prefix}dimension ref="${used}"/>`]);
  if (changed("frozen", "hidesGrid", "zoom")) sections.push(["sheetViews", (standing, prefix) => writeView(standing, prefix, after)]);
  if (changed("columns")) sections.push(["cols", (_standing, prefix) => writeColumns(prefix, after.columns, writing)]);
  const [filtered, filter] = [ownFilter(before.filters), ownFilter(after.filters)];
  if (after.filters !== undefined && JSON.stringify(filtered) !== JSON.stringify(filter)) {
    sections.push(["autoFilter", (standing, prefix) => (filter?.area === undefined ? "" : writeFilter(standing, prefix, filter.area, filter.columns))]);
  }
  if (changed("merges")) sections.push(["mergeCells", (_standing, prefix) => writeMerges(prefix, after.merges)]);
  if (changed("typingRules")) sections.push(["dataValidations", (_standing, prefix) => writeTypingRules(prefix, after.typingRules)]);
  if (changed("print")) {
    if (after.print.marginsMm !== undefined) sections.push(["pageMargins", (_standing, prefix) => writeMargins(prefix, after.print.marginsMm!)]);
    sections.push(["pageSetup", (standing, prefix) => writePageSetup(standing, prefix, after)]);
    sections.push(["headerFooter", (standing, prefix) => writeHeaders(standing, prefix, after)]);
    sections.push(["rowBreaks", (_standing, prefix) => writeBreaks(prefix, after.print.breaksBefore)]);
  }
  return sections;
}

/** Gives a sheet that has no list of rows an empty one. */
function withData(xml: string, outline: SheetOutline): string {
  const { root, prefix } = outline;
  const data = `<${prefix}sheetData/>`;
  return splice(xml, [root.innerEnd === root.end ? appendTo(xml, { ...root, name: "worksheet" }, data) : { ...insertionOf(outline, "sheetData"), text: data }]);
}

/** Finds the place of an element that is not there yet: behind the last one that must come before it. */
export function insertionOf({ sections, root }: SheetOutline, name: string): { readonly start: number; readonly end: number } {
  const rank = order.indexOf(name);
  const before = sections.filter((section) => order.indexOf(section.name) <= rank && section.name !== name && order.includes(section.name)).at(-1);
  const at = before?.end ?? root.inner;
  return { start: at, end: at };
}

/** Takes the rules for typing out of the extensions of a sheet. */
function withoutRules(extensions: string): string {
  if (extensions === "") return "";
  return splice(extensions, parseXml(extensions).children.filter((one) => child(one, "dataValidations") !== undefined).map(({ start, end }) => ({ start, end, text: "" })));
}

function changedRowSettings(before: readonly LineSetting[], after: readonly LineSetting[]): Map<number, LineSetting | null> {
  const [old, now] = [before, after].map((settings) => new Map(settings.flatMap((one) => Array.from({ length: one.last - one.first + 1 }, (_, at) => [one.first + at, one] as const))));
  const changed = new Map<number, LineSetting | null>();
  const text = (one: LineSetting | undefined) => JSON.stringify(one === undefined ? null : { ...one, first: 0, last: 0 });
  for (const [row, setting] of now!) if (text(old!.get(row)) !== text(setting)) changed.set(row, setting);
  for (const row of old!.keys()) if (!now!.has(row)) changed.set(row, null);
  return changed;
}

function extentOf(cells: CellGrid): Area {
  let [top, left, bottom, right] = [Infinity, Infinity, 0, 0];
  for (const [row, line] of cells) {
    for (const column of line.keys()) {
      [top, left] = [Math.min(top, row), Math.min(left, column)];
      [bottom, right] = [Math.max(bottom, row), Math.max(right, column)];
    }
  }
  return top === Infinity ? { row: 0, column: 0, rows: 1, columns: 1 } : { row: top, column: left, rows: bottom - top + 1, columns: right - left + 1 };
}

function writeProperties(standing: string | undefined, prefix: string, { tabColor, print }: DocumentSheet): string {
  const node = standing === undefined ? undefined : parseXml(standing);
  const color = tabColor === undefined ? "" : `<${prefix}tabColor rgb="FF${tabColor.slice(1).toUpperCase()}"/>`;
  const outlines = child(node, "outlinePr");
  const page = { ...child(node, "pageSetUpPr")?.attributes, fitToPage: print.fitToWidth ? 1 : undefined };
  const kept = outlines === undefined ? "" : standing!.slice(outlines.start, outlines.end);
  return `<${prefix}sheetPr${writeAttributes(node?.attributes ?? {})}>${color}${kept}<${prefix}pageSetUpPr${writeAttributes(page)}/></${prefix}sheetPr>`;
}

function writeView(standing: string | undefined, prefix: string, { frozen: { rows, columns }, hidesGrid, zoom = 100 }: DocumentSheet): string {
  const view = standing === undefined ? undefined : child(parseXml(standing), "sheetView");
  const rest = without(view?.attributes ?? { workbookViewId: "0" }, "showGridLines", "topLeftCell", "zoomScale", "zoomScaleNormal");
  const pane = rows === 0 && columns === 0 ? "" : `<${prefix}pane${writeAttributes({
    xSplit: columns || undefined,
    ySplit: rows || undefined,
    topLeftCell: cellAddress({ row: rows, column: columns }),
    activePane: columns === 0 ? "bottomLeft" : rows === 0 ? "topRight" : "bottomRight",
    state: "frozen",
  })}/>`;
  const attributes = { ...(hidesGrid && { showGridLines: 0 }), ...rest, ...(zoom !== 100 && { zoomScale: zoom, zoomScaleNormal: zoom }) };
  return `<${prefix}sheetViews><${prefix}sheetView${writeAttributes(attributes)}>${pane}</${prefix}sheetView></${prefix}sheetViews>`;
}

/** Characters of a column that says nothing of its width, as programs write it. */
const standardWidth = 9.14;

function writeColumns(prefix: string, columns: readonly LineSetting[], { styleOf }: CellWriting): string {
  if (columns.length === 0) return "";
  const written = [...columns].sort((a, b) => a.first - b.first).map(({ first, last, size, hidden, look }) => {
    const style = look === undefined ? undefined : styleOf(look);
    const sized = { width: size ?? standardWidth, customWidth: size === undefined ? undefined : 1 };
    return `<${prefix}col${writeAttributes({ min: first + 1, max: last + 1, ...sized, style, hidden: hidden === true ? 1 : undefined })}/>`;
  });
  return `<${prefix}cols>${written.join("")}</${prefix}cols>`;
}

function writeMerges(prefix: string, merges: readonly Area[]): string {
  if (merges.length === 0) return "";
  return `<${prefix}mergeCells count="${merges.length}">${merges.map((area) => `<${prefix}mergeCell ref="${areaAddress(area)}"/>`).join("")}</${prefix}mergeCells>`;
}

function writePageSetup(standing: string | undefined, prefix: string, { print }: DocumentSheet): string {
  const old: Attributes = standing === undefined ? {} : parseXml(standing).attributes;
  // One page wide, as many pages long as it takes: a scale would part the columns where the font of the file is missing and another is wider.
  const fit = print.fitToWidth ? { fitToWidth: "1", fitToHeight: "0" } : {};
  const scale = print.scale === undefined ? {} : { scale: String(print.scale) };
  const paper = print.paper === undefined ? {} : { paperSize: paperSizes[print.paper] };
  const first = print.firstPage === undefined ? {} : { firstPageNumber: String(print.firstPage), useFirstPageNumber: "1" };
  return `<${prefix}pageSetup${writeAttributes({ ...old, ...fit, ...scale, ...paper, ...first, orientation: print.orientation })}/>`;
}

/** Margins stand in inches: ECMA-376 part 1, section 18.3.1.62. */
function writeMargins(prefix: string, { left, right, top, bottom, header = 0, footer = 0 }: Margins): string {
  const inches = (millimetres: number): string => String(Number((millimetres / 25.4).toFixed(4)));
  const [atLeft, atRight, atTop, atBottom, atHeader, atFooter] = [left, right, top, bottom, header, footer].map(inches);
  return `<${prefix}pageMargins${writeAttributes({ left: atLeft, right: atRight, top: atTop, bottom: atBottom, header: atHeader, footer: atFooter })}/>`;
}

function writeHeaders(standing: string | undefined, prefix: string, { print: { header, footer } }: DocumentSheet): string {
  const node = standing === undefined ? undefined : parseXml(standing);
  const inTheMiddle = (text: string) => (/^&[LCR]/.test(text) ? text : `&C${text}`);
  const line = (name: string, text: string | undefined) => (text ? `<${prefix}${name}>${escapeXml(inTheMiddle(text))}</${prefix}${name}>` : "");
  const odd = line("oddHeader", header) + line("oddFooter", footer);
  const rest = node?.children.filter(({ name }) => name !== "oddHeader" && name !== "oddFooter").map(({ start, end }) => standing!.slice(start, end)).join("") ?? "";
  if (odd === "" && rest === "" && standing === undefined) return "";
  return `<${prefix}headerFooter${writeAttributes(node?.attributes ?? {})}>${odd}${rest}</${prefix}headerFooter>`;
}

function writeBreaks(prefix: string, rows: readonly number[]): string {
  const real = rows.filter((row) => row > 0);
  if (real.length === 0) return "";
  return `<${prefix}rowBreaks count="${real.length}" manualBreakCount="${real.length}">${real.map((row) => `<${prefix}brk id="${row}" max="16383" man="1"/>`).join("")}</${prefix}rowBreaks>`;
}
