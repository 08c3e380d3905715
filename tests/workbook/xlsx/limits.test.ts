import { strToU8, zipSync, type Zippable } from "fflate";
import { Problem } from "../../../src/planning/text";
import { readFile } from "../../../src/workbook/xlsx/read-workbook";
import { crc32, readArchive, unpack, writeArchive, pack } from "../../../src/workbook/xlsx/zip-archive";

const main = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
const office = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
const sheetText = (inside: string) => `<worksheet xmlns="${main}">${inside}</worksheet>`;
const rels = (targets: readonly string[]) => {
  const relations = targets.map((target, index) => `<Relationship Id="r${index}" Type="${office}/worksheet" Target="${target}"/>`);
  return `<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships">${relations.join("")}</Relationships>`;
};

function partsOf(sheets: readonly string[]): Record<string, string> {
  const listed = sheets.map((_, index) => `<sheet name="S${index}" sheetId="${index + 1}" r:id="r${index}"/>`).join("");
  return {
    "[Content_Types].xml": "<Types/>",
    "xl/workbook.xml": `<workbook xmlns="${main}" xmlns:r="${office}"><sheets>${listed}</sheets></workbook>`,
    "xl/_rels/workbook.xml.rels": rels(sheets.map((_, index) => `worksheets/sheet${index}.xml`)),
    ...Object.fromEntries(sheets.map((text, index) => [`xl/worksheets/sheet${index}.xml`, text])),
  };
}

/** Packs parts with a general library, not with ours. */
function zip(parts: Readonly<Record<string, string | Uint8Array>>): Uint8Array {
  const files: Zippable = Object.fromEntries(Object.entries(parts).map(([name, content]) => [name, typeof content === "string" ? strToU8(content) : content]));
  return zipSync(files);
}

/** Changes four bytes behind the first place where the signature stands. */
function withNumber(bytes: Uint8Array, signature: number, offset: number, number: number): Uint8Array {
  const changed = Uint8Array.from(bytes);
  const view = new DataView(changed.buffer);
  for (let at = 0; at + 4 <= changed.length; at += 1) {
    if (view.getUint32(at, true) === signature) view.setUint32(at + offset, number, true);
  }
  return changed;
}

// Places in the directory of an archive: APPNOTE 6.3, section 4.3.12.
const entry = { signature: 0x02014b50, flags: 8, crc: 16, size: 24 } as const;
const end = { signature: 0x06054b50, counts: 8 } as const;
const oldOffice = new Uint8Array([0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1, 0x1a, 0xe1, ...new Array<number>(600).fill(0)]);
const good = zip(partsOf([sheetText("<sheetData/>")]));
const bomb = '<!DOCTYPE x [<!ENTITY a "aaaaaaaaaa"><!ENTITY b "&a;&a;&a;&a;&a;&a;&a;&a;">]>';
const macros =
  '<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types"><Override PartName="/xl/workbook.xml" ' +
  'ContentType="application/vnd.ms-excel.sheet.macroEnabled.main+xml"/></Types>';

