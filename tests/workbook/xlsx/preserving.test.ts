import { strFromU8, unzipSync } from "fflate";
import { putCell, type WorkbookDocument } from "../../../src/workbook/document/workbook-document";
import { readFile } from "../../../src/workbook/xlsx/read-workbook";
import { writeFile } from "../../../src/workbook/xlsx/write-workbook";
import { rawWorkbook } from "../../support/raw-workbook";

const sheet = (inside: string) => `<sheetData>${inside}</sheetData><legacyThing kept="yes"/>`;
const bytes = rawWorkbook({
  before: '<workbookPr date1904="1"/>',
  sheets: {
    One: sheet(
      '<row r="2" spans="1:2"><c r="A2" t="s"><v>0</v></c><c r="B2" s="1"><f t="shared" ref="B2:B3" si="0">A2*2</f><v>4</v></c></row>' +
        '<row r="3"><c r="B3"><f t="shared" si="0"/><v>6</v></c></row>',
    ),
    Two: sheet('<row r="1"><c r="A1"><v>1</v></c></row>'),
  },
  relations: [["t", "sharedStrings", "sharedStrings.xml"], ["y", "styles", "styles.xml"], ["k", "calcChain", "calcChain.xml"]],
  parts: {
    "xl/sharedStrings.xml": "<sst><si><r><t>two </t></r><r><rPr><b/></rPr><t>fonts</t></r></si></sst>",
    "xl/styles.xml": '<styleSheet><fonts><font/></fonts><fills/><borders/><cellXfs count="2"><xf/><xf numFmtId="14" quotePrefix="1"/></cellXfs></styleSheet>',
    "xl/calcChain.xml": '<calcChain><c r="B2"/></calcChain>',
    "xl/charts/chart1.xml": "<c:chart xmlns:c='urn:c'>any</c:chart>",
    "customXml/item1.xml": "<x/>",
  },
});

function save(change: (document: WorkbookDocument) => WorkbookDocument): Record<string, string> {
  const open = readFile(bytes);
  const saved = unzipSync(writeFile(open, readFile(bytes).document, change(open.document)));
  return Object.fromEntries(Object.entries(saved).map(([name, part]) => [name, strFromU8(part)]));
}

const before = Object.fromEntries(Object.entries(unzipSync(bytes)).map(([name, part]) => [name, strFromU8(part)]));
const changed = (after: Record<string, string>) => [...new Set([...Object.keys(before), ...Object.keys(after)])].filter((name) => before[name] !== after[name]).sort();

test("a document that nobody changed is the same file, part for part", () => {
  expect(changed(save((document) => document))).toEqual([]);
});

test("a changed cell changes its cell, the calculation and the list of formulas, and nothing else", () => {
  const after = save((document) => {
    putCell(document.sheets[0]!.cells, 1, 2, { value: "  new <text>_x0041_\ud800", look: 0 });
    return document;
  });
  expect(changed(after)).toEqual(["xl/_rels/workbook.xml.rels", "xl/calcChain.xml", "xl/workbook.xml", "xl/worksheets/sheet1.xml"]);
  const written = '<c r="C2" t="inlineStr"><is><t xml:space="preserve">  new &lt;text&gt;_x005F_x0041_&#65533;</t></is></c>';
  const expected = before["xl/worksheets/sheet1.xml"]!
    .replace(' spans="1:2"', "")
    .replace('</c></row><row r="3">', `</c>${written}</row><row r="3">`)
    .replace("<sheetData>", '<dimension ref="A2:C3"/><sheetData>');
  expect(after["xl/worksheets/sheet1.xml"]!.replace(/^<\?xml[^>]*>\n/, "")).toBe(expected);
});

test("a changed formula that others share leaves each of them its own", () => {
  const after = save((document) => {
    putCell(document.sheets[0]!.cells, 1, 1, { value: 3, look: 1, formula: "=A2*3", hasResult: true });
    return document;
  });
  expect(after["xl/worksheets/sheet1.xml"]).toContain('<c r="B3"><f>A3*2</f><v>6</v></c>');
});

