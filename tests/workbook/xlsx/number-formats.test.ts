import { Workbook } from "exceljs";
import { openDocumentPort } from "../../../src/workbook/document/document-port";
import { emptyDocument } from "../../../src/workbook/document/workbook-document";
import { readFile } from "../../../src/workbook/xlsx/read-workbook";
import { writeFile } from "../../../src/workbook/xlsx/write-workbook";

const formats = ["#,##0.##", "yyyy-mm-dd", "0.0 \"U\"", "@", "yyyy-mm-dd hh:mm", "yyyy-mm-dd", "0.00"];

/** Adds a sheet with a cell of every format to a file, and reads the formats of all its sheets as another program finds them. */
async function withFormats(before: Uint8Array | null, name: string): Promise<{ readonly bytes: Uint8Array; readonly found: readonly (readonly string[])[] }> {
  const open = before === null ? null : readFile(before);
  const { port, finish } = openDocumentPort(open?.document ?? emptyDocument);
  const styles = Object.fromEntries(formats.map((format, index) => [`s${index}`, { format, bold: index === 5 }]));
  await port.apply([{ kind: "add-sheet", plan: { name, rows: [formats.map((_, index) => ({ value: index, style: `s${index}` }))], styles, columnWidths: [] } }]);
  const bytes = writeFile(open, open?.document ?? emptyDocument, finish());
  const file = new Workbook();
  await file.xlsx.load(bytes as never);
  return { bytes, found: file.worksheets.map((sheet) => formats.map((_, index) => sheet.getCell(1, index + 1).numFmt)) };
}

test("every format of a new file, and of one that has some already, is the one that its cells name", async () => {
  const first = await withFormats(null, "One");
  expect(first.found).toEqual([formats]);
  expect((await withFormats(first.bytes, "Two")).found).toEqual([formats, formats]);
});
