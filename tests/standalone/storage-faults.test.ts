import "fake-indexeddb/auto";
import { IDBFactory } from "fake-indexeddb";
import { type KeptPlan, openPlanStore } from "../../src/standalone/plan-store";
import { deskBrowser, type DeskPage, plainGrid } from "../support/desk-browser";
import { faultKinds, type FaultKind, injectFault } from "../support/storage-faults";

/** A visit during which one call of the storage went wrong. */
interface Visit {
  readonly call: string;
  readonly said: readonly string[];
}

const planOf = (id: string, text: string): KeptPlan => {
  const sheets = { one: { id: "one", name: "One", cellData: { 0: { 0: { v: text } } } }, two: { id: "two", name: "Two", cellData: {} } };
  return { id, name: `Plan ${id}`, data: { id, sheetOrder: ["one", "two"], sheets } as unknown as KeptPlan["data"], original: Uint8Array.of(80, 75) };
};

/** Every text in the first column of what the storage has, plan by plan. */
async function textsKept(): Promise<Record<string, unknown[]>> {
  const store = await soon(openPlanStore());
  const texts: Record<string, unknown[]> = {};
  for (const { id } of await soon(store.titles())) {
    const { data } = (await soon(store.load(id))).plan;
    texts[id] = Object.values((data.sheets[data.sheetOrder[0]!]!.cellData ?? {}) as Record<number, Record<number, { v?: unknown }>>).map((row) => row[0]?.v);
  }
  return texts;
}

/** Waits for what waits for clocks, without the time that it takes. */
async function soon<T>(work: Promise<T>): Promise<T> {
  const waiting = { isOver: false };
  const ended = work.finally(() => { waiting.isOver = true; });
  ended.catch(() => undefined);
  for (let turn = 0; !waiting.isOver; turn += 1) {
    if (turn > 2_000) throw new Error("It waits for ever.");
    await new Promise(setImmediate);
    if (turn % 10 === 9) jest.advanceTimersByTime(1_000);
  }
  return ended;
}

/** Types into a plan while one call goes wrong, and looks at what the page says against what the storage has; null where there is no such call. */
async function visitWithFault(kind: FaultKind, failing: number): Promise<Visit | null> {
  globalThis.indexedDB = new IDBFactory();
  const before = await soon(openPlanStore());
  for (const id of ["b", "a"]) await soon(before.keep(planOf(id, `before ${id}`), new Set()));

  const fault = injectFault(kind, failing);
  let page: DeskPage;
  try {
    page = await soon(deskBrowser().open({ makeGrid: plainGrid }));
    page.type(0, "after");
    await soon(page.desk.keepNow());
    const { keeping, wouldLose } = page.desk;
    fault.mend();
    const call = fault.hit();
    if (call === null) return null;
    const kept = await textsKept();
    // No other plan is touched, and of this one the storage has what it had before or what was typed.
    expect(kept["b"]).toEqual(["before b"]);
    expect([["before a"], ["after"]]).toContainEqual(kept["a"]);
    // "Kept" is no lie, and whatever else stands there is said and asks on leaving.
    if (keeping === "kept") expect([call, Object.values(kept).flat()]).toEqual([call, expect.arrayContaining(["after"])]);
    else {
      expect([call, keeping, wouldLose]).toEqual([call, expect.stringMatching(/refused|passing/), true]);
      expect([call, page.said.join(" ")]).toEqual([call, expect.stringMatching(/save (it|the plan|them) as (a file|files)/)]);
    }
    const said = [...page.said];
    // What was refused once is kept as soon as the storage answers again.
    if (keeping === "refused" && kind !== "never answers") {
      await soon(page.desk.keepNow());
      expect([call, page.desk.keeping, Object.values(await textsKept()).flat()]).toEqual([call, "kept", expect.arrayContaining(["after"])]);
    }
    expect(await page.texts()).toContain("after");
    return { call, said };
  } finally {
    fault.mend();
  }
}

const none = "Plans are gone when this page is closed: save them as files.";
const unread = "Plans that this browser keeps cannot be read now: try again in a moment, or open a file.";
const slow = "This browser's storage does not answer: save the plan as a file.";
const full = "This browser's storage is full: save the plan as a file, then remove plans under Recent.";
/** What is said, by how a call goes wrong: of opening the storage, of reading from it, of keeping. */
const sentences: Readonly<Record<FaultKind, readonly string[]>> = {
  throws: [`This browser gives the page no storage. ${none}`, unread, "This browser's storage refuses to keep the plan: save it as a file."],
  fails: [`This browser gives the page no storage. ${none}`, unread, "This browser's storage refuses to keep the plan: save it as a file."],
  "is full": [`This browser gives the page no storage. ${none}`, unread, full],
  "is full at the end": [`This browser gives the page no storage. ${none}`, unread, full],
  "never answers": [
    `This browser's storage does not answer. ${none}`,
    `${unread} ${slow}`,
    `This plan cannot be read from this browser's storage now: try again in a moment, or open the file it was last saved as. ${slow}`,
    slow,
  ],
};

describe("a fault at any call of the storage, from opening the page to keeping what was typed", () => {
  beforeEach(() => {
    jest.useFakeTimers({ doNotFake: ["setImmediate", "nextTick", "queueMicrotask"] });
    jest.spyOn(console, "error").mockImplementation(() => undefined);
  });

  afterEach(() => {
    jest.restoreAllMocks();
    jest.useRealTimers();
  });

  test.each(faultKinds)("that %s: nothing is called kept that is not, and what is not kept is said with what to do", async (kind) => {
    const visits: Visit[] = [];
    for (let visit = await visitWithFault(kind, 0); visit !== null; visit = await visitWithFault(kind, visits.length)) visits.push(visit);
    expect([...new Set(visits.map(({ said }) => said.join(" ")))].filter((sentence) => sentence !== "")).toEqual(sentences[kind]);
    expect(visits.length).toBeGreaterThan(12);
  });
});
