import type { IWorkbookData } from "@univerjs/core";

/** A workbook as the browser keeps it between visits. */
export interface KeptPlan {
  readonly id: string;
  readonly name: string;
  /** Milliseconds since 1970 at which it was last kept. */
  readonly keptAt: number;
  readonly data: IWorkbookData;
  /** The file it was opened from, over which it is saved again. */
  readonly original?: Uint8Array;
}

/** What the list of recent plans shows of one. */
export type KeptPlanTitle = Pick<KeptPlan, "id" | "name" | "keptAt">;

/** How many plans are kept; older ones go. */
const mostPlans = 12;

/** The browser's own storage of plans, latest first. */
export interface PlanStore {
  titles(): Promise<KeptPlanTitle[]>;
  load(id: string): Promise<KeptPlan | undefined>;
  keep(plan: KeptPlan): Promise<void>;
  forget(id: string): Promise<void>;
}

/** Opens the storage. Where the browser has none (a private window may) plans live as long as the page. */
export async function openPlanStore(): Promise<PlanStore> {
  try {
    const database = await asked(openDatabase());
    return storeIn(database);
  } catch {
    return storeInMemory();
  }
}

function openDatabase(): IDBOpenDBRequest {
  const request = indexedDB.open("baywright", 1);
  // Titles stand apart, so that the list does not load every workbook.
  request.onupgradeneeded = () => {
    request.result.createObjectStore("titles", { keyPath: "id" });
    request.result.createObjectStore("plans", { keyPath: "id" });
  };
  return request;
}

function storeIn(database: IDBDatabase): PlanStore {
  const titles = async () => latestFirst(await asked(database.transaction("titles").objectStore("titles").getAll() as IDBRequest<KeptPlanTitle[]>));
  const forget = async (id: string) => {
    const change = database.transaction(["titles", "plans"], "readwrite");
    change.objectStore("titles").delete(id);
    await asked(change.objectStore("plans").delete(id));
  };
  return {
    titles,
    load: (id) => asked(database.transaction("plans").objectStore("plans").get(id) as IDBRequest<KeptPlan | undefined>),
    async keep(plan) {
      const change = database.transaction(["titles", "plans"], "readwrite");
      change.objectStore("titles").put({ id: plan.id, name: plan.name, keptAt: plan.keptAt });
      await asked(change.objectStore("plans").put(plan));
      for (const old of (await titles()).slice(mostPlans)) await forget(old.id);
    },
    forget,
  };
}

function storeInMemory(): PlanStore {
  const plans = new Map<string, KeptPlan>();
  return {
    titles: () => Promise.resolve(latestFirst([...plans.values()].map(({ id, name, keptAt }) => ({ id, name, keptAt })))),
    load: (id) => Promise.resolve(plans.get(id)),
    keep: (plan) => Promise.resolve(void plans.set(plan.id, plan)),
    forget: (id) => Promise.resolve(void plans.delete(id)),
  };
}

function latestFirst(titles: KeptPlanTitle[]): KeptPlanTitle[] {
  return titles.sort((a, b) => b.keptAt - a.keptAt);
}

function asked<T>(request: IDBRequest<T>): Promise<T> {
  return new Promise((resolve, reject) => {
    request.onsuccess = () => {
      resolve(request.result);
    };
    request.onerror = () => {
      reject(request.error ?? new Error("The browser's storage does not answer."));
    };
  });
}
