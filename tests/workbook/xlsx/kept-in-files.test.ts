import { CellValueType } from "@univerjs/core";
import { Workbook, type Worksheet } from "exceljs";
import { strFromU8, unzipSync } from "fflate";
import { emptyDocument, noPrintPlan, type CellFormat, type DocumentSheet, type Look, type TypingRule, type WorkbookDocument } from "../../../src/workbook/document/workbook-document";
import { documentOf } from "../../../src/workbook/engine/document-of";
import { openDocument } from "../../../src/workbook/engine/open-document";
import { readWorkbook, writeWorkbook } from "../../../src/workbook/engine/workbook-file";
import { rawWorkbook } from "../../support/raw-workbook";

const sheet: DocumentSheet = {
  id: "one", name: "One", state: "visible", cells: new Map(), rows: [], columns: [], merges: [], frozen: { rows: 0, columns: 0 }, hidesGrid: false, isProtected: false,
  typingRules: [], formats: [], otherFormats: 0, tables: [], print: noPrintPlan, notes: [], drawings: 0,
};

/** Puts a sheet onto the desk, saves it as a file, and opens that. */
function keep(parts: Partial<DocumentSheet>, more: Partial<WorkbookDocument> = {}): { readonly file: Uint8Array; readonly again: WorkbookDocument } {
  const file = writeWorkbook({ data: openDocument({ ...emptyDocument, ...more, sheets: [{ ...sheet, ...parts }] }), spills: {} }).bytes;
  return { file, again: documentOf({ data: readWorkbook(file), spills: {} }) };
}

async function sheetOf(file: Uint8Array): Promise<Worksheet> {
  const workbook = new Workbook();
  await workbook.xlsx.load(file as never);
  return workbook.worksheets[0]!;
}

const part = (file: Uint8Array, name: string): string => strFromU8(unzipSync(file)[name]!);
const plain = (value: unknown): unknown => JSON.parse(JSON.stringify(value));
const cells = (line: ReadonlyMap<number, Parameters<DocumentSheet["cells"]["set"]>[1] extends ReadonlyMap<number, infer Cell> ? Cell : never>) => new Map([[0, line]]);

const areas = [{ row: 0, column: 1, rows: 9, columns: 1 }];
const look: Look = { bold: true, italic: true, underline: true, strike: true, color: "#9c0006", fill: "#ffc7ce" };

