import { deflateRawSync } from "node:zlib";
import { Problem } from "../../../src/planning/text/problem";
import { readWorkbook } from "../../../src/workbook/xlsx/workbook-file";

/** Makes a zip archive; `declare` sets the unpacked size that its directory claims. */
function zip(files: Readonly<Record<string, string | Uint8Array>>, declare: (bytes: number) => number = (bytes) => bytes): Uint8Array {
  const locals: Buffer[] = [];
  const directory: Buffer[] = [];
  let offset = 0;
  for (const [name, content] of Object.entries(files)) {
    const plain = Buffer.from(content as string);
    const packed = deflateRawSync(plain);
    const header = (signature: number, size: number) => {
      const block = Buffer.alloc(size);
      block.writeUInt32LE(signature, 0);
      return block;
    };
    const local = header(0x04034b50, 30);
    local.writeUInt16LE(8, 8);
    local.writeUInt32LE(packed.length, 18);
    local.writeUInt32LE(declare(plain.length), 22);
    local.writeUInt16LE(name.length, 26);
    const entry = header(0x02014b50, 46);
    entry.writeUInt16LE(8, 10);
    entry.writeUInt32LE(packed.length, 20);
    entry.writeUInt32LE(declare(plain.length), 24);
    entry.writeUInt16LE(name.length, 28);
    entry.writeUInt32LE(offset, 42);
    locals.push(local, Buffer.from(name), packed);
    directory.push(entry, Buffer.from(name));
    offset += 30 + name.length + packed.length;
  }
  const end = Buffer.alloc(22);
  end.writeUInt32LE(0x06054b50, 0);
  end.writeUInt16LE(Object.keys(files).length, 10);
  end.writeUInt32LE(offset, 16);
  return new Uint8Array(Buffer.concat([...locals, ...directory, end]));
}

const rels = (targets: readonly string[]) => `<Relationships>${targets.map((target, index) => `<Relationship Id="r${index}" Target="${target}"/>`).join("")}</Relationships>`;

function workbookOf(sheets: readonly string[]): Record<string, string> {
  return {
    "xl/workbook.xml": `<workbook><sheets>${sheets.map((_, index) => `<sheet name="S${index}" sheetId="${index + 1}" r:id="r${index}"/>`).join("")}</sheets></workbook>`,
    "xl/_rels/workbook.xml.rels": rels(sheets.map((_, index) => `worksheets/sheet${index}.xml`)),
    ...Object.fromEntries(sheets.map((xml, index) => [`xl/worksheets/sheet${index}.xml`, xml])),
  };
}

const oldOffice = new Uint8Array([0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1, 0x1a, 0xe1, ...new Array<number>(600).fill(0)]);

test.each<[string, Uint8Array, RegExp]>([
  ["no bytes at all", new Uint8Array(), /is no .xlsx workbook/],
  ["text", Buffer.from("Name;Drives\nA;12"), /is no .xlsx workbook/],
  ["an archive of something else", zip({ "readme.txt": "hello" }), /is no .xlsx workbook/],
  ["a workbook whose sheet is missing", zip({ ...workbookOf(["<worksheet/>"]), "xl/_rels/workbook.xml.rels": rels(["worksheets/gone.xml"]) }), /is no .xlsx workbook/],
  ["a file cut in half", zip(workbookOf(["<worksheet/>"])).subarray(0, 150), /is no .xlsx workbook/],
  ["an old or locked workbook", oldOffice, /password or in the old .xls format/],
  ["a file over 50 MB", new Uint8Array(50_000_001), /is 51 MB large; 50 MB is the most/],
  ["an archive that would fill the memory", zip({ "xl/workbook.xml": "x", "xl/media/a.png": "y" }, () => 200_000_000), /would take 400 MB once unpacked; 300 MB is the most/],
  ["an archive that lies about its size", zip(workbookOf([`<worksheet>${" ".repeat(1_000_000)}</worksheet>`]), () => 500), /damaged/],
  ["251 sheets", zip(workbookOf(new Array<string>(251).fill("<worksheet/>"))), /has 251 sheets; 250 is the most/],
  ["a million and a half cells and one", zip(workbookOf([`<worksheet>${"<c />".repeat(1_500_001)}</worksheet>`])), /more than 1,500,000 cells/],
])("%s gets a sentence", async (_what, bytes, sentence) => {
  const thrown: unknown = await readWorkbook(bytes).then(() => null, (reason: unknown) => reason);
  expect(thrown).toBeInstanceOf(Problem);
  expect((thrown as Problem).sentence).toMatch(sentence);
  expect((thrown as Problem).sentence.length).toBeLessThanOrEqual(160);
});