test.each<[string, Uint8Array, RegExp]>([
  ["no bytes at all", new Uint8Array(), /damaged/],
  ["text", Buffer.from("Name;Drives\nA;12"), /damaged/],
  ["an archive of something else", zip({ "readme.txt": "hello" }), /^This file is no \.xlsx workbook\. Save/],
  ["a workbook of another format", zip({ ...partsOf(["<x/>"]), "xl/workbook.xml": '<workbook xmlns="urn:other"/>' }), /^This file is no \.xlsx workbook\. Save/],
  ["a workbook with macros", zip({ ...partsOf([sheetText("")]), "[Content_Types].xml": macros }), /holds macros/],
  ["a workbook whose sheet is missing", zip({ ...partsOf([sheetText("")]), "xl/_rels/workbook.xml.rels": rels(["worksheets/gone.xml"]) }), /damaged/],
  ["a file cut in half", good.subarray(0, good.length / 2), /damaged/],
  ["a part whose sum is another", withNumber(good, entry.signature, entry.crc, 1), /damaged/],
  ["an old or locked workbook", oldOffice, /password or in the old .xls format/],
  ["a part that is locked", withNumber(good, entry.signature, entry.flags, 0x00080001), /locked with a password/],
  ["a file over 50 MB", new Uint8Array(50_000_001), /is 51 MB large; 50 MB is the most/],
  ["an archive that would fill the memory", withNumber(good, entry.signature, entry.size, 200_000_000), /would take 800 MB once unpacked; 300 MB is the most/],
  ["an archive that lies about its size", withNumber(zip(partsOf([sheetText(" ".repeat(1_000_000))])), entry.signature, entry.size, 500), /damaged/],
  ["251 sheets", zip(partsOf(new Array<string>(251).fill(sheetText("")))), /has 251 sheets; 250 is the most/],
  ["a million and a half cells and one", zip(partsOf([sheetText(`<sheetData><row>${"<c r='A1'/>".repeat(1_500_001)}</row></sheetData>`)])), /more than 1,500,000 cells/],
  [
    "more cells than anybody waits for, told before they are read",
    zip(partsOf([sheetText(`<sheetData><row></wrong>${"<c r='A1'/>".repeat(1_500_001)}</row></sheetData>`)])),
    /more than 1,500,000 cells/,
  ],
  ["a text that goes on and on", zip(partsOf([sheetText(`<sheetData><row><c t='str'><v>${"x".repeat(2_000_001)}</v></c></row></sheetData>`)])), /holds a text of more than 2 MB/],
  ["twelve million elements and one", zip(partsOf([sheetText("<x/>".repeat(12_000_001))])), /without measure/],
  ["half a million names and one", zip({ ...partsOf([sheetText("")]), "xl/_rels/workbook.xml.rels": `<r>${"<x/>".repeat(500_001)}</r>` }), /without measure/],
  ["more text than anybody reads", writeArchive([{ ...pack("xl/workbook.xml", strToU8("<x/>")), bytes: 160_000_001 }]), /more than 160 MB of cells and texts/],
  ["a directory that counts too few parts", withNumber(zip({ ...partsOf([sheetText("")]), "xl/drawings/drawing1.xml": "<x/>" }), end.signature, end.counts, 4 | (4 << 16)), /damaged/],
  ["elements nested without measure", zip(partsOf([sheetText("<a>".repeat(300) + "</a>".repeat(300))])), /without measure/],
  ["entities of its own", zip(partsOf([`${bomb}${sheetText("<sheetData><row><c><v>&b;</v></c></row></sheetData>")}`])), /damaged/],
  ["a character that is none", zip(partsOf([sheetText("<sheetData><row><c t='str'><v>&#x110000;</v></c></row></sheetData>")])), /damaged/],
  ["a tag that is not closed", zip(partsOf([sheetText("<sheetData><row>")])), /damaged/],
  ["a cell of another row", zip(partsOf([sheetText('<sheetData><row r="1"><c r="A2"/></row></sheetData>')])), /damaged/],
  ["a row below the last", zip(partsOf([sheetText('<sheetData><row r="2000000"/></sheetData>')])), /damaged/],
])("%s gets a sentence", (_what, bytes, sentence) => {
  let thrown: unknown;
  try {
    readFile(bytes);
  } catch (reason) {
    thrown = reason;
  }
  expect(thrown).toBeInstanceOf(Problem);
  expect((thrown as Problem).sentence).toMatch(sentence);
  expect((thrown as Problem).sentence.length).toBeLessThanOrEqual(160);
});

test.each([
  ["targets that begin at the root, as openpyxl writes them", { "xl/_rels/workbook.xml.rels": rels(["/xl/worksheets/sheet0.xml"]) }],
  ["a target with a broken escape", { "xl/_rels/workbook.xml.rels": rels(["worksheets/../worksheets/sheet0.xml"]), "xl/worksheets/_rels/sheet0.xml.rels": rels(["%ZZ/gone.xml"]) }],
  ["a target that climbs over the root", { "xl/worksheets/_rels/sheet0.xml.rels": rels(["../../../../../etc/passwd"]) }],
  ["columns without end", { "xl/worksheets/sheet0.xml": sheetText('<cols><col min="1" max="2000000000" width="9"/></cols><sheetData><row r="1"><c r="A1"><v>1</v></c></row></sheetData>') }],
  ["text in UTF-16 without a mark in front", { "xl/worksheets/sheet0.xml": new Uint8Array(Buffer.from(sheetText('<sheetData><row r="1"><c r="A1"><v>1</v></c></row></sheetData>'), "utf16le")) }],
  ["text in UTF-16", { "xl/worksheets/sheet0.xml": new Uint8Array(Buffer.from(`\ufeff${sheetText('<sheetData><row r="1"><c r="A1"><v>1</v></c></row></sheetData>')}`, "utf16le")) }],
])("%s are no damage", (_what, parts) => {
  const whole = partsOf([sheetText('<sheetData><row r="1"><c r="A1"><v>1</v></c></row></sheetData>')]);
  expect(readFile(zip({ ...whole, ...parts })).document.sheets[0]!.cells.get(0)?.get(0)?.value).toBe(1);
});

test("an archive behind something else is read by its directory: APPNOTE 6.3, section 4.3.16", () => {
  const whole = zip(partsOf([sheetText('<sheetData><row r="1"><c r="A1"><v>1</v></c></row></sheetData>')]));
  expect(readFile(Uint8Array.from([...Buffer.from("in front of it"), ...whole])).document.sheets[0]!.cells.get(0)?.get(0)?.value).toBe(1);
});

test("the sum of a part is that of the standard's check word (CRC-32 of ITU-T V.42: cbf43926 for 123456789)", () => {
  expect(crc32(strToU8("123456789")).toString(16)).toBe("cbf43926");
});

test("what is packed is unpacked again, and parts that were read are handed on packed as they were", () => {
  const text = strToU8("cells ".repeat(1000));
  expect(unpack(pack("a.xml", text))).toEqual(text);
  const [first] = readArchive(good);
  expect(readArchive(writeArchive(readArchive(good)))[0]!.packed).toEqual(first!.packed);
});
