import { readFileSync, writeFileSync } from "node:fs";
import { Workbook } from "exceljs";
import type { Page } from "playwright-core";
import type { CellPlace } from "../../src/sheet";
import { readFile } from "../../src/workbook/xlsx/read-workbook";
import { rawWorkbook } from "../support/raw-workbook";
import { beginStory } from "./support/story";
import type { WorkbookPage } from "./support/workbook-page";

let workbook: WorkbookPage;
let page: Page;
const { at } = beginStory("notes", (opened) => {
  workbook = opened;
  ({ page } = opened);
});

beforeEach(async () => {
  await page.getByRole("button", { name: "New", exact: true }).click();
  await page.getByText("A new plan is on the desk.").waitFor();
  await workbook.settle();
  await workbook.button("Close this message").click();
});

const card = () => page.locator(".note-card");
const field = () => page.getByRole("textbox", { name: /^Note on / });
const isOnCells = () => page.waitForFunction(() => document.activeElement?.closest("[data-u-comp=editor]") !== null);

/** Selects a cell, opens its note by the keyboard, writes a text over what is there and leaves it. */
async function write(row: number, column: number, text: string): Promise<void> {
  await workbook.click(row, column);
  // A moment after a click the engine gives the keyboard to the cells.
  await page.waitForTimeout(300);
  await page.keyboard.press("Shift+F2");
  await field().waitFor();
  await page.keyboard.press("ControlOrMeta+a");
  await (text === "" ? page.keyboard.press("Delete") : page.keyboard.insertText(text));
  await page.keyboard.press("Escape");
  await isOnCells();
}

/** The notes of the sheet in front, by their cells. */
const notes = () =>
  page.evaluate(() => {
    const { live } = globalThis.baywright;
    return Object.fromEntries(live.notes.of(live.workbook.getActiveSheet()).map(({ row, column, text }) => [`${String.fromCharCode(65 + column)}${row + 1}`, text]));
  });
/** Copies a cell, or cuts it, and pastes it over others. */
async function copy(from: CellPlace, to: CellPlace & { readonly rows?: number }, [take, put] = ["c", "v"]): Promise<void> {
  const select = (place: CellPlace & { readonly rows?: number }) =>
    page.evaluate((area) => globalThis.baywright.port.apply([{ kind: "select", sheet: globalThis.baywright.live.workbook.getActiveSheet().getName(), area }]), { rows: 1, columns: 1, ...place });
  await select(from);
  await page.keyboard.press(`ControlOrMeta+${take}`);
  // The clipboard is written a moment after the key.
  await page.waitForTimeout(500);
  await select(to);
  await page.keyboard.press(`ControlOrMeta+${put}`);
  await page.waitForTimeout(500);
  await workbook.settle();
}

const saved = (name: string) => readFile(new Uint8Array(readFileSync(at(name)))).document.sheets[0]!.notes.map(({ row, column, text }) => [row, column, text]);

test("by the keyboard a note is written, read, changed, taken back and deleted, and what is typed next goes into the cell", async () => {
  await write(1, 1, "counted twice");
  await card().filter({ hasText: "counted twice" }).waitFor();
  await page.keyboard.type("7");
  await page.keyboard.press("Enter");
  await workbook.typed();
  await card().waitFor({ state: "hidden" });
  expect([(await workbook.sheet("Sheet1")).values[1]![1], await notes()]).toEqual([7, { B2: "counted twice" }]);
  await write(1, 1, "counted once");
  await page.keyboard.press("ControlOrMeta+z");
  await card().filter({ hasText: "counted twice" }).waitFor();
  await page.keyboard.press("ControlOrMeta+y");
  await card().filter({ hasText: "counted once" }).waitFor();
  await write(1, 1, "");
  expect(await notes()).toEqual({});
});

test("a note goes along with its cell that is copied, in one step back, and over the note of another; values go without it, and what is cut takes it away", async () => {
  await write(1, 1, "counted twice");
  await page.keyboard.type("7");
  await page.keyboard.press("Enter");
  await workbook.typed();
  await copy({ row: 1, column: 1 }, { row: 3, column: 3, rows: 2 });
  expect([await notes(), (await workbook.sheet("Sheet1")).values[4]![3]]).toEqual([{ B2: "counted twice", D4: "counted twice", D5: "counted twice" }, 7]);
  await page.keyboard.press("ControlOrMeta+z");
  await workbook.settle();
  expect([await notes(), (await workbook.sheet("Sheet1")).values[4]?.[3] ?? null]).toEqual([{ B2: "counted twice" }, null]);
  await copy({ row: 1, column: 1 }, { row: 3, column: 3 }, ["c", "Shift+v"]);
  expect([await notes(), (await workbook.sheet("Sheet1")).values[3]![3]]).toEqual([{ B2: "counted twice" }, 7]);
  await copy({ row: 3, column: 3 }, { row: 1, column: 1 });
  expect(await notes()).toEqual({});
  await page.keyboard.press("ControlOrMeta+z");
  await copy({ row: 1, column: 1 }, { row: 6, column: 0 }, ["x", "v"]);
  expect(await notes()).toEqual({ A7: "counted twice" });
  await page.keyboard.press("ControlOrMeta+z");
  await workbook.settle();
  expect(await notes()).toEqual({ B2: "counted twice" });
});

