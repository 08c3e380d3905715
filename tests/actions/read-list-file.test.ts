import { Workbook } from "exceljs";
import { readListFile, readListText } from "../../src/actions/read-list-file";
import { readSnapshot } from "../../src/workbook/xlsx/read-snapshot";

const read = (bytes: Uint8Array, name = "list.csv") => readListFile(name, bytes, (file) => Promise.resolve(readSnapshot(file)));
const text = (content: string, encoding: BufferEncoding = "utf8") => new Uint8Array(Buffer.from(content, encoding));

describe("separated values are read as RFC 4180 has them", () => {
  test.each<[string, string, string[][]]>([
    ["section 2.1: each record on a line of its own, ended by CRLF", "aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n", [["aaa", "bbb", "ccc"], ["zzz", "yyy", "xxx"]]],
    ["section 2.2: no line break behind the last record", "aaa,bbb,ccc\r\nzzz,yyy,xxx", [["aaa", "bbb", "ccc"], ["zzz", "yyy", "xxx"]]],
    ["section 2.4: blanks are part of a field", "aaa, bbb ,ccc\r\n1,2,3", [["aaa", " bbb ", "ccc"], ["1", "2", "3"]]],
    ["section 2.5: fields in quotation marks", '"aaa","bbb","ccc"\r\nzzz,yyy,xxx', [["aaa", "bbb", "ccc"], ["zzz", "yyy", "xxx"]]],
    ["section 2.6: line breaks and commas within them", '"aaa","b\r\nbb","c,cc"\r\nzzz,yyy,xxx', [["aaa", "b\r\nbb", "c,cc"], ["zzz", "yyy", "xxx"]]],
    ["section 2.7: a quotation mark doubled", '"aaa","b""bb","ccc"', [["aaa", 'b"bb', "ccc"]]],
  ])("%s", (_, content, rows) => {
    expect(readListText(content)).toEqual(rows);
  });
});

test("a list of two columns and one row is parted by its semicolons, though a line ends it", () => {
  expect(readListText("Part;Cost\r\nAL-24;1.234,50\r\n")).toEqual([["Part", "Cost"], ["AL-24", "1.234,50"]]);
});

test.each([["semicolons", ";"], ["tabs, as from the clipboard", "\t"], ["bars", "|"]])("%s part values as well", (_, mark) => {
  expect(readListText(["Site", "Room, floor"].join(mark) + "\n" + ["North", "1,5"].join(mark))).toEqual([["Site", "Room, floor"], ["North", "1,5"]]);
});

test.each<[string, Uint8Array]>([
  ["UTF-8", text("Ort;Straße\nKöln;Süd")],
  ["UTF-8 with its mark", text("\ufeffOrt;Straße\nKöln;Süd")],
  ["UTF-16, low byte first", text("\ufeffOrt;Straße\nKöln;Süd", "utf16le")],
  ["UTF-16, high byte first", text("\ufeffOrt;Straße\nKöln;Süd", "utf16le").reduce((bytes, byte, at) => { bytes[at ^ 1] = byte; return bytes; }, new Uint8Array(40))],
  ["Windows-1252", text("Ort;Straße\nKöln;Süd", "latin1")],
])("a file in %s is read", async (_, bytes) => {
  expect((await read(bytes)).cells).toEqual([["Ort", "Straße"], ["Köln", "Süd"]]);
});

test("a workbook is read by its first sheet in sight on which anything stands", async () => {
  const made = new Workbook();
  made.addWorksheet("Cover");
  made.addWorksheet("Old", { state: "hidden" }).getCell("A1").value = "no";
  made.addWorksheet("Register").addRows([["Site", "Units"], ["North", 42]]);
  const { cells, from } = await read(new Uint8Array(await made.xlsx.writeBuffer()), "register.xlsx");
  expect([cells, from]).toEqual([[["Site", "Units"], ["North", 42]], "sheet Register of register.xlsx"]);
});

test.each<[string, Uint8Array, string]>([
  ["an empty file", new Uint8Array(0), '"list.csv" is empty. Choose the file in which the list stands.'],
  ["blanks alone", text(" \n "), "Nothing was pasted."],
  ["an open quotation mark", text('Site,Room\n"North,1'), "A quotation mark in row 2 of the list is not closed."],
  ["a picture", new Uint8Array([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, 0, 0]), '"list.csv" is no list: it holds what no text holds.'],
  ["half a workbook", text("PK\u0003\u0004 and no more"), "This file is no .xlsx workbook, or it is damaged."],
])("%s is refused with a sentence", async (_, bytes, sentence) => {
  await expect(read(bytes)).rejects.toThrow(sentence);
});
