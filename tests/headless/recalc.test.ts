import { mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { strFromU8, unzipSync } from "fflate";
import { readSnapshot } from "../../src/workbook/xlsx/read-snapshot";
import { rawWorkbook, type RawWorkbook } from "../support/raw-workbook";
import { hasLibreOffice, saveInLibreOffice } from "../support/libre-office";
import { runCommand } from "../support/run-command";

let folder = "";
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), "recalc-"));
});
afterAll(() => rm(folder, { recursive: true, force: true }));
const at = (name: string): string => join(folder, name);

async function recalc(raw: RawWorkbook) {
  return recalcBytes(rawWorkbook(raw));
}

async function recalcBytes(whole: Uint8Array) {
  await writeFile(at("in.xlsx"), whole);
  const run = await runCommand("recalc", at("in.xlsx"), "-o", at("out.xlsx"));
  const bytes = new Uint8Array(await readFile(at("out.xlsx")));
  return { ...run, sheets: readSnapshot(bytes).sheets, parts: unzipSync(bytes) };
}

const rows = (...lines: readonly string[]) => `<sheetData>${lines.map((cells, index) => `<row r="${index + 1}">${cells}</row>`).join("")}</sheetData>`;
const noName = (cell: string, formula: string) => `<c r="${cell}" t="e"><f>${formula}</f><v>#NAME?</v></c>`;

test("a chain of our formulas and others that was saved where the add-in is not comes right", async () => {
  const { code, lines, sheets } = await recalc({
    sheets: { Quote: rows(noName("A1", "_xldudf_BAY_USABLE(&quot;RAID 6&quot;,12,4)") + noName("B1", "A1*0.9") + noName("C1", "_xldudf_BAY_UNITPRICE(72,B1)")) },
  });
  // (12 - 2) * 4 TB, nine tenths of it, and 72 divided by that.
  expect(sheets[0]!.values[0]).toEqual([40, 36, 2]);
  expect(code).toBe(0);
  expect(lines).toEqual([{ file: at("in.xlsx"), out: at("out.xlsx"), failed: [], outOfDate: [] }]);
});

// Spelt as people type them, as the spreadsheet host stores them, and as LibreOffice does with functions it does not know; without any result, as openpyxl saves.
test.each(["BAY.", "_xldudf_BAY_", "_xldudf_bay_"])("functions of ours spelt with %s are computed, and stored as the host shows them without an @", async (ours) => {
  const cell = (place: string, formula: string) => `<c r="${place}"><f>${formula}</f><v/></c>`;
  const { sheets, parts } = await recalc({
    sheets: { Quote: rows(cell("A1", `${ours}USABLE(&quot;RAID 6&quot;,12,4)`) + cell("B1", "A1*0.9") + cell("C1", `2*${ours}UNITPRICE(72,B1)`)) },
  });
  expect(sheets[0]!.values[0]).toEqual([40, 36, 4]);
  const xml = strFromU8(parts["xl/worksheets/sheet1.xml"]!);
  expect(xml).toContain('<c r="A1" cm="1"><f t="array" ref="A1">_xldudf_BAY_USABLE(&quot;RAID 6&quot;,12,4)</f><v>40</v></c>');
  expect(xml).toContain('<c r="C1" cm="1"><f t="array" ref="C1">2*_xldudf_BAY_UNITPRICE(72,B1)</f><v>4</v></c>');
});

test("formulas of ours that shared one text come out each by itself", async () => {
  const { sheets } = await recalc({
    sheets: {
      Quote: rows(
        '<c r="A1"><f t="shared" ref="A1:A2" si="0">_xldudf_BAY_USABLE(&quot;RAID 6&quot;,B1,4)</f></c><c r="B1"><v>12</v></c>',
        '<c r="A2"><f t="shared" si="0"/></c><c r="B2"><v>10</v></c>',
      ),
    },
  });
  expect(sheets[0]!.values).toEqual([[40, 12], [32, 10]]);
  expect(sheets[0]!.formulas.map(([formula]) => formula)).toEqual(['=BAY.USABLE("RAID 6",B1,4)', '=BAY.USABLE("RAID 6",B2,4)']);
});

