import { readFileSync } from "node:fs";
import { join } from "node:path";
import { strFromU8, unzipSync } from "fflate";
import type { DocumentSheet, SheetFilter } from "../../../src/workbook/document/workbook-document";
import { withCondition } from "../../../src/workbook/document/sheet-filter";
import { readWorkbook, writeWorkbook } from "../../../src/workbook/engine/workbook-file";
import { readFile } from "../../../src/workbook/xlsx/read-workbook";
import { writeFile } from "../../../src/workbook/xlsx/write-workbook";
import { rawWorkbook } from "../../support/raw-workbook";

/**
 * Made by openpyxl, and what LibreOffice made of that: on Stock the sheet's own filter, on Racks that of a table, on Kept conditions that only the
 * program knows which wrote them.
 */
const [byOpenpyxl, byLibreOffice] = ["by-openpyxl", "by-libreoffice"].map((name) => new Uint8Array(readFileSync(join(__dirname, "filters", `${name}.xlsx`))));
const unsaid = '<customFilters and="true"><customFilter operator="**none**" val=""/></customFilters>';
const stock = { row: 0, column: 0, rows: 6, columns: 3 };

const sheetsOf = (bytes: Uint8Array) => Object.fromEntries(readFile(bytes).document.sheets.map((sheet) => [sheet.name, sheet]));
const hidden = ({ rows }: DocumentSheet) => rows.flatMap(({ first, last, hidden: is }) => (is === true ? Array.from({ length: last - first + 1 }, (_, at) => first + at + 1) : []));
const partsOf = (bytes: Uint8Array) => Object.fromEntries(Object.entries(unzipSync(bytes)).map(([name, part]) => [name, strFromU8(part)]));

/** The parts of a file after filters of one of its sheets became others. */
function refiltered(bytes: Uint8Array, name: string, change: (filters: readonly SheetFilter[]) => readonly SheetFilter[], rows?: DocumentSheet["rows"]): Record<string, string> {
  const open = readFile(bytes);
  const sheets = open.document.sheets.map((sheet) => (sheet.name === name ? { ...sheet, filters: change(sheet.filters!), rows: rows ?? sheet.rows } : sheet));
  return partsOf(writeFile(open, open.document, { ...open.document, sheets }));
}

