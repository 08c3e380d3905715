import type { IWorkbookData, IWorksheetData } from "@univerjs/core";
import { type DBSchema, type IDBPDatabase, type IDBPTransaction, openDB } from "idb";
import { noAnswer, Problem, quote } from "../planning/text";
import { emptyWorkbook } from "../workbook/engine/stored-sheet";

/** A workbook as the browser keeps it between visits. */
export interface KeptPlan {
  readonly id: string;
  readonly name: string;
  readonly data: IWorkbookData;
  /** The file it was opened from, over which it is saved again. */
  readonly original?: Uint8Array;
  /** What was being typed into a cell that was still open, and stands in no cell. */
  readonly typing?: { readonly place: string; readonly text: string };
}

/** What the list of recent plans shows of one. */
export interface KeptPlanTitle {
  readonly id: string;
  readonly name: string;
  /** Milliseconds since 1970 at which it was last kept; later for what was kept later, even where the clock was set back. */
  readonly keptAt: number;
}

/** A plan as far as it could be read back. */
export interface LoadedPlan {
  readonly plan: KeptPlan;
  /** Sentences on what of it could not be read. */
  readonly missing: readonly string[];
}

/** The browser's own storage of plans. Whatever it refuses, or does not answer within ten seconds, is a `Problem` that says what to do. */
export interface PlanStore {
  /** Why plans are gone when the page is closed; null where the browser keeps them. */
  readonly passing: string | null;
  /** Comes when the browser closes the storage under the page, which nothing is kept in from then on. */
  readonly closed: Promise<void>;
  /** What is kept, latest first. */
  titles(): Promise<KeptPlanTitle[]>;
  /** Reads a plan as far as it goes; throws where nothing of it is left. */
  load(id: string): Promise<LoadedPlan>;
  /**
   * Keeps a plan, of its sheets those with these ids and those that this window has not kept or read. Answers once the browser has written
   * it; where it refuses, or where another window has kept the plan since it was read here, what was kept before still stands.
   */
  keep(plan: KeptPlan, touched: ReadonlySet<string>): Promise<void>;
  /** Removes a plan for good. */
  forget(id: string): Promise<void>;
}

/** All of a plan but its sheets. */
type Frame = Omit<IWorkbookData, "sheets">;

interface Records extends DBSchema {
  titles: { key: string; value: KeptPlanTitle & { readonly writer?: string } };
  frames: { key: string; value: { readonly id: string; readonly frame: Frame; readonly hasFile?: boolean; readonly typing?: KeptPlan["typing"] } };
  sheets: { key: [string, string]; value: { readonly plan: string; readonly sheet: string; readonly content: Partial<IWorksheetData> } };
  /** The file that a plan was opened from: written once. */
  files: { key: string; value: { readonly id: string; readonly bytes: Uint8Array } };
}

type Change = IDBPTransaction<Records, typeof everything, "readwrite">;

const everything = ["titles", "frames", "sheets", "files"] as const;

/** How long the storage may take to answer, in milliseconds. */
const longestAnswer = 10_000;

/** Opens the storage. Where the browser has none, refuses it or does not answer, plans live as long as the page, and `passing` says why. */
export async function openPlanStore(): Promise<PlanStore> {
  let opening: Promise<IDBPDatabase<Records>> | undefined;
  try {
    let tellClosed = (): void => undefined;
    const closed = new Promise<void>((resolve) => {
      tellClosed = resolve;
    });
    opening = openDB<Records>("baywright plans", 1, {
      upgrade(fresh) {
        fresh.createObjectStore("titles", { keyPath: "id" });
        fresh.createObjectStore("frames", { keyPath: "id" });
        fresh.createObjectStore("sheets", { keyPath: ["plan", "sheet"] });
        fresh.createObjectStore("files", { keyPath: "id" });
      },
      // A window of a newer release may bring the storage up: this one is refused from then on, and says so.
      blocking(_, __, event) {
        (event.target as IDBDatabase).close();
        tellClosed();
      },
      terminated: () => {
        tellClosed();
      },
    });
    return storeIn(await answered(opening), closed);
  } catch (thrown) {
    // One that comes too late is not to stand in the way of a newer release.
    opening?.then((late) => { late.close(); }, () => undefined);
    return storeInMemory(whyNone(thrown));
  }
}

