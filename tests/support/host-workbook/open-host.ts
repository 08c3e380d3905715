import type { CellValue, Scalar } from "../../../src/sheet";
import type { OfficeHost } from "../../../src/workbook/office/host";
import { officePort } from "../../../src/workbook/office/office-port";
import type { WorkbookPort } from "../../../src/workbook/port";
import type { Client, ClientBuild, Session } from "./client-build";
import { execute, isChange, type References, type RequestBody, type ResponseBody } from "./executor";
import { HostSheet, type Calculate } from "./host-sheet";
import { workbookObject, type HostState } from "./host-state";
import { strictClient } from "./strict-client";

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
  /** False where it only reads. */
  readonly changes: boolean;
  answerBytes: number;
}

/** A workbook in memory that stands in for the spreadsheet program behind the vendor's own client. */
export interface HostWorkbook {
  /** The real adapter, over this workbook. */
  readonly port: WorkbookPort;
  /** What the client hands its requests to, for a page that makes its own contexts. */
  readonly session: Session;
  /** The host itself, for tests of the adapter's parts. */
  readonly host: OfficeHost;
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
  /** What a cell holds now. */
  readonly value: (sheet: string, row: number, column: number) => CellValue;
  /** Protects the structure of the workbook. */
  readonly protect: () => void;
  /** A sheet itself, to look at or to spoil. */
  readonly sheet: (name: string) => HostSheet;
  readonly sheetNames: () => string[];
  /** Makes another workbook of the same content, which goes its own way from then on. */
  readonly copy: () => HostWorkbook;
}

export interface HostOptions {
  readonly sheets?: readonly HostSheetStart[];
  /** What formulas come to; 0 by default. */
  readonly calculate?: Calculate;
  /** Newest API set the host knows: 12 for 1.12. */
  readonly apiSet?: number;
  readonly build?: ClientBuild;
  /** True where a cell that a formula spills into shows that formula: which of the two the program does is not known. */
  readonly repeatsSpilled?: boolean;
}

/** Bytes above which the host on the web refuses a request, and an answer. */
const mostBytes = 5_000_000;
/** Flag of a request that waits until no cell is edited. */
const waitsForCellEdit = 64;
const eventCategory = 65_536;
const eventTypes = { changed: 10, added: 13, deleted: 15 } as const;

let workbooksMade = 0;

/**
 * Makes a workbook behind the vendor's client.
 *
 * Requests are carried out action by action; one that is refused in the middle leaves done what came before, as in the host.
 */
export function openHost(client: Client, { sheets = [{ name: "Sheet1" }], calculate = () => 0, apiSet = 12, repeatsSpilled = false }: Omit<HostOptions, "build"> = {}): HostWorkbook {
  return openSheets(client, sheets.map((start) => startSheet(start, calculate)), { calculate, apiSet, repeatsSpilled });
}

function openSheets(client: Client, sheets: HostSheet[], options: { readonly calculate: Calculate; readonly apiSet: number; readonly repeatsSpilled: boolean }): HostWorkbook {
  const { calculate, apiSet, repeatsSpilled } = options;
  const state: HostState = { sheets, selected: { sheet: sheets[0]!, area: { row: 0, column: 0, rows: 1, columns: 1 } }, calculate, protected: false, repeatsSpilled };
  const root = workbookObject(state);
  const control = `workbook-${(workbooksMade += 1)}`;
  const references: References = new Map();
  const exchanges: Exchange[] = [];
  const failures = new Map<number, Failure>();
  const callbacks = new Map<number, () => void>();
  let editing: Promise<void> | null = null;

  const tell = (type: keyof typeof eventTypes, about: object): void => {
    const message = JSON.stringify({ source: "Local", ...about });
    const entry = { messageCategory: eventCategory, messageType: eventTypes[type], targetId: "Workbook", message };
    client.OfficeExtension.GenericEventRegistration.getGenericEventRegistration(control)._handleRichApiMessage({ entries: [entry] });
  };
  const tellChange = (changed: HostSheet, source: "Local" | "Remote"): void => {
    changed.touched = false;
    tell("changed", { worksheetId: changed.id, source, changeType: "RangeEdited", address: "A1", shiftDirection: "None" });
  };

  const answer = (body: RequestBody, exchange: Exchange): object => {
    callbacks.get(exchanges.length)?.();
    if (exchange.bytes > mostBytes) return { ErrorCode: "RequestPayloadSizeLimitExceeded", ErrorMessage: "" };
    const failure = failures.get(exchanges.length);
    const before = new Set(state.sheets);
    for (const one of state.sheets) one.recalculate();
    let response: ResponseBody = execute(body, root, references, failure === undefined ? Infinity : actionsBefore(failure, body.Actions.length));
    if (failure !== undefined) response = { Results: response.Results, Error: { Code: failure.code ?? "GeneralException", Message: "", Location: "", ActionIndex: -1 } };
    const sent = JSON.stringify(response);
    exchange.answerBytes = jsonBytesOf(sent);
    if (exchange.answerBytes > mostBytes) return { ErrorCode: "ResponsePayloadSizeLimitExceeded", ErrorMessage: "" };
    for (const one of state.sheets) if (!before.has(one)) tell("added", { worksheetId: one.id });
    for (const one of before) if (!state.sheets.includes(one)) tell("deleted", { worksheetId: one.id });
    for (const one of state.sheets.filter(({ touched }) => touched)) tellChange(one, "Local");
    return { ErrorCode: "", ErrorMessage: "", Headers: null, Body: JSON.parse(sent) as unknown };
  };

  const session: Session = {
    _resolveRequestUrlAndHeaderInfo: () => Promise.resolve(null),
    _createRequestExecutorOrNull: () => ({
      executeAsync: async (_customData, flags, { Body: body }) => {
        const text = JSON.stringify(body);
        const { Actions: actions } = body as RequestBody;
        const exchange: Exchange = { actions: actions.length, bytes: jsonBytesOf(text), changes: actions.some(isChange), answerBytes: 0 };
        exchanges.push(exchange);
        if (editing !== null && (flags & waitsForCellEdit) === 0) return { ErrorCode: "InvalidOperationInCellEditMode", ErrorMessage: "" };
        await editing;
        return answer(JSON.parse(text) as RequestBody, exchange);
      },
    }),
  };

  // Workbooks of one client are told apart by their control, or each would hear of the others.
  const own = (context: Excel.RequestContext): Excel.RequestContext => {
    Object.assign(context.requestHeaders, { "X-OfficeControlId": control });
    return strictClient(context);
  };
  const host: OfficeHost = {
    run: async (batch) => batch(own(new client.Excel.RequestContext(session))),
    look: (batch) => client.Excel.run({ session, delayForCellEdit: true }, (context) => batch(own(context))),
    supports: (set) => Number(set.slice(2)) <= apiSet,
  };

  const sheet = (name: string): HostSheet => {
    const found = state.sheets.find((one) => one.name === name);
    if (found === undefined) throw new Error(`There is no sheet "${name}", only ${state.sheets.map((one) => one.name).join(", ")}`);
    return found;
  };

  return {
    port: officePort(host),
    session,
    host,
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
    protect: () => { state.protected = true; },
    sheet,
    sheetNames: () => state.sheets.map((one) => one.name),
    copy: () => openSheets(client, state.sheets.map((one) => one.copy()), options),
  };
}

const encoder = new TextEncoder();

function jsonBytesOf(json: string): number {
  return encoder.encode(json).length;
}

function startSheet({ name, values = [], hidden = false, comments = 0, ...start }: HostSheetStart, calculate: Calculate): HostSheet {
  const sheet = new HostSheet(name, calculate);
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
