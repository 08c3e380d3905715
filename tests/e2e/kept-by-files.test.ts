import { readFileSync, writeFileSync } from "node:fs";
import { Workbook } from "exceljs";
import type { Page } from "playwright-core";
import { readFile } from "../../src/workbook/xlsx/read-workbook";
import { beginStory } from "./support/story";
import type { WorkbookPage } from "./support/workbook-page";

let workbook: WorkbookPage;
let page: Page;
const { at } = beginStory("kept-by-files", (opened) => {
  workbook = opened;
  ({ page } = opened);
});

const look = { fill: { type: "pattern", pattern: "solid", bgColor: { argb: "FFFFC7CE" } } } as const;

/** A file of another program: texts and numbers with conditional formats, and cells that lead somewhere. */
async function makeFile(): Promise<string> {
  const file = new Workbook();
  const sheet = file.addWorksheet("Parts");
  file.addWorksheet("Other").getCell("C7").value = "here";
  sheet.addRows([["RAID", 3], ["spare", "n/a"], ["", 9], [null, null]]);
  sheet.addConditionalFormatting({ ref: "A1:A9", rules: [{ type: "containsText", operator: "containsText", text: "raid", priority: 1, style: look }] });
  sheet.addConditionalFormatting({ ref: "B1:B9", rules: [{ type: "cellIs", operator: "greaterThan", formulae: [5], priority: 2, style: look }] });
  sheet.getCell("D1").value = { text: "guide", hyperlink: "https://example.org/guide" };
  sheet.getCell("D2").value = { text: "script", hyperlink: "javascript:alert(1)" };
  sheet.getCell("D3").value = { text: "inside", hyperlink: "#Other!C7" };
  const path = at("parts.xlsx");
  writeFileSync(path, new Uint8Array(await file.xlsx.writeBuffer()));
  return path;
}

/** The fill with which the engine draws a cell of the sheet in front. */
const fillAt = (row: number, column: number) =>
  page.evaluate(([down, across]) => {
    return globalThis.baywright.live.workbook.getActiveSheet().getComposedCellStyle(down!, across!).bg?.rgb ?? null;
  }, [row, column]);

const clickHeld = async (row: number, column: number) => {
  await page.keyboard.down("Control");
  const { x, y } = await workbook.place(row, column);
  await page.mouse.click(x, y);
  await page.keyboard.up("Control");
};

describe("a file that is opened in the place of a workbook", () => {
  beforeAll(async () => {
    await workbook.openFile(await makeFile());
  });

  test("has its conditional formats drawn, where they hold in the program it came from", async () => {
    await page.waitForTimeout(500);
    const fills = await Promise.all([0, 1, 2].flatMap((row) => [fillAt(row, 0), fillAt(row, 1)]));
    // A text is more than a number, and capitals do not count.
    expect(fills).toEqual(["#ffc7ce", null, null, "#ffc7ce", null, "#ffc7ce"]);
  });

  test("leads to an address of the web in a window of its own, and runs no script", async () => {
    await page.context().route("https://example.org/**", (route) => route.fulfill({ body: "guide" }));
    await workbook.click(0, 3);
    await page.getByText("Leads to https://example.org/guide").waitFor();
    const opening = page.context().waitForEvent("page");
    await clickHeld(0, 3);
    const other = await opening;
    await other.waitForURL("https://example.org/guide");
    expect(await other.evaluate(() => window.opener as unknown)).toBeNull();
    await other.close();
    await clickHeld(1, 3);
    await page.getByText("This page opens addresses of the web and of mail only. The cell leads to javascript:alert(1)").waitFor();
    expect(page.context().pages()).toHaveLength(1);
  });

  test("leads to a place of its own by the line under the cells", async () => {
    await workbook.click(2, 3);
    await page.locator(".link-note").getByRole("button", { name: "Open" }).click();
    await workbook.until(async () => (await globalThis.baywright.port.selection()).sheet === "Other", null, 10_000);
    await workbook.showSheet("Parts");
  });

  test("leads there from a copy of the cell too, and from where rows moved it, on screen and in the file", async () => {
    await workbook.click(0, 3);
    await page.keyboard.press("ControlOrMeta+c");
    await workbook.click(5, 5);
    await page.keyboard.press("ControlOrMeta+v");
    await workbook.filled("Parts", 5, 5);
    await page.evaluate(() => globalThis.baywright.api.getActiveWorkbook()!.getActiveSheet().insertRows(0, 2));
    await workbook.save(at("moved.xlsx"));
    const { cells } = readFile(new Uint8Array(readFileSync(at("moved.xlsx")))).document.sheets[0]!;
    expect([cells.get(2)!.get(3)!.link, cells.get(7)!.get(5)!.link]).toEqual(["https://example.org/guide", "https://example.org/guide"]);
  });
});