describe("conditional formats of every kind that the panel offers stand in the file, and come back as they were (ECMA-376 part 1, section 18.3.1.10)", () => {
  test.each<[string, CellFormat, object]>([
    ["a number above another", { kind: "compare", operator: "greaterThan", bounds: [5], look, areas, stops: true }, { type: "cellIs", operator: "greaterThan", formulae: ["5"] }],
    ["a number between two", { kind: "compare", operator: "between", bounds: [1, 5.5], look, areas }, { type: "cellIs", operator: "between", formulae: ["1", "5.5"] }],
    ["a text in it", { kind: "text", operator: "containsText", text: 'a "b"', look, areas }, { type: "containsText", operator: "containsText" }],
    ["no such text in it", { kind: "text", operator: "notContainsText", text: "a", look, areas }, { type: "notContainsText", formulae: ['ISERROR(SEARCH("a",B1))'] }],
    ["a text at its beginning", { kind: "text", operator: "beginsWith", text: "ab", look, areas }, { type: "beginsWith", formulae: ['LEFT(B1,2)="ab"'] }],
    ["a text at its end", { kind: "text", operator: "endsWith", text: "ab", look, areas }, { type: "endsWith", formulae: ['RIGHT(B1,2)="ab"'] }],
    ["just a text", { kind: "text", operator: "equal", text: "ab", look, areas }, { type: "cellIs", operator: "equal", formulae: ['"ab"'] }],
    ["nothing", { kind: "text", operator: "containsBlanks", text: "", look, areas }, { type: "containsText", operator: "containsBlanks" }],
    ["an error", { kind: "text", operator: "containsErrors", text: "", look, areas }, { type: "containsText", operator: "containsErrors" }],
    ["a day of last month", { kind: "period", period: "lastMonth", look, areas }, { type: "timePeriod", timePeriod: "lastMonth" }],
    ["one of the lowest tenth", { kind: "rank", count: 10, isPercent: true, isBottom: true, look, areas }, { type: "top10", rank: 10, percent: true, bottom: true }],
    ["at least the mean", { kind: "average", operator: "lessThanOrEqual", look, areas }, { type: "aboveAverage", aboveAverage: false }],
    ["what is there twice", { kind: "repeats", isUnique: false, look, areas }, { type: "duplicateValues" }],
    ["what is there once", { kind: "repeats", isUnique: true, look, areas }, { type: "uniqueValues" }],
    ["a formula", { kind: "formula", formula: "=B1>C1", look, areas }, { type: "expression", formulae: ["B1>C1"] }],
    [
      "a scale of three colours",
      { kind: "scale", points: [{ at: "min", color: "#f8696b" }, { at: "percentile", value: 50, color: "#ffeb84" }, { at: "max", color: "#63be7b" }], areas },
      { type: "colorScale", cfvo: [{ type: "min" }, { type: "percentile", value: 50 }, { type: "max" }], color: [{ argb: "FFF8696B" }, { argb: "FFFFEB84" }, { argb: "FF63BE7B" }] },
    ],
    [
      "a plain bar",
      { kind: "bar", least: { at: "num", value: 0 }, most: { at: "formula", value: "=$B$9" }, color: "#638ec6", hidesValue: true, more: { isPlain: true, below: "#00aa00" }, areas },
      { type: "dataBar", gradient: false, cfvo: [{ type: "num", value: 0 }, { type: "formula" }] },
    ],
    [
      "arrows the other way round",
      { kind: "icons", set: "3Arrows", isReversed: true, points: [{ at: "percent", value: 0 }, { at: "percent", value: 33, excludes: true }, { at: "num", value: 8 }], areas },
      { type: "iconSet", iconSet: "3Arrows", reverse: true, cfvo: [{ type: "percent", value: 0 }, { type: "percent", value: 33 }, { type: "num", value: 8 }] },
    ],
    ["signal bars", { kind: "icons", set: "4Rating", points: [0, 25, 50, 75].map((value) => ({ at: "percent", value })), areas }, { type: "iconSet", iconSet: "4Rating" }],
  ])("%s", async (_, format, inFile) => {
    const { file, again } = keep({ formats: [format] });
    expect(plain(again.sheets[0]!.formats)).toEqual([plain(format)]);
    const { conditionalFormattings } = (await sheetOf(file)) as unknown as { conditionalFormattings: object[] };
    expect(conditionalFormattings[0]).toMatchObject({ ref: "B1:B9", rules: [inFile] });
  });

  test("the first one has the highest priority", () => {
    const formats: CellFormat[] = ["=1", "=2", "=3"].map((formula) => ({ kind: "formula", formula, look, areas }));
    const { file, again } = keep({ formats });
    expect(again.sheets[0]!.formats).toMatchObject(formats);
    expect([...part(file, "xl/worksheets/sheet1.xml").matchAll(/priority="(\d)"/g)].map(([, priority]) => priority)).toEqual(["1", "2", "3"]);
  });
});

test("of the conditional formats of a file, one that goes takes none of what the others say with it", () => {
  const bar = '<cfRule type="dataBar" priority="2"><dataBar minLength="5"><cfvo type="min"/><cfvo type="max"/><color rgb="FF638EC6"/></dataBar></cfRule>';
  const odd = '<cfRule type="aboveAverage" dxfId="0" priority="3" stdDev="2"/>';
  const over = rawWorkbook({
    sheets: { One: `<sheetData/><conditionalFormatting sqref="A1:A5"><cfRule type="expression" priority="1"><formula>A1&gt;1</formula></cfRule>${bar}${odd}</conditionalFormatting>` },
  });
  const data = readWorkbook(over);
  const resource = data.resources!.find(({ name }) => name.includes("CONDITIONAL"))!;
  const formats = JSON.parse(resource.data) as Record<string, unknown[]>;
  expect(formats["sheet1"]).toHaveLength(2);
  resource.data = JSON.stringify({ sheet1: formats["sheet1"]!.slice(1) });
  const written = part(writeWorkbook({ data, spills: {} }, over).bytes, "xl/worksheets/sheet1.xml");
  expect(written).not.toContain("expression");
  expect(written).toContain('minLength="5"');
  expect(written).toMatch(/priority="1".*stdDev="2"|stdDev="2".*priority="2"/);
});