(hasLibreOffice ? test : test.skip)("arrays, spilled ones and tables of ours have their figures after recalc, and again after LibreOffice has computed everything", async () => {
  const first = await recalc({
    sheets: {
      Quote: rows(
        `<c r="A1"><v>5</v></c><c r="B1"><f t="array" ref="B1">SUM(IF(A1:A3&gt;10,A1:A3,0))</f></c><c r="C1"><f>SEQUENCE(4)</f></c>` +
          '<c r="D1"><f t="array" ref="D1">_xldudf_BAY_BREAKDOWN(&quot;RAID 6&quot;,12,4)</f></c>',
        '<c r="A2"><v>20</v></c>',
        '<c r="A3"><v>30</v></c>',
      ),
    },
  });
  expect(first.code).toBe(0);
  const shown = first.sheets[0]!.values;
  // 20 and 30; 1 to 4; 12 drives of 4 TB, of which two hold parity.
  expect(shown.map((line) => line.slice(0, 5)).slice(0, 7)).toEqual([
    [5, 50, 1, "Line", "TB"], [20, null, 2, "Raw", 48], [30, null, 3, "Spare drives", 0], [null, null, 4, "Outside a group", 0], [null, null, null, "Redundancy", 8],
    [null, null, null, "Reserve", 0], [null, null, null, "Usable", 40],
  ]);
  const saved = await readFile(saveInLibreOffice(at("out.xlsx"), at("saved"), { computes: true }));
  const there = readSnapshot(new Uint8Array(saved)).sheets[0]!.values;
  expect(there[0]!.slice(0, 2)).toEqual([5, 50]);
  // It knows neither add-ins nor, in older versions, SEQUENCE.
  expect(there[0]![3]).toEqual({ error: "#NAME?" });
  const again = await recalcBytes(new Uint8Array(saved));
  expect(again.lines).toMatchObject([{ failed: [], outOfDate: [] }]);
  expect(again.sheets[0]!.values).toEqual(shown);
  expect(strFromU8(again.parts["xl/worksheets/sheet1.xml"]!)).toMatch(/<c r="D1" t="str" cm="1"><f t="array" ref="D1:G7">_xldudf_BAY_BREAKDOWN\(/);
});

test("figures that the engine gets otherwise stay, those behind what changed go without a result and are named, and what stands beside them stays byte for byte", async () => {
  const first = rows(
    '<c r="A1"><v>5</v></c><c r="B1"><v>20</v></c><c r="C1"><v>30</v></c>',
    // Over several sheets, an array fixed to its cell, a column of no table, a shared formula: as other programs saved them.
    '<c r="A2"><f>SUM(First:Second!C1)</f><v>40</v></c><c r="B2"><f t="array" ref="B2">SUM(IF(A1:C1&gt;10,A1:C1,0))</f><v>50</v></c><c r="C2" t="str"><f>NOSUCH(1)</f><v>kept</v></c>',
    '<c r="A3"><f>_xldudf_BAY_USABLE(&quot;RAID 6&quot;,12,A1-1)</f><v>1</v></c><c r="B3"><f>SUM(First:Second!A3)</f><v>1</v></c><c r="C3"><f>B3+1</f><v>2</v></c>',
  );
  const { code, lines, sheets, parts } = await recalc({ sheets: { First: first, Second: rows('<c r="C1"><v>10</v></c>') }, parts: { "xl/media/note.txt": "kept" } });
  expect(code).toBe(1);
  expect(lines).toMatchObject([{ outOfDate: ["First!B3", "First!C3"], failed: [] }]);
  expect(sheets[0]!.values.slice(1)).toEqual([[40, 50, "kept"], [40, null, null]]);
  const xml = strFromU8(parts["xl/worksheets/sheet1.xml"]!);
  expect(xml).toContain('<c r="B2"><f t="array" ref="B2">SUM(IF(A1:C1&gt;10,A1:C1,0))</f><v>50</v></c>');
  expect(xml).toContain("<f>SUM(First:Second!A3)</f></c>");
  // What has no result is to be computed by the next program: ECMA-376 part 1, section 18.2.2.
  expect(strFromU8(parts["xl/workbook.xml"]!)).toMatch(/<calcPr calcId="191029" fullCalcOnLoad="1"\/>/);
  expect(strFromU8(parts["xl/media/note.txt"]!)).toBe("kept");
});

test("a formula of ours that has no answer is named with its sentence", async () => {
  const { code, lines } = await recalc({ sheets: { Quote: rows('<c r="A1"><f>_xldudf_BAY_USABLE(&quot;RAID 60&quot;,12,4)</f></c>') } });
  expect(code).toBe(1);
  expect(lines).toMatchObject([{ failed: [{ cell: "Quote!A1", error: "#VALUE!", sentence: expect.stringContaining("group shape") as string }], outOfDate: [] }]);
});

test("a table of ours that spills is a formula that finds its own size, with its mark", async () => {
  const { sheets, parts } = await recalc({ sheets: { Quote: rows('<c r="A1"><f>_xldudf_BAY_BREAKDOWN(&quot;RAID 6&quot;,12,4)</f></c>') } });
  expect(sheets[0]!.values.map(([line, size]) => [line, size]).slice(0, 2)).toEqual([["Line", "TB"], ["Raw", 48]]);
  expect(strFromU8(parts["xl/worksheets/sheet1.xml"]!)).toMatch(/<c r="A1" t="str" cm="1"><f t="array" ref="A1:D7">/);
  expect(strFromU8(parts["xl/metadata.xml"]!)).toContain('fDynamic="1"');
});

test("days, times, money and shares that are computed leave the format of their cells as it is", async () => {
  const cell = (place: string, formula: string) => `<c r="${place}"><f>${formula}</f></c>`;
  const { sheets, parts } = await recalc({
    sheets: { Days: rows(cell("A1", "TODAY()"), cell("A2", "DATE(2026,1,1)"), cell("A3", "TIME(12,0,0)"), cell("A4", "50%"), cell("A5", "PMT(0,10,1000)"), cell("A6", "EDATE(A2,1)")) },
  });
  // 2026-01-01 is day 46,023, as every spreadsheet program counts.
  expect(sheets[0]!.values.slice(1).flat()).toEqual([46_023, 0.5, 0.5, -100, 46_054]);
  expect(strFromU8(parts["xl/worksheets/sheet1.xml"]!)).not.toMatch(/<c [^>]*\bs="[^0]/);
});

test("a file in which nothing is to be computed comes out as it went in", async () => {
  const raw = rawWorkbook({ sheets: { Only: rows('<c r="A1"><f>NOW()</f><v>1</v></c>') } });
  await writeFile(at("in.xlsx"), raw);
  expect((await runCommand("recalc", at("in.xlsx"), "-o", at("out.xlsx"))).code).toBe(0);
  expect(new Uint8Array(await readFile(at("out.xlsx")))).toEqual(raw);
});

test("one cell in the last corner of a sheet costs no sheet full of cells", async () => {
  const corner = '<sheetData><row r="1"><c r="A1"><f>_xldudf_BAY_USABLE(&quot;RAID 6&quot;,12,4)</f></c></row><row r="1048576"><c r="XFD1048576"><v>7</v></c></row></sheetData>';
  await writeFile(at("in.xlsx"), rawWorkbook({ sheets: { Wide: corner } }));
  expect((await runCommand("recalc", at("in.xlsx"), "-o", at("out.xlsx"))).code).toBe(0);
  const xml = strFromU8(unzipSync(new Uint8Array(await readFile(at("out.xlsx"))))["xl/worksheets/sheet1.xml"]!);
  expect(xml).toContain("<v>40</v>");
  expect(xml).toContain('<c r="XFD1048576"><v>7</v></c>');
});

const wholeSheet = "A1:XFD1048576";
test.each([
  ["a rule of what may be typed", `<dataValidations count="1"><dataValidation type="whole" sqref="${wholeSheet}"><formula1>A1</formula1></dataValidation></dataValidations>`],
  ["a conditional format", `<conditionalFormatting sqref="${wholeSheet}"><cfRule type="expression" priority="1"><formula>A1&gt;5</formula></cfRule></conditionalFormatting>`],
  ["a merged area", `<mergeCells count="1"><mergeCell ref="${wholeSheet}"/></mergeCells>`],
])("%s over every cell of a sheet stays as it is, and is not gone through cell by cell", async (_, section) => {
  const { code, parts } = await recalc({ sheets: { Wide: `${rows('<c r="B1"><f>_xldudf_BAY_USABLE(&quot;RAID 6&quot;,12,4)</f></c>')}${section}` } });
  expect(code).toBe(0);
  const xml = strFromU8(parts["xl/worksheets/sheet1.xml"]!);
  expect(xml).toContain("<v>40</v>");
  expect(xml).toContain(section);
});

// The error of a blocked spill is none of those that ECMA-376 part 1, section 18.17.2.7 lets a file say.
test("a formula that would fill cells which nobody looks at does not, and leaves them as they are", async () => {
  const lines = ['<c r="A1"><f>SEQUENCE(3)</f></c><c r="C1"><f>B9*2</f></c>', "", '<c r="A3"><v>7</v></c>', "", '<c r="A5"><v>8</v></c><c r="D5"><v>9</v></c>'];
  const { sheets } = await recalc({ sheets: { Quote: rows(...lines) } });
  const blank = [null, null, null, null];
  expect(sheets[0]!.values).toEqual([[{ error: "#VALUE!" }, null, 0, null], blank, [7, null, null, null], blank, [8, null, null, 9]]);
});

test("sixty cells that each double the text before them end in an error, not in all of the memory (a cell holds 32,767 characters)", async () => {
  const cells = Array.from({ length: 59 }, (_, index) => `<c r="A${index + 2}"><f>A${index + 1}&amp;A${index + 1}</f></c>`);
  const { sheets } = await recalc({ sheets: { Quote: rows('<c r="A1" t="str"><v>0123456789</v></c>', ...cells) } });
  const shown = sheets[0]!.values.map(([value]) => value);
  // Ten characters doubled eleven times are 20,480.
  expect(shown[11]).toHaveLength(20_480);
  expect(shown.slice(12)).toEqual(new Array(48).fill({ error: "#VALUE!" }));
});
