import type { CellValue, Scalar } from "../../../src/sheet";
import { actionKind, execute, isChange, onceComputed, type References, type RequestBody, type ResponseBody } from "./executor";
import type { HostObject } from "./host-object";
import { HostSheet, type Formulas } from "./host-sheet";
import { workbookObject, type HostState } from "./host-state";

/** A sheet the workbook begins with. Text in `values` that begins with `=` is a formula; other text stays text. */
export interface HostSheetStart {
  readonly name: string;
  readonly values?: readonly (readonly Scalar[])[];
  readonly hidden?: boolean;
  readonly protected?: boolean;
  readonly comments?: number;
}

/** How a request is to fail. */
export interface Failure {
  /** Which request fails, counted from the next one on: 1 is the next. */
  readonly sync: number;
  /** Code of the host's error. */
  readonly code?: string;
  /** How much of the request is done before: a number of actions, half of them, or all (the answer is lost). None by default. */
  readonly after?: number | "half" | "all";
}

/** One request as the client sent it, and its answer. */
export interface Exchange {
  readonly actions: number;
  readonly bytes: number;
  /** How many actions of each kind, in the order in which they first come. */
  readonly kinds: Readonly<Record<string, number>>;
  /** False where it only reads. */
  readonly changes: boolean;
  answerBytes: number;
}

/** A workbook in memory that stands in for the spreadsheet program. */
export interface HostBook {
  /** Carries out a request as the client writes it, and answers it; `flags` say how it wants to be treated. */
  readonly request: (body: string, flags: number) => Promise<Reply>;
  /** Counts the requests so far. */
  readonly syncs: () => number;
  /** The requests so far, with their sizes. */
  readonly exchanges: () => readonly Exchange[];
  readonly failAt: (failure: Failure) => void;
  /** Runs a callback just before a request, counted from the next one on: a colleague types in between. */
  readonly before: (sync: number, callback: () => void) => void;
  /** Begins to edit a cell, as a person does; the returned function presses Enter. */
  readonly editCell: () => () => void;
  /** Types into a cell as a person does, here or elsewhere ("remote"). */
  readonly type: (sheet: string, row: number, column: number, input: string | number | boolean, source?: "local" | "remote") => void;
  /** What a cell holds now; of formulas only once they are computed. */
  readonly value: (sheet: string, row: number, column: number) => CellValue;
  /** Has formulas that call functions of ours show #BUSY! to so many requests from the next one on: their answers are not there yet. */
  readonly keepBusy: (requests: number) => void;
  /** Protects the structure of the workbook. */
  readonly protect: () => void;
  /** Waits until every formula is computed. */
  readonly settle: () => Promise<void>;
  /** A sheet itself, to look at or to spoil. */
  readonly sheet: (name: string) => HostSheet;
  readonly sheets: () => readonly HostSheet[];
  readonly sheetNames: () => string[];
}

/** The code of a request that was refused as a whole, or the answer as text. */
export type Reply = { readonly code: string } | { readonly body: string };

/** What the host tells the client that has listeners. */
export interface EventEntry {
  readonly messageCategory: number;
  readonly messageType: number;
  readonly targetId: string;
  readonly message: string;
}

export interface BookOptions {
  readonly sheets?: readonly HostSheetStart[];
  /** True where a cell that a formula spills into shows that formula: which of the two the program does is not known. */
  readonly repeatsSpilled?: boolean;
}

/** Makes what computes the formulas of a workbook out of its sheets as they are now. */
export type FormulasOf = (sheets: () => readonly HostSheet[]) => Formulas;

/** Bytes above which the host on the web refuses a request. An answer it refuses above as many too; ours are to stay far below, so less is refused here. */
const mostBytes = { request: 5_000_000, answer: 2_000_000 };
/** Flag of a request that waits until no cell is edited. */
const waitsForCellEdit = 64;
const eventCategory = 65_536;
const eventTypes = { changed: 10, added: 13, deleted: 15 } as const;

/** What a workbook needs beside its sheets. */
export interface BookHost {
  readonly formulasOf: FormulasOf;
  /** Hands an event to the client. */
  readonly tell: (entry: EventEntry) => void;
  /** Services of the program beside the workbook, by the name under which the client makes them. */
  readonly services?: HostObject["parts"];
}

/** Opens a workbook that begins with the sheets of its options. */
export function openBook({ sheets = [{ name: "Sheet1" }], repeatsSpilled = false }: BookOptions, host: BookHost): HostBook {
  return openSheets((formulas) => sheets.map((start) => startSheet(start, formulas)), { ...host, repeatsSpilled });
}

/**
 * Opens a workbook of sheets that are made already.
 *
 * Requests are carried out action by action; one that is refused in the middle leaves done what came before, as in the host.
 */
