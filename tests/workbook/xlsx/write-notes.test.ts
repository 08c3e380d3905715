import { strFromU8, strToU8, unzipSync, zipSync } from "fflate";
import type { Note } from "../../../src/workbook/document/workbook-document";
import { readFile } from "../../../src/workbook/xlsx/read-workbook";
import { writeFile } from "../../../src/workbook/xlsx/write-workbook";
import { rawWorkbook } from "../../support/raw-workbook";

const office = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
const relation = (id: string, kind: string, target: string) => `<Relationship Id="${id}" Type="${office}/${kind}" Target="../${target}"/>`;
const related = (...list: string[]) => `<Relationships>${list.join("")}</Relationships>`;
const comment = (cell: string, author: number, inside: string, more = "") => `<m:comment ref="${cell}" authorId="${author}"${more}><m:text>${inside}</m:text></m:comment>`;
const cells = '<sheetData><row r="1"><c r="A1"><v>1</v></c></row></sheetData>';
const shape = (id: string, kind: string, inside: string) =>
  `<x1:shape xmlns:x1="urn:schemas-microsoft-com:vml" id="${id}"><x1:textbox><br></x1:textbox>` +
  `<x2:ClientData xmlns:x2="urn:schemas-microsoft-com:office:excel" ObjectType="${kind}">${inside}</x2:ClientData></x1:shape>`;
const place = (row: number, column: number) => `<x2:Row>${row}</x2:Row><x2:Column>${column}</x2:Column>`;

/** A sheet with a thread of comments on A1, notes on B2 and C3, and a button; its shapes are no well-formed text, as programs wrote them for years. */
const noted = rawWorkbook({
  sheets: { One: `${cells}<legacyDrawing r:id="v"/>`, Two: cells },
  parts: {
    "xl/worksheets/_rels/sheet1.xml.rels": related(relation("c", "comments", "notes.xml"), relation("v", "vmlDrawing", "shapes.vml"), relation("t", "threadedComment", "thread.xml")),
    "xl/notes.xml":
      '<m:comments xmlns:m="urn:m"><m:authors><m:author>tc={1}</m:author><m:author>Kim</m:author></m:authors><m:commentList>' +
      comment("A1", 0, "<m:t>[thread]</m:t>") + comment("B2", 1, "<m:r><m:rPr><m:b/></m:rPr><m:t>old</m:t></m:r>", ' shapeId="0"') + comment("C3", 1, "<m:t>other</m:t>") +
      "</m:commentList></m:comments>",
    "xl/thread.xml": '<ThreadedComments><threadedComment ref="A1" id="{1}"><text>said</text></threadedComment></ThreadedComments>',
    "xl/shapes.vml": `<xml>${[0, 1, 2].map((cell) => shape(`_x0000_s103${cell}`, "Note", place(cell, cell))).join("")}${shape("_x0000_s1033", "Button", "")}</xml>`,
  },
});

/** The parts of a file after the notes of its first sheet became others. */
function withNotes(bytes: Uint8Array, change: (notes: readonly Note[]) => readonly Note[]): Record<string, string> {
  const open = readFile(bytes);
  const [first, ...others] = open.document.sheets;
  const saved = writeFile(open, open.document, { ...open.document, sheets: [{ ...first!, notes: change(first!.notes) }, ...others] });
  return Object.fromEntries(Object.entries(unzipSync(saved)).map(([name, part]) => [name, strFromU8(part)]));
}

const cellsOfShapes = (vml: string) => [...vml.matchAll(/Row>(\d+)<\/[^>]*><[^>]*Column>(\d+)</g)].map(([, row, column]) => `${row} ${column}`);

test("the words that stand for a thread of comments are told from notes", () => {
  expect(readFile(noted).document.sheets[0]!.notes).toEqual([
    { row: 0, column: 0, text: "[thread]", isThread: true },
    { row: 1, column: 1, text: "old", isThread: undefined },
    { row: 2, column: 2, text: "other", isThread: undefined },
  ]);
});