describe("filters as ECMA-376 part 1, sections 18.3.1.2 and 18.3.2, has files say them", () => {
  test("a list of texts, two comparisons and rows out of sight are read from the sheet of a file by openpyxl", () => {
    const { Stock: sheet } = sheetsOf(byOpenpyxl!);
    expect(sheet!.filters).toEqual([{ area: stock, columns: [
      { column: 1, condition: { kind: "list", texts: ["metal"], blank: true } },
      { column: 2, condition: { kind: "compare", joins: true, comparisons: [{ operator: "greaterThan", value: "3" }, { operator: "lessThan", value: "20" }] } },
    ] }]);
    expect(hidden(sheet!)).toEqual([3, 5, 6]);
  });

  test("the filter of a table is read from the part of the table, a hidden arrow too", () => {
    const { Racks: sheet } = sheetsOf(byOpenpyxl!);
    expect(sheet!.filters).toEqual([{ table: "Racks", columns: [{ column: 1, condition: { kind: "list", texts: ["42"], blank: false } }, { column: 2, hidesArrow: true, condition: undefined }] }]);
    expect(hidden(sheet!)).toEqual([3]);
  });

  test("what LibreOffice saved of it reads as the same lists and rows", () => {
    const { Stock: own, Racks: table } = sheetsOf(byLibreOffice!);
    expect(own!.filters![0]).toMatchObject({ area: stock, columns: [{ column: 1, condition: { kind: "list", texts: ["metal"], blank: true } }] });
    expect(table!.filters).toMatchObject([{ table: "Racks", columns: [{ column: 1, condition: { kind: "list", texts: ["42"] } }] }]);
    expect([hidden(own!), hidden(table!)]).toEqual([[3, 5, 6], [3]]);
  });

  test.each([["openpyxl", byOpenpyxl!], ["LibreOffice", byLibreOffice!]])("a file by %s that is opened and saved keeps its sheets and tables byte for byte", (_by, bytes) => {
    const [before, after] = [partsOf(bytes), partsOf(writeWorkbook({ data: readWorkbook(bytes), spills: {} }, bytes).bytes)];
    for (const part of Object.keys(before).filter((name) => /^xl\/(worksheets|tables)\//.test(name))) expect([part, after[part]]).toEqual([part, before[part]]);
    expect(after["xl/workbook.xml"]).toBe(before["xl/workbook.xml"]);
  });

  test("groups of days, the top ten, moving dates and colours stay word for word when another column of theirs is changed", () => {
    const before = partsOf(byOpenpyxl!)["xl/worksheets/sheet3.xml"]!;
    const list = { kind: "list", texts: ["x"], blank: false } as const;
    const after = refiltered(byOpenpyxl!, "Kept", ([one]) => [withCondition(one!, 2, list)]);
    const columns = (xml: string) => [...xml.matchAll(/<filterColumn.*?<\/filterColumn>/g)].map(([text]) => text);
    const [days, top, dynamic, color] = columns(before);
    expect([days, top, dynamic, color].join()).toMatch(/dateGroupItem.*top10.*dynamicFilter.*colorFilter/s);
    expect(columns(after["xl/worksheets/sheet3.xml"]!).map((text) => text.replace(/ hiddenButton="0" showButton="1"/, ""))).toEqual(
      [days!, top!, '<filterColumn colId="2"><filters><filter val="x"/></filters></filterColumn>', color!].map((text) => text.replace(/ hiddenButton="0" showButton="1"/, "")));
  });

  test("a new filter of a sheet stands before its merged cells, with the name by which programs find it, and goes with it", () => {
    const cells = '<sheetData><row r="1"><c r="A1" t="str"><v>Part</v></c></row><row r="2"><c r="A2"><v>1</v></c></row></sheetData><mergeCells count="1"><mergeCell ref="C1:D1"/></mergeCells>';
    const file = rawWorkbook({ sheets: { "Bob's": cells }, behind: '<definedNames><definedName name="_xlnm.Print_Area" localSheetId="0">\'Bob\'\'s\'!$A$1</definedName></definedNames>' });
    const area = { row: 0, column: 0, rows: 2, columns: 1 };
    const condition = { kind: "compare", joins: false, comparisons: [{ operator: "equal", value: "a & \"b\"*" }, { operator: "notEqual", value: " " }] } as const;
    const after = refiltered(file, "Bob's", () => [{ area, columns: [{ column: 0, condition }] }], [{ first: 1, last: 1, hidden: true }]);
    const sheet = after["xl/worksheets/sheet1.xml"]!;
    expect(sheet).toContain(
      '</sheetData><autoFilter ref="A1:A2"><filterColumn colId="0"><customFilters><customFilter val="a &amp; &quot;b&quot;*"/><customFilter operator="notEqual" val=" "/>' +
      '</customFilters></filterColumn></autoFilter><mergeCells');
    expect(sheet).toMatch(/<row r="2" hidden="1">/);
    expect(after["xl/workbook.xml"]).toContain('Print_Area" localSheetId="0">');
    expect(after["xl/workbook.xml"]).toContain('<definedName name="_xlnm._FilterDatabase" localSheetId="0" hidden="1">\'Bob\'\'s\'!$A$1:$A$2</definedName>');
    const gone = refiltered(byLibreOffice!, "Stock", () => []);
    expect(gone["xl/worksheets/sheet1.xml"]).not.toContain("autoFilter");
    expect([...gone["xl/workbook.xml"]!.matchAll(/_FilterDatabase"[^>]*>([^<]*)/g)].map(([, text]) => text)).toEqual(["Kept!$A$1:$D$4"]);
  });

  test("a filter without the name by which programs find it, as libraries write one, gets that name along with its first condition", () => {
    const file = rawWorkbook({ sheets: { One: '<sheetData><row r="1"><c r="A1" t="str"><v>Part</v></c></row><row r="2"><c r="A2"><v>1</v></c></row></sheetData><autoFilter ref="A1:A2"/>' } });
    const name = (parts: Record<string, string>) => /_FilterDatabase"[^>]*>([^<]*)/.exec(parts["xl/workbook.xml"]!)?.[1];
    expect(name(refiltered(file, "One", (filters) => filters))).toBeUndefined();
    expect(name(refiltered(file, "One", ([one]) => [withCondition(one!, 0, { kind: "list", texts: ["1"], blank: false })]))).toBe("'One'!$A$1:$A$2");
  });

  test.each([
    ['<customFilters and="true"><customFilter operator="equal" val="*rail*"/></customFilters>', { kind: "compare", joins: false, comparisons: [{ operator: "equal", value: "*rail*" }] }],
    ['<customFilters><customFilter val="7"/></customFilters>', { kind: "compare", joins: false, comparisons: [{ operator: "equal", value: "7" }] }],
    // What LibreOffice 7.4 writes for cells that are not empty, and for those that are.
    [unsaid, { kind: "other", xml: unsaid }],
  ])("%s is read as what it says, and kept as it is where it says nothing", (xml, condition) => {
    const file = rawWorkbook({ sheets: { One: `<sheetData/><autoFilter ref="A1:A2"><filterColumn colId="0">${xml}</filterColumn></autoFilter>` } });
    expect(sheetsOf(file)["One"]!.filters![0]!.columns).toEqual([{ column: 0, hidesArrow: undefined, condition }]);
  });

  test("a table whose arrows are taken away has no filter in its part, and gets it back before its columns", () => {
    const without = refiltered(byOpenpyxl!, "Racks", () => []);
    expect(without["xl/tables/table1.xml"]).not.toContain("autoFilter");
    const again = refiltered(byOpenpyxl!, "Racks", () => [{ table: "Racks", columns: [] }]);
    expect(again["xl/tables/table1.xml"]).toContain('<autoFilter ref="A1:C4"/><tableColumns');
  });

  test.each([
    ["no area", "nowhere"], ["an area past the last cell", "A1:ZZZ9999999"], ["nothing", ""],
  ])("a filter of %s stays in the file as it is, and the rest of the file opens", (_what, ref) => {
    const file = rawWorkbook({ sheets: { One: `<sheetData><row r="1"><c r="A1"><v>1</v></c></row></sheetData><autoFilter ref="${ref}"><filterColumn colId="0"/></autoFilter>` } });
    const before = partsOf(file)["xl/worksheets/sheet1.xml"];
    expect(partsOf(writeWorkbook({ data: readWorkbook(file), spills: {} }, file).bytes)["xl/worksheets/sheet1.xml"]).toBe(before);
  });
});
