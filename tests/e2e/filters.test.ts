import { readFileSync, writeFileSync } from "node:fs";
import { Workbook } from "exceljs";
import type { Page } from "playwright-core";
import { readFile } from "../../src/workbook/xlsx/read-workbook";
import { complaintsOn } from "./support/complaints";
import { beginStory } from "./support/story";
import type { WorkbookPage } from "./support/workbook-page";

let workbook: WorkbookPage;
let page: Page;
const { at } = beginStory("filters", (opened) => {
  workbook = opened;
  ({ page } = opened);
});

const rows = [["Part", "Kind", "Count"], ["rail", "metal", 4], ["drive", "disk", 12], ["sled", "metal", 7], ["cable", "wire", 30], ["fan", "", 2]];

/** Opens a file with one plain list, which has no filter yet, and another of what is hard to show. */
beforeEach(async () => {
  const file = new Workbook();
  file.addWorksheet("Stock").addRows(rows);
  const hard = file.addWorksheet("Hard");
  hard.addRows([["Seen", "Share", "Words"], ...[20, 21, 22].map((day, at) => [new Date(Date.UTC(2026, 10, day)), at / 10, ["x".repeat(32_000), "<b>&\"'", "=1"][at]])]);
  hard.getColumn(1).numFmt = "yyyy-mm-dd";
  hard.getColumn(2).numFmt = "0%";
  hard.autoFilter = "A1:C4";
  writeFileSync(at("stock.xlsx"), new Uint8Array(await file.xlsx.writeBuffer()));
  await workbook.openFile(at("stock.xlsx"));
  await workbook.button("Close this message").click();
  await workbook.click(1, 0);
  // A moment after a click the engine gives the keyboard to the cells.
  await page.waitForTimeout(300);
});

const card = () => page.getByRole("dialog", { name: /^Filter of / });
const note = () => page.locator(".filter-note");
const isOnCells = () => page.waitForFunction(() => document.activeElement?.closest("[data-u-comp=editor]") !== null);
/** The texts of the first column that are in sight. */
const shown = () =>
  page.evaluate(() => {
    const sheet = globalThis.baywright.live.workbook.getActiveSheet();
    return Array.from({ length: 12 }, (_, row) => row).flatMap((row) => (sheet.getRowVisible(row) ? [String(sheet.getCellRaw(row, 0)?.v ?? "")] : [])).filter((text) => text !== "");
  });
const values = async (column: number) => (await workbook.sheet("Stock")).values.slice(0, 6).map((line) => line[column]);

/** Puts arrows over the list, and shows metal alone, by the keyboard. */
async function showMetal(): Promise<void> {
  await page.keyboard.press("ControlOrMeta+Shift+l");
  await workbook.click(0, 1);
  await page.waitForTimeout(300);
  await page.keyboard.press("Alt+ArrowDown");
  await card().waitFor();
  await page.keyboard.type("meta");
  await page.keyboard.press("Enter");
  await note().filter({ hasText: "Filtered: 2 of 5 rows are shown, where Kind is metal." }).waitFor();
  await isOnCells();
}

test("by the keyboard a list gets arrows, is filtered by a search, by a comparison, shown whole and taken back; Escape leaves the card", async () => {
  await showMetal();
  expect(await shown()).toEqual(["Part", "rail", "sled"]);
  await page.keyboard.press("ArrowRight");
  await page.keyboard.press("Alt+ArrowDown");
  await card().getByText("Smallest first").waitFor();
  await page.getByLabel("Show rows whose value").focus();
  await page.keyboard.type("is at least");
  await page.keyboard.press("Tab");
  await page.keyboard.press("Enter");
  await card().getByText("Write what to compare with").waitFor();
  await page.keyboard.type("5");
  await page.keyboard.press("Enter");
  await isOnCells();
  expect(await shown()).toEqual(["Part", "sled"]);
  await page.keyboard.press("Alt+ArrowDown");
  await card().waitFor();
  expect([await page.getByLabel("Show rows whose value").inputValue(), await page.getByLabel("Value", { exact: true }).inputValue()]).toEqual(["greaterThanOrEqual", "5"]);
  await page.keyboard.press("Escape");
  await isOnCells();
  await page.keyboard.press("ControlOrMeta+z");
  expect(await shown()).toEqual(["Part", "rail", "sled"]);
  await page.keyboard.press("ControlOrMeta+Shift+l");
  await note().waitFor({ state: "hidden" });
  expect(await shown()).toHaveLength(6);
  await page.keyboard.press("ControlOrMeta+z");
  expect(await shown()).toEqual(["Part", "rail", "sled"]);
});