test("a changed note keeps its author and its shape, and nothing else changes", () => {
  const after = withNotes(noted, (notes) => notes.map((note) => (note.text === "old" ? { ...note, text: " new_x0041_" } : note)));
  const before = withNotes(noted, (notes) => notes);
  expect(Object.keys(before).filter((name) => before[name] !== after[name])).toEqual(["xl/notes.xml"]);
  expect(after["xl/notes.xml"]).toContain('<m:comment ref="B2" authorId="1" shapeId="0"><m:text><m:r><m:t xml:space="preserve"> new_x005F_x0041_</m:t></m:r></m:text></m:comment>');
});

test("a note that came is nobody's and has a shape of its own; one that went takes its shape along, and the button stays", () => {
  const after = withNotes(noted, ([thread, , other]) => [thread!, other!, { row: 4, column: 3, text: "new" }]);
  expect(after["xl/notes.xml"]).toContain('<m:author>Kim</m:author><m:author></m:author></m:authors>');
  expect(after["xl/notes.xml"]).toContain('<m:comment ref="D5" authorId="2">');
  expect(after["xl/notes.xml"]).not.toContain('ref="B2"');
  expect(cellsOfShapes(after["xl/shapes.vml"]!)).toEqual(["0 0", "2 2", "4 3"]);
  expect(after["xl/shapes.vml"]).toMatch(/ObjectType="Button".*id="_x0000_s1034"/);
});

test("a note and a thread that only moved take all along that the file says of them", () => {
  const after = withNotes(noted, ([thread, old, other]) => [{ ...thread!, row: 7 }, { ...old!, column: 5 }, other!]);
  expect(after["xl/notes.xml"]).toContain('<m:comment ref="A8" authorId="0">');
  expect(after["xl/notes.xml"]).toContain('<m:comment ref="F2" authorId="1" shapeId="0"><m:text><m:r><m:rPr><m:b/></m:rPr>');
  expect(after["xl/thread.xml"]).toContain('<threadedComment ref="A8" id="{1}"><text>said</text>');
  expect(cellsOfShapes(after["xl/shapes.vml"]!)).toEqual(["7 0", "1 5", "2 2"]);
});

test("with the last note its part goes, with the last shape that of the shapes", () => {
  const after = withNotes(noted, () => []);
  expect([after["xl/notes.xml"], cellsOfShapes(after["xl/shapes.vml"]!)]).toEqual([undefined, []]);
  expect(after["xl/thread.xml"]).not.toContain("<threadedComment ");
  expect(after["xl/worksheets/_rels/sheet1.xml.rels"]).not.toContain("comments");
  const bare = rawWorkbook({ sheets: { One: cells } });
  const once = withNotes(bare, () => [{ row: 0, column: 0, text: "one" }]);
  expect(Object.keys(once)).toEqual(expect.arrayContaining(["xl/comments1.xml", "xl/drawings/vmlDrawing1.vml"]));
  expect(once["xl/worksheets/sheet1.xml"]).toMatch(/<\/sheetData><legacyDrawing [^>]*r:id="rId\d"\/><\/worksheet>$/);
  const none = withNotes(zipSync(Object.fromEntries(Object.entries(once).map(([name, text]) => [name, strToU8(text)]))), () => []);
  expect(Object.keys(none).filter((name) => /comments|vml/.test(name))).toEqual([]);
  expect(none["xl/worksheets/sheet1.xml"]).not.toContain("legacyDrawing");
});

test("notes that came without shapes are given some, as programs show no note without", () => {
  const bytes = rawWorkbook({
    sheets: { One: cells },
    parts: {
      "xl/worksheets/_rels/sheet1.xml.rels": related(relation("c", "comments", "notes.xml")),
      "xl/notes.xml": '<comments><commentList><comment ref="A1" authorId="0"><text><t>old</t></text></comment></commentList></comments>',
    },
  });
  const after = withNotes(bytes, (notes) => [...notes, { row: 1, column: 0, text: "new" }]);
  expect(cellsOfShapes(after["xl/drawings/vmlDrawing1.vml"]!)).toEqual(["0 0", "1 0"]);
  expect(after["xl/notes.xml"]).toContain('<authors><author></author></authors><commentList>');
});
