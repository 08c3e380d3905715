import { Zip, ZipDeflate, strToU8, zipSync, type Zippable } from "fflate";
import { putCell, type WorkbookDocument } from "../../../src/workbook/document/workbook-document";
import { readFile } from "../../../src/workbook/xlsx/read-workbook";
import { writeFile } from "../../../src/workbook/xlsx/write-workbook";

// What other programs write and the standard allows, or every program reads: ECMA-376 parts 1 and 2, ISO/IEC 29500 part 1, APPNOTE 6.3.
const main = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
const office = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
const packaged = "http://schemas.openxmlformats.org/package/2006";
const relation = (id: string, kind: string, target: string) => `<Relationship Id="${id}" Type="${office}/${kind}" Target="${target}"/>`;
const type = (part: string, kind: string) => `<Override PartName="/xl/${part}" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.${kind}+xml"/>`;

type Parts = Readonly<Record<string, string | Uint8Array>>;
type TextParts = Readonly<Record<string, string>>;

const plain: TextParts = {
  "[Content_Types].xml":
    `<Types xmlns="${packaged}/content-types"><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/>` +
    `<Default Extension="xml" ContentType="application/xml"/>${type("workbook.xml", "sheet.main")}${type("worksheets/sheet1.xml", "worksheet")}` +
    `${type("worksheets/sheet2.xml", "worksheet")}${type("styles.xml", "styles")}${type("sharedStrings.xml", "sharedStrings")}</Types>`,
  "_rels/.rels": `<Relationships xmlns="${packaged}/relationships">${relation("w", "officeDocument", "xl/workbook.xml")}</Relationships>`,
  "xl/workbook.xml": `<workbook xmlns="${main}" xmlns:r="${office}"><workbookPr/><sheets><sheet name="Rates" sheetId="1" r:id="a"/><sheet name="Blank" sheetId="2" r:id="b"/></sheets></workbook>`,
  "xl/_rels/workbook.xml.rels":
    `<Relationships xmlns="${packaged}/relationships">${relation("a", "worksheet", "worksheets/sheet1.xml")}${relation("b", "worksheet", "worksheets/sheet2.xml")}` +
    `${relation("s", "styles", "styles.xml")}${relation("t", "sharedStrings", "sharedStrings.xml")}</Relationships>`,
  "xl/styles.xml":
    `<styleSheet xmlns="${main}"><fonts><font/></fonts><fills><fill/></fills><borders><border/></borders><cellStyleXfs><xf/></cellStyleXfs><cellXfs><xf/><xf numFmtId="14"/></cellXfs></styleSheet>`,
  "xl/sharedStrings.xml": `<sst xmlns="${main}"><si><t>Müller &amp; co</t></si></sst>`,
  "xl/worksheets/sheet1.xml":
    `<worksheet xmlns="${main}"><sheetData><row r="1"><c r="A1" t="s"><v>0</v></c><c r="B1"><v>0.25</v></c><c r="C1" s="1"><v>45000</v></c></row>` +
    `<row r="2"><c r="A2" t="b"><v>1</v></c><c r="B2"><f>B1*4</f><v>1</v></c></row></sheetData></worksheet>`,
  "xl/worksheets/sheet2.xml": `<worksheet xmlns="${main}"><sheetData/></worksheet>`,
};

const bytesOf = (parts: Parts): Zippable => Object.fromEntries(Object.entries(parts).map(([name, one]) => [name, typeof one === "string" ? strToU8(one) : one]));
const zip = (parts: Parts): Uint8Array => zipSync(bytesOf(parts));
const eachPart = (change: (text: string, name: string) => string | Uint8Array): Parts => Object.fromEntries(Object.entries(plain).map(([name, text]) => [name, change(text, name)]));
const swap = (...pairs: readonly (readonly [string, string])[]) => eachPart((text) => pairs.reduce((whole, [from, to]) => whole.replaceAll(from, to), text));
const sheet = (text: string): Parts => ({ ...plain, "xl/worksheets/sheet1.xml": text });
const sheetWith = (from: string, to: string): Parts => sheet(plain["xl/worksheets/sheet1.xml"]!.replaceAll(from, to));

function utf16(text: string, isBigEndian: boolean): Uint8Array {
  const bytes = Buffer.from(`\ufeff<?xml version="1.0" encoding="UTF-16"?>${text}`, "utf16le");
  return Uint8Array.from(isBigEndian ? bytes.swap16() : bytes);
}

/** Packs parts one after the other, so that their sizes stand behind them: APPNOTE 4.3.9. */
function streamed(parts: Parts): Uint8Array {
  const chunks: Uint8Array[] = [];
  const archive = new Zip((_error, chunk) => chunks.push(chunk));
  for (const [name, content] of Object.entries(bytesOf(parts))) {
    const entry = new ZipDeflate(name);
    archive.add(entry);
    entry.push(content as Uint8Array, true);
  }
  archive.end();
  return Uint8Array.from(Buffer.concat(chunks));
}

