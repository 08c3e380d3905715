import { areasMeet, parseAreas, type Area } from "../../../src/sheet";
import { numberIn, oneOf, Refusal, settable, text, truth, type HostObject, type Settable } from "./host-object";
import { HostSheet } from "./host-sheet";
import type { HostState } from "./host-state";
import { renamedFormula } from "./moved-formula";
import { areaGiven, placeGiven, rangeAreasObject, rangeObject, setOn } from "./range-objects";

/** Page breaks a sheet may have, as the host's published limits give them. */
const mostBreaks = 1_026;

const layout: Settable = {
  type: "PageLayout",
  set: {
    orientation: (value) => oneOf(value, ["Portrait", "Landscape"]),
    paperSize: (value) => oneOf(value, ["A4", "Letter"]),
    firstPageNumber: (value) => numberIn(value, 1, 32_767),
    zoom: (value) => {
      const zoom = value as { readonly scale?: unknown; readonly horizontalFitToPages?: unknown };
      if (zoom.scale !== undefined) numberIn(zoom.scale, 10, 400);
    },
  },
  parts: {
    headersFooters: {
      type: "HeaderFooterGroup",
      set: {},
      parts: { defaultForAllPages: { type: "HeaderFooter", set: { centerHeader: pageText, centerFooter: pageText } } },
    },
  },
};

function pageText(value: unknown): void {
  if (text(value).length > 255) throw new Refusal("InvalidArgument");
}

const same = (one: string, other: string) => one.toLowerCase() === other.toLowerCase();

/** The sheets of the workbook. */
export function worksheetsObject(state: HostState): HostObject {
  const find = (name: string) => state.sheets.find((one) => same(one.name, name) || one.id === name);
  return {
    type: "WorksheetCollection",
    items: () => state.sheets.map((sheet) => sheetObject(state, sheet)),
    parts: {
      getItem: (name) => sheetObject(state, find(text(name)) ?? missing()),
      getItemOrNullObject: (name) => {
        const sheet = find(text(name));
        return sheet === undefined ? null : sheetObject(state, sheet);
      },
      getActiveWorksheet: () => sheetObject(state, state.selected.sheet),
      getFirst: () => sheetObject(state, state.sheets[0]!),
      getLast: () => sheetObject(state, state.sheets.at(-1)!),
      add: (name) => {
        if (state.protected) throw new Refusal("AccessDenied");
        refuseName(state, text(name));
        const sheet = new HostSheet(text(name), state.formulas);
        state.sheets.push(sheet);
        return sheetObject(state, sheet);
      },
    },
    calls: Object.fromEntries(["DataChanged", "Added", "Deleted"].flatMap((event) => [[`_Register${event}Event`, nothing], [`_Unregister${event}Event`, nothing]])),
  };
}

/** The tables of the whole workbook. */
export function tablesObject(state: HostState): HostObject {
  const tables = () => state.sheets.flatMap((sheet) => sheet.tables.map(({ name }) => ({ name, table: tableObject(state, sheet, name) })));
  return {
    type: "TableCollection",
    items: () => tables().map(({ table }) => table),
    parts: { getItem: (wanted) => tables().find(({ name, table }) => table.id === wanted || same(name, text(wanted)))?.table ?? missing() },
  };
}

function nothing(): null {
  return null;
}

function missing(): never {
  throw new Refusal("ItemNotFound");
}

/** What a sheet may not be called, as the host's help has it. */
function refuseName(state: HostState, name: string, except?: HostSheet): void {
  const isOdd = name === "" || name.length > 31 || /[\\/?*[\]:]/.test(name) || name.startsWith("'") || name.endsWith("'") || same(name, "History");
  if (isOdd) throw new Refusal("InvalidArgument");
  if (state.sheets.some((one) => one !== except && same(one.name, name))) throw new Refusal("ItemAlreadyExists");
}

function refuseLast(state: HostState, sheet: HostSheet): void {
  if (!state.sheets.some((one) => one !== sheet && one.visibility === "Visible")) throw new Refusal("InvalidOperation");
}

