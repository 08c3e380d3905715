import { readFileSync } from "node:fs";
import type { Page } from "playwright-core";
import { readFile } from "../../src/workbook/xlsx/read-workbook";
import { complaintsOn } from "./support/complaints";
import { beginStory } from "./support/story";
import type { WorkbookPage } from "./support/workbook-page";

let workbook: WorkbookPage;
let page: Page;
const { at } = beginStory("small-screens", (opened) => {
  workbook = opened;
  ({ page } = opened);
});

const pane = () => page.locator("#pane");
const fold = () => page.getByRole("button", { name: "Pane", exact: true });
/** Columns that stay while the others move. */
const frozen = () => page.evaluate(() => globalThis.baywright.live.workbook.getActiveSheet().getFreeze().xSplit);

test("the pane folds away and comes back, and says which it is", async () => {
  await page.setViewportSize({ width: 1366, height: 768 });
  const width = async () => (await page.locator("#grid").boundingBox())!.width;
  const beside = await width();
  await fold().click();
  expect(await pane().isVisible()).toBe(false);
  expect(await fold().getAttribute("aria-expanded")).toBe("false");
  expect(await width()).toBeGreaterThan(beside + 300);
  await fold().click();
  expect(await pane().isVisible()).toBe(true);
});

test.each([["a phone", 390, 844], ["a window at 200 %", 720, 450]])("on %s the pane is folded at first, and a finding that is chosen in it shows its cell", async (_, width, height) => {
  await page.setViewportSize({ width, height });
  await pane().waitFor({ state: "hidden" });
  const cells = (await page.locator("#grid").boundingBox())!;
  expect(cells.height).toBeGreaterThan(height / 2);
  await fold().click();
  await workbook.turnTo("Check");
  await page.locator("#bay-check .bay-plain").first().click();
  await pane().waitFor({ state: "hidden" });
  expect((await page.evaluate(() => globalThis.baywright.port.selection())).sheet).toBe("Pools");
});

test.each([["light", 320, 640], ["dark", 320, 640], ["light", 1366, 768], ["dark", 1366, 768]] as const)(
  "the accessibility checker finds nothing in the bar or in any view of the pane in the %s theme at %i by %i, and nothing reaches beyond the screen",
  async (colorScheme, width, height) => {
    await page.emulateMedia({ colorScheme });
    await page.setViewportSize({ width, height });
    if (!(await pane().isVisible())) await fold().click();
    for (const view of ["Plan", "Check", "Commission", "Functions"]) {
      await workbook.turnTo(view);
      const violations = await complaintsOn(page, { parts: ["#bar", "#pane"] });
      const reach = "#bar *, #pane *";
      const beyond = await page.evaluate((parts) => [...document.querySelectorAll(parts)].filter((one) => one.checkVisibility() && one.getBoundingClientRect().right > innerWidth + 1).length, reach);
      expect({ view, beyond, violations }).toEqual({ view, beyond: 0, violations: [] });
    }
    await page.emulateMedia({ colorScheme: "light" });
  },
);

test("the page for a phone is offered on one, and only there", async () => {
  const link = page.getByRole("link", { name: "Fill a tab step by step" });
  await page.setViewportSize({ width: 390, height: 844 });
  expect(await link.isVisible()).toBe(true);
  expect((await page.request.get(new URL((await link.getAttribute("href"))!, page.url()).href)).status()).toBe(200);
  await page.setViewportSize({ width: 1366, height: 768 });
  expect(await link.isVisible()).toBe(false);
});

test("frozen columns give way where they would leave no room for the others, and stay in the file", async () => {
  await page.setViewportSize({ width: 1366, height: 768 });
  await page.evaluate(async () => {
    const plan = { name: "Wide", rows: [[{ value: "one" }, { value: "two" }, { value: "three" }]], styles: {}, columnWidths: [20, 20, 40], freeze: { rows: 1, columns: 2 } };
    await globalThis.baywright.port.apply([{ kind: "add-sheet", plan }]);
  });
  await workbook.showSheet("Wide");
  expect(await frozen()).toBe(2);
  await page.setViewportSize({ width: 390, height: 844 });
  await workbook.until(() => Promise.resolve(globalThis.baywright.live.workbook.getActiveSheet().getFreeze().xSplit === 0), null);
  await workbook.save(at("narrow.xlsx"));
  const kept = readFile(new Uint8Array(readFileSync(at("narrow.xlsx")))).document.sheets.find(({ name }) => name === "Wide")!.frozen;
  expect(kept).toEqual({ rows: 1, columns: 2 });
  await page.setViewportSize({ width: 1366, height: 768 });
  await workbook.until(() => Promise.resolve(globalThis.baywright.live.workbook.getActiveSheet().getFreeze().xSplit === 2), null);
});