/** Puts `x:` before every element of the spreadsheet's own parts. */
function prefixed(text: string, name: string): string {
  if (!name.startsWith("xl/") || name.includes("_rels")) return text;
  return text.replaceAll(/<(\/?)([a-zA-Z])/g, "<$1x:$2").replace(`xmlns="${main}"`, `xmlns:x="${main}"`);
}

const further = (sheets: string, relations: string, parts: TextParts): Parts => ({
  ...plain,
  ...parts,
  "xl/workbook.xml": plain["xl/workbook.xml"]!.replace('<sheet name="Blank"', `${sheets}<sheet name="Blank"`),
  "xl/_rels/workbook.xml.rels": plain["xl/_rels/workbook.xml.rels"]!.replace("</Relationships>", `${relations}</Relationships>`),
});

const strict = "http://purl.oclc.org/ooxml";

const textCell = '<c r="A1" t="s"><v>0</v></c>';
const withoutPart = (parts: Parts, gone: string): Parts => Object.fromEntries(Object.entries(parts).filter(([name]) => name !== gone));
const foreign = '<sheetPr/><dimension ref="A1:XFD1048576"/><mc:AlternateContent xmlns:mc="urn:mc"><mc:Choice Requires="x"/></mc:AlternateContent><sheetData xml:space="preserve">';
const filter = '</sheets><definedNames><definedName name="_xlnm._FilterDatabase" localSheetId="0" hidden="1">Rates!$A$1</definedName></definedNames>';
const thirdSheet = (kind: string): Parts => {
  const part = `${kind}s/sheet1.xml`;
  return further('<sheet name="Third" sheetId="3" r:id="c"/>', relation("c", kind, part), { [`xl/${part}`]: `<${kind} xmlns="${main}"/>` });
};

/** An archive with a comment of its own, whose length its end record says: APPNOTE 6.3, section 4.3.16. */
function withComment(archive: Uint8Array, comment: Uint8Array): Uint8Array {
  const whole = new Uint8Array([...archive, ...comment]);
  new DataView(whole.buffer).setUint16(archive.length - 2, comment.length, true);
  return whole;
}