describe("the look of cells", () => {
  test.each<[string, Look, (one: Worksheet) => unknown, unknown]>([
    ["lines from corner to corner", { falling: { line: "double", color: "#0000ff" }, rising: { line: "double", color: "#0000ff" } }, (one) => one.getCell("A1").border.diagonal, {
      up: true, down: true, style: "double", color: { argb: "FF0000FF" },
    }],
    ["letters one below the other (ECMA-376 part 1, section 18.8.1: 255)", { stacks: true }, (one) => one.getCell("A1").alignment.textRotation, "vertical"],
    ["small letters above the line", { raised: "superscript" }, (one) => one.getCell("A1").font.vertAlign, "superscript"],
  ])("has %s", async (_, own, ofFile, expected) => {
    const { file, again } = keep({ cells: cells(new Map([[0, { value: "x", look: 1 }]])) }, { looks: [{}, own] });
    expect(ofFile(await sheetOf(file))).toEqual(expected);
    expect(again.looks[again.sheets[0]!.cells.get(0)!.get(0)!.look]).toMatchObject(own);
  });

  test("has a text in several fonts (ECMA-376 part 1, section 18.4.4)", async () => {
    const pieces = [{ text: "read " }, { text: "twice", look: { font: "Calibri", size: 11, bold: true, color: "#ff0000" } }, { text: ", type once " }];
    const { file, again } = keep({ cells: cells(new Map([[0, { value: "read twice, type once ", look: 0, pieces }]])) });
    const { richText } = (await sheetOf(file)).getCell("A1").value as unknown as { richText: object[] };
    expect(richText).toMatchObject([{ text: "read " }, { text: "twice", font: { bold: true, color: { argb: "FFFF0000" } } }, { text: ", type once " }]);
    expect(plain(again.sheets[0]!.cells.get(0)!.get(0))).toMatchObject({ value: "read twice, type once ", pieces });
  });

  test("of a column is that of a cell in which somebody types without choosing one", () => {
    const over = rawWorkbook({
      sheets: { One: '<cols><col min="1" max="1" width="9" style="1"/></cols><sheetData/>' },
      relations: [["st", "styles", "styles.xml"]],
      parts: {
        "xl/styles.xml":
          '<styleSheet xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><fonts><font/></fonts><fills><fill/></fills><borders><border/></borders>' +
          '<cellXfs><xf/><xf numFmtId="10"/></cellXfs></styleSheet>',
      },
    });
    const data = readWorkbook(over);
    data.sheets["sheet1"]!.cellData = { 2: { 0: { v: 0.5, t: CellValueType.NUMBER } } };
    expect(part(writeWorkbook({ data, spills: {} }, over).bytes, "xl/worksheets/sheet1.xml")).toContain('<c r="A3" s="1"><v>0.5</v></c>');
  });
});