export function openSheets(sheetsWith: (formulas: Formulas) => HostSheet[], behaviour: BookHost & { readonly repeatsSpilled: boolean }): HostBook {
  const { formulasOf, repeatsSpilled, services = {} } = behaviour;
  const computed = formulasOf(() => state.sheets);
  let busyUntil = -1;
  // NOTE: what looks at such a cell shows in the program that it waits too; here it shows what it will come to.
  const formulas: Formulas = (sheet) => {
    if (exchanges.length > busyUntil) return computed(sheet);
    return (formula, place) => (/\bBAY\./i.test(formula) ? { error: "#BUSY!" } : computed(sheet)(formula, place));
  };
  const sheets = sheetsWith(formulas);
  const state: HostState = { sheets, names: [], selected: { sheet: sheets[0]!, area: { row: 0, column: 0, rows: 1, columns: 1 } }, formulas, protected: false, repeatsSpilled };
  const workbook = workbookObject(state);
  const root: HostObject = { ...workbook, parts: { ...workbook.parts, ...services } };
  const references: References = new Map();
  const exchanges: Exchange[] = [];
  const failures = new Map<number, Failure>();
  const callbacks = new Map<number, () => void>();
  let editing: Promise<void> | null = null;

  const tell = (type: keyof typeof eventTypes, about: object): void => {
    behaviour.tell({ messageCategory: eventCategory, messageType: eventTypes[type], targetId: "Workbook", message: JSON.stringify({ source: "Local", ...about }) });
  };
  const tellChange = (changed: HostSheet, source: "Local" | "Remote"): void => {
    changed.touched = false;
    tell("changed", { worksheetId: changed.id, source, changeType: "RangeEdited", address: "A1", shiftDirection: "None" });
  };

  const answer = async (body: RequestBody, exchange: Exchange, number: number): Promise<Reply> => {
    callbacks.get(number)?.();
    if (exchange.bytes > mostBytes.request) return { code: "RequestPayloadSizeLimitExceeded" };
    const failure = failures.get(number);
    const before = new Set(state.sheets);
    for (const one of state.sheets) one.recalculate();
    let response: ResponseBody = await execute(body, root, references, failure === undefined ? Infinity : actionsBefore(failure, body.Actions.length));
    if (failure !== undefined) response = { Results: response.Results, Error: { Code: failure.code ?? "GeneralException", Message: "", Location: "", ActionIndex: -1 } };
    const sent = JSON.stringify(response);
    exchange.answerBytes = jsonBytesOf(sent);
    if (exchange.answerBytes > mostBytes.answer) return { code: "ResponsePayloadSizeLimitExceeded" };
    for (const one of state.sheets) if (!before.has(one)) tell("added", { worksheetId: one.id });
    for (const one of before) if (!state.sheets.includes(one)) tell("deleted", { worksheetId: one.id });
    for (const one of state.sheets.filter(({ touched }) => touched)) tellChange(one, "Local");
    return { body: sent };
  };

  // One request after the other: what the next one finds is what this one left.
  let last: Promise<unknown> = Promise.resolve();
  const inTurn = <T>(work: () => Promise<T>): Promise<T> => {
    const done = last.then(work);
    last = done.catch(() => undefined);
    return done;
  };

  const request: HostBook["request"] = async (text, flags) => {
    const body = JSON.parse(text) as RequestBody;
    const { Actions: actions } = body;
    const exchange: Exchange = { actions: actions.length, kinds: countsOf(actions.map(actionKind)), bytes: jsonBytesOf(text), changes: actions.some(isChange), answerBytes: 0 };
    const number = exchanges.push(exchange);
    if (editing !== null && (flags & waitsForCellEdit) === 0) return { code: "InvalidOperationInCellEditMode" };
    await editing;
    return inTurn(() => answer(body, exchange, number));
  };

  const sheet = (name: string): HostSheet => {
    const found = state.sheets.find((one) => one.name === name);
    if (found === undefined) throw new Error(`There is no sheet "${name}", only ${state.sheets.map((one) => one.name).join(", ")}`);
    return found;
  };

  return {
    request,
    syncs: () => exchanges.length,
    exchanges: () => [...exchanges],
    failAt: (failure) => void failures.set(exchanges.length + failure.sync, failure),
    before: (sync, callback) => void callbacks.set(exchanges.length + sync, callback),
    editCell: () => {
      let enter: () => void = () => undefined;
      editing = new Promise<void>((resolve) => (enter = resolve));
      return () => {
        editing = null;
        enter();
      };
    },
    type: (name, row, column, input, source = "local") => {
      const typedOn = sheet(name);
      typedOn.enter(row, column, input);
      tellChange(typedOn, source === "local" ? "Local" : "Remote");
    },
    value: (name, row, column) => sheet(name).value(row, column),
    keepBusy: (requests) => { busyUntil = exchanges.length + requests; },
    protect: () => { state.protected = true; },
    settle: async () => {
      for (const one of state.sheets) await onceComputed(() => one.used());
    },
    sheet,
    sheets: () => state.sheets,
    sheetNames: () => state.sheets.map((one) => one.name),
  };
}

function countsOf(kinds: readonly string[]): Readonly<Record<string, number>> {
  const counts: Record<string, number> = {};
  for (const kind of kinds) counts[kind] = (counts[kind] ?? 0) + 1;
  return counts;
}

const encoder = new TextEncoder();

function jsonBytesOf(json: string): number {
  return encoder.encode(json).length;
}

function startSheet({ name, values = [], hidden = false, comments = 0, ...start }: HostSheetStart, formulas: Formulas): HostSheet {
  const sheet = new HostSheet(name, formulas);
  values.forEach((line, row) => {
    line.forEach((value, column) => {
      if (typeof value === "string" && !value.startsWith("=")) sheet.setFormat(row, column, "@");
      if (value !== null) sheet.enter(row, column, value);
    });
  });
  sheet.visibility = hidden ? "Hidden" : "Visible";
  sheet.protected = start.protected ?? false;
  sheet.comments = comments;
  sheet.touched = false;
  return sheet;
}

function actionsBefore({ after = 0 }: Failure, actions: number): number {
  return after === "all" ? actions : after === "half" ? Math.floor(actions / 2) : after;
}