test("a copied sheet has tables under names of their own, as a workbook has each name once", async () => {
  await page.getByRole("button", { name: "Sample", exact: true }).click();
  await page.getByText("The sample plan is on the desk.").waitFor();
  await workbook.showSheet("Racks");
  await page.getByText("Racks", { exact: true }).first().click({ button: "right" });
  await page.getByText("Copy", { exact: true }).last().click();
  await page.getByText("Racks (Copy)").first().waitFor();
  await workbook.save(at("copy.xlsx"));
  const tables = readFile(new Uint8Array(readFileSync(at("copy.xlsx")))).document.sheets.flatMap((sheet) => sheet.tables.map(({ name }) => name));
  expect(tables.filter((name) => name.startsWith("BayRacks"))).toEqual(["BayRacks", "BayRacks_2"]);
});

test("bold letters within a cell, and the size at which a sheet is shown, are there again when the page is loaded anew", async () => {
  await page.getByRole("button", { name: "New", exact: true }).click();
  await page.getByText("A new plan is on the desk.").waitFor();
  await workbook.click(0, 0);
  await page.keyboard.type("read ");
  await page.keyboard.press("ControlOrMeta+b");
  await page.keyboard.type("twice");
  await page.keyboard.press("Enter");
  await workbook.typed();
  await page.evaluate(() => globalThis.baywright.api.getActiveWorkbook()!.getActiveSheet().zoom(1.4));
  await page.getByText("Kept in this browser").waitFor();
  await page.reload();
  await workbook.ready();
  await workbook.save(at("bold.xlsx"));
  const sheet = readFile(new Uint8Array(readFileSync(at("bold.xlsx")))).document.sheets[0]!;
  expect(sheet.zoom).toBe(140);
  expect(sheet.cells.get(0)!.get(0)).toMatchObject({ value: "read twice", pieces: [{ text: "read " }, { text: "twice", look: { bold: true } }] });
});

describe("what no file keeps is not offered", () => {
  test("a tick or several choices in a cell", async () => {
    await page.evaluate(() => globalThis.baywright.api.executeCommand("data-validation.command.addRuleAndOpen"));
    await page.getByText("Number", { exact: true }).first().click();
    await page.getByText("Custom formula", { exact: true }).waitFor();
    expect(await page.getByText(/^(?:Checkbox|Dropdown.*multi)/i).count()).toBe(0);
    await page.keyboard.press("Escape");
  });

  test("icons of several sets in one format: it is refused, and said why", async () => {
    await page.evaluate(async () => {
      const sheet = globalThis.baywright.api.getActiveWorkbook()!.getActiveSheet();
      const icon = (iconType: string, iconId: string, value: number) => ({ operator: "greaterThan", value: { type: "num", value }, iconType, iconId });
      const ranges = [sheet.getRange("A1:A3").getRange()];
      const rule = { cfId: "mixed", ranges, stopIfTrue: false, rule: { type: "iconSet", isShowValue: true, config: [icon("3Arrows", "0", 9), icon("3Flags", "1", 5), icon("3Arrows", "2", 0)] } };
      await globalThis.baywright.api.executeCommand("sheet.command.add-conditional-rule", { unitId: sheet.getWorkbook().getUnitId(), subUnitId: sheet.getSheetId(), rule }).catch(() => undefined);
    });
    await page.getByText("A workbook file keeps icons of one set").waitFor();
  });
});
