import "fake-indexeddb/auto";
import type { IWorkbookData } from "@univerjs/core";
import { IDBFactory } from "fake-indexeddb";
import { noAnswer } from "../../src/planning/text";
import { openPlanStore, type PlanStore } from "../../src/standalone/plan-store";
import { emptyWorkbook } from "../../src/workbook/engine/stored-sheet";
import { deskBrowser, type DeskBrowser, type DeskPage, plainGrid, type PlainGrid } from "../support/desk-browser";

let browser: DeskBrowser;
let opened: DeskPage[] = [];

const openPage = async (store?: PlanStore, notes?: Map<string, string>): Promise<DeskPage> => {
  const page = await browser.open({ ...(store && { store }), ...(notes && { notes }) });
  opened.push(page);
  return page;
};

beforeEach(() => {
  globalThis.indexedDB = new IDBFactory();
  browser = deskBrowser();
});

afterEach(async () => {
  jest.restoreAllMocks();
  jest.useRealTimers();
  for (const page of opened) {
    // What is kept waits for no clock that would outlive the test.
    if (!page.isClosed()) await page.desk.keepNow();
    page.close();
  }
  opened = [];
});

/** Goes on until all that waits for the storage is done, without a moment passing on the clock. */
const atOnce = async () => {
  for (let turn = 0; turn < 50; turn += 1) await new Promise(setImmediate);
};

test("fifteen edits at one a second: whatever is older than a second and a half is there when the page is gone", async () => {
  const page = await openPage();
  await page.desk.startNew();
  jest.useFakeTimers({ doNotFake: ["setImmediate", "nextTick", "queueMicrotask"] });
  for (let edit = 0; edit < 15; edit += 1) {
    page.type(edit, `edit ${edit}`);
    jest.advanceTimersByTime(1_000);
    await atOnce();
  }
  jest.useRealTimers();
  page.close();
  const again = await openPage();
  const texts = await again.texts();
  expect(texts.length).toBeGreaterThanOrEqual(14);
  expect(texts).toEqual(Array.from(texts, (_, edit) => `edit ${edit}`));
  again.close();
});

test("it says kept only once the storage has answered", async () => {
  const page = await openPage();
  await page.desk.startNew();
  expect(page.desk.keeping).toBe("kept");
  page.type(0, "mine");
  expect([page.desk.keeping, page.desk.wouldLose]).toEqual(["changed", true]);
  const keeping = page.desk.keepNow();
  await Promise.resolve();
  expect(page.desk.keeping).toBe("changed");
  await keeping;
  expect([page.desk.keeping, page.desk.wouldLose]).toEqual(["kept", false]);
  page.close();
});

test("a refusal is said once, stands until the storage takes the plan, and neither a saved file nor the next change hides it", async () => {
  const store = await openPlanStore();
  const page = await openPage(store);
  await page.desk.startNew();
  const refused = jest.spyOn(store, "keep").mockRejectedValue(noAnswer("storage", "", "This browser's storage is full: save the plan as a file."));
  page.type(0, "mine");
  await page.desk.keepNow();
  page.type(1, "mine too");
  await page.desk.keepNow();
  expect(page.said).toEqual(["This browser's storage is full: save the plan as a file."]);
  expect([page.desk.keeping, page.desk.wouldLose]).toEqual(["refused", true]);
  await expect(page.desk.startNew()).rejects.toThrow("Then do that again.");
  expect(await page.texts()).toEqual(["mine", "mine too"]);

  await page.desk.saveFile();
  expect([page.desk.keeping, page.desk.wouldLose]).toEqual(["refused", false]);
  refused.mockRestore();
  await page.desk.keepNow();
  expect(page.desk.keeping).toBe("kept");
  page.close();
  const again = await openPage();
  expect(await again.texts()).toEqual(["mine", "mine too"]);
  again.close();
});

test("a second window works on a copy, says so, and the copy is kept beside the plan", async () => {
  const first = await openPage();
  await first.desk.startNew();
  first.type(0, "first window");
  await first.desk.keepNow();
  const second = await openPage();
  expect(second.said).toEqual(['Another window has "New plan" open. This window works on a copy.']);
  await atOnce();
  await second.desk.keepNow();
  expect((await first.desk.others()).map(({ name }) => name)).toContain("New plan (copy)");
  second.type(0, "second window");
  await second.desk.keepNow();
  expect(await first.texts()).toEqual(["first window"]);
  first.close();
  second.close();
});

