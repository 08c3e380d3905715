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

test.each(["put", "delete"] as const)("a fault at any %s of a keep leaves the plan as it was kept before, and says what to do", async (call) => {
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

/** Changes the records of the storage behind its back. */
async function tamper(change: (stores: (name: string) => IDBObjectStore) => void): Promise<void> {
  const raw = await new Promise<IDBDatabase>((resolve) => {
    const asking = indexedDB.open("baywright plans");
    asking.onsuccess = () => { resolve(asking.result); };
  });
  const changing = raw.transaction([...raw.objectStoreNames], "readwrite");
  change((name) => changing.objectStore(name));
  await new Promise<void>((resolve) => {
    changing.oncomplete = () => { resolve(); };
  });
  raw.close();
}

const oneLost = '1 of 2 sheets of "Plan a" could not be read from this browser\'s storage.';
const frameLost = 'Order, formats, names and rules of "Plan a" could not be read from this browser\'s storage.';
const fileLost = 'The file that "Plan a" was opened from could not be read: a saved one lacks what this page does not show, such as charts.';

describe("a plan with a damaged record comes back as far as it goes, and what is missing is told", () => {
  const damages: readonly (readonly [string, (stores: (name: string) => IDBObjectStore) => void, Record<string, string>, readonly string[]])[] = [
    ["a sheet that is gone", (stores) => stores("sheets").delete(["a", "one"]), { two: "2" }, [oneLost]],
    ["a sheet that is no sheet", (stores) => stores("sheets").put({ plan: "a", sheet: "one", content: "text" }), { two: "2" }, [oneLost]],
    ["a sheet without cells", (stores) => stores("sheets").put({ plan: "a", sheet: "one", content: { id: "one", name: "one" } }), { two: "2" }, [oneLost]],
    ["a sheet with a row that is none", (stores) => stores("sheets").put({ plan: "a", sheet: "one", content: { id: "one", name: "one", cellData: { 0: null } } }), { two: "2" }, [oneLost]],
    ["a sheet with a cell that is none", (stores) => stores("sheets").put({ plan: "a", sheet: "one", content: { id: "one", name: "one", cellData: { 0: { 0: 7 } } } }), { two: "2" }, [oneLost]],
    ["a sheet whose rows are none", (stores) => stores("sheets").put({ plan: "a", sheet: "one", content: { id: "one", name: "one", cellData: {}, rowData: null } }), { two: "2" }, [oneLost]],
    ["a sheet whose merged cells are none", (stores) => stores("sheets").put({ plan: "a", sheet: "one", content: { id: "one", name: "one", cellData: {}, mergeData: "A1" } }), { two: "2" }, [oneLost]],
    ["a frame that is gone", (stores) => stores("frames").delete("a"), { one: "1", two: "2" }, [frameLost]],
    ["a frame that is none", (stores) => stores("frames").put({ id: "a", frame: 7 }), { one: "1", two: "2" }, [frameLost]],
    ["a file that is gone", (stores) => stores("files").delete("a"), { one: "1", two: "2" }, [fileLost]],
    ["a file that is none", (stores) => stores("files").put({ id: "a", bytes: "text" }), { one: "1", two: "2" }, [fileLost]],
    ["a title that is gone", (stores) => stores("titles").delete("a"), { one: "1", two: "2" }, []],
  ];

  test.each(damages)("%s", async (_, damage, texts, sentences) => {
    const store = await openPlanStore();
    for (const id of ["a", "b"]) {
      const plan = planOf(id, { one: "1", two: "2" }, Uint8Array.of(80, 75));
      await store.keep(plan, every(plan));
    }
    await tamper(damage);
    expect((await store.titles()).map(({ id }) => id).sort()).toEqual(["a", "b"]);
    const { plan, missing } = await store.load("a");
    expect([textsOf(plan), missing]).toEqual([texts, sentences]);
    expect((await store.load("b")).missing).toEqual([]);
  });

  test("a record that the browser cannot read does not take the others with it", async () => {
    const store = await openPlanStore();
    const plan = planOf("a", { one: "1", two: "2" });
    await store.keep(plan, every(plan));
    const refuse = () => { throw new DOMException("Failed to read large IndexedDB value", "DataError"); };
    jest.spyOn(IDBObjectStore.prototype, "getAll").mockImplementation(refuse);
    const real = IDBObjectStore.prototype.get;
    jest.spyOn(IDBObjectStore.prototype, "get").mockImplementation(function (this: IDBObjectStore, key) {
      return Array.isArray(key) && key[1] === "one" ? refuse() : real.call(this, key);
    });
    const { plan: left, missing } = await store.load("a");
    expect([textsOf(left), missing]).toEqual([{ two: "2" }, [oneLost]]);
  });

  test("one of which no sheet is left is refused, and stays in the list", async () => {
    const store = await openPlanStore();
    await store.keep(planOf("a", { one: "1" }), new Set());
    await tamper((stores) => stores("sheets").clear());
    await expect(store.load("a")).rejects.toThrow('"Plan a" is no longer whole in this browser: open the file it was last saved as.');
    expect((await store.titles()).map(({ name }) => name)).toEqual(["Plan a"]);
  });

  test("titles with no name and no moment are listed, and do not disturb the order of the others", async () => {
    const store = await openPlanStore();
    await store.keep(planOf("a", { one: "1" }), new Set());
    await tamper((stores) => stores("titles").put({ id: "b", keptAt: "yesterday" }));
    await store.keep(planOf("c", { one: "1" }), new Set());
    expect((await store.titles()).map(({ id, name }) => [id, name])).toEqual([["c", "Plan c"], ["a", "Plan a"], ["b", "Plan without a name"]]);
  });
});

test("a plan that another window has kept since it was read here is not written over", async () => {
  const [here, there] = [await openPlanStore(), await openPlanStore()];
  await here.keep(planOf("a", { one: "1" }), new Set());
  await there.load("a");
  await here.keep(planOf("a", { one: "here" }), new Set(["one"]));
  await expect(there.keep(planOf("a", { one: "there" }), new Set(["one"]))).rejects.toThrow("Another window has kept this plan meanwhile: save this one as a file, then reload the page.");
  expect(textsOf((await there.load("a")).plan)).toEqual({ one: "here" });
  await there.keep(planOf("a", { one: "there" }), new Set(["one"]));
  expect(textsOf((await here.load("a")).plan)).toEqual({ one: "there" });
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

test("a storage that a newer release has taken over tells so and refuses with a sentence, and nothing is half written", async () => {
  const store = await openPlanStore();
  await store.keep(planOf("a", { one: "1" }), new Set());
  const newer = indexedDB.open("baywright plans", 2);
  await new Promise((resolve) => {
    newer.onsuccess = resolve;
  });
  await store.closed;
  await expect(store.keep(planOf("a", { one: "2" }), new Set(["one"]))).rejects.toThrow("save the plan as a file, then reload the page");
});
