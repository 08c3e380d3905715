import type { Area, CellValue } from "../../../src/sheet";
import { sameSheetName, sheetNameFault } from "../../../src/sheet/sheet-name";
import { clientObject, HostError, recorder, type Batch } from "./client-object";
import { MockSheet, type Calculate } from "./mock-sheet";

type Listener = (event: { readonly worksheetId: string; readonly source: "Local" | "Remote" }) => unknown;

/** All that the mock workbook holds. */
export interface MockState {
  sheets: MockSheet[];
  selected: { sheet: MockSheet; area: Area };
  readonly listeners: { readonly changed: Set<Listener>; readonly added: Set<Listener>; readonly deleted: Set<Listener> };
  readonly calculate: Calculate;
  /** Newest API set the mock host knows, such as 1.12. */
  readonly apiSet: number;
}

/** Makes the part of a request context that the adapter uses, over `state`. */
export function mockContext(state: MockState, batch: Batch): object {
  return {
    application: {
      suspendApiCalculationUntilNextSync: () => undefined,
      suspendScreenUpdatingUntilNextSync: () => undefined,
    },
    workbook: {
      worksheets: worksheets(state, batch),
      tables: collection(batch, {
        "items/name": (table: TableState) => ["name", table.name()],
        "items/worksheet/name": (table: TableState) => ["worksheet", { name: table.sheet.name }],
      }, () => state.sheets.flatMap((sheet) => sheet.tables.map(({ name }) => tableState(sheet, name))), (table) => tableObject(state, batch, () => table)),
      getSelectedRange: () => rangeObject(batch, () => state.selected),
    },
  };
}

function worksheets(state: MockState, batch: Batch): object {
  const byName = (name: string) => state.sheets.find((one) => sameSheetName(one.name, name) || one.id === name) ?? null;
  const event = (listeners: Set<Listener>) => ({
    add: (listener: Listener) => {
      batch.queue(() => void listeners.add(listener));
      return { remove: () => { batch.queue(() => void listeners.delete(listener)); } };
    },
  });
  return Object.assign(
    collection(batch, {
      "items/id": (sheet: MockSheet) => ["id", sheet.id],
      "items/name": (sheet: MockSheet) => ["name", sheet.name],
      "items/visibility": (sheet: MockSheet) => ["visibility", sheet.visibility],
      "items/protection/protected": (sheet: MockSheet) => ["protection", { protected: sheet.protected }],
    }, () => state.sheets, (sheet) => sheetObject(state, batch, () => sheet)),
    {
      getItem: (name: string) => sheetObject(state, batch, () => byName(name) ?? missing()),
      getItemOrNullObject: (name: string) => sheetObject(state, batch, () => byName(name)),
      add: (name: string) =>
        sheetObject(state, batch, () => {
          refuseName(state, name);
          const made = new MockSheet(name, state.calculate);
          state.sheets.push(made);
          return made;
        }),
      onChanged: event(state.listeners.changed),
      onAdded: event(state.listeners.added),
      onDeleted: event(state.listeners.deleted),
    },
  );
}

function missing(): never {
  throw new HostError("ItemNotFound");
}

function refuseName(state: MockState, name: string, except?: MockSheet): void {
  if (sheetNameFault(name) !== null) throw new HostError("InvalidArgument");
  if (state.sheets.some((one) => one !== except && sameSheetName(one.name, name))) throw new HostError("ItemAlreadyExists");
}

