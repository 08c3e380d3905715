import "fake-indexeddb/auto";
import { IDBFactory } from "fake-indexeddb";
import { type KeptPlan, openPlanStore } from "../../src/standalone/plan-store";
import { emptyWorkbook } from "../../src/workbook/engine/stored-sheet";

beforeEach(() => {
  globalThis.indexedDB = new IDBFactory();
});

afterEach(() => {
  jest.restoreAllMocks();
});

/** A plan of sheets that hold one text each. */
function planOf(id: string, texts: Readonly<Record<string, string>>, original?: Uint8Array): KeptPlan {
  const sheets = Object.fromEntries(Object.entries(texts).map(([sheet, text]) => [sheet, { id: sheet, name: sheet, cellData: { 0: { 0: { v: text } } } }]));
  return { id, name: `Plan ${id}`, data: { ...emptyWorkbook(), id, sheetOrder: Object.keys(texts), sheets } as KeptPlan["data"], ...(original && { original }) };
}

const textsOf = ({ data }: KeptPlan): Record<string, unknown> => Object.fromEntries(data.sheetOrder.map((sheet) => [sheet, data.sheets[sheet]!.cellData?.[0]?.[0]?.v]));
const every = (plan: KeptPlan) => new Set(plan.data.sheetOrder);

test("a plan comes back as it was kept, with the file it was opened from", async () => {
  const store = await openPlanStore();
  const plan = planOf("a", { one: "1", two: "2" }, Uint8Array.of(80, 75));
  await store.keep(plan, every(plan));
  expect(await (await openPlanStore()).load("a")).toEqual({ plan, missing: [] });
});

test("only sheets that were touched are written, those that are gone are removed, and a sheet that was never kept is written all the same", async () => {
  const store = await openPlanStore();
  const before = planOf("a", { one: "1", two: "2", three: "3" });
  await store.keep(before, every(before));
  await store.keep(planOf("a", { two: "not touched", one: "new", four: "4" }), new Set(["one"]));
  expect(textsOf((await store.load("a")).plan)).toEqual({ two: "2", one: "new", four: "4" });
});

test("what was kept last is first in the list, also after the clock was set back", async () => {
  const store = await openPlanStore();
  const clock = jest.spyOn(Date, "now");
  for (const [id, now] of [["a", 5_000], ["b", 1_000], ["c", 1_000]] as const) {
    clock.mockReturnValue(now);
    await store.keep(planOf(id, { one: id }), new Set());
  }
  expect((await store.titles()).map(({ id }) => id)).toEqual(["c", "b", "a"]);
});

test("any number of plans is kept, and only the one that is named is removed", async () => {
  const store = await openPlanStore();
  const ids = Array.from({ length: 20 }, (_, index) => `plan ${index}`);
  for (const id of ids) await store.keep(planOf(id, { one: id }), new Set());
  await store.forget("plan 7");
  expect((await store.titles()).map(({ id }) => id).sort()).toEqual(ids.filter((id) => id !== "plan 7").sort());
  await expect(store.load("plan 7")).rejects.toThrow(/no longer whole in this browser/);
  expect(textsOf((await store.load("plan 8")).plan)).toEqual({ one: "plan 8" });
});

test.each(["put", "delete", "getAll", "getAllKeys", "getKey"] as const)("a fault at any %s of a keep leaves the plan as it was kept before, and says what to do", async (call) => {
  const store = await openPlanStore();
  const before = planOf("a", { one: "1", two: "2", three: "3" }, Uint8Array.of(1));
  const after = planOf("a", { one: "new", two: "new", four: "new" }, Uint8Array.of(1));
  await store.keep(before, every(before));
  const prototype = IDBObjectStore.prototype as unknown as Record<typeof call, (...args: unknown[]) => unknown>;
  const real = prototype[call];
  /** Keeps the plan with a fault at one call of this kind; answers with the sentence, or with null where there is no such call any more. */
  const keepWithFault = async (failing: number): Promise<string | null> => {
    let calls = 0;
    const spy = jest.spyOn(prototype, call).mockImplementation(function (this: IDBObjectStore, ...args: unknown[]) {
      calls += 1;
      if (calls - 1 !== failing) return real.apply(this, args);
      throw new DOMException("full", "QuotaExceededError");
    });
    return store.keep(after, every(after)).then(() => null, String).finally(() => {
      spy.mockRestore();
    });
  };
  let faults = 0;
  for (let sentence = await keepWithFault(faults); sentence !== null; sentence = await keepWithFault(faults)) {
    faults += 1;
    expect(sentence).toMatch(/storage is full: save the plan as a file/);
    expect(textsOf((await store.load("a")).plan)).toEqual({ one: "1", two: "2", three: "3" });
  }
  expect(faults).toBeGreaterThan(0);
  expect(textsOf((await store.load("a")).plan)).toEqual({ one: "new", two: "new", four: "new" });
});

test("a sheet whose record is gone is told, and the others come back", async () => {
  const store = await openPlanStore();
  const plan = planOf("a", { one: "1", two: "2" });
  await store.keep(plan, every(plan));
  const raw = await new Promise<IDBDatabase>((resolve) => {
    const asking = indexedDB.open("baywright plans");
    asking.onsuccess = () => {
      resolve(asking.result);
    };
  });
  const remove = (sheet: string) =>
    new Promise<void>((resolve) => {
      const change = raw.transaction("sheets", "readwrite");
      change.objectStore("sheets").delete(["a", sheet]);
      change.oncomplete = () => {
        resolve();
      };
    });
  await remove("one");
  const { plan: left, missing } = await store.load("a");
  expect(textsOf(left)).toEqual({ two: "2" });
  expect(missing).toEqual(['1 of 2 sheets of "Plan a" could not be read from this browser\'s storage. The file it was last saved as may have them.']);
  await remove("two");
  await expect(store.load("a")).rejects.toThrow('No sheet of "Plan a" is left in this browser: open the file it was last saved as.');
});

test("where the browser has no storage, or a newer release keeps it, plans live as long as the page, and why is told", async () => {
  await new Promise((resolve) => {
    const newer = indexedDB.open("baywright plans", 99);
    newer.onsuccess = () => {
      newer.result.close();
      resolve(null);
    };
  });
  const behind = await openPlanStore();
  expect(behind.passing).toBe("A newer release has kept plans in this browser: reload the page to get it.");
  jest.spyOn(indexedDB, "open").mockImplementation(() => {
    throw new DOMException("denied", "SecurityError");
  });
  const store = await openPlanStore();
  expect(store.passing).toBe("This browser gives the page no storage.");
  await store.keep(planOf("a", { one: "1" }), new Set());
  await store.keep(planOf("b", { one: "2" }), new Set());
  expect((await store.titles()).map(({ id }) => id)).toEqual(["b", "a"]);
  expect(textsOf((await store.load("a")).plan)).toEqual({ one: "1" });
  await store.forget("a");
  await expect(store.load("a")).rejects.toThrow("That plan is no longer kept.");
});

test("a storage that a newer release has taken over refuses with a sentence, and nothing is half written", async () => {
  const store = await openPlanStore();
  await store.keep(planOf("a", { one: "1" }), new Set());
  const newer = indexedDB.open("baywright plans", 2);
  await new Promise((resolve) => {
    newer.onsuccess = resolve;
  });
  await expect(store.keep(planOf("a", { one: "2" }), new Set(["one"]))).rejects.toThrow("save the plan as a file, then reload the page");
});
