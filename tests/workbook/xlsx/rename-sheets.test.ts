import { openHeadless } from "../../../src/headless/open-headless";
import { openDocumentPort } from "../../../src/workbook/document/document-port";
import { readFile } from "../../../src/workbook/xlsx/read-workbook";
import { writeFile } from "../../../src/workbook/xlsx/write-workbook";
import type { Edit } from "../../../src/workbook/port";
import { rawWorkbook } from "../../support/raw-workbook";

const kinds = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
const relations = (inside: string) => `<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships">${inside}</Relationships>`;
const part = "xl/worksheets/sheet2.xml";

/** A workbook whose sheet `Other` has `inside`, and a drawing and a table with these texts. */
function workbook(inside: string, { drawing = "<wsDr/>", links = "", table = "<table/>" } = {}): Uint8Array {
  return rawWorkbook({
    sheets: { "Old name": "<sheetData/>", Other: inside },
    parts: {
      "xl/drawings/drawing1.xml": drawing,
      "xl/drawings/_rels/drawing1.xml.rels": relations(links),
      "xl/tables/table1.xml": table,
      "xl/worksheets/_rels/sheet2.xml.rels": relations(
        `<Relationship Id="d" Type="${kinds}/drawing" Target="../drawings/drawing1.xml"/><Relationship Id="t" Type="${kinds}/table" Target="../tables/table1.xml"/>${links}`),
    },
  });
}

const renamed: Edit = { kind: "rename-sheet", sheet: "Old name", name: "O'Neil & Co" };

/** The file after edits, as it is built without anything that computes. */
async function after(bytes: Uint8Array, ...edits: Edit[]) {
  const open = readFile(bytes);
  const { port, finish } = openDocumentPort(open.document, () => []);
  await port.apply(edits);
  return readFile(writeFile(open, open.document, finish())).file;
}

const format = (rule: string) => `<conditionalFormatting sqref="A1"><cfRule ${rule}</cfRule></conditionalFormatting>`;
const sparklines = (inside: string) => `<extLst><ext><sparklineGroups><sparklineGroup><sparklines>${inside}</sparklines></sparklineGroup></sparklineGroups></ext></extLst>`;
const typing = (formula: string) => `<dataValidation type="list" imeMode="off" sqref="A1"><formula1>${formula}</formula1></dataValidation>`;
const inSheet: readonly (readonly [what: string, xml: (place: string) => string])[] = [
  ["a link", (place) => `<hyperlinks><hyperlink ref="A1" location="${place}"/></hyperlinks>`],
  ["the end of a bar", (place) => format(`type="dataBar" priority="1"><dataBar><cfvo type="num" val="${place}"/><cfvo type="max"/></dataBar>`)],
  ["a rule that compares with a cell, with all it says,", (place) => format(`type="cellIs" priority="1" stopIfTrue="1" operator="equal"><formula>${place}</formula>`)],
  ["what may be typed, with all it says,", (place) => `<dataValidations count="1">${typing(place)}</dataValidations>`],
  ["a small chart in a cell", (place) => sparklines(`<sparkline><f>${place}</f><sqref>B1</sqref></sparkline>`)],
];

test.each(inSheet)("%s follows a sheet to its new name (ECMA-376 part 1, sections 18.3.1.10 to 18.3.1.47)", async (_, xml) => {
  const file = await after(workbook(`<sheetData/>${xml("'Old name'!$B$5")}`), renamed);
  expect(file.read(part)).toContain(xml("'O''Neil &amp; Co'!$B$5"));
});

test("a link to a sheet that was renamed is not led to the new sheet that takes its name, nor is what names that one", async () => {
  const link = (place: string) => `<hyperlinks><hyperlink ref="A1" location="${place}"/></hyperlinks>`;
  const file = await after(
    workbook(`<sheetData/>${link("'old NAME'!A1")}`), renamed,
    { kind: "add-sheet", plan: { name: "Old name", rows: [], styles: {}, columnWidths: [] } },
    { kind: "write", sheet: "Other", row: 0, column: 0, cells: [[{ formula: "='Old name'!A1" }]] },
  );
  expect(file.read(part)).toContain(link("'O''Neil &amp; Co'!A1"));
  expect(file.read(part)).toContain("<f>'Old name'!A1</f>");
});

test.each([
  ["as they are typed", "#'Old name'!B5"],
  ["with blanks that are encoded", "#'Old%20name'!B5"],
])("links that stand as relations of a sheet and of a drawing follow, written %s", async (_, target) => {
  const link = (id: string, to: string) => `<Relationship Id="${id}" Type="${kinds}/hyperlink" Target="${to}" TargetMode="External"/>`;
  const links = link("l", target) + link("w", "https://example.org/#Old%20name!A1");
  const file = await after(workbook("<sheetData/>", { links }), renamed);
  for (const owner of [part, "xl/drawings/drawing1.xml"]) {
    expect(file.relations(owner).filter(({ kind }) => kind === "hyperlink").map((one) => decodeURI(one.target))).toEqual(["#'O''Neil & Co'!B5", "https://example.org/#Old name!A1"]);
  }
});

test("a shape and the formula of a column of a table follow, also in the browser workbook, which then tells of no part to check", async () => {
  const drawing = (place: string) => `<wsDr><sp macro="" textlink="${place}"><t>5</t></sp></wsDr>`;
  const column = (inside: string) => `<tableColumns><tableColumn id="1" name="x">${inside}</tableColumn></tableColumns>`;
  const table = (place: string) => `<table displayName="T" ref="A1:A2">${column(`<calculatedColumnFormula>${place}</calculatedColumnFormula>`)}</table>`;
  const bytes = workbook("<sheetData/>", { drawing: drawing("'Old name'!$B$5"), table: table("'Old name'!$B$5") });
  const live = await openHeadless(bytes);
  await live.port.apply([renamed]);
  const saved = await live.closeFile();
  for (const file of [await after(bytes, renamed), readFile(saved.bytes).file]) {
    expect(file.read("xl/drawings/drawing1.xml")).toContain(drawing("'O''Neil &amp; Co'!$B$5"));
    expect(file.read("xl/tables/table1.xml")).toContain(table("'O''Neil &amp; Co'!$B$5"));
  }
  expect(saved.pointing).toEqual([]);
});
