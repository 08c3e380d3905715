import { areaAddress, cellAddress, parseAreas, parseCell, sameSheetName } from "../../sheet";
import { moveArea, moveReferences, moveSpan } from "../document/move-lines";
import type { LineMove } from "../document/workbook-document";
import {
  changeAttributes, changeTexts, formulaAttributes, isPivotSource, patchElements, retag, rewrite, shapeLinks, sheetFormulas, tableFormulas,
} from "./change-part";
import type { FilePackage } from "./file-package";
import type { OpenFile } from "./read-workbook";
import { child, numberOf, parseXml, splice, walkXml, type Attributes, type Splice, type XmlNode } from "./xml";

/** Rows or columns that came or went on one sheet. */
export interface SheetMove {
  /** Part and name of the sheet in the file. */
  readonly part: string;
  readonly name: string;
  readonly move: LineMove;
}

/**
 * Moves everything in a file that is tied to rows or columns of a sheet: cells, names, rules, links, tables, notes, drawings, and what charts and pivot
 * tables are made of.
 */
export function moveParts({ file, workbookPart, sheets }: OpenFile, moved: SheetMove): void {
  for (const { part, name } of sheets) {
    const xml = file.read(part);
    if (xml === null) continue;
    const followed = moveAttributes(xml, name, moved);
    const patched = part === moved.part ? moveSheet(followed, moved) : moveTexts(followed, name, moved, sheetFormulas);
    if (patched !== xml) file.write(part, patched);
    if (part === moved.part) moveAttached(file, part, moved);
  }
  for (const [parts, elements] of [[[workbookPart], ["definedName"]], [file.names().filter((name) => /^xl\/charts\/[^/]+\.xml$/i.test(name)), ["f"]]] as const) {
    for (const part of parts) rewrite(file, part, (xml) => moveTexts(xml, "", moved, elements));
  }
  for (const part of file.names().filter((name) => /^xl\/pivotCache\/pivotCacheDefinition[^/]*\.xml$/i.test(name))) {
    rewrite(file, part, (xml) =>
      patchElements(xml, (name, { sheet = "", ref = "" }) => (isPivotSource(name) && sameSheetName(sheet, moved.name) ? { ref: movedAddresses(ref, moved.move) } : null)),
    );
  }
}

/** Moves what formulas in elements of these names say of the sheet. `own` is the sheet they stand on. */
function moveTexts(xml: string, own: string, { name, move }: SheetMove, elements: readonly string[]): string {
  return changeTexts(xml, elements, (text) => moveReferences(text, own, name, move));
}

/** Moves the formulas that stand in attributes. What led to a cell that went stays as it was. */
function moveAttributes(xml: string, own: string, { name, move }: SheetMove): string {
  return !/[<:](?:hyperlink|cfvo)\s/.test(xml) ? xml : changeAttributes(xml, formulaAttributes, (formula) => moveReferences(formula, own, name, move));
}

/** Attributes of a sheet's elements that name cells; `r1` and `r2` are the inputs of a what-if table. */
const addressAttributes: readonly string[] = ["ref", "sqref", "activeCell", "r1", "r2"];

function moveSheet(xml: string, moved: SheetMove): string {
  const { move } = moved;
  const texts = moveExtensions(moveTexts(xml, moved.name, moved, sheetFormulas), move);
  const path: string[] = [];
  let gone: { readonly start: number; readonly depth: number } | null = null;
  const splices: Splice[] = [];
  let row = -1;
  let column = -1;
  walkXml(texts, {
    open(name, attributes, start, end) {
      path.push(name);
      if (gone !== null) return;
      const changes = changesOf(name, attributes);
      if (changes === "gone") gone = { start, depth: path.length };
      else if (changes !== null) splices.push(retag(texts, name, attributes, changes, start, end));
    },
    close(_name, _start, end) {
      if (gone?.depth === path.length) {
        splices.push({ start: gone.start, end, text: "" });
        gone = null;
      }
      path.pop();
    },
  });
  return splice(texts, splices);

  function changesOf(name: string, attributes: Attributes): Record<string, string> | "gone" | null {
    if (path[1] === "sheetData" && path.length === 3) {
      row = numberOf(attributes["r"]) === undefined ? row + 1 : Number(attributes["r"]) - 1;
      column = -1;
      const to = move.axis === "row" ? moveSpan(row, 1, move) : { first: row };
      return to === null ? "gone" : { r: String(to.first + 1) };
    }
    if (path[1] === "sheetData" && path.length === 4) {
      column = attributes["r"] === undefined ? column + 1 : (parseCell(attributes["r"].toUpperCase())?.column ?? column + 1);
      const to = moveArea({ row, column, rows: 1, columns: 1 }, move);
      return to === null ? "gone" : { r: cellAddress(to) };
    }
    if (name === "col" && path[1] === "cols" && move.axis === "column") {
      const [min, max] = [Number(attributes["min"]), Number(attributes["max"])];
      const to = moveSpan(min - 1, max - min + 1, move);
      return to === null ? "gone" : { min: String(to.first + 1), max: String(to.first + to.count) };
    }
    if (name === "brk" && path[1] === (move.axis === "row" ? "rowBreaks" : "colBreaks")) {
      const to = moveSpan(Number(attributes["id"]), 1, move);
      return to === null ? "gone" : { id: String(to.first) };
    }
    const addresses = Object.entries(attributes).filter(([key]) => addressAttributes.includes(key));
    if (addresses.length === 0) return null;
    const changes = Object.fromEntries(addresses.map(([key, value]) => [key, movedAddresses(value, move)]));
    if (Object.values(changes).some((value) => value === "")) return name === "selection" || name === "dimension" ? null : "gone";
    return changes;
  }
}