const variants: readonly (readonly [string, Uint8Array])[] = [
  ["the plain one", zip(plain)],
  ["the strict form", zip(swap([main, `${strict}/spreadsheetml/main`], [office, `${strict}/officeDocument/relationships`]))],
  ["the words of a program before the standard", zip(swap([main, "http://schemas.microsoft.com/office/excel/2006/2"], ["<si>", "<sstItem>"], ["</si>", "</sstItem>"]))],
  ["a comment that looks like the end of an archive", withComment(zip(plain), strToU8(`PK\u0005\u0006${"x".repeat(40)}`))],
  ["targets from the root", zip(swap(['Target="worksheets', 'Target="/xl/worksheets'], ['Target="styles', 'Target="/xl/styles'], ['Target="xl', 'Target="/xl']))],
  ["targets with dots in them", zip(swap(['Target="worksheets', 'Target="./../xl/worksheets']))],
  ["names in another case than targets", zip(Object.fromEntries(Object.entries(plain).map(([name, text]) => [name.replace("sheet1", "Sheet1"), text])))],
  ["names with backslashes", zip(Object.fromEntries(Object.entries(plain).map(([name, text]) => [name.replaceAll("/", "\\"), text])))],
  ["a byte order mark in each part", zip(eachPart((text) => `\ufeff<?xml version="1.0" encoding="utf-8"?>${text}`))],
  ["parts in UTF-16, little end first", zip(eachPart((text) => utf16(text, false)))],
  ["parts in UTF-16, big end first", zip(eachPart((text) => utf16(text, true)))],
  ["parts in Latin 1", zip(eachPart((text) => Uint8Array.from(Buffer.from(`<?xml version="1.0" encoding="ISO-8859-1"?>${text}`, "latin1"))))],
  ["a prefix before each element", zip(eachPart(prefixed))],
  ["single quotes", zip(eachPart((text) => text.replaceAll('"', "'")))],
  ["blanks and comments between elements", zip(eachPart((text) => text.replaceAll("><", ">\r\n  <!-- a < b -->\r\n  <")))],
  ["the text of a cell in a section of its own", zip(swap(["Müller &amp; co", "<![CDATA[Müller & co]]>"]))],
  ["numbers of characters", zip(swap(["ü", "&#xFC;"], ["&amp;", "&#38;"]))],
  ["parts that are stored", zipSync(bytesOf(plain), { level: 0 })],
  ["sizes behind the parts", streamed(plain)],
  ["folders among the parts", zip({ "xl/": "", "_rels/": "", ...plain })],
  ["relations of the package that nobody can read", zip({ ...plain, "_rels/.rels": '<?xml version="1.0"?>\nJUNK' })],
  ["no relations of the package", zip(withoutPart(plain, "_rels/.rels"))],
  ["a theme that is not there", zip(further("", relation("th", "theme", "theme/theme1.xml"), {}))],
  ["texts in their cells", zip(sheetWith(textCell, '<c r="A1" t="inlineStr"><is><r><rPr/><t>Müller </t></r><r><t>&amp; co</t></r></is></c>'))],
  ["texts in their cells, and no list of texts though one is named", zip(withoutPart(sheetWith(textCell, '<c r="A1" t="inlineStr"><is><t>Müller &amp; co</t></is></c>'), "xl/sharedStrings.xml"))],
  ["no places of rows and cells", zip(eachPart((text, name) => (name.includes("sheet1.xml") ? text.replaceAll(/ r="[A-Z]?\d"/g, "") : text)))],
  ["no places of rows", zip(sheetWith("<row r=", "<row data-r="))],
  ["places in small letters", zip(sheetWith('r="A', 'r="a'))],
  ["further attributes and elements of others", zip(sheetWith("<sheetData>", foreign))],
  ["a chart sheet", zip(thirdSheet("chartsheet"))],
  ["a dialog sheet", zip(thirdSheet("dialogsheet"))],
  ["a link to another workbook", zip(further("", relation("x", "externalLink", "externalLinks/externalLink1.xml"), { "xl/externalLinks/externalLink1.xml": `<externalLink xmlns="${main}"/>` }))],
  ["a macro sheet of old", zip(thirdSheet("xlMacrosheet"))],
  ["a sheet that is named and stands nowhere", zip(further('<sheet name="Third" sheetId="3" r:id=""/>', "", {}))],
  ["the prefix of relations declared where it is used", zip(swap([`xmlns:r="${office}"`, ""], ["r:id=", `xmlns:d3p1="${office}" d3p1:id=`]))],
  ["parts in Windows 1252", zip(eachPart((text) => Uint8Array.from(Buffer.from(`<?xml version="1.0" encoding="windows-1252"?>${text}`, "latin1"))))],
  ["a document type without any entity", zip(eachPart((text, name) => (name.startsWith("xl/worksheets") ? `<?xml version="1.0"?><!DOCTYPE worksheet>${text}` : text)))],
  ["readings beside a text", zip(swap(["<si><t>Müller &amp; co</t></si>", '<si><t>Müller &amp; co</t><rPh sb="0" eb="2"><t>ミュラー</t></rPh><phoneticPr fontId="0"/></si>']))],
  ["blanks around its numbers", zip(eachPart((text) => text.replaceAll("<v>", "<v>\n ").replaceAll("</v>", "\n</v>")))],
  ["numbers as a program prints them", zip(sheetWith("<c r=\"B1\"><v>0.25</v>", '<c r="B1" t="n"><v>2.5E-1</v>'))],
  ["cells of a kind without anything in them", zip(sheetWith("</row><row", '<c r="D1" t="s"/><c r="E1" t="inlineStr"/><c r="F1" t="str"><v/></c></row><row'))],
  ["a row in two pieces", zip(sheetWith('<c r="B1">', '</row><row r="1"><c r="B1">'))],
  ["the type of a template", zip(swap(["sheet.main", "template.main"]))],
  ["a remark of the archive", Uint8Array.from(Buffer.concat([zip(plain).subarray(0, -2), Buffer.from([4, 0]), Buffer.from("made")]))],
  ["bytes behind the archive", Uint8Array.from(Buffer.concat([zip(plain), Buffer.alloc(300)]))],
  ["a sheet without any row section", zip({ ...plain, "xl/worksheets/sheet2.xml": `<worksheet xmlns="${main}"/>` })],
  ["names of programs", zip({ ...plain, "xl/workbook.xml": plain["xl/workbook.xml"]!.replace("</sheets>", filter) })],
];

const shown = ({ sheets, looks }: WorkbookDocument) =>
  sheets.map(({ name, cells }) => [name, [...cells].map(([row, line]) => [row, [...line].map(([column, { value, formula, look }]) => [column, value, formula ?? null, looks[look]?.format ?? null])])]);

const expected = [
  ["Rates", [[0, [[0, "Müller & co", null, null], [1, 0.25, null, null], [2, 45000, null, "mm-dd-yy"]]], [1, [[0, true, null, null], [1, 1, "=B1*4", null]]]]],
  ["Blank", []],
];

test.each(variants)("a workbook with %s says what the plain one says", (_, bytes) => {
  expect(shown(readFile(bytes).document)).toEqual(expected);
});

test.each(variants)("a workbook with %s takes a new cell on each sheet, and keeps the others", (_, bytes) => {
  const open = readFile(bytes);
  const after = {
    ...open.document,
    sheets: open.document.sheets.map((one) => {
      const cells = new Map([...one.cells].map(([row, line]) => [row, new Map(line)]));
      putCell(cells, 1, 3, { value: "new", look: 0 });
      return { ...one, cells };
    }),
  };
  const again = readFile(writeFile(open, open.document, after));
  expect(shown(again.document)).toEqual(shown(after));
  expect(again.file.names().length).toBeGreaterThanOrEqual(open.file.names().length - 1);
});