/** A collection: `items` is there after load and sync only, and its items carry only what was loaded. */
function collection<State>(
  batch: Batch,
  readers: Readonly<Record<string, (state: State) => [string, unknown]>>,
  states: () => readonly State[],
  object: (state: State) => object,
): object {
  const own = {
    items: undefined as object[] | undefined,
    load: (paths: string) => {
      batch.queue(() => {
        own.items = states().map((state) => {
          const loaded = Object.fromEntries(
            paths.split(",").map((path) => {
              const read = readers[path];
              if (read === undefined) throw new Error(`The mock workbook cannot load "${path}"`);
              return read(state);
            }),
          );
          // The object is made when it is first called, so that its search takes its turn in the next request.
          let made: object | undefined;
          return new Proxy(loaded, {
            get: (target, key): unknown => (key in target ? Reflect.get(target, key) : Reflect.get((made ??= object(state)), key)),
            has: (target, key) => key in target || key in (made ??= object(state)),
          });
        });
      }, paths);
      return own;
    },
  };
  return own;
}

function sheetObject(state: MockState, batch: Batch, find: () => MockSheet | null): object {
  return clientObject<MockSheet>(batch, {
    find,
    read: { id: (sheet) => sheet.id, name: (sheet) => sheet.name, visibility: (sheet) => sheet.visibility },
    write: {
      name: (sheet, name: string) => {
        refuseName(state, name, sheet);
        sheet.name = name;
      },
      visibility: (sheet, value: MockSheet["visibility"]) => {
        if (value === "Hidden") refuseLast(state, sheet);
        sheet.visibility = value;
      },
      position: (sheet, position: number) => {
        if (position >= state.sheets.length) throw new HostError("InvalidArgument");
        state.sheets = state.sheets.filter((one) => one !== sheet);
        state.sheets.splice(position, 0, sheet);
      },
      tabColor: (sheet, value: string) => { sheet.settings.push({ address: "", property: "tabColor", value }); },
    },
    members: ({ found, later }) => {
      const count = (of: (sheet: MockSheet) => number) => ({
        getCount: () => {
          const result = { value: NaN };
          later((sheet) => { result.value = of(sheet); });
          return result;
        },
      });
      const settings = (prefix: string) =>
        recorder((property, value) => { later((sheet) => { sheet.settings.push({ address: "", property: `${prefix}.${property}`, value }); }, value); });
      const note = (property: string, value: unknown) => { later((sheet) => { sheet.settings.push({ address: "", property, value }); }, value); };
      const inSheet = (area: Area) => () => {
        const sheet = found();
        return sheet === null ? null : { sheet, area };
      };
      return {
        getRangeByIndexes: (row: number, column: number, rows: number, columns: number) => rangeObject(batch, inSheet({ row, column, rows, columns }), state),
        getRanges: (address: string) => ({
          format: recorder((property, value) => {
            later((sheet) => {
              if (sheet.protected) throw new HostError("AccessDenied");
              sheet.settings.push({ address, property: `format.${property}`, value });
            }, value);
          }),
        }),
        getUsedRangeOrNullObject: () =>
          rangeObject(batch, () => {
            const sheet = found();
            const area = sheet?.used() ?? null;
            return sheet === null || area === null ? null : { sheet, area };
          }),
        comments: count((sheet) => sheet.comments),
        shapes: count(() => 0),
        charts: count(() => 0),
        pageLayout: Object.assign(settingsOf(later), {
          setPrintTitleRows: (rows: string) => { note("pageLayout.printTitleRows", rows); },
          headersFooters: settings("pageLayout.headersFooters"),
        }),
        horizontalPageBreaks: { add: (address: string) => { note("pageBreak", address); } },
        freezePanes: {
          freezeAt: () => { note("freeze", "at"); },
          freezeRows: (rows: number) => { note("freezeRows", rows); },
          freezeColumns: (columns: number) => { note("freezeColumns", columns); },
        },
        tables: {
          getItem: (name: string) => tableObject(state, batch, () => {
            const sheet = found();
            return sheet === null ? null : sheet.tables.some((one) => sameSheetName(one.name, name)) ? tableState(sheet, name) : missing();
          }),
          add: (place: string | object) => addTable(state, batch, found, place),
        },
        activate: () => { later((sheet) => { state.selected = { sheet, area: { row: 0, column: 0, rows: 1, columns: 1 } }; }); },
        delete: () => {
          later((sheet) => {
            refuseLast(state, sheet);
            state.sheets = state.sheets.filter((one) => one !== sheet);
          });
        },
      };
    },
  });
}

