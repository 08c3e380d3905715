import { cellAddress } from "../../sheet";
import type { Note } from "../document/workbook-document";
import { writeCellText } from "./cell-text";
import { retag, rewrite } from "./change-part";
import { appendTo, relationTypes, type FilePackage } from "./file-package";
import { insertionOf } from "./patch-sheet";
import { outlineSheet } from "./sheet-outline";
import { child, childrenOf, escapeXml, parseXml, prefixOf, relationId, splice, writeAttributes, type Splice, type XmlNode } from "./xml";

const namespace = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
const relationNamespace = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
const commentsType = "application/vnd.openxmlformats-officedocument.spreadsheetml.comments+xml";
const shapesType = "application/vnd.openxmlformats-officedocument.vmlDrawing";

/** What becomes of the notes of a sheet, each by the address of its cell. */
interface NoteChanges {
  /** Notes that stay as they are on another cell: from where, and to where. */
  readonly moved: ReadonlyMap<string, Note>;
  readonly gone: ReadonlySet<string>;
  readonly changed: ReadonlyMap<string, Note>;
  readonly added: readonly Note[];
}

/**
 * Brings the notes of a sheet's file up to what the sheet says: their texts, and the shapes in which programs show them. A note that did not change keeps
 * its author, its fonts and its size; one that only moved takes them along.
 */
export function writeNotes(file: FilePackage, part: string, before: readonly Note[], after: readonly Note[]): void {
  const changes = changesOf(before, after);
  if (changes.moved.size + changes.gone.size + changes.changed.size + changes.added.length === 0) return;
  writeTexts(file, part, changes, after.length === 0);
  for (const { kind, target } of file.relations(part)) {
    if (kind === "threadedComment") rewrite(file, target, (xml) => splice(xml, childrenOf(parseXml(xml), "threadedComment").flatMap((one) => moveOne(xml, one, changes))));
  }
  writeShapes(file, part, changes, after);
}

function changesOf(before: readonly Note[], after: readonly Note[]): NoteChanges {
  const [old, now] = [before, after].map((notes) => new Map(notes.map((note) => [cellAddress(note), note])));
  const fresh = [...now!].filter(([cell, { text }]) => old!.get(cell)?.text !== text);
  const gone = new Map([...old!].filter(([cell]) => !now!.has(cell)));
  const moved = new Map<string, Note>();
  const [changed, added] = [new Map<string, Note>(), [] as Note[]];
  for (const [cell, note] of fresh) {
    const from = old!.has(cell) ? undefined : [...gone].find(([, { text }]) => text === note.text)?.[0];
    if (old!.has(cell)) changed.set(cell, note);
    else if (from === undefined) added.push(note);
    else {
      moved.set(from, note);
      gone.delete(from);
    }
  }
  return { moved, gone: new Set(gone.keys()), changed, added };
}

/** Moves an element that names its cell, or takes it out. */
function moveOne(xml: string, node: XmlNode, { moved, gone }: NoteChanges): Splice[] {
  const cell = (node.attributes["ref"] ?? "").toUpperCase();
  const to = moved.get(cell);
  if (gone.has(cell)) return [{ start: node.start, end: node.end, text: "" }];
  return to === undefined ? [] : [retag(xml, node.name, node.attributes, { ref: cellAddress(to) }, node.start, node.inner)];
}

/** Writes the part that holds the texts; one in which no note is left goes. */
function writeTexts(file: FilePackage, part: string, changes: NoteChanges, isEmpty: boolean): void {
  const target = file.relations(part).find(({ kind, target }) => kind === "comments" && file.has(target))?.target;
  if (isEmpty && target !== undefined) {
    file.unrelate(part, target);
    file.remove(target);
    return;
  }
  const fresh = `<comments xmlns="${namespace}"><authors></authors><commentList></commentList></comments>`;
  const standing = target === undefined ? fresh : file.read(target)!;
  const xml = child(parseXml(standing), "commentList") === undefined ? fresh : standing;
  const root = parseXml(xml);
  const p = prefixOf(xml, root);
  const [authors, list] = [child(root, "authors"), child(root, "commentList")!];
  // Nobody is named: who types here is not known.
  const names = childrenOf(authors, "author").map(({ text }) => text);
  const nobody = names.includes("") ? names.indexOf("") : names.length;
  // As a run of text, though it needs no font: some readers know nothing else.
  const text = (note: Note) => `<${p}text><${p}r><${p}t xml:space="preserve">${escapeXml(writeCellText(note.text))}</${p}t></${p}r></${p}text>`;
  const added = changes.added.map((note) => `<${p}comment${writeAttributes({ ref: cellAddress(note), authorId: nobody })}>${text(note)}</${p}comment>`).join("");
  const splices = childrenOf(list, "comment").flatMap((one): Splice[] => {
    const changed = changes.changed.get((one.attributes["ref"] ?? "").toUpperCase());
    const old = child(one, "text");
    return changed === undefined || old === undefined ? moveOne(xml, one, changes) : [{ start: old.start, end: old.end, text: text(changed) }];
  });
  const author = `<${p}author></${p}author>`;
  if (added !== "" && authors === undefined) splices.push({ start: list.start, end: list.start, text: `<${p}authors>${author}</${p}authors>` });
  else if (added !== "" && nobody === names.length) splices.push(appendTo(xml, authors!, author));
  if (added !== "") splices.push(appendTo(xml, list, added));
  const written = splice(xml, splices);
  if (target !== undefined) file.write(target, written);
  else file.relate(part, relationTypes.comments, file.add("xl/comments#.xml", commentsType, written));
}

