import type { Page } from "playwright-core";
import { beginStory } from "./support/story";
import type { WorkbookPage } from "./support/workbook-page";

let workbook: WorkbookPage;
let page: Page;
beginStory("keyboard", (opened) => {
  workbook = opened;
  ({ page } = opened);
});

/** The part of the page that has the keyboard. */
const part = () =>
  page.evaluate(() => {
    const parts = {
      "formula bar": "[data-u-comp=formula-bar] input", toolbar: "[data-u-comp=ribbon-toolbar]", cells: "[data-u-comp=editor]", pane: "#pane", "top bar": "#bar", tabs: "[data-u-comp=slide-tab-bar]",
    };
    return Object.entries(parts).find(([, selector]) => document.activeElement?.closest(selector))?.[0] ?? "nowhere";
  });

test("F6 leads from the cells to the formula bar, the pane, the top bar, the toolbar and the tabs, and round again; with Shift the other way", async () => {
  await workbook.click(4, 0);
  const round = ["formula bar", "pane", "top bar", "toolbar", "tabs", "cells"];
  for (const next of round) {
    await page.keyboard.press("F6");
    expect(await part()).toBe(next);
  }
  for (const before of [...round].reverse().slice(1)) {
    await page.keyboard.press("Shift+F6");
    expect(await part()).toBe(before);
  }
});

test("Escape leads from the pane and from the top bar back to the selected cell, into which goes what is typed then", async () => {
  for (const [region, text] of [["#bay-tab-plan", "from the pane"], ["#bar button", "from the bar"]] as const) {
    await workbook.showSheet("Settings");
    await workbook.click(6, 0);
    await page.locator(region).first().focus();
    await page.keyboard.press("Escape");
    expect(await part()).toBe("cells");
    await page.keyboard.type(text);
    await page.keyboard.press("Enter");
    await workbook.typed();
    expect((await workbook.sheet("Settings")).values[6]![0]).toBe(text);
  }
});

test("Escape closes the list of recent plans, also where there is none in it, and so does going on with something else", async () => {
  const [button, list] = [page.getByRole("button", { name: "Recent", exact: true }), page.locator("#recent-plans")];
  await button.focus();
  await page.keyboard.press("Enter");
  await list.waitFor();
  await page.keyboard.press("Escape");
  await list.waitFor({ state: "hidden" });
  expect(await button.evaluate((one) => document.activeElement === one)).toBe(true);
  await page.keyboard.press("Enter");
  await list.waitFor();
  await workbook.click(4, 0);
  await list.waitFor({ state: "hidden" });
});

test("keys pressed while nothing has the keyboard go to the cells: what is typed, and what a key does", async () => {
  await workbook.showSheet("Settings");
  await workbook.click(6, 0);
  const lose = () => page.evaluate(() => { (document.activeElement as HTMLElement).blur(); });
  await lose();
  await page.keyboard.press("ArrowDown");
  await page.keyboard.press("ArrowUp");
  await lose();
  await page.keyboard.type("typed");
  await page.keyboard.press("Enter");
  await workbook.typed();
  expect((await workbook.sheet("Settings")).values[6]![0]).toBe("typed");
  await lose();
  await page.keyboard.press("Control+f");
  await page.waitForFunction(() => document.activeElement?.tagName === "INPUT");
  await page.keyboard.press("Escape");
});

test.each(["mouse", "keyboard"])("a finding that is chosen by %s leads to its cell, and what is then typed stands there", async (by) => {
  await workbook.turnTo("Check");
  await workbook.showSheet("Racks");
  await workbook.type(4, 1, "Nowhere");
  await workbook.showSheet("Sites");
  const finding = page.getByRole("button", { name: /"Nowhere".*Racks B5/ }).first();
  if (by === "mouse") await finding.click();
  else {
    await finding.focus();
    await page.keyboard.press("Enter");
  }
  await page.waitForFunction(() => document.activeElement?.closest("[data-u-comp=editor]") !== null);
  await page.keyboard.type("Reading Room");
  await page.keyboard.press("Enter");
  await workbook.typed();
  expect((await workbook.sheet("Racks")).values[4]![1]).toBe("Reading Room");
});

test("Tab goes through the pane and out of it, and not into a cell", async () => {
  await workbook.turnTo("Check");
  await page.locator("#bay-tab-check").focus();
  const parts: string[] = [];
  for (let presses = 0; presses < 300 && parts.at(-1) !== "top bar"; presses += 1) {
    await page.keyboard.press("Tab");
    parts.push(await part());
  }
  expect([...new Set(parts)].filter((one) => one !== "nowhere")).toEqual(["pane", "top bar"]);
});

test("Alt with Page Up or Page Down leads to the sheet before or after", async () => {
  await workbook.showSheet("Sites");
  await workbook.click(4, 0);
  for (const [key, sheet] of [["Alt+PageDown", "Racks"], ["Alt+PageUp", "Sites"]] as const) {
    await page.keyboard.press(key);
    expect((await page.evaluate(() => globalThis.baywright.port.selection())).sheet).toBe(sheet);
  }
});