test("a plan that cannot be read is passed over and named, and stays where it is", async () => {
  const page = await openPage();
  await page.desk.startNew();
  page.type(0, "older");
  await page.desk.startNew();
  page.type(0, "damaged");
  await page.desk.keepNow();
  page.close();
  const store = await openPlanStore();
  const [damaged] = await store.titles();
  const load = store.load.bind(store);
  jest.spyOn(store, "load").mockImplementation((id) => (id === damaged!.id ? Promise.reject(noAnswer("plan", id, '"New plan" is no longer whole in this browser.')) : load(id)));
  const again = await openPage(store);
  expect(again.said).toEqual(['"New plan" is no longer whole in this browser.']);
  expect(await again.texts()).toEqual(["older"]);
  expect((await store.titles()).map(({ id }) => id)).toContain(damaged!.id);
  again.close();
});

test("a plan that the grid cannot show is set aside for the sample, and said", async () => {
  const page = await openPage();
  await page.desk.startNew();
  await page.desk.setAside();
  expect(page.said.at(-1)).toContain('"New plan" cannot be shown. It stays in this browser as it is');
  expect(page.desk.name).toBe("Thornmere sample");
  page.close();
});

test("without storage the page says that plans pass, and leaving asks until they are saved as a file", async () => {
  jest.spyOn(indexedDB, "open").mockImplementation(() => {
    throw new DOMException("denied", "SecurityError");
  });
  const page = await openPage();
  expect(page.said).toEqual(["This browser gives the page no storage. Plans are gone when this page is closed: save them as files."]);
  await page.desk.startNew();
  page.type(0, "mine");
  await page.desk.keepNow();
  expect([page.desk.keeping, page.desk.wouldLose]).toEqual(["passing", true]);
  await page.desk.saveFile();
  expect(page.desk.wouldLose).toBe(false);
  const before = await page.desk.startNew();
  await page.desk.openKept(before.id);
  expect(await page.texts()).toEqual(["mine"]);
  page.close();
});

test("a window that is loaded anew has its own plan again, whatever another window has kept since", async () => {
  const [mine, theirs] = [new Map<string, string>(), new Map<string, string>()];
  const first = await openPage(undefined, mine);
  await first.desk.startNew();
  first.type(0, "first window");
  await first.desk.keepNow();
  const second = await openPage(undefined, theirs);
  await second.desk.startNew();
  second.type(0, "second window");
  await second.desk.keepNow();
  for (const [page, notes, text] of [[first, mine, "first window"], [second, theirs, "second window"]] as const) {
    page.close();
    const again = await openPage(undefined, notes);
    expect([await again.texts(), again.said]).toEqual([[text], []]);
  }
});

test("a window hears that another works on a copy of its plan, and a plan that it has put away is free", async () => {
  const first = await openPage();
  await first.desk.startNew();
  const second = await openPage();
  expect(first.said).toEqual(["Another window works on a copy of this plan: what is typed there does not come here."]);
  const [plan] = (await second.desk.others()).filter(({ name }) => name === "New plan");
  await expect(second.desk.forget(plan!)).rejects.toThrow('Another window has "New plan" open: open another plan there, then remove it.');
  await first.desk.startNew();
  await second.desk.openKept(plan!.id);
  expect(second.desk.name).toBe("New plan");
});

test("a plan of which a part is missing is opened as a copy, and what is left of it stays", async () => {
  const store = await openPlanStore();
  const sheets = { one: { id: "one", name: "One", cellData: { 0: { 0: { v: "left" } } } } };
  await store.keep({ id: "a", name: "Half", data: { ...emptyWorkbook(), sheetOrder: ["gone", "one"], sheets } as unknown as IWorkbookData }, new Set());
  const page = await openPage();
  expect(page.said).toEqual(['1 of 2 sheets of "Half" could not be read from this browser\'s storage. This is a copy of what could be read; the plan stays under Recent.']);
  expect([page.desk.name, await page.texts()]).toEqual(["Half (what could be read)", ["left"]]);
  page.type(1, "mine");
  await page.desk.keepNow();
  expect((await page.desk.others()).map(({ name }) => name)).toEqual(["Half"]);
});