function settingsOf(later: (act: (sheet: MockSheet) => void, sent?: unknown) => void): object {
  return new Proxy({}, {
    set: (target, property: string, value) => {
      if (typeof value === "function" || property === "headersFooters") return Reflect.set(target, property, value);
      later((sheet) => { sheet.settings.push({ address: "", property: `pageLayout.${property}`, value }); }, value);
      return true;
    },
  });
}

function refuseLast(state: MockState, sheet: MockSheet): void {
  if (!state.sheets.some((one) => one !== sheet && one.visibility === "Visible")) throw new HostError("InvalidOperation");
}

interface Place {
  readonly sheet: MockSheet;
  readonly area: Area;
}

function rangeObject(batch: Batch, find: () => Place | null, state?: MockState): object {
  const grid = ({ area }: Place, of: (row: number, column: number) => unknown) =>
    Array.from({ length: area.rows }, (_, row) => Array.from({ length: area.columns }, (__, column) => of(area.row + row, area.column + column)));
  const fill = (place: Place, values: readonly (readonly unknown[])[], set: (row: number, column: number, value: never) => void) => {
    if (place.sheet.protected) throw new HostError("AccessDenied");
    const { row, column, rows, columns } = place.area;
    if (values.length !== rows || values.some((line) => line.length !== columns)) throw new HostError("InvalidArgument");
    values.forEach((line, y) => {
      line.forEach((value, x) => {
        if (value !== null) set(row + y, column + x, value as never);
      });
    });
  };
  const object: object = clientObject<Place>(batch, {
    find: () => {
      const place = find();
      if (place !== null) places.set(object, place);
      return place;
    },
    read: {
      rowIndex: ({ area }) => area.row,
      columnIndex: ({ area }) => area.column,
      rowCount: ({ area }) => area.rows,
      columnCount: ({ area }) => area.columns,
      "worksheet/name": ({ sheet }) => sheet.name,
      values: (place, once) => {
        const value = once(() => place.sheet.view());
        return grid(place, (row, column) => shown(value(row, column)));
      },
      valueTypes: (place, once) => {
        const value = once(() => place.sheet.view());
        return grid(place, (row, column) => typeOf(value(row, column)));
      },
      formulas: (place, once) => {
        const value = once(() => place.sheet.view());
        return grid(place, (row, column) => place.sheet.formula(row, column) ?? shown(value(row, column)));
      },
      numberFormat: (place) => grid(place, (row, column) => place.sheet.format(row, column)),
    },
    write: {
      formulas: (place, values: readonly (readonly unknown[])[]) => { fill(place, values, (row, column, value) => { place.sheet.enter(row, column, value); }); },
      numberFormat: (place, values: readonly (readonly unknown[])[]) => { fill(place, values, (row, column, value) => { place.sheet.setFormat(row, column, value); }); },
    },
    members: ({ found, later }) => {
      const note = (property: string, value: unknown) => {
        later(({ sheet, area }) => {
          if (sheet.protected) throw new HostError("AccessDenied");
          sheet.settings.push({ address: addressOf(area), property, value });
        }, value);
      };
      return {
        format: recorder((property, value) => { note(`format.${property}`, value); }),
        dataValidation: recorder((property, value) => { note(`dataValidation.${property}`, value); }),
        conditionalFormats: { add: () => ({ custom: recorder((property, value) => { note(`conditionalFormat.${property}`, value); }) }) },
        merge: () => { note("merge", true); },
        getEntireColumn: () => recorder((property, value) => { note(property, value); }),
        getSpillingToRangeOrNullObject: () =>
          rangeObject(batch, () => {
            const place = found();
            const area = place?.sheet.spill(place.area.row, place.area.column) ?? null;
            return place === null || area === null ? null : { sheet: place.sheet, area };
          }),
        select: () => {
          later((place) => {
            if (state !== undefined) state.selected = place;
          });
        },
      };
    },
  });
  return object;
}