function storeIn(database: IDBPDatabase<Records>, closed: Promise<void>): PlanStore {
  /** Tells this window's records from those of others. */
  const writer = crypto.randomUUID();
  /** What the storage has of the plans that this window has read or kept. */
  const stored = new Map<string, Stored>();
  /** The latest moment at which anything is known to have been kept. */
  let latest = 0;
  return {
    passing: null,
    closed,

    titles: () => asked("Plans that this browser keeps cannot be read now: try again in a moment, or open a file.", async () => {
        const titles = latestFirst(await readTitles(database));
        latest = Math.max(latest, titles[0]?.keptAt ?? 0);
        return titles;
      }),

    load: (id) =>
      asked("This plan cannot be read from this browser's storage now: try again in a moment, or open the file it was last saved as.", async () => {
        const { title, ...records } = await readTogether(database, id).catch(() => readApart(database, id));
        stored.set(id, { keptAt: moment(title), sheets: new Set(records.sheets.keys()), hasFile: records.file !== undefined });
        return assemble(id, nameOf(title), records);
      }),

    async keep(plan, touched) {
      let change: Change | undefined;
      try {
        if (!("navigator" in globalThis && "locks" in navigator)) await answered(refuseAnotherWriter(database, plan.id, writer, stored.get(plan.id)));
        change = database.transaction(everything, "readwrite", { durability: "strict" });
        const title = { id: plan.id, name: plan.name, keptAt: Math.max(Date.now(), latest + 1), writer };
        write(change, plan, title, touched, stored.get(plan.id));
        await answered(change.done);
        latest = title.keptAt;
        stored.set(plan.id, { keptAt: latest, sheets: new Set(Object.keys(plan.data.sheets)), hasFile: plan.original !== undefined });
      } catch (thrown) {
        const why = whyRefused(change?.error ?? thrown);
        // What a record could not take must not leave the others half written.
        abort(change);
        throw noAnswer("storage", "", why);
      }
    },

    forget: (id) =>
      asked("This browser's storage refuses to remove the plan: reload the page and try again.", async () => {
        const change = database.transaction(everything, "readwrite");
        const removals = (["titles", "frames", "files"] as const).map((store) => change.objectStore(store).delete(id));
        await Promise.all([...removals, change.objectStore("sheets").delete(sheetsOf(id)), change.done]);
        stored.delete(id);
      }),
  };
}

/** What the storage has of a plan, as far as the next keeping has to know. */
interface Stored {
  readonly keptAt: number;
  readonly sheets: ReadonlySet<string>;
  readonly hasFile: boolean;
}

/** The records of a plan: those that are not there, or that the browser cannot read, are undefined. */
interface PlanRecords {
  readonly title: KeptPlanTitle | undefined;
  readonly frame: Records["frames"]["value"] | undefined;
  /** Sheets by id, in the order of their ids. */
  readonly sheets: ReadonlyMap<string, Partial<IWorksheetData> | undefined>;
  readonly file: Records["files"]["value"] | undefined;
}

/** Reads the records of a plan as they stood at one moment. */
function readTogether(database: IDBPDatabase<Records>, id: string): Promise<PlanRecords> {
  return read(database, async (reading) => {
    const [title, frame, sheets, file] = await Promise.all([
      reading.objectStore("titles").get(id),
      reading.objectStore("frames").get(id),
      reading.objectStore("sheets").getAll(sheetsOf(id)),
      reading.objectStore("files").get(id),
    ]);
    return { title, frame, sheets: new Map(sheets.map(({ sheet, content }) => [sheet, content])), file };
  });
}

/** Reads the records of a plan one by one, so that one which the browser cannot read does not take the others with it. */
async function readApart(database: IDBPDatabase<Records>, id: string): Promise<PlanRecords> {
  const orNone = () => undefined;
  const keys = await read(database, (reading) => reading.objectStore("sheets").getAllKeys(sheetsOf(id)));
  const contentOf = (key: [string, string]) => read(database, (reading) => reading.objectStore("sheets").get(key)).then((record) => record?.content, orNone);
  return {
    title: await read(database, (reading) => reading.objectStore("titles").get(id)).catch(orNone),
    frame: await read(database, (reading) => reading.objectStore("frames").get(id)).catch(orNone),
    sheets: new Map(await Promise.all(keys.map(async (key) => [key[1], await contentOf(key)] as const))),
    file: await read(database, (reading) => reading.objectStore("files").get(id)).catch(orNone),
  };
}