test("a note that is open keeps the keyboard when the engine gives it to the cells, and loses it to whoever leaves by Tab", async () => {
  await workbook.click(1, 1);
  await page.waitForTimeout(300);
  await page.keyboard.press("Shift+F2");
  await field().waitFor();
  // As the engine does some time after a click.
  await page.evaluate(() => { globalThis.baywright.focus(); });
  await page.keyboard.type("counted twice");
  expect(await field().inputValue()).toBe("counted twice");
  await page.keyboard.press("Tab");
  await page.keyboard.press("Tab");
  await field().waitFor({ state: "hidden" });
  expect([await notes(), (await workbook.sheet("Sheet1")).values[1]?.[1] ?? null]).toEqual([{ B2: "counted twice" }, null]);
});

test("by the mouse a note is written from the menu of a cell, read under the pointer, and deleted", async () => {
  await workbook.click(2, 2);
  await workbook.openMenu(2, 2);
  await page.getByText("Note (Shift+F2)").click();
  await field().fill("spare in box 3");
  await workbook.click(8, 0);
  await workbook.hover(2, 2);
  await card().filter({ hasText: "spare in box 3" }).waitFor();
  await workbook.hover(9, 0);
  await card().waitFor({ state: "hidden" });
  await workbook.openMenu(2, 2);
  await page.getByText("Delete the note").click();
  await page.waitForFunction(() => globalThis.baywright.live.notes.of(globalThis.baywright.live.workbook.getActiveSheet()).length === 0);
  await workbook.openMenu(3, 3);
  await page.getByText("Note (Shift+F2)").waitFor();
  expect(await page.getByText("Delete the note").isVisible()).toBe(false);
  await page.keyboard.press("Escape");
});

test("notes of a file are shown, follow their cells, and stand in the file that is saved, with the one that is being written, and after the page is opened again", async () => {
  const file = new Workbook();
  const sheet = file.addWorksheet("Stock");
  sheet.addRows([["Part", "Count"], ["rail", 4]]);
  sheet.getCell("B2").note = "counted twice";
  writeFileSync(at("noted.xlsx"), new Uint8Array(await file.xlsx.writeBuffer()));
  await workbook.openFile(at("noted.xlsx"));
  await workbook.hover(1, 1);
  await card().filter({ hasText: "counted twice" }).waitFor();
  await page.evaluate(() => globalThis.baywright.api.getActiveWorkbook()!.getActiveSheet().insertRows(0, 1));
  await workbook.click(1, 0);
  await page.keyboard.press("Shift+F2");
  await field().fill("as of March");
  const download = page.waitForEvent("download");
  await page.keyboard.press("ControlOrMeta+s");
  await (await download).saveAs(at("saved.xlsx"));
  expect(saved("saved.xlsx")).toEqual([[2, 1, "counted twice"], [1, 0, "as of March"]]);
  await page.getByText("Kept in this browser").waitFor();
  await page.reload();
  await workbook.ready();
  expect(await notes()).toEqual({ A2: "as of March", B3: "counted twice" });
});

test("on a protected sheet only open cells can be noted, and the others say why", async () => {
  const file = new Workbook();
  const sheet = file.addWorksheet("Closed");
  sheet.addRows([["closed", "open"]]);
  sheet.getCell("B1").protection = { locked: false };
  await sheet.protect("", {});
  writeFileSync(at("closed.xlsx"), new Uint8Array(await file.xlsx.writeBuffer()));
  await workbook.openFile(at("closed.xlsx"));
  await workbook.click(0, 0);
  await page.keyboard.press("Shift+F2");
  await page.locator(".notice", { hasText: 'Sheet "Closed" is protected.' }).waitFor();
  expect(await field().count()).toBe(0);
  await write(0, 1, "filled in on site");
  expect(await notes()).toEqual({ B1: "filled in on site" });
});

test("a thread of comments is shown as what it is, and cannot be changed here", async () => {
  const office = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
  const parts = {
    "xl/worksheets/_rels/sheet1.xml.rels": `<Relationships><Relationship Id="c" Type="${office}/comments" Target="../notes.xml"/></Relationships>`,
    "xl/notes.xml": '<comments><authors><author>tc={1}</author></authors><commentList><comment ref="A1" authorId="0"><text><t>Comment: checked on site</t></text></comment></commentList></comments>',
  };
  writeFileSync(at("thread.xlsx"), rawWorkbook({ sheets: { One: '<sheetData><row r="1"><c r="A1"><v>1</v></c></row></sheetData>' }, parts }));
  await workbook.openFile(at("thread.xlsx"));
  await workbook.click(0, 0);
  await card().filter({ hasText: "Comment: checked on site" }).filter({ hasText: "A thread of comments." }).waitFor();
  await page.keyboard.press("Shift+F2");
  await page.locator(".notice", { hasText: "A thread of comments." }).waitFor();
  expect(await field().count()).toBe(0);
  await write(0, 1, "plain");
  await copy({ row: 0, column: 0 }, { row: 2, column: 0 });
  await copy({ row: 0, column: 1 }, { row: 0, column: 0 });
  await copy({ row: 0, column: 1 }, { row: 2, column: 1 });
  expect(await notes()).toEqual({ A1: "Comment: checked on site", B1: "plain", B3: "plain" });
  await workbook.save(at("thread-saved.xlsx"));
  expect(saved("thread-saved.xlsx")).toEqual([[0, 0, "Comment: checked on site"], [0, 1, "plain"], [2, 1, "plain"]]);
});
