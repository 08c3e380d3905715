import "fake-indexeddb/auto";
import { type IWorkbookData, IUniverInstanceService, UniverInstanceType } from "@univerjs/core";
import { IDBFactory } from "fake-indexeddb";
import { bootEngine } from "../../src/headless/open-headless";
import { Desk, type DeskGrid } from "../../src/standalone/desk";
import { openPlanStore, type PlanStore } from "../../src/standalone/plan-store";
import { createBrowserPort } from "../../src/workbook/engine/browser-port";
import { LiveWorkbook } from "../../src/workbook/engine/live-workbook";

/** A page without a screen: a desk, the grid under it, and what the page was told. */
interface Page {
  readonly desk: Desk;
  readonly said: string[];
  type(row: number, text: string): void;
  texts(): Promise<unknown[]>;
  close(): void;
}

/** Windows of one browser hold their plans by locks; those of a closed page are free again. */
let locked: Set<string>;

beforeEach(() => {
  globalThis.indexedDB = new IDBFactory();
  locked = new Set();
});

afterEach(() => {
  jest.restoreAllMocks();
  jest.useRealTimers();
});

async function openPage(store?: PlanStore): Promise<Page> {
  const own: string[] = [];
  const locks = {
    request(name: string, _: unknown, work: (lock: object | null) => unknown) {
      const free = !locked.has(name);
      if (free) own.push(name);
      locked.add(name);
      work(free ? {} : null);
      return Promise.resolve();
    },
  };
  Object.defineProperty(globalThis, "navigator", { value: { locks }, configurable: true });
  const said: string[] = [];
  const desk = await Desk.open(store ?? (await openPlanStore()), { refresh: () => undefined, say: (sentence) => said.push(sentence) });
  const univer = bootEngine(desk.data);
  const live = new LiveWorkbook(univer);
  let port = createBrowserPort(univer, live);
  const grid: DeskGrid = {
    live,
    endTyping: () => Promise.resolve(),
    show(data: Partial<IWorkbookData>) {
      const before = live.workbook.getUnitId();
      univer.createUnit(UniverInstanceType.UNIVER_SHEET, { ...data, id: `${before}+` });
      univer.__getInjector().get(IUniverInstanceService).disposeUnit(before);
      live.wake();
      port = createBrowserPort(univer, live);
    },
  };
  desk.attach(grid);
  await live.settle();
  const front = () => live.workbook.getSheets()[0]!;
  return {
    desk,
    said,
    type: (row, text) => void live.run("sheet.mutation.set-range-values", { subUnitId: front().getSheetId(), cellValue: { [row]: { 0: { v: text } } } }),
    async texts() {
      const { sheets } = await port.read([front().getName()]);
      return sheets[0]!.values.map(([first]) => first);
    },
    close() {
      for (const name of own) locked.delete(name);
      live.dispose();
    },
  };
}

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
  const refused = jest.spyOn(store, "keep").mockRejectedValue(new Error("This browser's storage is full: save the plan as a file."));
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
  jest.spyOn(store, "load").mockImplementation((id) => (id === damaged!.id ? Promise.reject(new Error('"New plan" is no longer whole in this browser.')) : load(id)));
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