describe("links of cells (ECMA-376 part 1, section 18.3.1.47)", () => {
  const links = { address: "https://example.org/guide?a=1&b=2", place: "#'Rack plan'!B5" };

  test("stand in the file, and come back", async () => {
    const { file, again } = keep({ cells: cells(new Map([[0, { value: "guide", look: 0, link: links.address }], [1, { value: "rack", look: 0, link: links.place }]])) });
    const one = await sheetOf(file);
    expect([one.getCell("A1").hyperlink, part(file, "xl/worksheets/sheet1.xml")]).toEqual([links.address, expect.stringContaining(`<hyperlink ref="B1" location="'Rack plan'!B5"/>`)]);
    expect([...again.sheets[0]!.cells.get(0)!.values()].map(({ link }) => link)).toEqual([links.address, links.place]);
  });

  const target = '<Relationship Id="k" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/hyperlink" Target="https://example.org/a" TargetMode="External"/>';
  const over = rawWorkbook({
    sheets: {
      One: '<sheetData><row r="1"><c r="A1"><v>1</v></c><c r="B1"><v>2</v></c></row></sheetData>' +
        '<hyperlinks><hyperlink ref="A1" r:id="k" tooltip="the guide"/><hyperlink ref="B1" location="One!A9"/></hyperlinks>',
    },
    parts: { "xl/worksheets/_rels/sheet1.xml.rels": `<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships">${target}</Relationships>` },
  });

  test("of a file keep all that it says of them while another goes", () => {
    const data = readWorkbook(over);
    data.sheets["sheet1"]!.cellData![0]![1]!.custom = null;
    const { bytes } = writeWorkbook({ data, spills: {} }, over);
    expect(part(bytes, "xl/worksheets/sheet1.xml")).toContain('<hyperlinks><hyperlink ref="A1" r:id="k" tooltip="the guide"/></hyperlinks>');
  });

  test("that go leave no address behind in the file", () => {
    const data = readWorkbook(over);
    data.sheets["sheet1"]!.cellData![0]![0]!.custom = null;
    const { bytes } = writeWorkbook({ data, spills: {} }, over);
    expect([part(bytes, "xl/worksheets/sheet1.xml"), part(bytes, "xl/worksheets/_rels/sheet1.xml.rels")].filter((text) => text.includes("example.org") || text.includes('ref="A1" r:id'))).toEqual([]);
  });

  test("move with their cell", () => {
    const data = readWorkbook(over);
    const one = data.sheets["sheet1"]!;
    one.cellData = { 0: { 1: one.cellData![0]![1]! }, 6: { 3: one.cellData![0]![0]! } };
    expect(documentOf({ data: readWorkbook(writeWorkbook({ data, spills: {} }, over).bytes), spills: {} }).sheets[0]!.cells.get(6)!.get(3)).toMatchObject({ value: 1, link: "https://example.org/a" });
  });

  test("of what a formula comes to are the formula's own", () => {
    const data = openDocument({ ...emptyDocument, sheets: [sheet] });
    const p = { id: "d", documentStyle: {}, body: { dataStream: "x\r\n", customRanges: [{ startIndex: 0, endIndex: 0, rangeId: "r", rangeType: 0, properties: { url: "https://example.org/" } }] } };
    data.sheets["one"]!.cellData = { 0: { 0: { f: '=HYPERLINK("https://example.org/","x")', p }, 1: { p } } };
    const [computed, pasted] = [...documentOf({ data, spills: {} }).sheets[0]!.cells.get(0)!.values()];
    expect([computed!.link, pasted!.link]).toEqual([undefined, "https://example.org/"]);
  });
});

test("the size at which a sheet is shown, and what is noted of a name, stand in the file and come back", async () => {
  const names = [{ name: "Power", formula: "One!$A$1", comment: "as measured" }, { name: "Own", formula: "One!$A$2", sheet: "one" }];
  const { file, again } = keep({ zoom: 150 }, { names });
  expect((await sheetOf(file)).views[0]).toMatchObject({ zoomScale: 150 });
  expect(part(file, "xl/workbook.xml")).toContain('<definedName name="Power" comment="as measured">One!$A$1</definedName>');
  expect([again.sheets[0]!.zoom, again.names.map(({ name, comment, sheet: own }) => [name, comment, own !== undefined])]).toEqual([150, [["Power", "as measured", false], ["Own", undefined, true]]]);
});

describe("rules for typing", () => {
  const rule: TypingRule = { areas, type: "any", formulas: [], allowsBlank: true, refuses: true, shows: true, weight: "stop", prompt: "As on the label", promptTitle: "Serial" };

  test.each<[string, TypingRule, object]>([
    ["that only say something", rule, { prompt: "As on the label", promptTitle: "Serial" }],
    ["by a day and a time of it", { ...rule, type: "date", operator: "lessThan", formulas: ["2026-12-31 18:30:00"] }, { type: "date", operator: "lessThan" }],
  ])("%s stand in the file and come back", async (_, one, inFile) => {
    const { file, again } = keep({ typingRules: [one] });
    expect(plain(again.sheets[0]!.typingRules)).toEqual([plain(one)]);
    expect((await sheetOf(file)).getCell("B1").dataValidation).toMatchObject(inFile);
  });
});
