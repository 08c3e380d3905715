import { cellAddress, parseCell } from "../../sheet";
import { numberOf, walkXml, writeAttributes, type Attributes, type Splice } from "./xml";

/** Where an element stands in the text of its part. */
export interface ElementPlace {
  readonly start: number;
  /** Behind the opening tag, and where the closing one begins; both are `end` where there is none. */
  inner: number;
  innerEnd: number;
  end: number;
}

export interface CellPlaceInFile extends ElementPlace {
  readonly column: number;
  readonly attributes: Attributes;
  /** Its formula element, whole. */
  formula: { start: number; end: number; readonly attributes: Attributes } | null;
}

export interface RowPlace extends ElementPlace {
  readonly row: number;
  readonly attributes: Attributes;
  readonly cells: CellPlaceInFile[];
}

export interface SectionPlace extends ElementPlace {
  readonly name: string;
}

/** Where everything stands in the text of a sheet: what is directly in it, and rows and cells that are asked for. */
export interface SheetOutline {
  /** With its colon; mostly empty. */
  readonly prefix: string;
  readonly root: ElementPlace;
  readonly sections: readonly SectionPlace[];
  readonly rows: readonly RowPlace[];
  /** Cells that share a formula, by its number, in the order of the text. */
  readonly shared: ReadonlyMap<string, readonly { readonly row: number; readonly column: number; readonly isFirst: boolean }[]>;
  /** Writes out the places of rows and cells that do not say theirs, so that others can come between them. */
  readonly numbering: readonly Splice[];
}

/** Finds the places in the text of a sheet; of rows, those that `wanted` names have their cells listed. */
export function outlineSheet(xml: string, wanted: (row: number) => boolean): SheetOutline {
  const depth: string[] = [];
  const sections: SectionPlace[] = [];
  const rows: RowPlace[] = [];
  const shared = new Map<string, { row: number; column: number; isFirst: boolean }[]>();
  const numbering: Splice[] = [];
  let root: ElementPlace | undefined;
  let prefix = "";
  let row: RowPlace | undefined;
  let cell: CellPlaceInFile | undefined;
  let [rowNumber, column] = [-1, -1];
  const place = (start: number, end: number): ElementPlace => ({ start, inner: end, innerEnd: end, end });
  const finish = (one: ElementPlace | undefined, start: number, end: number) => one !== undefined && Object.assign(one, { innerEnd: start, end });
  const numberAt = (start: number, name: string, r: string): Splice => ({ start: start + 1 + name.length, end: start + 1 + name.length, text: writeAttributes({ r }) });
  walkXml(xml, {
    open(name, attributes, start, end) {
      if (depth.length === 0) {
        root = place(start, end);
        prefix = xml.slice(start + 1, xml.indexOf(name, start));
      } else if (depth.length === 1) sections.push({ name, ...place(start, end) });
      else if (depth[1] === "sheetData" && depth.length === 2) {
        rowNumber = numberOf(attributes["r"]) === undefined ? rowNumber + 1 : Number(attributes["r"]) - 1;
        column = -1;
        if (attributes["r"] === undefined) numbering.push(numberAt(start, `${prefix}${name}`, String(rowNumber + 1)));
        row = { row: rowNumber, attributes, cells: [], ...place(start, end) };
        rows.push(row);
      } else if (depth[1] === "sheetData" && depth.length === 3) {
        column = attributes["r"] === undefined ? column + 1 : parseCell(attributes["r"].toUpperCase())!.column;
        if (attributes["r"] === undefined) numbering.push(numberAt(start, `${prefix}${name}`, cellAddress({ row: rowNumber, column })));
        cell = wanted(rowNumber) ? { column, attributes, formula: null, ...place(start, end) } : undefined;
        if (cell !== undefined) row!.cells.push(cell);
      } else if (depth[1] === "sheetData" && name === "f") {
        if (cell !== undefined) cell.formula = { start, end, attributes };
        const { t, si } = attributes;
        if (t === "shared" && si !== undefined) {
          const group = shared.get(si) ?? [];
          shared.set(si, group);
          group.push({ row: rowNumber, column, isFirst: group.length === 0 });
        }
      }
      depth.push(name);
    },
    close(name, start, end) {
      depth.pop();
      if (depth.length === 0) finish(root, start, end);
      else if (depth.length === 1) finish(sections.at(-1), start, end);
      else if (depth[1] !== "sheetData") return;
      else if (depth.length === 2) finish(row, start, end);
      else if (depth.length === 3) finish(cell, start, end);
      else if (name === "f" && cell?.formula) cell.formula.end = end;
    },
  });
  return { prefix, root: root!, sections, rows, shared, numbering };
}