/**
 * Moves the areas of rules and sparklines that stand in the extensions of a sheet, as texts of elements called `sqref`.
 *
 * One whose area went goes, and a list with its last member.
 */
function moveExtensions(xml: string, move: LineMove): string {
  const list = /[<:]sqref>/.test(xml) ? child(parseXml(xml), "extLst") : undefined;
  const visit = (node: XmlNode): readonly Splice[] | "gone" => {
    if (node.name === "sqref") {
      const text = movedAddresses(node.text, move);
      return text === "" ? "gone" : [{ start: node.inner, end: node.innerEnd, text }];
    }
    const below = node.children.map((one) => ({ ...one, found: visit(one) }));
    const isGone = below.some(({ name, found }) => name === "sqref" && found === "gone") || (below.length > 0 && below.every(({ found }) => found === "gone"));
    return isGone ? "gone" : below.flatMap(({ start, end, found }) => (found === "gone" ? [{ start, end, text: "" }] : found));
  };
  if (list === undefined) return xml;
  const found = visit(list);
  return splice(xml, found === "gone" ? [{ start: list.start, end: list.end, text: "" }] : found);
}

function movedAddresses(text: string, move: LineMove): string {
  return parseAreas(text).flatMap((area) => {
    const moved = moveArea(area, move);
    return moved === null ? [] : [areaAddress(moved)];
  }).join(" ");
}

/** Moves the parts that belong to a sheet: its tables, pivot tables, notes and drawings. */
function moveAttached(file: FilePackage, part: string, { name, move }: SheetMove): void {
  for (const { kind, target, isOutside } of file.relations(part)) {
    if (isOutside || !file.has(target)) continue;
    if (kind === "table") {
      const moveAddresses = (xml: string) => patchElements(xml, (_element, attributes) => addressOf(attributes, move));
      rewrite(file, target, (xml) => moveTexts(moveAddresses(xml), name, { part, name, move }, tableFormulas));
    }
    if (kind === "pivotTable") rewrite(file, target, (xml) => patchElements(xml, (element, attributes) => (element === "location" ? addressOf(attributes, move) : null)));
    if (kind === "comments" || kind === "threadedComment") rewrite(file, target, (xml) => withoutGone(xml, ["comment", "threadedComment"], move));
    if (kind === "drawing") {
      rewrite(file, target, (xml) => moveNumbers(xml, { from: "from", to: "to" }, move.axis === "row" ? "row" : "col", move));
      rewrite(file, target, (xml) => changeAttributes(xml, shapeLinks, (formula) => moveReferences(formula, name, name, move)));
    }
    if (kind === "vmlDrawing") rewrite(file, target, (xml) => moveNumbers(xml, null, move.axis === "row" ? "Row" : "Column", move));
  }
}

function addressOf({ ref }: Attributes, move: LineMove): Record<string, string> | null {
  const moved = ref === undefined ? "" : movedAddresses(ref, move);
  return moved === "" ? null : { ref: moved };
}

/** Moves the elements that name a cell, and takes out those whose cell went. */
function withoutGone(xml: string, names: readonly string[], move: LineMove): string {
  const splices: Splice[] = [];
  const visit = (node: XmlNode) => {
    if (!names.includes(node.name) || node.attributes["ref"] === undefined) node.children.forEach(visit);
    else {
      const ref = movedAddresses(node.attributes["ref"], move);
      splices.push(ref === "" ? { start: node.start, end: node.end, text: "" } : retag(xml, node.name, node.attributes, { ref }, node.start, node.inner));
    }
  };
  visit(parseXml(xml));
  return splice(xml, splices);
}

/**
 * Moves the numbers of rows or columns that stand as texts: of the corners of a drawing, or of the cell of a note's shape. A drawing whose cell
 * went stays where it was.
 */
function moveNumbers(xml: string, corners: { readonly from: string; readonly to: string } | null, element: string, move: LineMove): string {
  const path: string[] = [];
  const splices: Splice[] = [];
  let text = "";
  let inner = 0;
  try {
    walkXml(xml, {
      open(name, _attributes, _start, end) {
        path.push(name);
        [text, inner] = ["", end];
      },
      text(piece) {
        text += piece;
      },
      close(_name, start) {
        const [name, parent] = [path.at(-1), path.at(-2)];
        path.pop();
        if (name !== element || (corners !== null && parent !== corners.from && parent !== corners.to)) return;
        const number = numberOf(text);
        if (number === undefined) return;
        const moved = moveSpan(number, 1, move)?.first ?? move.at;
        if (moved !== number) splices.push({ start: inner, end: start, text: String(moved) });
      },
    });
  } catch {
    // Shapes of notes are written by some programs as no well-formed text; they are found by the note again.
    return xml;
  }
  return splice(xml, splices);
}
