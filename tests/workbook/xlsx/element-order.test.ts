import { strFromU8, unzipSync } from "fflate";
import { emptyDocument, type DocumentSheet } from "../../../src/workbook/document/workbook-document";
import { openDocumentPort } from "../../../src/workbook/document/document-port";
import { readFile } from "../../../src/workbook/xlsx/read-workbook";
import { writeFile } from "../../../src/workbook/xlsx/write-workbook";
import type { SheetPlan } from "../../../src/sheet";

const plan: SheetPlan = {
  name: "Sheet",
  rows: [[{ value: "Head" }], [{ formula: "=1+1", value: 2 }]],
  styles: { bold: { bold: true } },
  columnWidths: [12],
  freeze: { rows: 1, columns: 0 },
  merges: [{ row: 0, column: 0, rows: 1, columns: 2 }],
  validations: [{ area: { row: 1, column: 0, rows: 1, columns: 1 }, rule: { kind: "list", items: ["a", "b"] }, message: "Choose a or b.", strict: true }],
  conditionalFormats: [{ area: { row: 1, column: 0, rows: 1, columns: 1 }, formula: '=$A2="a"', style: "bold" }],
  print: { orientation: "landscape", fitToWidth: true, paper: "A4", marginsMm: { left: 25.4, right: 5.08, top: 12.7, bottom: 0 }, header: "Head", breaksBefore: [1] },
  tabColor: "#112233",
};

/** The elements that are written here, as the sequence of CT_Worksheet has them. */
const sequence = ["sheetPr", "dimension", "sheetViews", "cols", "sheetData", "mergeCells", "conditionalFormatting", "dataValidations", "pageMargins", "pageSetup", "headerFooter", "rowBreaks"];

function elementsOf(bytes: Uint8Array): string[] {
  const xml = strFromU8(unzipSync(bytes)["xl/worksheets/sheet1.xml"]!);
  return [...xml.matchAll(/<(\w+)/g)].map(([, name]) => name!).filter((name) => sequence.includes(name));
}

async function plannedSheet(): Promise<{ readonly sheet: DocumentSheet; readonly bytes: Uint8Array }> {
  const { port, finish } = openDocumentPort(emptyDocument);
  await port.apply([{ kind: "add-sheet", plan }]);
  const made = finish();
  return { sheet: made.sheets[0]!, bytes: writeFile(null, emptyDocument, made) };
}

describe("the elements of a sheet stand in the order of ECMA-376 part 1, section 18.3.1.99", () => {
  test("in a new sheet", async () => {
    const { bytes } = await plannedSheet();
    expect(elementsOf(bytes)).toEqual(sequence);
  });

  test("with paper as a number (9 is A4, section 18.3.1.63) and margins in inches (section 18.3.1.62)", async () => {
    const { bytes } = await plannedSheet();
    const xml = strFromU8(unzipSync(bytes)["xl/worksheets/sheet1.xml"]!);
    expect(xml).toContain('<pageMargins left="1" right="0.2" top="0.5" bottom="0" header="0" footer="0"/>');
    expect(/<pageSetup[^>]*>/.exec(xml)![0]).toContain('paperSize="9"');
  });

  test("with Letter as paper 1, a scale and the number of the first page (section 18.3.1.63), which stay when the file is opened and breaks move", async () => {
    const { port, finish } = openDocumentPort(emptyDocument);
    const marginsMm = { left: 10, right: 10, top: 12, bottom: 11, header: 6.35, footer: 5.08 };
    const print = { orientation: "landscape", fitToWidth: false, scale: 82, paper: "Letter", firstPage: 1, marginsMm, breaksBefore: [1] } as const;
    await port.apply([{ kind: "add-sheet", plan: { ...plan, print } }]);
    const written = writeFile(null, emptyDocument, finish());
    const open = readFile(written);
    const moved = { ...open.document, sheets: open.document.sheets.map((sheet) => ({ ...sheet, print: { ...sheet.print, breaksBefore: [2] } })) };
    for (const [bytes, row] of [[written, "1"], [writeFile(open, open.document, moved), "2"]] as const) {
      const xml = strFromU8(unzipSync(bytes)["xl/worksheets/sheet1.xml"]!);
      const attributes = [.../<pageSetup([^>]*)>/.exec(xml)![1]!.matchAll(/\w+="\w+"/g)].map(([one]) => one).sort();
      expect(attributes).toEqual(['firstPageNumber="1"', 'orientation="landscape"', 'paperSize="1"', 'scale="82"', 'useFirstPageNumber="1"']);
      expect(xml).toContain('header="0.25" footer="0.2"/>');
      expect(xml).toContain(`<brk id="${row}" `);
    }
  });

  test("in a sheet of a file that gets all of them", async () => {
    const bare = openDocumentPort(emptyDocument);
    await bare.port.apply([{ kind: "add-sheet", plan: { name: "Sheet", rows: [[{ value: 1 }]], styles: {}, columnWidths: [] } }]);
    const open = readFile(writeFile(null, emptyDocument, bare.finish()));
    const { sheet } = await plannedSheet();
    const before = open.document;
    const after = { ...before, sheets: [{ ...sheet, id: before.sheets[0]!.id }] };
    expect(elementsOf(writeFile(open, before, after))).toEqual(sequence);
  });
});