test("by the mouse values are ticked, what was typed since is filtered once it is applied again, and a column is sorted", async () => {
  await page.keyboard.press("ControlOrMeta+Shift+l");
  const openKind = async () => {
    const { x, y } = await page.evaluate(() => {
      const { right, bottom } = globalThis.baywright.api.getActiveWorkbook()!.getActiveSheet().getRange(0, 1).getCellRect();
      const canvas = document.querySelector("#grid canvas[id^=univer-sheet-main-canvas]")!.getBoundingClientRect();
      return { x: canvas.left + right - 9, y: canvas.top + bottom - 9 };
    });
    await page.mouse.click(x, y);
    await card().waitFor();
  };
  await openKind();
  await page.getByLabel("All", { exact: true }).uncheck();
  await page.getByRole("button", { name: "Apply" }).click();
  await card().getByText("No row would be left.").waitFor();
  await page.getByLabel("wire", { exact: true }).check();
  await page.getByLabel("(empty)", { exact: true }).check();
  await page.getByRole("button", { name: "Apply" }).click();
  await note().filter({ hasText: "2 of 5 rows are shown, where Kind is one of 2 values." }).waitFor();
  expect(await shown()).toEqual(["Part", "cable", "fan"]);
  await workbook.type(4, 1, "metal");
  expect(await shown()).toEqual(["Part", "cable", "fan"]);
  await workbook.openMenu(4, 1);
  await page.getByText("Apply the filter again").click();
  await page.waitForFunction(() => !globalThis.baywright.live.workbook.getActiveSheet().getRowVisible(4));
  expect(await shown()).toEqual(["Part", "fan"]);
  await page.getByRole("button", { name: "Show all rows" }).click();
  await note().waitFor({ state: "hidden" });
  await openKind();
  await page.getByRole("button", { name: "Sort Z to A" }).click();
  await workbook.until(async () => (await globalThis.baywright.port.read(["Stock"])).sheets[0]!.values[5]![0] === "fan", null);
  expect(await values(0)).toEqual(["Part", "rail", "sled", "cable", "drive", "fan"]);
});

test("what is pasted, copied and emptied over rows out of sight leaves these alone", async () => {
  await showMetal();
  await workbook.paste("Stock", 1, 2, [["40"], ["70"]]);
  expect(await values(2)).toEqual(["Count", 40, 12, 70, 30, 2]);
  await page.evaluate(() => globalThis.baywright.port.apply([{ kind: "select", sheet: "Stock", area: { row: 1, column: 0, rows: 4, columns: 1 } }]));
  await page.keyboard.press("ControlOrMeta+c");
  await page.waitForFunction(async () => (await navigator.clipboard.readText()).includes("rail"));
  expect((await page.evaluate(() => navigator.clipboard.readText())).split(/\r?\n/).filter((text) => text !== "")).toEqual(["rail", "sled"]);
  await page.keyboard.press("Escape");
  await page.keyboard.press("Delete");
  await workbook.typed();
  expect(await values(0)).toEqual(["Part", null, "drive", null, "cable", "fan"]);
});

test("cells are moved neither out of rows out of sight nor over them, and a sentence says so", async () => {
  await showMetal();
  const before = (await workbook.sheet("Stock")).values;
  const select = (row: number, column: number, down: number) =>
    page.evaluate((area) => globalThis.baywright.port.apply([{ kind: "select", sheet: "Stock", area }]), { row, column, rows: down, columns: 1 });
  for (const [row, column, down, toRow, toColumn] of [[1, 0, 3, 8, 4], [7, 4, 3, 1, 0]] as const) {
    await select(row, column, down);
    await page.keyboard.press("ControlOrMeta+x");
    await page.waitForTimeout(500);
    await select(toRow, toColumn, 1);
    await page.keyboard.press("ControlOrMeta+v");
    await page.locator(".notice", { hasText: "Cells cannot be moved where a filter keeps rows out of sight." }).waitFor();
    await workbook.button("Close this message").click();
    await page.evaluate(() => { globalThis.baywright.focus(); });
    await page.keyboard.press("Escape");
    expect((await workbook.sheet("Stock")).values).toEqual(before);
  }
  const drag = (fromRow: number, endRow: number, toRow: number) =>
    page.evaluate(([first, last, to]) => {
      const { live, api } = globalThis.baywright;
      const range = (startRow: number, end: number, column: number) => ({ startRow, endRow: end, startColumn: column, endColumn: column });
      return api.executeCommand("sheet.command.move-range", {
        unitId: live.workbook.getUnitId(), subUnitId: live.workbook.getActiveSheet().getSheetId(), fromRange: range(first!, last!, 2), toRange: range(to!, to! + last! - first!, 5),
      });
    }, [fromRow, endRow, toRow]);
  await drag(1, 3, 8);
  await page.locator(".notice", { hasText: "Cells cannot be moved" }).waitFor();
  expect((await workbook.sheet("Stock")).values).toEqual(before);
  await drag(0, 1, 8);
  expect((await workbook.sheet("Stock")).values[9]![5]).toBe(4);
});