test("a plan that the engine cannot show leaves the one on the desk, and neither is written over", async () => {
  const store = await openPlanStore();
  const sheets = { one: { id: "one", name: "One", cellData: { 0: { 0: { v: "stays" } } } } };
  await store.keep({ id: "a", name: "Odd", data: { ...emptyWorkbook(), sheetOrder: ["one"], sheets } as unknown as IWorkbookData }, new Set());
  const page = await browser.open({ makeGrid: (data) => {
    const bare = plainGrid(data);
    return { ...bare, grid: { ...bare.grid, show: () => { throw new TypeError("no such thing"); } } };
  } });
  jest.spyOn(console, "error").mockImplementation(() => undefined);
  const { name } = page.desk;
  page.type(0, "mine");
  await expect(page.desk.startNew()).rejects.toThrow('"New plan" cannot be shown. It stays in this browser as it is; open the file it was last saved as.');
  expect([page.desk.name, page.desk.keeping]).toEqual([name, "kept"]);
  page.type(1, "mine too");
  await page.desk.keepNow();
  expect(await page.texts()).toEqual(["mine", "mine too"]);
});

test("only what a person changed asks on leaving: a plan that was opened and computed does not", async () => {
  const page = await openPage();
  expect([page.desk.name, page.desk.wouldLose]).toEqual(["Thornmere sample", false]);
});

test("in a browser without storage a plan that was put away unsaved still asks on leaving", async () => {
  jest.spyOn(indexedDB, "open").mockImplementation(() => {
    throw new DOMException("denied", "SecurityError");
  });
  const page = await openPage();
  await page.desk.startNew();
  page.type(0, "mine");
  const before = await page.desk.startNew();
  expect(page.desk.wouldLose).toBe(true);
  await page.desk.openKept(before.id);
  await page.desk.saveFile();
  expect(page.desk.wouldLose).toBe(false);
});

test("a storage that is closed under the page is said, with what to do", async () => {
  const page = await openPage();
  await page.desk.startNew();
  jest.useFakeTimers({ doNotFake: ["setImmediate", "nextTick", "queueMicrotask"] });
  const newer = indexedDB.open("baywright plans", 2);
  await new Promise((resolve) => { newer.onsuccess = resolve; });
  await atOnce();
  expect(page.desk.keeping).toBe("changed");
  await page.desk.keepNow();
  expect(page.desk.keeping).toBe("refused");
  expect(page.said.at(-1)).toMatch(/^This browser's storage was closed, as a newer release may have opened it: save the plan as a file, then reload the page/);
  page.close();
});

test("what is being typed into an open cell is kept beside the plan, asks on leaving, and is told when the page comes back", async () => {
  const grids: PlainGrid[] = [];
  const makeGrid = (data: Partial<IWorkbookData>) => {
    grids.push(plainGrid(data));
    return grids.at(-1)!;
  };
  const notes = new Map<string, string>();
  const page = await browser.open({ makeGrid, notes });
  await page.desk.startNew();
  grids[0]!.typeInto("48 T");
  expect([page.desk.keeping, page.desk.wouldLose]).toEqual(["changed", true]);
  await page.desk.keepNow();
  expect([page.desk.keeping, page.desk.wouldLose]).toEqual(["kept", true]);
  page.close();
  const again = await browser.open({ makeGrid, notes });
  expect(again.said).toEqual(["When this page was left, this was being typed into Sheet1!A1 and stands in no cell: 48 T"]);
  expect(await again.texts()).toEqual([]);

  grids[1]!.typeInto("another");
  await again.desk.keepNow();
  grids[1]!.typeInto(null);
  expect(again.desk.wouldLose).toBe(false);
  await again.desk.keepNow();
  again.close();
  expect((await browser.open({ makeGrid, notes })).said).toEqual([]);
});

test("what is typed into an open cell while the plan is being kept for another stands in it, and in no other", async () => {
  const store = await openPlanStore();
  const grids: PlainGrid[] = [];
  const page = await browser.open({
    store,
    makeGrid(data) {
      grids.push(plainGrid(data));
      return grids[0]!;
    },
  });
  opened.push(page);
  await page.desk.startNew();
  const keep = store.keep.bind(store);
  jest.spyOn(store, "keep").mockImplementationOnce((...given) => {
    grids[0]!.typeInto("late");
    return keep(...given);
  });
  const before = await page.desk.startNew();
  expect(await page.texts()).toEqual([]);
  await page.desk.openKept(before.id);
  expect(await page.texts()).toEqual(["late"]);
});

test("where a browser refuses windows a way to each other the plan opens all the same", async () => {
  const page = await browser.open({ refusesChannel: true });
  opened.push(page);
  await page.desk.startNew();
  expect([page.desk.name, page.desk.keeping]).toEqual(["New plan", "kept"]);
});
