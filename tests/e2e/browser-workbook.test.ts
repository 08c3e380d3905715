import { readFile } from "node:fs/promises";
import { Workbook } from "exceljs";
import type { Browser } from "playwright-core";
import { readSnapshot } from "../../src/workbook/xlsx/read-snapshot";
import { launchBrowser } from "./support/launch-browser";
import { WorkbookPage } from "./support/workbook-page";

let browser: Browser;
let workbook: WorkbookPage;

beforeAll(async () => {
  browser = await launchBrowser();
});

afterAll(async () => {
  await browser.close();
});

const visit = async () => {
  workbook = await WorkbookPage.open(browser);
};

const leave = async () => {
  await workbook.close();
  expect(workbook.faults).toEqual([]);
};

const startNew = async () => {
  // What the page said of an earlier new plan would be taken for what it says of this one.
  const earlier = workbook.page.getByRole("button", { name: "Close this message" });
  if (await earlier.isVisible()) await earlier.click();
  await workbook.page.getByRole("button", { name: "New", exact: true }).click();
  await workbook.page.getByText("A new plan is on the desk.").waitFor();
  expect((await workbook.sheet("Sheet1")).values).toEqual([]);
};

describe("a workbook on the desk", () => {
  beforeAll(visit);
  beforeEach(startNew);
  afterAll(leave);

  test("a formula of ours that is typed into a cell answers", async () => {
    await workbook.type(0, 0, '=BAY.USABLE("RAID 6",12,4)');
    const { values, formulas } = await workbook.sheet("Sheet1");
    expect(values).toEqual([[40]]);
    expect(formulas).toEqual([['=BAY.USABLE("RAID 6",12,4)']]);
  });

  test("rows pasted as plain text stay in their columns, an empty first cell, a tag and the ends of lines among them", async () => {
    await workbook.paste("Sheet1", 1, 0, [["", "one", "<b>2</b>\r"], ["four", "", "five & six"]]);
    expect((await workbook.sheet("Sheet1")).values).toEqual([[null, null, null], [null, "one", "<b>2</b>"], ["four", null, "five & six"]]);
  });

  test("a table of ours spills, and clears away when its formula goes", async () => {
    await workbook.type(1, 1, '=BAY.BREAKDOWN("RAID 6",12,4)');
    expect((await workbook.sheet("Sheet1")).values[1]).toEqual([null, "Line", "TB", "TiB", "Share"]);
    await workbook.click(1, 1);
    await workbook.page.keyboard.press("Delete");
    await workbook.settle();
    expect((await workbook.sheet("Sheet1")).values.flat().filter((value) => value !== null)).toEqual([]);
  });

  test("the sentence of an error shows for the selected cell and under the pointer, and moves with the cell", async () => {
    await workbook.type(1, 0, '=BAY.USABLE("RAID 60",12,4)');
    await workbook.click(1, 0);
    const sentence = /Give the group shape/;
    await workbook.page.locator(".cell-note").filter({ hasText: sentence }).waitFor();
    await workbook.click(5, 3);
    await workbook.page.locator(".cell-note").waitFor({ state: "hidden" });
    await workbook.page.evaluate(() => globalThis.baywright.api.getActiveWorkbook()!.getActiveSheet().insertRows(0, 2));
    await workbook.settle();
    await workbook.hover(3, 0);
    await workbook.page.getByRole("tooltip").filter({ hasText: sentence }).waitFor();
    await workbook.click(3, 0);
    await workbook.page.locator(".cell-note").filter({ hasText: sentence }).waitFor();
  });

  test("typing a function's name offers ours, and its arguments are explained", async () => {
    await workbook.click(0, 0);
    await workbook.page.keyboard.type("=BAY.USA");
    await workbook.page.getByText("BAY.USABLE").first().waitFor();
    await workbook.page.keyboard.type("BLE(");
    await workbook.page.getByText("driveSize").first().waitFor();
  });

  test("what is being typed when another plan is put on the desk stands in the plan before, and in nothing else", async () => {
    await workbook.click(0, 0);
    await workbook.page.keyboard.type("half typed");
    await startNew();
    await workbook.page.getByRole("button", { name: "Back to New plan" }).click();
    await workbook.page.getByText("New plan is back.").waitFor();
    expect((await workbook.sheet("Sheet1")).values).toEqual([["half typed"]]);
  });

  test.each(["Enter", "Tab"])("%s ends a formula whose name was written with a pause, and takes what is offered while the name is written", async (key) => {
    const { keyboard } = workbook.page;
    const offered = workbook.page.locator("[data-u-comp=sheets-formula-editor] li", { hasText: "BAY.USABLE" }).first();
    await workbook.click(1, 1);
    await keyboard.type("=BAY.USABLE");
    await offered.waitFor();
    await keyboard.insertText('("RAID 6",12,4)');
    await keyboard.press(key);
    await workbook.filled("Sheet1", 1, 1);
    await workbook.typed();
    expect((await workbook.sheet("Sheet1")).values[1]).toEqual([null, 40]);
    await workbook.click(4, 1);
    await keyboard.type("=BAY.USA");
    await offered.waitFor();
    await keyboard.press(key);
    await workbook.page.getByText("driveSize").first().waitFor();
    await keyboard.insertText('"RAID 5",12,4)');
    await keyboard.press(key);
    await workbook.filled("Sheet1", 4, 1);
    await workbook.typed();
    expect((await workbook.sheet("Sheet1")).values[4]).toEqual([null, 44]);
  });

  test("a function that is still offered for a shorter name is not taken for a longer one", async () => {
    const { page } = workbook;
    await workbook.click(1, 1);
    await page.keyboard.type("=BA");
    await page.locator("[data-u-comp=sheets-formula-editor] li", { hasText: "BASE" }).waitFor();
    await page.keyboard.insertText("Y.USABLE");
    await page.keyboard.press("Tab");
    await page.locator("[data-u-comp=sheets-formula-editor] li", { hasText: "BASE" }).waitFor({ state: "hidden" });
    expect(await page.getByText("radix").count()).toBe(0);
    // The first closes what is offered, the second the cell.
    await page.keyboard.press("Escape");
    await page.keyboard.press("Escape");
    await workbook.typed();
  });

  test("a workbook is saved as .xlsx with its results, and opens again by being dropped on the page", async () => {
    await workbook.type(0, 0, '=BAY.USABLE("RAID 6",12,4)');
    const waiting = workbook.page.waitForEvent("download");
    await workbook.page.keyboard.press("Control+S");
    const download = await waiting;
    expect(download.suggestedFilename()).toBe("New plan.xlsx");
    const bytes = await readFile(await download.path());
    const { sheets } = readSnapshot(new Uint8Array(bytes));
    expect(sheets[0]).toMatchObject({ name: "Sheet1", values: [[40]], formulas: [['=BAY.USABLE("RAID 6",12,4)']] });

    await workbook.type(0, 0, "changed");
    const dropped = await workbook.page.evaluateHandle((content) => {
      const transfer = new DataTransfer();
      transfer.items.add(new File([Uint8Array.from(content)], "returned.xlsx"));
      return transfer;
    }, [...bytes]);
    await workbook.page.dispatchEvent("#work", "drop", { dataTransfer: dropped });
    await workbook.page.getByText("returned.xlsx is open.").waitFor();
    await workbook.settle();
    expect((await workbook.sheet("Sheet1")).values).toEqual([[40]]);
  });

  test("a file that is no workbook gets a sentence, and the plan stays", async () => {
    await workbook.type(0, 0, "mine");
    const choosing = workbook.page.waitForEvent("filechooser");
    await workbook.page.getByRole("button", { name: "Open …" }).click();
    await (await choosing).setFiles({ name: "notes.xlsx", mimeType: "text/plain", buffer: Buffer.from("these are notes") });
    await workbook.page.getByText(/is no .xlsx workbook/).waitFor();
    expect((await workbook.sheet("Sheet1")).values).toEqual([["mine"]]);
  });

  test("a sheet name that the spreadsheet host would not take is refused with a sentence", async () => {
    await workbook.renameSheet("Sheet1", "History");
    await workbook.page.getByText(/The sheet name "History" is kept by/).waitFor();
    expect(await workbook.sheetNames()).toEqual(["Sheet1"]);
  });

  test("a protected sheet of a file is not changed by typing", async () => {
    const file = new Workbook();
    const sheet = file.addWorksheet("Locked");
    sheet.getCell("A1").value = "stays";
    sheet.getCell("A2").protection = { locked: false };
    await sheet.protect("", {});
    const choosing = workbook.page.waitForEvent("filechooser");
    await workbook.page.getByRole("button", { name: "Open …" }).click();
    await (await choosing).setFiles({ name: "locked.xlsx", mimeType: "application/octet-stream", buffer: Buffer.from(await file.xlsx.writeBuffer()) });
    await workbook.page.getByText("locked.xlsx is open.").waitFor();
    await workbook.type(0, 0, "changed");
    await workbook.page.getByText('Sheet "Locked" is protected.').waitFor();
    await workbook.type(1, 0, "open");
    expect((await workbook.sheet("Locked")).values).toEqual([["stays"], ["open"]]);
  });
});