test("whole columns are filtered and sorted as far as something stands in them", async () => {
  await page.evaluate(() => globalThis.baywright.api.getActiveWorkbook()!.getActiveSheet().getRange("A:C").activate());
  await page.keyboard.press("ControlOrMeta+Shift+l");
  await page.waitForFunction(() => globalThis.baywright.live.filters.of(globalThis.baywright.live.workbook.getActiveSheet()).length === 1);
  const [filter] = await page.evaluate(() => globalThis.baywright.live.filters.of(globalThis.baywright.live.workbook.getActiveSheet()));
  expect(filter!.area).toEqual({ row: 0, column: 0, rows: 6, columns: 3 });
  // As other programs write it.
  const file = new Workbook();
  const sheet = file.addWorksheet("Stock");
  sheet.addRows(rows);
  sheet.autoFilter = "A1:C1048576";
  writeFileSync(at("columns.xlsx"), new Uint8Array(await file.xlsx.writeBuffer()));
  await workbook.openFile(at("columns.xlsx"));
  await workbook.click(0, 2);
  await page.waitForTimeout(300);
  await page.keyboard.press("Alt+ArrowDown");
  await page.getByRole("button", { name: "Largest first" }).click({ timeout: 5_000 });
  await workbook.until(async () => (await globalThis.baywright.port.read(["Stock"])).sheets[0]!.values[1]![0] === "cable", null);
  expect(await values(0)).toEqual(["Part", "cable", "drive", "sled", "rail", "fan"]);
});

test("the filter stands in the file that is saved, with the rows out of sight, and after the page is opened again", async () => {
  await showMetal();
  await workbook.save(at("filtered.xlsx"));
  const bytes = readFileSync(at("filtered.xlsx"));
  const [sheet] = readFile(new Uint8Array(bytes)).document.sheets;
  expect(sheet!.filters).toEqual([{ area: { row: 0, column: 0, rows: 6, columns: 3 }, columns: [{ column: 1, hidesArrow: undefined, condition: { kind: "list", texts: ["metal"], blank: false } }] }]);
  const other = await new Workbook().xlsx.load(bytes as never);
  const read = other.getWorksheet("Stock")!;
  expect([read.autoFilter, [1, 2, 3, 4, 5, 6].filter((row) => read.getRow(row).hidden)]).toEqual(["A1:C6", [3, 5, 6]]);
  await page.getByText("Kept in this browser").waitFor();
  await page.reload();
  await workbook.ready();
  await note().filter({ hasText: "2 of 5 rows are shown" }).waitFor();
  expect(await shown()).toEqual(["Part", "rail", "sled"]);
  await page.evaluate(() => globalThis.baywright.port.apply([{ kind: "write", sheet: "Stock", row: 2, column: 0, cells: [[{ value: "disk drive" }]] }]));
  expect([await values(0), await shown()]).toEqual([["Part", "rail", "disk drive", "sled", "cable", "fan"], ["Part", "rail", "sled"]]);
});

test("whoever is led to a row out of sight sees it, is told that it is one too many, and has it put away again", async () => {
  await showMetal();
  const goTo = async (text: string) => {
    const box = page.locator("[data-u-comp=defined-name] input");
    await box.fill(text);
    await box.press("Enter");
  };
  await goTo("Stock!A3");
  await note().filter({ hasText: "Filtered: 3 of 5 rows are shown, where Kind is metal. For 1 row that no longer holds: Ctrl+Alt+L applies the filter again." }).waitFor();
  expect(await shown()).toEqual(["Part", "rail", "drive", "sled"]);
  await goTo("A5");
  await note().filter({ hasText: "4 of 5 rows are shown, where Kind is metal. For 2 rows that" }).waitFor();
  await isOnCells();
  await page.keyboard.press("ControlOrMeta+Alt+l");
  await note().filter({ hasText: "2 of 5 rows are shown, where Kind is metal.Show" }).waitFor();
  expect(await shown()).toEqual(["Part", "rail", "sled"]);
});