function sheetObject(state: HostState, sheet: HostSheet): HostObject {
  const note = (property: string, value: unknown) => { sheet.settings.push({ address: "", property, value }); };
  const there = () => (state.sheets.includes(sheet) ? sheet : missing());
  const count = (type: string, of: () => number): HostObject => ({ type, calls: { getCount: of } });
  return {
    type: "Worksheet",
    id: sheet.id,
    reads: { id: () => sheet.id, name: () => sheet.name, visibility: () => sheet.visibility, position: () => state.sheets.indexOf(there()) },
    writes: {
      name: (value) => {
        refuseName(state, text(value), there());
        const [before, after] = [sheet.name, text(value)];
        sheet.name = after;
        for (const one of state.sheets) one.followRename(before, after);
        state.names = state.names.map((one) => ({ ...one, formula: renamedFormula(one.formula, before, after) }));
      },
      visibility: (value) => {
        const wanted = oneOf(value, ["Visible", "Hidden", "VeryHidden"]);
        if (wanted !== "Visible") refuseLast(state, there());
        sheet.visibility = wanted;
      },
      position: (value) => {
        const position = numberIn(value, 0, state.sheets.length - 1);
        state.sheets = state.sheets.filter((one) => one !== sheet);
        state.sheets.splice(position, 0, sheet);
      },
      tabColor: (value) => { note("tabColor", text(value)); },
    },
    parts: {
      protection: () => ({ type: "WorksheetProtection", reads: { protected: () => sheet.protected } }),
      getRangeByIndexes: (...indexes) => rangeObject(state, { sheet: there(), area: areaGiven(indexes) }),
      getRange: (address) => rangeObject(state, { sheet: there(), area: parseAreas(text(address))[0] ?? missing() }),
      getCell: (row, column) => rangeObject(state, { sheet: there(), area: areaGiven([row, column, 1, 1]) }),
      getRanges: (address) => rangeAreasObject(there(), address),
      getUsedRangeOrNullObject: (valuesOnly) => {
        truth(valuesOnly);
        const area = there().used();
        return area === null ? null : rangeObject(state, { sheet, area });
      },
      comments: () => count("CommentCollection", () => sheet.comments),
      shapes: () => count("ShapeCollection", () => 0),
      charts: () => count("ChartCollection", () => 0),
      notes: () => count("NoteCollection", () => sheet.notes),
      pageLayout: () => pageLayoutObject(sheet, note),
      horizontalPageBreaks: () => ({
        type: "PageBreakCollection",
        items: () => sheet.settings.filter(({ property }) => property === "pageBreak").map(() => ({ type: "PageBreak", reads: { columnIndex: () => 0 } })),
        parts: { add: (address) => addBreak(sheet, address) },
      }),
      freezePanes: () => ({
        type: "WorksheetFreezePanes",
        calls: {
          freezeAt: (range) => { note("freezeAt", placeGiven(range).area); },
          freezeRows: (rows) => { note("freezeRows", numberIn(rows, 1, 1_000)); },
          freezeColumns: (columns) => { note("freezeColumns", numberIn(columns, 1, 1_000)); },
        },
      }),
      tables: () => ({
        type: "TableCollection",
        parts: {
          getItem: (name) => tableObject(state, sheet, sheet.tables.find((one) => same(one.name, text(name)))?.name ?? missing()),
          add: (place) => addTable(state, sheet, place),
        },
      }),
    },
    calls: {
      activate: () => {
        if (there().visibility !== "Visible") throw new Refusal("InvalidOperation");
        state.selected = { sheet, area: { row: 0, column: 0, rows: 1, columns: 1 } };
      },
      delete: () => {
        if (there().visibility === "Visible") refuseLast(state, sheet);
        else if (sheet.visibility === "VeryHidden") throw new Refusal("InvalidOperation");
        state.sheets = state.sheets.filter((one) => one !== sheet);
      },
    },
  };
}

