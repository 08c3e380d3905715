import type { CellValue, Scalar } from "../../../src/sheet";
import type { OfficeHost } from "../../../src/workbook/office/host";
import { officePort } from "../../../src/workbook/office/office-port";
import type { WorkbookPort } from "../../../src/workbook/port";
import { Batch, HostError } from "./client-object";
import { mockContext, type MockState } from "./host-objects";
import { MockSheet, type Calculate } from "./mock-sheet";

/** A sheet the mock workbook begins with. Text in `values` that begins with `=` is a formula; other text stays text. */
export interface MockSheetStart {
  readonly name: string;
  readonly values?: readonly (readonly Scalar[])[];
  readonly hidden?: boolean;
  readonly protected?: boolean;
  readonly comments?: number;
}

/** How a sync is to fail. */
export interface Failure {
  /** Which sync fails, counted from the next one on: 1 is the next. */
  readonly sync: number;
  /** Code of the host's error. */
  readonly code?: string;
  /** How much of the request is done before: a number of operations, half of them, or all (the answer is lost). None by default. */
  readonly after?: number | "half" | "all";
}

/** A workbook in memory that answers as the spreadsheet host does. */
export interface MockWorkbook {
  /** The real adapter, over this workbook. */
  readonly port: WorkbookPort;
  /** The mock host itself, for tests of the adapter's parts. */
  readonly host: OfficeHost;
  /** Counts the syncs so far that had something to do. */
  readonly syncs: () => number;
  /** How many operations each sync so far had. */
  readonly operations: () => readonly number[];
  readonly failAt: (failure: Failure) => void;
  /** Runs a callback just before a sync, counted from the next one on: a colleague types in between. */
  readonly before: (sync: number, callback: () => void) => void;
  /** Types into a cell as a person does, here or elsewhere ("remote"). */
  readonly type: (sheet: string, row: number, column: number, input: string | number | boolean, source?: "local" | "remote") => void;
  /** What a cell holds now. */
  readonly value: (sheet: string, row: number, column: number) => CellValue;
  /** A sheet itself, to look at or to spoil. */
  readonly sheet: (name: string) => MockSheet;
  readonly sheetNames: () => string[];
}

/**
 * Makes a stateful mock workbook.
 *
 * Requests are carried out in order when they are synchronised; one that fails in the middle leaves done what came before, as in the
 * host. `calculate` says what formulas come to, since the mock has no engine: without it every formula is 0.
 */
export function mockWorkbook({
  sheets = [{ name: "Sheet1" }],
  calculate = () => 0,
  apiSet = 12,
}: { readonly sheets?: readonly MockSheetStart[]; readonly calculate?: Calculate; readonly apiSet?: number } = {}): MockWorkbook {
  const made = sheets.map((start) => startSheet(start, calculate));
  const state: MockState = {
    sheets: made,
    selected: { sheet: made[0]!, area: { row: 0, column: 0, rows: 1, columns: 1 } },
    listeners: { changed: new Set(), added: new Set(), deleted: new Set() },
    calculate,
    apiSet,
  };
  const sizes: number[] = [];
  const failures = new Map<number, Failure>();
  const callbacks = new Map<number, () => void>();

  const synchronise = async (batch: Batch): Promise<void> => {
    const { actions } = batch;
    batch.actions = [];
    if (actions.length === 0) return;
    sizes.push(actions.length);
    callbacks.get(sizes.length)?.();
    if (actions.reduce((sum, { bytes }) => sum + bytes, 0) > 5_000_000) throw new HostError("RequestPayloadSizeLimitExceeded");
    const failure = failures.get(sizes.length);
    const before = new Set(state.sheets);
    for (const { act } of actions.slice(0, failure === undefined ? undefined : operationsBefore(failure, actions.length))) act();
    if (failure !== undefined) throw new HostError(failure.code ?? "GeneralException");
    tellSheets(before, state);
    for (const one of state.sheets.filter(({ touched }) => touched)) tellChange(one, "Local");
    // office-addin-mock hands loaded values over some turns of the event loop later.
    await new Promise((resolve) => setTimeout(resolve, 0));
  };

  const tellChange = (changed: MockSheet, source: "Local" | "Remote"): void => {
    changed.touched = false;
    for (const listener of state.listeners.changed) listener({ worksheetId: changed.id, source });
  };

  const host: OfficeHost = {
    run: async (work) => {
      const batch = new Batch();
      const context = { ...mockContext(state, batch), sync: () => synchronise(batch) };
      const result = await work(context as unknown as Excel.RequestContext);
      await synchronise(batch);
      return result;
    },
    supports: (set) => Number(set.slice(2)) <= apiSet,
  };

  const sheet = (name: string): MockSheet => {
    const found = state.sheets.find((one) => one.name === name);
    if (found === undefined) throw new Error(`The mock workbook has no sheet "${name}", only ${state.sheets.map((one) => one.name).join(", ")}`);
    return found;
  };

  return {
    port: officePort(host),
    host,
    syncs: () => sizes.length,
    operations: () => sizes,
    failAt: (failure) => void failures.set(sizes.length + failure.sync, failure),
    before: (sync, callback) => void callbacks.set(sizes.length + sync, callback),
    type: (name, row, column, input, source = "local") => {
      const typedOn = sheet(name);
      typedOn.enter(row, column, input);
      tellChange(typedOn, source === "local" ? "Local" : "Remote");
    },
    value: (name, row, column) => sheet(name).value(row, column),
    sheet,
    sheetNames: () => state.sheets.map((one) => one.name),
  };
}

function startSheet({ name, values = [], hidden = false, comments = 0, ...start }: MockSheetStart, calculate: Calculate): MockSheet {
  const sheet = new MockSheet(name, calculate);
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

function operationsBefore({ after = 0 }: Failure, operations: number): number {
  return after === "all" ? operations : after === "half" ? Math.floor(operations / 2) : after;
}

function tellSheets(before: ReadonlySet<MockSheet>, { sheets, listeners }: MockState): void {
  for (const one of sheets) if (!before.has(one)) for (const listener of listeners.added) listener({ worksheetId: one.id, source: "Local" });
  for (const one of before) if (!sheets.includes(one)) for (const listener of listeners.deleted) listener({ worksheetId: one.id, source: "Local" });
}
