import { moveParts } from "../../../src/workbook/xlsx/move-parts";
import { readFile } from "../../../src/workbook/xlsx/read-workbook";
import { rawWorkbook } from "../../support/raw-workbook";

const kinds = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";

/** Moves the fourth row and what follows by so many rows on the sheet `Data`, and shows what became of a text in it, in `Other`, and in a part. */
function moved(by: number, { data = "<sheetData/>", other = "<sheetData/>", part = "", text = "<x/>", kind = "" }): { data: string; other: string; part: string } {
  const relations = `<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"><Relationship Id="x1" Type="${kinds}/${kind}" Target="/${part}"/></Relationships>`;
  const parts: Record<string, string> = part === "" ? {} : { [part]: text, "xl/worksheets/_rels/sheet1.xml.rels": relations };
  const open = readFile(rawWorkbook({ sheets: { Data: data, Other: other }, parts }));
  const [first, second] = open.sheets.map((sheet) => sheet.part) as [string, string];
  moveParts(open, { part: first, name: "Data", move: { axis: "row", at: 3, by } });
  const inside = (name: string) => /<worksheet[^>]*>(.*)<\/worksheet>/s.exec(open.file.read(name)!)![1]!;
  return { data: inside(first), other: inside(second), part: part === "" ? "" : open.file.read(part)!.replace(/^<\?.*\?>\s*/, "") };
}

const links = (row: number, from: string) => `<sheetData/><hyperlinks><hyperlink ref="A1" location="${from}A${row}"/></hyperlinks>`;

test("a link leads to the same cell once rows came, from its own sheet and from others", () => {
  expect(moved(2, { data: links(5, "Data!"), other: links(5, "Data!") })).toMatchObject({ data: links(7, "Data!"), other: links(7, "Data!") });
  expect(moved(2, { data: links(5, "Other!"), other: links(5, "") })).toMatchObject({ data: links(5, "Other!"), other: links(5, "") });
});

test("a link to a cell that went stays as it was written", () => {
  expect(moved(-2, { other: links(5, "Data!") }).other).toBe(links(5, "Data!"));
});

test("the ends of a scale of colours move with the cells that say them, and numbers stay", () => {
  const scale = (row: number) =>
    '<sheetData/><conditionalFormatting sqref="A1"><cfRule type="colorScale" priority="1"><colorScale>' +
    `<cfvo type="num" val="5"/><cfvo type="formula" val="$B$${row}"/><color rgb="FF000000"/><color rgb="FFFFFFFF"/></colorScale></cfRule></conditionalFormatting>`;
  expect(moved(2, { data: scale(5) }).data).toBe(scale(7));
});

test("the inputs of a what-if table move with their cells", () => {
  const table = (row: number) => `<sheetData><row r="1"><c r="A1"><f t="dataTable" ref="A1:A2" dt2D="0" dtr="0" r1="B${row}"/><v>1</v></c></row></sheetData>`;
  expect(moved(2, { data: table(5) }).data).toBe(table(7));
});

test("a rule for a column below its header ends with the sheet, whatever comes above its end (ECMA-376 part 1, section 18.18.7: 1,048,576 rows)", () => {
  const rule = '<sheetData/><dataValidations><dataValidation type="whole" sqref="A2:A1048576"><formula1>1</formula1></dataValidation></dataValidations>';
  expect(moved(2, { data: rule }).data).toBe(rule);
});

test("a shape shows the same cell of its sheet", () => {
  const shape = (cell: string) => `<wsDr><twoCellAnchor><from><row>0</row></from><to><row>1</row></to><sp macro="" textlink="${cell}"><t>5</t></sp></twoCellAnchor></wsDr>`;
  const drawing = { part: "xl/drawings/drawing1.xml", kind: "drawing" };
  expect(moved(2, { ...drawing, text: shape("$B$5") }).part).toBe(shape("$B$7"));
  expect(moved(2, { ...drawing, text: shape("Other!$B$5") }).part).toBe(shape("Other!$B$5"));
});

test("a pivot table made of several areas has all of them moved", () => {
  const source = (row: number) =>
    '<pivotCacheDefinition><cacheSource type="consolidation"><consolidation><rangeSets count="2">' +
    `<rangeSet ref="A1:B${row}" sheet="Data"/><rangeSet ref="A1:B5" sheet="Other"/></rangeSets></consolidation></cacheSource></pivotCacheDefinition>`;
  expect(moved(2, { part: "xl/pivotCache/pivotCacheDefinition1.xml", kind: "pivotCacheDefinition", text: source(5) }).part).toBe(source(7));
});
