import { readFileSync } from "node:fs";
import { join } from "node:path";
import type { Page } from "playwright-core";
import { beginStory } from "./support/story";
import type { WorkbookPage } from "./support/workbook-page";

declare global {
  /** Keys that went down on the page since this was emptied, and whether the page took them. */
  var pressed: KeyboardEvent[];
}

let workbook: WorkbookPage;
let page: Page;
beginStory("keys", (opened) => {
  workbook = opened;
  ({ page } = opened);
});

const arrows = ["ArrowUp", "ArrowDown", "ArrowLeft", "ArrowRight"];

/** The keys that the guide lists under a heading, as a keyboard has them. */
function keysUnder(heading: string): string[] {
  const guide = readFileSync(join(__dirname, "../../docs/keys.md"), "utf8");
  const [, section = ""] = guide.split(`## ${heading}\n`);
  const cells = [...(section.split("\n## ")[0] ?? "").matchAll(/^\|.*\| ([^|]+) \|$/gm)].map(([, keys]) => keys!).slice(1);
  return cells.flatMap((keys) => keys.replaceAll("Ctrl", "Control").split(", ")).flatMap((key) => (key.endsWith("Arrows") ? arrows.map((arrow) => key.replace("Arrows", arrow)) : [key]));
}

/** Presses a key and tells whether the page took it, which else the browser would have. */
async function isTaken(key: string): Promise<boolean> {
  await page.evaluate(() => { globalThis.pressed = []; });
  await page.keyboard.press(key);
  return page.evaluate(() => globalThis.pressed.at(-1)!.defaultPrevented);
}

beforeAll(async () => {
  // Before the page listens, which may keep a key from whoever comes after.
  await page.addInitScript(() => {
    globalThis.pressed = [];
    window.addEventListener("keydown", (event) => globalThis.pressed.push(event), { capture: true });
  });
  await page.reload();
  await workbook.ready();
});

beforeEach(async () => {
  const earlier = workbook.button("Close this message");
  if (await earlier.isVisible()) await earlier.click();
  await page.getByRole("button", { name: "New", exact: true }).click();
  await page.getByText("A new plan is on the desk.").waitFor();
  await workbook.type(2, 2, "one");
  await select();
});

/** Selects the filled cell, with the keyboard in the cells. */
async function select(): Promise<void> {
  await page.evaluate(async () => {
    await globalThis.baywright.port.apply([{ kind: "select", sheet: "Sheet1", area: { row: 2, column: 2, rows: 1, columns: 1 } }]);
    globalThis.baywright.focus();
  });
  await page.waitForFunction(() => document.activeElement?.closest("[data-u-comp=editor]") !== null);
}

/** Leaves menus, dialogs, other parts of the page and what is typed. */
async function leave(): Promise<void> {
  for (const key of ["Escape", "Escape", "Escape"]) await page.keyboard.press(key);
  await workbook.typed();
}

test.each(["Moving and selecting", "Changing cells", "The page around the cells"])("of %j the page takes every key that the guide lists", async (heading) => {
  const left: string[] = [];
  for (const key of keysUnder(heading)) {
    // What is copied and pasted comes by an event of the browser's own.
    if (/^Control\+[CXV]$/.test(key)) continue;
    if (!(await isTaken(key))) left.push(key);
    // A menu takes the keyboard a moment after its key.
    if (key === "Shift+F10") await page.waitForFunction(() => document.activeElement instanceof HTMLButtonElement);
    await leave();
    await select();
  }
  expect(left).toEqual([]);
});

test("while a text is typed the page takes every key that the guide lists", async () => {
  const left: string[] = [];
  for (const key of keysUnder("In a text that is being typed")) {
    await page.keyboard.type("two words");
    if (!(await isTaken(key))) left.push(key);
    await leave();
    await select();
  }
  expect(left).toEqual([]);
});

test("Home and End lead to the ends of the line that is typed, with Control to those of the text, and with Shift select as far", async () => {
  await page.keyboard.type("first");
  await page.keyboard.press("Alt+Enter");
  await page.keyboard.type("second");
  for (const [key, text] of [["Home", "("], ["End", ")"], ["Control+Home", "<"], ["End", "|"], ["Control+End", ">"]] as const) {
    await page.keyboard.press(key);
    await page.keyboard.type(text);
  }
  await page.keyboard.press("Enter");
  await workbook.typed();
  await select();
  await page.keyboard.press("F2");
  await page.keyboard.press("Shift+Home");
  await page.keyboard.type("last");
  await page.keyboard.press("Enter");
  await workbook.typed();
  expect((await workbook.sheet("Sheet1")).values[2]![2]).toBe("<first|\nlast");
});

test("saving twice at once saves twice, and what is typed after a click on the bar goes into the cells", async () => {
  const files: string[] = [];
  page.on("download", (download) => files.push(download.suggestedFilename()));
  await page.keyboard.press("Control+s");
  await page.keyboard.press("Control+s");
  while (files.length < 2) await page.waitForEvent("download");
  const waiting = page.waitForEvent("download");
  await workbook.button("Save .xlsx").click();
  await waiting;
  await page.keyboard.type("goes on");
  await page.keyboard.press("Enter");
  await workbook.typed();
  expect([(await workbook.sheet("Sheet1")).values[2]![2], workbook.faults]).toEqual(["goes on", []]);
});

test("a tab whose name is left at once stays among the others, and menus offer no protection, which no file would keep", async () => {
  const tab = page.getByRole("tab", { name: "Sheet1" });
  await tab.dblclick();
  await page.waitForFunction(() => document.getSelection()?.toString() === "Sheet1");
  await page.keyboard.press("Enter");
  // So long the engine takes to see a drag in a button that is held.
  await page.evaluate(() => new Promise((later) => { setTimeout(later, 600); }));
  expect(await page.locator("[data-u-comp=slide-tab-bar] [role=tab]").allTextContents()).toEqual(["Sheet1"]);
  await tab.click({ button: "right" });
  await page.getByText("Print set-up …").waitFor();
  expect(await page.getByText(/protect/i).count()).toBe(0);
});