/** Asks for records that stand there at one moment. */
async function read<T>(database: IDBPDatabase<Records>, ask: (reading: IDBPTransaction<Records, typeof everything>) => Promise<T>): Promise<T> {
  const reading = database.transaction(everything);
  const [answer] = await Promise.all([ask(reading), reading.done]);
  return answer;
}

/** Puts a plan together of the records that are sound. */
function assemble(id: string, name: string, { frame: record, sheets, file }: Omit<PlanRecords, "title">): LoadedPlan {
  const frame = isFrame(record?.frame) ? record.frame : null;
  const wanted = frame?.sheetOrder ?? [...sheets.keys()];
  const order = wanted.filter((sheet) => isSheet(sheets.get(sheet)));
  if (order.length === 0) throw noAnswer("plan", name, `${quote(name)} is no longer whole in this browser: open the file it was last saved as.`);
  const lost = wanted.length - order.length;
  const hasFile = file !== undefined || record?.hasFile === true;
  const bytes = file?.bytes instanceof Uint8Array ? file.bytes : null;
  const missing = [
    ...(lost === 0 ? [] : [`${lost} of ${wanted.length} sheets of ${quote(name)} could not be read from this browser's storage.`]),
    ...(frame !== null ? [] : [`Order, formats, names and rules of ${quote(name)} could not be read from this browser's storage.`]),
    ...(bytes !== null || !hasFile ? [] : [`The file that ${quote(name)} was opened from could not be read: a saved one lacks what this page does not show, such as charts.`]),
  ];
  const data = { ...(frame ?? emptyWorkbook()), sheetOrder: order, sheets: Object.fromEntries(order.map((sheet) => [sheet, sheets.get(sheet)!])) } as IWorkbookData;
  return { plan: { id, name, data, ...(bytes && { original: bytes }), ...(record?.typing && { typing: record.typing }) }, missing };
}

function isFrame(frame: Frame | undefined): frame is Frame {
  return isObject(frame) && Array.isArray(frame.sheetOrder) && frame.sheetOrder.length > 0;
}

function isSheet(content: Partial<IWorksheetData> | undefined): boolean {
  if (!isObject(content) || typeof content.id !== "string" || typeof content.name !== "string") return false;
  const { cellData, mergeData = [], rowData = {}, columnData = {}, freeze = {} } = content;
  // What is no table of cells the engine does not refuse: it would never come up.
  return isObject(cellData) && Object.values(cellData).every((row) => isObject(row) && Object.values(row).every(isCell)) && Array.isArray(mergeData) && [rowData, columnData, freeze].every(isObject);
}

function isCell(value: unknown): boolean {
  return value === null || isObject(value);
}

function isObject(value: unknown): value is object {
  return typeof value === "object" && value !== null;
}

/** Reads every title; a plan whose own is gone has one without a name, so that it is not lost from sight. */
async function readTitles(database: IDBPDatabase<Records>): Promise<KeptPlanTitle[]> {
  const titles = await read(database, (reading) => reading.objectStore("titles").getAll());
  const ids = await read(database, (reading) => reading.objectStore("frames").getAllKeys()).catch(() => []);
  const known = new Map(titles.map((title) => [title.id, title]));
  return [...new Set([...known.keys(), ...ids])].map((id) => ({ id, name: nameOf(known.get(id)), keptAt: moment(known.get(id)) }));
}

function nameOf(title: KeptPlanTitle | undefined): string {
  const name: unknown = title?.name;
  return typeof name === "string" ? name : "Plan without a name";
}

/** When a plan was kept; 0 where its title does not say. */
function moment(title: KeptPlanTitle | undefined): number {
  const at = title?.keptAt ?? 0;
  return Number.isSafeInteger(at) ? at : 0;
}

/**
 * Writes all of a plan that the storage does not have yet. Nothing is asked of it on the way and the end is called at once: from here on what
 * was typed no longer depends on the page, which may be busy, or gone in the next moment.
 */
