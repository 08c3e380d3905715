import type { IWorkbookData, IWorksheetData } from "@univerjs/core";
import { type DBSchema, type IDBPDatabase, type IDBPTransaction, openDB } from "idb";

/** A workbook as the browser keeps it between visits. */
export interface KeptPlan {
  readonly id: string;
  readonly name: string;
  readonly data: IWorkbookData;
  /** The file it was opened from, over which it is saved again. */
  readonly original?: Uint8Array;
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

/** The browser's own storage of plans. */
export interface PlanStore {
  /** Why plans are gone when the page is closed; null where the browser keeps them. */
  readonly passing: string | null;
  /** What is kept, latest first. */
  titles(): Promise<KeptPlanTitle[]>;
  /** Reads a plan as far as it goes; throws a sentence where nothing of it is left. */
  load(id: string): Promise<LoadedPlan>;
  /**
   * Keeps a plan, of its sheets those with these ids and those that were never kept. Answers once the browser has written it; where the
   * browser refuses, what was kept before still stands and a sentence is thrown.
   */
  keep(plan: KeptPlan, touched: ReadonlySet<string>): Promise<void>;
  /** Removes a plan for good. */
  forget(id: string): Promise<void>;
}

interface Records extends DBSchema {
  titles: { key: string; value: KeptPlanTitle };
  /** All of a plan but its sheets. */
  frames: { key: string; value: { readonly id: string; readonly frame: Omit<IWorkbookData, "sheets"> } };
  sheets: { key: [string, string]; value: { readonly plan: string; readonly sheet: string; readonly content: Partial<IWorksheetData> } };
  /** The file that a plan was opened from: written once. */
  files: { key: string; value: { readonly id: string; readonly bytes: Uint8Array } };
}

type Change = IDBPTransaction<Records, typeof everything, "readwrite">;

const everything = ["titles", "frames", "sheets", "files"] as const;

/** Opens the storage. Where the browser has none or refuses it, plans live as long as the page, and `passing` says why. */
export async function openPlanStore(): Promise<PlanStore> {
  try {
    const database = await openDB<Records>("baywright plans", 1, {
      upgrade(fresh) {
        fresh.createObjectStore("titles", { keyPath: "id" });
        fresh.createObjectStore("frames", { keyPath: "id" });
        fresh.createObjectStore("sheets", { keyPath: ["plan", "sheet"] });
        fresh.createObjectStore("files", { keyPath: "id" });
      },
      // A window of a newer release may bring the storage up: this one is refused from then on, and says so.
      blocking: (_, __, event) => {
        (event.target as IDBDatabase).close();
      },
    });
    return storeIn(database);
  } catch (thrown) {
    return storeInMemory(isNamed(thrown, "VersionError") ? "A newer release has kept plans in this browser: reload the page to get it." : "This browser gives the page no storage.");
  }
}

function storeIn(database: IDBPDatabase<Records>): PlanStore {
  return {
    passing: null,

    async titles() {
      return latestFirst(await database.getAll("titles"));
    },

    async load(id) {
      const reading = database.transaction(everything);
      const [title, frame, sheets, file] = await Promise.all([
        reading.objectStore("titles").get(id),
        reading.objectStore("frames").get(id),
        reading.objectStore("sheets").getAll(sheetsOf(id)),
        reading.objectStore("files").get(id),
      ]);
      if (title === undefined || frame === undefined) throw new Error(`"${title?.name ?? "That plan"}" is no longer whole in this browser: open the file it was last saved as.`);
      const found = new Map(sheets.map(({ sheet, content }) => [sheet, content]));
      const order = frame.frame.sheetOrder.filter((sheet) => found.has(sheet));
      const lost = frame.frame.sheetOrder.length - order.length;
      if (order.length === 0) throw new Error(`No sheet of "${title.name}" is left in this browser: open the file it was last saved as.`);
      const data = { ...frame.frame, sheetOrder: order, sheets: Object.fromEntries(order.map((sheet) => [sheet, found.get(sheet)!])) };
      return {
        plan: { id, name: title.name, data, ...(file && { original: file.bytes }) },
        missing: lost === 0 ? [] : [`${lost} of ${order.length + lost} sheets of "${title.name}" could not be read from this browser's storage. The file it was last saved as may have them.`],
      };
    },

    async keep(plan, touched) {
      let change: Change | undefined;
      try {
        change = database.transaction(everything, "readwrite", { durability: "strict" });
        await Promise.all([write(change, plan, touched), change.done]);
      } catch (thrown) {
        const why = whyRefused(change?.error ?? thrown);
        // What a record could not take must not leave the others half written.
        abort(change);
        throw new Error(why, { cause: thrown });
      }
    },

    async forget(id) {
      const change = database.transaction(everything, "readwrite");
      await Promise.all([...(["titles", "frames", "files"] as const).map((store) => change.objectStore(store).delete(id)), change.objectStore("sheets").delete(sheetsOf(id)), change.done]);
    },
  };
}

async function write(change: Change, { id, name, data, original }: KeptPlan, touched: ReadonlySet<string>): Promise<void> {
  const { sheets, ...frame } = data;
  const kept = new Set((await change.objectStore("sheets").getAllKeys(sheetsOf(id))).map(([, sheet]) => sheet));
  const moment = nextMoment(await change.objectStore("titles").getAll());
  const hasFile = (await change.objectStore("files").getKey(id)) !== undefined;
  // What becomes of each request, the end of the whole change tells.
  const ask = (request: Promise<unknown>) => void request.catch(() => undefined);
  ask(change.objectStore("titles").put({ id, name, keptAt: moment }));
  ask(change.objectStore("frames").put({ id, frame }));
  for (const [sheet, content] of Object.entries(sheets)) {
    if (touched.has(sheet) || !kept.has(sheet)) ask(change.objectStore("sheets").put({ plan: id, sheet, content }));
  }
  for (const sheet of kept) {
    if (!(sheet in sheets)) ask(change.objectStore("sheets").delete([id, sheet]));
  }
  if (original !== undefined && !hasFile) ask(change.objectStore("files").put({ id, bytes: original }));
}

function abort(change: Change | undefined): void {
  try {
    change?.abort();
  } catch {
    // It had come to its end by itself.
  }
}

function storeInMemory(passing: string): PlanStore {
  const plans = new Map<string, KeptPlan & KeptPlanTitle>();
  return {
    passing,
    titles: () => Promise.resolve(latestFirst([...plans.values()].map(({ id, name, keptAt }) => ({ id, name, keptAt })))),
    load(id) {
      const plan = plans.get(id);
      return plan === undefined ? Promise.reject(new Error("That plan is no longer kept.")) : Promise.resolve({ plan, missing: [] });
    },
    keep: (plan) => Promise.resolve(void plans.set(plan.id, { ...plan, keptAt: nextMoment([...plans.values()]) })),
    forget: (id) => Promise.resolve(void plans.delete(id)),
  };
}

function sheetsOf(plan: string): IDBKeyRange {
  return IDBKeyRange.bound([plan, ""], [plan, "\uffff"]);
}

function nextMoment(kept: readonly KeptPlanTitle[]): number {
  return Math.max(Date.now(), ...kept.map(({ keptAt }) => keptAt + 1));
}

function latestFirst(titles: KeptPlanTitle[]): KeptPlanTitle[] {
  return titles.sort((a, b) => b.keptAt - a.keptAt);
}

function whyRefused(thrown: unknown): string {
  if (isNamed(thrown, "QuotaExceededError")) return "This browser's storage is full: save the plan as a file, then remove plans under Recent.";
  if (isNamed(thrown, "InvalidStateError")) return "This browser's storage was closed, as a newer release may have opened it: save the plan as a file, then reload the page.";
  return "This browser's storage refuses to keep the plan: save it as a file.";
}

function isNamed(thrown: unknown, name: string): boolean {
  return typeof thrown === "object" && thrown !== null && "name" in thrown && thrown.name === name;
}