test("a new look is appended, based on the one it began as; a day is written in the calendar of the file", () => {
  // 29 February 2024 is day 45351 from 1900 on, and 43889 from 1904 on: ECMA-376 part 1, section 18.17.4.1.
  const after = save((document) => {
    putCell(document.sheets[1]!.cells, 0, 1, { value: 45_351, look: 2 });
    return { ...document, looks: [...document.looks, { ...document.looks[1], bold: true, basedOn: 1 }] };
  });
  expect(after["xl/worksheets/sheet2.xml"]).toContain('<c r="B1" s="2"><v>43889</v></c>');
  expect(after["xl/styles.xml"]).toMatch(/<cellXfs count="3"><xf\/><xf numFmtId="14" quotePrefix="1"\/><xf numFmtId="14" quotePrefix="1" fontId="1"/);
});

test("names of parts that differ in case alone are both kept", () => {
  const two = rawWorkbook({ sheets: { One: sheet("") }, parts: { "xl/worksheets/Sheet1.xml": "<other/>" } });
  const open = readFile(two);
  expect(Object.keys(unzipSync(writeFile(open, open.document, open.document)))).toEqual(Object.keys(unzipSync(two)));
});

test("cells are written into a sheet whose rows and cells do not say their places, as ECMA-376 part 1, section 18.3.1.4 allows", () => {
  const file = rawWorkbook({ sheets: { One: "<sheetData><row><c><v>1</v></c><c><v>2</v></c></row><row><c><v>3</v></c><c><v>4</v></c></row></sheetData>" } });
  const [open, base] = [readFile(file), readFile(file).document];
  const sheets = base.sheets.map((one) => ({ ...one, cells: new Map(one.cells), rows: [{ first: 1, last: 1, size: 30 }] }));
  putCell(sheets[0]!.cells, 0, 1, { value: 20, look: 0 });
  putCell(sheets[0]!.cells, 1, 2, { value: 5, look: 0 });
  const saved = writeFile(open, base, { ...base, sheets });
  const again = readFile(saved).document.sheets[0]!;
  expect([...again.cells.values()].map((line) => [...line].map(([column, { value }]) => [column, value]))).toEqual([[[0, 1], [1, 20]], [[0, 3], [1, 4], [2, 5]]]);
  expect(again.rows).toMatchObject([{ first: 1, size: 30 }]);
  expect(strFromU8(unzipSync(saved)["xl/worksheets/sheet1.xml"]!)).toContain('<row r="1"><c r="A1"><v>1</v></c><c r="B1"><v>20</v></c></row>');
});

test("names of which one changes keep what the file says of them, and one that is added stands behind them", () => {
  const name = (attributes: string, formula: string) => `<definedName ${attributes}>${formula}</definedName>`;
  const file = rawWorkbook({
    sheets: { One: "<sheetData/>", Two: "<sheetData/>" },
    behind: `<definedNames>${name('name="Rate" comment="a share"', "One!$A$1")}${name('name="Local" localSheetId="1" vbProcedure="0"', "_xlfn.SEQUENCE(4)")}</definedNames>`,
  });
  const [open, base] = [readFile(file), readFile(file).document];
  const [first, ...others] = base.names;
  const saved = unzipSync(writeFile(open, base, { ...base, names: [{ ...first!, formula: "One!$A$2" }, ...others, { name: "New", formula: "One!$B$1" }] }));
  expect(strFromU8(saved["xl/workbook.xml"]!)).toContain(
    `<definedNames>${name('name="Rate" comment="a share"', "One!$A$2")}${name('name="Local" localSheetId="1" vbProcedure="0"', "_xlfn.SEQUENCE(4)")}${name('name="New"', "One!$B$1")}</definedNames>`,
  );
});