/** Writes the part that holds the shapes, which programs ask for; one in which no shape is left goes. */
function writeShapes(file: FilePackage, part: string, changes: NoteChanges, after: readonly Note[]): void {
  const sheet = file.read(part)!;
  const outline = outlineSheet(sheet, () => false);
  const standing = outline.sections.find(({ name }) => name === "legacyDrawing");
  const id = standing === undefined ? undefined : relationId(parseXml(sheet.slice(standing.start, standing.end)).attributes);
  const target = file.relations(part).find((one) => one.id === id && file.has(one.target))?.target;
  const old = target === undefined ? noShapes : file.read(target)!;
  const written = withShapes(old, changes, after);
  if (target !== undefined && anyShape.test(written)) {
    if (written !== old) file.write(target, written);
  } else if (target !== undefined && standing !== undefined) {
    file.write(part, splice(sheet, [{ start: standing.start, end: standing.end, text: "" }]));
    file.unrelate(part, target);
    file.remove(target);
  } else if (anyShape.test(written)) {
    const added = file.relate(part, relationTypes.vmlDrawing, file.add("xl/drawings/vmlDrawing#.vml", shapesType, written));
    const element = `<${outline.prefix}legacyDrawing xmlns:r="${relationNamespace}" r:id="${escapeXml(added)}"/>`;
    file.write(part, splice(sheet, [{ ...insertionOf(outline, "legacyDrawing"), text: element }]));
  }
}

const noShapes =
  '<xml xmlns:v="urn:schemas-microsoft-com:vml" xmlns:o="urn:schemas-microsoft-com:office:office" xmlns:x="urn:schemas-microsoft-com:office:excel">' +
  '<v:shapetype id="_x0000_t202" coordsize="21600,21600" o:spt="202" path="m,l,21600r21600,l21600,xe"><v:stroke joinstyle="miter"/>' +
  '<v:path gradientshapeok="t" o:connecttype="rect"/></v:shapetype></xml>';

/** A shape with all that is in it. Some programs write what is no well-formed text into one: it is not read as such. */
const anyShape = /<((?:\w+:)?shape)\s[^>]*[^>/]>[\s\S]*?<\/\1>/;

/** Moves the shapes of notes, takes out those whose note went, and adds those that are missing: ECMA-376 part 4, section 19.4. */
function withShapes(vml: string, { moved, gone }: NoteChanges, after: readonly Note[]): string {
  const shown = new Set<string>();
  const kept = vml.replace(new RegExp(anyShape, "g"), (shape) => {
    const cell = cellOfShape(shape);
    if (cell === null) return shape;
    if (gone.has(cell)) return "";
    const to = moved.get(cell);
    shown.add(to === undefined ? cell : cellAddress(to));
    return to === undefined ? shape : shape.replace(rowOfShape, `$<open>${to.row}$<close>`).replace(columnOfShape, `$<open>${to.column}$<close>`);
  });
  const last = Math.max(1024, ...[...kept.matchAll(/_x0000_s(\d+)"/g)].map(([, number]) => Number(number)));
  const missing = after.filter((note) => !shown.has(cellAddress(note)));
  const end = kept.lastIndexOf("</xml>");
  return end < 0 ? kept : kept.slice(0, end) + missing.map((note, index) => shapeOf(note, last + 1 + index)).join("") + kept.slice(end);
}

const rowOfShape = /(?<open><(?:\w+:)?Row>)\s*(?<number>\d+)\s*(?<close><)/;
const columnOfShape = /(?<open><(?:\w+:)?Column>)\s*(?<number>\d+)\s*(?<close><)/;

/** The cell of a note's shape; null for a button and the like. */
function cellOfShape(shape: string): string | null {
  const [row, column] = [rowOfShape, columnOfShape].map((one) => one.exec(shape)?.groups?.["number"]);
  return row === undefined || column === undefined || !shape.includes('ObjectType="Note"') ? null : cellAddress({ row: Number(row), column: Number(column) });
}

/** A shape two columns wide beside its cell, out of sight until somebody points there. Its names of spaces are its own, whatever the part calls them. */
function shapeOf(note: Note, number: number): string {
  const { row, column } = note;
  const rows = Math.max(4, note.text.split("\n").reduce((sum, line) => sum + Math.max(1, Math.ceil(line.length / 24)), 1));
  const top = Math.max(0, row - 1);
  return (
    `<v:shape xmlns:v="urn:schemas-microsoft-com:vml" xmlns:o="urn:schemas-microsoft-com:office:office" id="_x0000_s${number}" type="#_x0000_t202" ` +
    'style="position:absolute;visibility:hidden" fillcolor="#ffffe1" o:insetmode="auto"><v:fill color2="#ffffe1"/><v:shadow on="t" color="black" obscured="t"/>' +
    '<v:path o:connecttype="none"/><v:textbox style="mso-direction-alt:auto"><div style="text-align:left"></div></v:textbox>' +
    '<x:ClientData xmlns:x="urn:schemas-microsoft-com:office:excel" ObjectType="Note"><x:MoveWithCells/><x:SizeWithCells/>' +
    `<x:Anchor>${column + 1}, 15, ${top}, 10, ${column + 3}, 15, ${top + rows}, 4</x:Anchor><x:AutoFill>False</x:AutoFill>` +
    `<x:Row>${row}</x:Row><x:Column>${column}</x:Column></x:ClientData></v:shape>`
  );
}