describe("a first visit", () => {
  beforeEach(visit);
  afterEach(leave);

  test("the page starts with the sample plan, computed, and a pane that reads it", async () => {
    expect(await workbook.sheetNames()).toEqual(expect.arrayContaining(["Sites", "Arrays", "Ports", "Jobs", "Steps"]));
    const { values } = await workbook.sheet("Arrays");
    expect(values.flat().filter((value) => value !== null && typeof value === "object")).toEqual([]);
    await workbook.page.getByText("3 sites, 6 arrays").waitFor();
  });

  test("a plan is kept in the browser and there again on the next visit", async () => {
    await startNew();
    await workbook.type(0, 0, "kept");
    await workbook.page.getByText("Kept in this browser").waitFor();
    await workbook.page.reload();
    await workbook.ready();
    expect((await workbook.sheet("Sheet1")).values).toEqual([["kept"]]);
  });

  test("starting over can be undone, and earlier plans are listed", async () => {
    await startNew();
    await workbook.type(0, 0, "mine");
    await workbook.page.getByRole("button", { name: "Sample", exact: true }).click();
    await workbook.page.getByRole("button", { name: "Back to New plan" }).click();
    await workbook.page.getByText("New plan is back.").waitFor();
    await workbook.settle();
    expect((await workbook.sheet("Sheet1")).values).toEqual([["mine"]]);
    await workbook.page.getByRole("button", { name: "Recent" }).click();
    await workbook.page.getByRole("menuitem", { name: /Thornmere sample/ }).first().click();
    await workbook.page.getByText("Thornmere sample is open.").waitFor();
    expect(await workbook.sheetNames()).toContain("Arrays");
  });

  test("a second tab works on a copy, so that neither undoes the other's work", async () => {
    await startNew();
    await workbook.type(0, 0, "first tab");
    await workbook.page.getByText("Kept in this browser").waitFor();
    const second = await workbook.openTab();
    expect(await second.page.title()).toContain("New plan (copy)");
    await second.type(0, 0, "second tab");
    await second.page.getByText("Kept in this browser").waitFor();
    expect((await workbook.sheet("Sheet1")).values).toEqual([["first tab"]]);
  });
});