function pageLayoutObject(sheet: HostSheet, note: (property: string, value: unknown) => void): HostObject {
  const object = settable(layout, (property, value) => { note(`pageLayout.${property}`, value); }, (property) => setOn(sheet, "", `pageLayout.${property}`));
  const titles = (): HostObject | null => {
    const rows = setOn(sheet, "", "pageLayout.printTitleRows");
    return typeof rows === "string" ? { type: "Range", reads: { address: () => `'${sheet.name}'!${rows}` } } : null;
  };
  return {
    ...object,
    parts: { ...object.parts, getPrintTitleRowsOrNullObject: titles },
    calls: {
      setPrintTitleRows: (rows) => { note("pageLayout.printTitleRows", text(rows)); },
      setPrintMargins: (unit, margins) => { note("pageLayout.printMargins", { unit: oneOf(unit, ["Points", "Inches", "Centimeters"]), margins }); },
    },
  };
}

function addBreak(sheet: HostSheet, address: unknown): HostObject {
  if (sheet.settings.filter(({ property }) => property === "pageBreak").length >= mostBreaks) throw new Refusal("InvalidOperation");
  sheet.settings.push({ address: "", property: "pageBreak", value: text(address) });
  return { type: "PageBreak" };
}

let tablesMade = 0;

function addTable(state: HostState, sheet: HostSheet, place: unknown): HostObject {
  const area = typeof place === "string" ? parseAreas(place)[0] : placeGiven(place).area;
  if (area === undefined) throw new Refusal("InvalidArgument");
  refuseOverlap(sheet, area);
  // A header is text, and each its own: the host rewrites what is not.
  const headers = Array.from({ length: area.columns }, (_, column) => sheet.value(area.row, area.column + column));
  const texts = headers.filter((one) => typeof one === "string").map((one) => one.toLowerCase());
  if (new Set(texts).size < headers.length) throw new Error("The host would rewrite a table header");
  const name = `Table${(tablesMade += 1)}`;
  sheet.tables.push({ name, area });
  return tableObject(state, sheet, name);
}

function refuseOverlap(sheet: HostSheet, area: Area, except?: string): void {
  if (sheet.protected) throw new Refusal("AccessDenied");
  if (sheet.tables.some((one) => one.name !== except && areasMeet(one.area, area))) throw new Refusal("TableOverlap");
  if (sheet.merges.some((one) => areasMeet(one, area))) throw new Refusal("MergedRangeConflict");
}

function tableObject(state: HostState, sheet: HostSheet, called: string): HostObject {
  let name = called;
  const at = () => sheet.tables.findIndex((one) => one.name === name);
  const area = () => sheet.tables[at()]?.area ?? missing();
  return {
    type: "Table",
    id: `${sheet.id} ${name}`,
    reads: { name: () => name },
    writes: {
      name: (value) => {
        if (state.sheets.some((one) => one.tables.some((table) => same(table.name, text(value))))) throw new Refusal("ItemAlreadyExists");
        sheet.tables[at()] = { name: text(value), area: area() };
        name = text(value);
      },
      style: (value) => { sheet.settings.push({ address: name, property: "table.style", value: text(value) }); },
    },
    parts: {
      worksheet: () => ({ type: "Worksheet", reads: { name: () => sheet.name } }),
      getRange: () => rangeObject(state, { sheet, area: area() }),
      getHeaderRowRange: () => rangeObject(state, { sheet, area: { ...area(), rows: 1 } }),
      getDataBodyRange: () => rangeObject(state, { sheet, area: { ...area(), row: area().row + 1, rows: area().rows - 1 } }),
      convertToRange: () => {
        const place = { sheet, area: area() };
        sheet.tables.splice(at(), 1);
        return rangeObject(state, place);
      },
    },
    calls: {
      resize: (range) => {
        const wanted = typeof range === "string" ? parseAreas(range)[0]! : placeGiven(range).area;
        refuseOverlap(sheet, wanted, name);
        // The header row stays where it is.
        if (wanted.row !== area().row) throw new Refusal("InvalidArgument");
        sheet.tables[at()] = { name, area: wanted };
      },
    },
  };
}