/** Where a range object was found: tables take ranges as arguments. */
const places = new WeakMap<object, Place>();

function addressOf({ row, column, rows, columns }: Area): string {
  return `R${row}C${column}:${rows}x${columns}`;
}

function shown(value: CellValue): string | number | boolean {
  return value === null ? "" : typeof value === "object" ? value.error : value;
}

function typeOf(value: CellValue): string {
  if (value === null) return "Empty";
  if (typeof value === "object") return "Error";
  return typeof value === "string" ? "String" : typeof value === "boolean" ? "Boolean" : "Double";
}

interface TableState {
  readonly sheet: MockSheet;
  readonly name: () => string;
  readonly area: () => Area;
  readonly rename: (name: string) => void;
  readonly resize: (area: Area | null) => void;
}

function tableState(sheet: MockSheet, called: string): TableState {
  let name = called;
  const at = () => sheet.tables.findIndex((one) => sameSheetName(one.name, name));
  return {
    sheet,
    name: () => sheet.tables[at()]!.name,
    area: () => sheet.tables[at()]!.area,
    rename: (to) => {
      sheet.tables[at()] = { ...sheet.tables[at()]!, name: to };
      name = to;
    },
    resize: (area) => { sheet.tables.splice(at(), 1, ...(area === null ? [] : [{ name, area }])); },
  };
}

function tableObject(state: MockState, batch: Batch, find: () => TableState | null): object {
  return clientObject<TableState>(batch, {
    find,
    read: { name: (table) => table.name() },
    write: {
      name: (table, name: string) => {
        if (state.sheets.some((sheet) => sheet.tables.some((one) => sameSheetName(one.name, name)))) throw new HostError("ItemAlreadyExists");
        table.rename(name);
      },
      style: (table, value: string) => { table.sheet.settings.push({ address: table.name(), property: "table.style", value }); },
    },
    members: ({ found, later }) => ({
      getRange: () => rangeObject(batch, () => {
        const table = found();
        return table === null ? null : { sheet: table.sheet, area: table.area() };
      }),
      convertToRange: () => { later((table) => { table.resize(null); }); },
      // A newer member: there only in hosts that know its set.
      ...(state.apiSet >= 13 ? { resize: (range: object) => { later((table) => { table.resize(places.get(range)!.area); }); } } : {}),
    }),
  });
}

let tablesMade = 0;

function addTable(state: MockState, batch: Batch, found: () => MockSheet | null, place: string | object): object {
  return tableObject(state, batch, () => {
    const sheet = found();
    if (sheet === null) return null;
    const area = typeof place === "string" ? parseAddress(place) : places.get(place)!.area;
    if (sheet.tables.some((one) => overlap(one.area, area))) throw new HostError("TableOverlap");
    const name = `Table${(tablesMade += 1)}`;
    sheet.tables.push({ name, area });
    return tableState(sheet, name);
  });
}

function overlap(a: Area, b: Area): boolean {
  return a.row < b.row + b.rows && b.row < a.row + a.rows && a.column < b.column + b.columns && b.column < a.column + a.columns;
}

function parseAddress(address: string): Area {
  const corner = (text: string) => {
    const [, letters, digits] = /^([A-Z]+)(\d+)$/.exec(text)!;
    return { row: Number(digits) - 1, column: [...letters!].reduce((sum, letter) => sum * 26 + letter.charCodeAt(0) - 64, 0) - 1 };
  };
  const [first, last] = address.split(":") as [string, string?];
  const from = corner(first);
  const to = corner(last ?? first);
  return { ...from, rows: to.row - from.row + 1, columns: to.column - from.column + 1 };
}