test("days and shares are compared as they are seen, and a cell of many pages does not fill the card", async () => {
  await workbook.showSheet("Hard");
  const compare = async (column: number, choice: string, value: string) => {
    // Two clicks on one header, one soon after the other, would open it for typing.
    await page.evaluate((at) => globalThis.baywright.port.apply([{ kind: "select", sheet: "Hard", area: { row: 0, column: at, rows: 1, columns: 1 } }]), column);
    await page.evaluate(() => { globalThis.baywright.focus(); });
    await page.keyboard.press("Alt+ArrowDown");
    await page.getByLabel("Show rows whose value").selectOption(choice);
    await page.getByLabel("Value", { exact: true }).fill(value);
    await page.keyboard.press("Enter");
  };
  await compare(0, "is at least", "21.11.2026");
  await card().getByText("The values here are numbers. Write one, such as 42, 20% or 2026-05-31.").waitFor();
  await page.getByLabel("Value", { exact: true }).fill("2026-11-21");
  await page.keyboard.press("Enter");
  await note().filter({ hasText: "2 of 3 rows are shown, where Seen is at least 2026-11-21." }).waitFor();
  await compare(1, "contains", "0%");
  await note().filter({ hasText: "where Seen is at least 2026-11-21 and Share contains 0%." }).waitFor();
  await compare(1, "is less than", "20%");
  await note().filter({ hasText: "1 of 3 rows is shown, where Seen is at least 2026-11-21 and Share is less than 20%." }).waitFor();
  await page.getByRole("button", { name: "Show all rows" }).click();
  await workbook.click(0, 2);
  await page.waitForTimeout(300);
  await page.keyboard.press("Alt+ArrowDown");
  const listed = await card().locator(".values label").allTextContents();
  expect(listed).toEqual(["<b>&\"'", "=1", `${"x".repeat(199)}…`]);
  // Another sheet has other headers.
  await workbook.showSheet("Stock");
  await card().waitFor({ state: "hidden" });
});

test.each(["light", "dark", "forced"])("the card, its sentences and the line below the cells are without a complaint of the accessibility checker, %s", async (theme) => {
  await page.emulateMedia(theme === "forced" ? { forcedColors: "active" } : { colorScheme: theme as "light" | "dark", forcedColors: "none" });
  try {
    await showMetal();
    expect(await complaintsOn(page, { parts: [".filter-note"] })).toEqual([]);
    await page.keyboard.press("Alt+ArrowDown");
    await card().waitFor();
    expect(await complaintsOn(page, { parts: [".filter-card"] })).toEqual([]);
    await page.getByLabel("Show rows whose value").selectOption("is between");
    await page.getByRole("button", { name: "Apply" }).click();
    await card().getByText("Write what to compare with").waitFor();
    expect(await complaintsOn(page, { parts: [".filter-card"] })).toEqual([]);
    await page.keyboard.press("Escape");
  } finally {
    await page.emulateMedia({ colorScheme: null, forcedColors: null });
  }
});

test("where there is no list, and on a protected sheet, a sentence says so and nothing is filtered", async () => {
  await workbook.click(11, 5);
  await page.waitForTimeout(300);
  await page.keyboard.press("ControlOrMeta+Shift+l");
  await page.locator(".notice", { hasText: "There is no list to filter here." }).waitFor();
  const file = new Workbook();
  const sheet = file.addWorksheet("Closed");
  sheet.addRows(rows);
  sheet.autoFilter = "A1:C6";
  await sheet.protect("", {});
  writeFileSync(at("closed.xlsx"), new Uint8Array(await file.xlsx.writeBuffer()));
  await workbook.openFile(at("closed.xlsx"));
  await workbook.click(0, 1);
  await page.waitForTimeout(300);
  for (const key of ["Alt+ArrowDown", "ControlOrMeta+Shift+l"]) {
    await page.keyboard.press(key);
    await page.locator(".notice", { hasText: 'Sheet "Closed" is protected. Which of its rows are shown cannot be changed.' }).waitFor();
  }
  expect([await card().count(), (await shown()).length]).toEqual([0, 6]);
});
