import { pointingParts } from "../../../src/workbook/xlsx/pointing-parts";
import { moveParts } from "../../../src/workbook/xlsx/move-parts";
import { readFile, type OpenFile } from "../../../src/workbook/xlsx/read-workbook";
import { readWorkbook, writeWorkbook } from "../../../src/workbook/engine/workbook-file";
import { shiftExtras } from "../../../src/workbook/engine/keep-extras";
import { extrasOf } from "../../../src/workbook/engine/stored-sheet";
import { rawWorkbook } from "../../support/raw-workbook";

const kinds = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";

/** A workbook of the sheets `Bay plan` and `Other`, with one further part, which `owner` has a relation to where it says so. */
function withPart(part: string, text: string, kind = "", owner = "worksheets/sheet1"): Uint8Array {
  const relation = `<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"><Relationship Id="x1" Type="${kinds}/${kind}" Target="/${part}"/></Relationships>`;
  const [folder, file] = owner.split("/") as [string, string];
  const parts = { [part]: text, ...(kind === "" ? {} : { [`xl/${folder}/_rels/${file}.xml.rels`]: relation }) };
  return rawWorkbook({ sheets: { "Bay plan": "<sheetData/>", Other: "<sheetData/>" }, parts });
}

function found(open: OpenFile, moved: boolean): string[] {
  return pointingParts(open, [{ part: open.sheets[0]!.part, name: open.sheets[0]!.name, moved }], open.file.names());
}

const slicer = '<slicers xmlns="urn:x"><slicer name="A5" cache="Slicer_A5"/></slicers>';

test.each([
  ["a reference in an element", "xl/other/part1.xml", "<p><f>SUM('bay plan'!$A$5)</f></p>", "", [true, true]],
  ["a reference over several sheets", "xl/other/part1.xml", "<p source=\"'Other:Bay plan'!A5\"/>", "", [true, true]],
  ["a shape that shows a cell", "xl/drawings/drawing1.xml", "<wsDr><sp textlink=\"'Bay plan'!$A$5\"/></wsDr>", "drawing", [true, true]],
  ["an attribute that names the sheet", "xl/other/part1.xml", '<p><source sheet="Bay plan" from="A5"/></p>', "", [true, true]],
  ["addresses of its own, by a relation of the sheet", "xl/namedSheetViews/namedSheetView1.xml", '<v><nsvFilter ref="A1:C10"/></v>', "namedSheetView", [true, false]],
  ["single cells that are bound to XML", "xl/tables/tableSingleCells1.xml", '<s><singleXmlCell id="1" r="A5"/></s>', "tableSingleCells", [true, false]],
  ["the cell of a form's control", "xl/ctrlProps/ctrlProp1.xml", '<formControlPr fmlaLink="$A$5"/>', "ctrlProp", [true, false]],
  ["names that look like cells", "xl/slicers/slicer1.xml", slicer, "slicer", [false, false]],
  ["another sheet", "xl/other/part1.xml", "<p><f>Other!A5</f></p>", "", [false, false]],
  ["another workbook's sheet", "xl/other/part1.xml", "<p><f>'[1]Bay plan'!A5</f></p>", "", [false, false]],
  ["what people read", "xl/other/part1.xml", "<p><t>See 'Bay plan'!A5</t></p>", "", [false, false]],
  ["what people wrote, without an address", "customXml/item1.xml", "<p>Bay plan</p>", "", [false, false]],
  ["a sheet of another workbook", "xl/externalLinks/externalLink1.xml", "<p><definedName refersTo=\"'Bay plan'!$A$5\"/></p>", "externalLink", [false, false]],
  ["settings of a printer", "xl/printerSettings/printerSettings1.bin", "'Bay plan'!A5", "printerSettings", [false, false]],
  ["notes, which move", "xl/comments1.xml", '<comments><commentList><comment ref="A5"/></commentList></comments>', "comments", [false, false]],
  ["a place of pictures, which moves", "xl/drawings/drawing1.xml", '<wsDr><ref r="A5"/></wsDr>', "drawing", [false, false]],
])("a part with %s is told where it may point to other cells: after a move, after a new name", (_, part, text, kind, [moved, renamed]) => {
  expect(found(readFile(withPart(part, text, kind)), true)).toEqual(moved ? [part] : []);
  expect(found(readFile(withPart(part, text, kind)), false)).toEqual(renamed ? [part] : []);
});

test("cells of a part that belongs to a sheet which did not move stay what they are", () => {
  const open = readFile(withPart("xl/ctrlProps/ctrlProp1.xml", '<formControlPr fmlaLink="$A$5"/>', "ctrlProp", "worksheets/sheet2"));
  expect(found(open, true)).toEqual([]);
});

test("the place of a pivot table moves with the rows above it", () => {
  const open = readFile(withPart("xl/pivotTables/pivotTable1.xml", '<pivotTableDefinition><location ref="A3:C20" firstHeaderRow="1"/></pivotTableDefinition>', "pivotTable"));
  moveParts(open, { part: open.sheets[0]!.part, name: "Bay plan", move: { axis: "row", at: 0, by: 2 } });
  expect(open.file.read("xl/pivotTables/pivotTable1.xml")).toContain('<location ref="A5:C22" firstHeaderRow="1"/>');
});

test("a saved file names such a part once rows came or the sheet has a new name, and nothing where neither happened", () => {
  const part = "xl/other/part1.xml";
  const bytes = withPart(part, "<p><f>'Bay plan'!A5</f></p>");
  const data = readWorkbook(bytes);
  const sheet = data.sheets["sheet1"]!;
  const saved = (changed: typeof sheet) => writeWorkbook({ data: { ...data, sheets: { ...data.sheets, sheet1: changed } }, spills: {} }, bytes).pointing;
  expect(saved(sheet)).toEqual([]);
  expect(saved({ ...sheet, name: "Bays" })).toEqual([part]);
  expect(saved({ ...sheet, custom: shiftExtras(extrasOf(sheet), { axis: "row", at: 0, by: 2 }) })).toEqual([part]);
});