function write(change: Change, { id, data, original, typing }: KeptPlan, title: Records["titles"]["value"], touched: ReadonlySet<string>, before?: Stored): void {
  const { sheets, ...frame } = data;
  // What becomes of each request, the end of the whole change tells.
  const ask = (request: Promise<unknown>) => void request.catch(() => undefined);
  change.done.catch(() => undefined);
  ask(change.objectStore("titles").put(title));
  ask(change.objectStore("frames").put({ id, frame, hasFile: original !== undefined, ...(typing && { typing }) }));
  for (const [sheet, content] of Object.entries(sheets)) {
    if (touched.has(sheet) || before?.sheets.has(sheet) !== true) ask(change.objectStore("sheets").put({ plan: id, sheet, content }));
  }
  for (const sheet of before?.sheets ?? []) {
    if (!(sheet in sheets)) ask(change.objectStore("sheets").delete([id, sheet]));
  }
  if (original !== undefined && before?.hasFile !== true) ask(change.objectStore("files").put({ id, bytes: original }));
  change.commit();
}

/** Refuses a plan that another window has kept since it was read here; where the browser has locks, no other window can have it. */
async function refuseAnotherWriter(database: IDBPDatabase<Records>, id: string, writer: string, before?: Stored): Promise<void> {
  const title = await read(database, (reading) => reading.objectStore("titles").get(id));
  if (title === undefined || title.writer === writer || moment(title) === before?.keptAt) return;
  throw noAnswer("storage", "", "Another window has kept this plan meanwhile: save this one as a file, then reload the page.");
}

function abort(change: Change | undefined): void {
  try {
    change?.done.catch(() => undefined);
    change?.abort();
  } catch {
    // It had come to its end by itself.
  }
}

function storeInMemory(passing: string): PlanStore {
  const plans = new Map<string, KeptPlan & KeptPlanTitle>();
  return {
    passing,
    closed: new Promise(() => undefined),
    titles: () => Promise.resolve(latestFirst([...plans.values()].map(({ id, name, keptAt }) => ({ id, name, keptAt })))),
    load(id) {
      const plan = plans.get(id);
      return plan === undefined ? Promise.reject(noAnswer("plan", id, "That plan is no longer kept.")) : Promise.resolve({ plan, missing: [] });
    },
    keep: (plan) => Promise.resolve(void plans.set(plan.id, { ...plan, keptAt: Math.max(Date.now(), ...[...plans.values()].map(({ keptAt }) => keptAt + 1)) })),
    forget: (id) => Promise.resolve(void plans.delete(id)),
  };
}

function sheetsOf(plan: string): IDBKeyRange {
  return IDBKeyRange.bound([plan, ""], [plan, "\uffff"]);
}

function latestFirst(titles: KeptPlanTitle[]): KeptPlanTitle[] {
  return titles.sort((a, b) => b.keptAt - a.keptAt);
}

/** Waits for an answer of the storage, though not for ever. */
function answered<T>(work: Promise<T>): Promise<T> {
  return new Promise((resolve, reject) => {
    const timer = setTimeout(() => {
      reject(new DOMException("The storage does not answer.", "TimeoutError"));
    }, longestAnswer);
    work.finally(() => { clearTimeout(timer); }).then(resolve, reject);
  });
}

/** Asks the storage for something, and says `sentence` where it refuses. */
async function asked<T>(sentence: string, work: () => Promise<T>): Promise<T> {
  try {
    return await answered(work());
  } catch (thrown) {
    throw thrown instanceof Problem ? thrown : noAnswer("storage", "", sentence);
  }
}

function whyNone(thrown: unknown): string {
  if (isNamed(thrown, "VersionError")) return "A newer release has kept plans in this browser: reload the page to get it.";
  if (isNamed(thrown, "TimeoutError")) return "This browser's storage does not answer.";
  return "This browser gives the page no storage.";
}

function whyRefused(thrown: unknown): string {
  if (thrown instanceof Problem) return thrown.sentence;
  if (isNamed(thrown, "TimeoutError")) return "This browser's storage does not answer: save the plan as a file.";
  if (isNamed(thrown, "QuotaExceededError")) return "This browser's storage is full: save the plan as a file, then remove plans under Recent.";
  if (isNamed(thrown, "InvalidStateError")) return "This browser's storage was closed, as a newer release may have opened it: save the plan as a file, then reload the page.";
  return "This browser's storage refuses to keep the plan: save it as a file.";
}

function isNamed(thrown: unknown, name: string): boolean {
  return typeof thrown === "object" && thrown !== null && "name" in thrown && thrown.name === name;
}
