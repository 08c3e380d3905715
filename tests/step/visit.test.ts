import "fake-indexeddb/auto";
import { IDBFactory } from "fake-indexeddb";
import { readTab } from "../../src/planning/commissioning/tab";
import type { Entry } from "../../src/step/job-file";
import { openStepStore, type StepStore } from "../../src/step/step-store";
import { Visit } from "../../src/step/visit";
import { readSnapshot } from "../../src/workbook/xlsx/read-snapshot";
import { jobName } from "../support/commissioning-plan";
import { tabFile } from "../support/step-plan";

let bytes: Uint8Array;
/** The cell Found of the first step. */
let found: Omit<Entry, "value">;

beforeAll(async () => {
  bytes = await tabFile();
  const sheet = readSnapshot(bytes).sheets.find(({ name }) => name === jobName)!;
  const tab = readTab(sheet)!;
  found = { sheet: jobName, row: tab.steps[0]!.row, column: sheet.values[1]!.indexOf("Found") };
});

beforeEach(() => {
  globalThis.indexedDB = new IDBFactory();
  const held = new Set<string>();
  const locks = {
    async request(name: string, _: unknown, work: (lock: object | null) => Promise<void> | undefined) {
      if (held.has(name)) return work(null);
      held.add(name);
      await work({});
      held.delete(name);
      return undefined;
    },
  };
  Object.defineProperty(globalThis, "navigator", { value: { locks }, configurable: true });
});

const answer = (value: string): readonly Entry[] => [{ ...found, value }];
const now = () => 1_800_000_000_000;
const foundIn = async (visit: Visit) => (await visit.file.read(jobName)).tab.steps[0]!.typed.found;

async function begin(store?: StepStore): Promise<{ readonly visit: Visit; readonly store: StepStore }> {
  const kept = store ?? (await openStepStore());
  return { store: kept, visit: await Visit.choose(kept, "plan.xlsx", bytes, now) };
}

describe("a file at hand", () => {
  test("is kept with every answer as soon as it is given: the page may go at any moment", async () => {
    const { visit, store } = await begin();
    await visit.record(jobName, answer("one"));
    await visit.record(jobName, answer("two"));
    visit.close();

    const later = await openStepStore();
    const [title] = await later.titles();
    expect(title).toMatchObject({ name: "plan.xlsx", answers: 2, givenBack: 0 });
    expect(await foundIn(await Visit.open(later, title!.id, now))).toBe("two");
    expect((await store.load(title!.id))?.answers).toEqual([answer("one"), answer("two")]);
  });

  test("that is chosen again goes on with the answers that it has; another file is another one", async () => {
    const { visit, store } = await begin();
    await visit.record(jobName, answer("one"));
    visit.close();
    const again = await Visit.choose(store, "renamed.xlsx", bytes, now);
    expect([await foundIn(again), again.name, (await store.titles()).length]).toEqual(["one", "plan.xlsx", 1]);
    const { bytes: filled } = await again.giveBack();
    const next = await Visit.choose(store, "filled.xlsx", filled, now);
    expect([await foundIn(next), next.notGivenBack, (await store.titles()).length]).toEqual(["one", 0, 2]);
  });

  test("is told how many answers stand on this device alone, until it is given back", async () => {
    const { visit, store } = await begin();
    await visit.record(jobName, answer("one"));
    expect(visit.notGivenBack).toBe(1);
    const { name, bytes: given } = await visit.giveBack();
    expect([name, visit.notGivenBack]).toEqual(["plan filled.xlsx", 0]);
    expect(readTab(readSnapshot(given).sheets.find((sheet) => sheet.name === jobName)!)!.steps[0]!.typed.found).toBe("one");
    await visit.record(jobName, answer("two"));
    expect(visit.notGivenBack).toBe(1);
    visit.close();
    expect((await store.titles())[0]).toMatchObject({ answers: 2, givenBack: 1 });
  });

  test("is refused by name while another window has it open, and free once that has let go", async () => {
    const { visit, store } = await begin();
    await expect(Visit.choose(store, "plan.xlsx", bytes, now)).rejects.toThrow("Another window of this browser has this file open. Go on there, or close it");
    visit.close();
    await new Promise((resolve) => setTimeout(resolve, 0));
    (await Visit.choose(store, "plan.xlsx", bytes, now)).close();
  });

  test("that the browser has cleared is said, and what to choose instead", async () => {
    const { visit, store } = await begin();
    visit.close();
    const [title] = await store.titles();
    await store.forget(title!.id);
    await expect(Visit.open(store, title!.id, now)).rejects.toThrow("This browser keeps that file no longer. Choose it again");
  });

  test("that is no workbook, or has no tab, is not kept", async () => {
    const store = await openStepStore();
    await expect(Visit.choose(store, "notes.xlsx", new TextEncoder().encode("notes"), now)).rejects.toThrow("This file is no .xlsx workbook");
    expect(await store.titles()).toEqual([]);
  });
});

describe("a refusal of the storage", () => {
  test("is said at once, the answer stays in the file at hand, and the next answer keeps both", async () => {
    const store = await openStepStore();
    let refuses = false;
    const full: StepStore = { ...store, keepAnswers: (...given) => (refuses ? Promise.reject(new Error("The storage of this browser is full.")) : store.keepAnswers(...given)) };
    const { visit } = await begin(full);
    refuses = true;
    await visit.record(jobName, answer("one"));
    expect(visit.refusal).toBe("The storage of this browser is full.");
    expect(await foundIn(visit)).toBe("one");
    const [title] = await store.titles();
    expect((await store.load(title!.id))?.answers).toEqual([]);
    refuses = false;
    await visit.record(jobName, answer("two"));
    expect(visit.refusal).toBeNull();
    expect((await store.load(title!.id))?.answers).toEqual([answer("one"), answer("two")]);
  });

  test("that comes from the browser is put in a sentence, and leaves what was kept before", async () => {
    const { visit, store } = await begin();
    await visit.record(jobName, answer("one"));
    const [title] = await store.titles();
    const putting = jest.spyOn(IDBObjectStore.prototype, "put").mockImplementation(() => {
      throw new DOMException("full", "QuotaExceededError");
    });
    await visit.record(jobName, answer("two"));
    putting.mockRestore();
    expect(visit.refusal).toMatch(/^The storage of this browser is full: this answer is not kept. Give the file back now/);
    expect((await store.load(title!.id))?.answers).toEqual([answer("one")]);
  });

  test("to open at all leaves the page whole, and says what becomes of it", async () => {
    const opening = jest.spyOn(IDBFactory.prototype, "open").mockImplementation(() => {
      throw new DOMException("no", "SecurityError");
    });
    const store = await openStepStore();
    opening.mockRestore();
    expect(store.passing).toMatch(/^This browser gives the page no storage: what is typed is gone when the page is closed/);
    const { visit } = await begin(store);
    await visit.record(jobName, answer("one"));
    expect([await foundIn(visit), (await store.titles())[0]?.answers]).toEqual(["one", 1]);
  });
});

test("names are kept for the device, not for a file", async () => {
  const store = await openStepStore();
  expect(await store.names()).toEqual({ by: "", witness: "" });
  await store.keepNames({ by: "AB", witness: "CD" });
  expect(await (await openStepStore()).names()).toEqual({ by: "AB", witness: "CD" });
});
