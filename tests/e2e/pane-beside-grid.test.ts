import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Page } from "playwright-core";
import { beginStory } from "./support/story";
import type { WorkbookPage } from "./support/workbook-page";

let workbook: WorkbookPage;
let page: Page;
beginStory("pane-beside-grid", (opened) => {
  workbook = opened;
  ({ page } = opened);
});

test("an example is inserted where a person clicked, and answers", async () => {
  await workbook.showSheet("Settings");
  await workbook.click(2, 1);
  await workbook.turnTo("Functions");
  await page.getByRole("searchbox", { name: "Find a function" }).fill("usable");
  await page.locator("summary", { hasText: "USABLE" }).first().click();
  await workbook.button(/^Insert =BAY\.USABLE\("RAID 6",12,4\)/).click();
  await workbook.said("The example stands in Settings!B3");
  await workbook.settle();
  expect((await workbook.sheet("Settings")).values[2]![1]).toBe(40);
});

test("a finding comes when somebody types a wrong name into a cell, leads back to it, and goes when it is mended", async () => {
  await workbook.turnTo("Check");
  const counts = page.locator(".bay-weights");
  await counts.getByText("Stop 0").waitFor();
  await workbook.showSheet("Racks");
  await workbook.type(4, 1, "Nowhere");
  await counts.getByText(/Stop [1-9]/).waitFor();
  await workbook.showSheet("Sites");
  await page.getByRole("button", { name: /"Nowhere".*Racks B5/ }).first().click();
  await workbook.until(async (sheet) => (await globalThis.baywright.port.selection()).sheet === sheet, "Racks");
  await workbook.type(4, 1, "Reading Room");
  await counts.getByText("Stop 0").waitFor();
});

test("our formulas are turned into values and back, and the sheet that kept them goes from under the person without a fault", async () => {
  const choose = async (item: string) => {
    await workbook.button("Menu").click();
    await page.getByRole("menuitem", { name: item }).click();
  };
  const { formulas } = await workbook.sheet("Quote");
  await choose("Turn our formulas into values …");
  await workbook.button("Turn into values").click();
  await workbook.said("turned into values.");
  expect((await workbook.sheet("Quote")).formulas).not.toEqual(formulas);
  await workbook.showSheet("BAY register");
  await choose("Turn values back into our formulas");
  await workbook.said("turned back.");
  await workbook.settle();
  expect((await workbook.sheet("Quote")).formulas).toEqual(formulas);
  expect(await workbook.sheetNames()).not.toContain("BAY register");
  expect(workbook.faults).toEqual([]);
});

test("addresses are assigned into the grid after a preview", async () => {
  await workbook.turnTo("Plan");
  const { values } = await workbook.sheet("Ports");
  const column = values[3]!.indexOf("Address");
  await workbook.showSheet("Ports");
  await workbook.click(4, column);
  await page.keyboard.press("Delete");
  await workbook.settle();
  await workbook.button(/^Assign addresses/).click();
  await workbook.button("Write 1 cell").click();
  await workbook.said("1 cell written");
  await workbook.settle();
  expect((await workbook.sheet("Ports")).values[4]![column]).toBe(values[4]![column]);
});

test("a saved plan is compared with, row by row, and leads to the cell that changed", async () => {
  const folder = await mkdtemp(join(tmpdir(), "compare-"));
  const saved = join(folder, "earlier.xlsx");
  await workbook.save(saved);
  await workbook.turnTo("Plan");
  const compare = workbook.button("Compare with a saved plan …");
  await workbook.chooseFile(compare, saved);
  await workbook.said("This plan says what earlier.xlsx says.");
  const { values } = await workbook.sheet("Racks");
  const units = values[3]!.indexOf("Units");
  await workbook.showSheet("Racks");
  await workbook.type(4, units, "30");
  await workbook.chooseFile(compare, saved);
  const panel = page.locator(".bay-panel", { hasText: "What is different from earlier.xlsx" });
  await panel.getByText("Units: 42 → 30").waitFor();
  await workbook.showSheet("Sites");
  await panel.getByRole("button", { name: "RR-R1" }).click();
  await workbook.until(async (sheet) => (await globalThis.baywright.port.selection()).sheet === sheet, "Racks");
  await workbook.button("Close the comparison").click();
  await rm(folder, { recursive: true });
});
