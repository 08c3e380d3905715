import { readFileSync } from "node:fs";
import type { Page } from "playwright-core";
import { readSnapshot } from "../../src/workbook/xlsx/read-snapshot";
import { readFile } from "../../src/workbook/xlsx/read-workbook";
import { beginStory } from "./support/story";
import type { WorkbookPage } from "./support/workbook-page";

declare global {
  /** The texts that were drawn on any canvas of the page since this was emptied. */
  var drawn: string[];
}

let workbook: WorkbookPage;
let page: Page;
const { at } = beginStory("grid", (opened) => {
  workbook = opened;
  ({ page } = opened);
});

beforeEach(async () => {
  const earlier = workbook.button("Close this message");
  if (await earlier.isVisible()) await earlier.click();
  await page.getByRole("button", { name: "New", exact: true }).click();
  await page.getByText("A new plan is on the desk.").waitFor();
  await workbook.settle();
});

const values = async () => (await workbook.sheet("Sheet1")).values;

/** The selected cell, such as B3. */
const selected = () =>
  page.evaluate(async () => {
    const { area } = await globalThis.baywright.port.selection();
    return String.fromCharCode(65 + area.column) + String(area.row + 1);
  });

/** Presses keys one after the other, each once the page has done with the one before. */
async function press(...keys: string[]): Promise<void> {
  for (const key of keys) await page.keyboard.press(key);
  await workbook.typed();
}

/** Types texts, each ended by a key. */
async function type(key: string, ...texts: string[]): Promise<void> {
  for (const text of texts) {
    await page.keyboard.type(text);
    await press(key);
  }
}

/** Writes an address into the box that names the selected cell, and presses Enter. */
async function jumpTo(address: string): Promise<void> {
  const box = page.locator("#grid input").last();
  await box.click();
  await box.fill(address);
  await page.keyboard.press("Enter");
  await page.waitForFunction(() => document.activeElement?.tagName === "DIV");
}

describe("where Enter and Tab lead", () => {
  test("Enter goes below the cell in which an unbroken run of Tabs began, again and again", async () => {
    await workbook.click(2, 1);
    await type("Tab", "a", "b");
    await type("Enter", "c");
    expect(await selected()).toBe("B4");
    await type("Tab", "d", "e");
    await type("Enter", "f");
    expect(await selected()).toBe("B5");
    expect(await values()).toEqual([[null, null, null, null], [null, null, null, null], [null, "a", "b", "c"], [null, "d", "e", "f"]]);
  });

  test.each([
    ["a click", () => workbook.click(9, 4)],
    ["the name box", () => jumpTo("E10")],
    ["arrow keys", () => press(...new Array<string>(7).fill("ArrowDown"), "ArrowRight")],
  ])("after %s Enter goes below the cell it is pressed in, and a new run begins there", async (_, jump) => {
    await workbook.click(2, 1);
    await type("Tab", "a", "b");
    await jump();
    expect(await selected()).toBe("E10");
    await type("Enter", "c");
    expect(await selected()).toBe("E11");
    await type("Tab", "d", "e");
    await press("Enter");
    expect(await selected()).toBe("E12");
    expect((await values())[3] ?? []).toEqual([null, null, null, null, null, null]);
  });

  test("Enter goes on in its column below merged cells", async () => {
    await workbook.page.evaluate(() => {
      const merges = [{ row: 2, column: 0, rows: 1, columns: 6 }];
      return globalThis.baywright.port.apply([{ kind: "add-sheet", plan: { name: "Words between", rows: [[{}], [{}], [{ value: "words" }], [{}]], merges, styles: {}, columnWidths: [] } }]);
    });
    await workbook.showSheet("Words between");
    await workbook.click(1, 3);
    await type("Enter", "a");
    await press("Enter");
    expect(await selected()).toBe("D4");
    await type("Enter", "b");
    expect((await workbook.sheet("Words between")).values.map((line) => line[3] ?? null)).toEqual([null, "a", null, "b"]);
  });

  test("Enter and Tab go round several selected cells", async () => {
    await workbook.click(2, 1);
    await press("Shift+ArrowRight", "Shift+ArrowDown");
    await type("Tab", "a", "b", "c", "d");
    expect(await values()).toEqual([[null, null, null], [null, null, null], [null, "a", "b"], [null, "c", "d"]]);
  });

  test("Shift with Tab or Enter ends what is typed and goes back", async () => {
    await workbook.click(4, 3);
    await type("Shift+Tab", "a");
    expect(await selected()).toBe("C5");
    await type("Shift+Enter", "=1+1");
    expect(await selected()).toBe("C4");
    expect((await values())[4]).toEqual([null, null, 2, "a"]);
  });

  test("Home, Ctrl+Home, Ctrl+End and a page up or down lead where they do in desk spreadsheets", async () => {
    await workbook.type(7, 6, "last");
    await workbook.click(3, 4);
    await press("Home");
    expect(await selected()).toBe("A4");
    await press("Control+End");
    expect(await selected()).toBe("G8");
    await press("Control+Home");
    expect(await selected()).toBe("A1");
    await press("PageDown", "PageDown", "PageUp", "PageUp");
    expect(await selected()).toBe("A1");
  });
});

describe("numbers that are wider than their column", () => {
  /** What the grid draws once its first column is so many pixels wide. */
  async function drawnAt(width: number): Promise<string[]> {
    await page.evaluate(() => {
      globalThis.drawn = [];
      const draw = CanvasRenderingContext2D.prototype.fillText;
      CanvasRenderingContext2D.prototype.fillText = function (this: CanvasRenderingContext2D, text: string, ...place: [number, number]) {
        globalThis.drawn.push(text);
        draw.call(this, text, ...place);
      };
    });
    await page.evaluate((pixels) => globalThis.baywright.api.getActiveWorkbook()!.getActiveSheet().setColumnWidths(0, 1, pixels), width);
    await page.waitForTimeout(500);
    return page.evaluate(() => [...new Set(globalThis.drawn)]);
  }

  test("are shown in scientific form, with a format of their own as hashes, and never cut", async () => {
    await workbook.click(0, 0);
    await type("Enter", "12345678901000", "0.123456789", "2026-11-27");
    const narrow = await drawnAt(60);
    // How many digits there is room for is the font's.
    expect(narrow.filter((text) => /^1(?:\.\d{1,3})?E\+13$/.test(text))).toHaveLength(1);
    expect(narrow.filter((text) => /^0\.12\d{1,5}$/.test(text))).toHaveLength(1);
    expect(narrow.filter((text) => /^#+$/.test(text))).toHaveLength(1);
    expect(narrow.filter((text) => /^1234567|^2026/.test(text))).toEqual([]);
    const wide = await drawnAt(200);
    expect(wide).toEqual(expect.arrayContaining(["12345678901000", "0.123456789", "2026-11-27"]));
    expect((await values()).flat()).toEqual([12345678901000, 0.123456789, 46353]);
  });
});

test("the figures of a blocked table are gone from the sums over it, on screen and in the file", async () => {
  await workbook.click(0, 0);
  await type("Enter", "=SEQUENCE(3)");
  await workbook.type(0, 2, "=SUM(A2:A3)");
  expect((await values())[0]).toEqual([1, null, 5]);
  await workbook.type(1, 0, "40");
  expect((await values())[0]).toEqual([{ error: "#SPILL!" }, null, 40]);
  await workbook.save(at("blocked.xlsx"));
  expect(readSnapshot(new Uint8Array(readFileSync(at("blocked.xlsx")))).sheets[0]!.values[0]![2]).toBe(40);
});

test("the pane follows another workbook at once: what belonged to the one before is gone, and the view in front stays", async () => {
  const pane = page.locator("#pane");
  await page.getByRole("button", { name: "Sample", exact: true }).click();
  await page.getByText("The sample plan is on the desk.").waitFor();
  await workbook.turnTo("Commission");
  await pane.getByText("Build 3 tabs").waitFor();
  await page.getByRole("button", { name: "New", exact: true }).click();
  await page.getByText("A new plan is on the desk.").waitFor();
  await workbook.said("The workbook has no table Jobs.");
  expect(await pane.getByText("Reading Room").count()).toBe(0);
  expect(await page.getByRole("tab", { name: "Commission" }).getAttribute("aria-selected")).toBe("true");
  await workbook.turnTo("Plan");
  await pane.getByText("This workbook has no planning tables yet.").waitFor();
  await workbook.button("Back to Thornmere sample").click();
  await pane.getByText("3 sites, 6 arrays").waitFor();
});

describe("finding and sorting", () => {
  test("Ctrl+F finds a text, and Escape leads back to the cell that was found", async () => {
    await workbook.click(0, 0);
    await type("Enter", "Name", "pear", "apple", "quince");
    await workbook.click(0, 0);
    await page.keyboard.press("Control+f");
    await page.waitForFunction(() => document.activeElement?.tagName === "INPUT");
    await page.keyboard.type("quin");
    await page.keyboard.press("Enter");
    await page.getByText("1/1").waitFor();
    await page.keyboard.press("Escape");
    await page.waitForFunction(() => document.activeElement?.closest("[data-u-comp=editor]") !== null);
    await expectSelected("A4");
    await type("Enter", "medlar");
    expect((await values())[3]).toEqual(["medlar"]);
  });

  test("Ctrl+F opens the search as soon as the grid is up, and right after a paste", async () => {
    const fresh = await workbook.openTab();
    await fresh.click(6, 0);
    await fresh.page.keyboard.press("Control+f");
    await fresh.page.waitForFunction(() => document.activeElement?.tagName === "INPUT");
    await fresh.page.close();
    await workbook.paste("Sheet1", 0, 0, [["pear", "apple"], ["quince", "medlar"]]);
    await page.keyboard.press("Control+f");
    await page.waitForFunction(() => document.activeElement?.tagName === "INPUT");
    await page.keyboard.press("Escape");
  });

  test("rows are sorted by a column, and stand so in the file", async () => {
    await workbook.paste("Sheet1", 0, 0, [["Name", "Size"], ["pear", "3"], ["apple", "1"], ["quince", "2"]]);
    await workbook.click(1, 0);
    await press("Shift+ArrowRight", "Shift+ArrowDown", "Shift+ArrowDown");
    await page.evaluate(() => globalThis.baywright.api.executeCommand("sheet.command.sort-range-asc"));
    await workbook.settle();
    const sorted = [["Name", "Size"], ["apple", 1], ["pear", 3], ["quince", 2]];
    expect(await values()).toEqual(sorted);
    await workbook.save(at("sorted.xlsx"));
    expect(readSnapshot(new Uint8Array(readFileSync(at("sorted.xlsx")))).sheets[0]!.values).toEqual(sorted);
  });
});

/** Waits until a cell is selected. */
async function expectSelected(cell: string): Promise<void> {
  await workbook.until(
    async (wanted) => {
      const { area } = await globalThis.baywright.port.selection();
      return String.fromCharCode(65 + area.column) + String(area.row + 1) === wanted;
    },
    cell,
  );
}

test.each([
  ["a misspelt function", '=BAY.USEABLE("RAID 6",12,4)', "#NAME?: There is no function BAY.USEABLE. Write BAY.USABLE?"],
  ["a division by an empty cell", "=1/C9", "#DIV/0!: Something is divided by 0 or by an empty cell."],
])("%s has its sentence below the grid and under the pointer", async (_, formula, sentence) => {
  await workbook.type(0, 0, formula);
  await workbook.click(0, 0);
  await page.locator(".cell-note", { hasText: sentence }).waitFor();
  await workbook.click(4, 4);
  await workbook.hover(0, 0);
  await page.getByRole("tooltip").filter({ hasText: sentence }).waitFor();
});

test("a blocked table says what is in its way", async () => {
  await workbook.type(1, 0, "in the way");
  await workbook.type(0, 0, "=SEQUENCE(3)");
  await workbook.click(0, 0);
  await page.locator(".cell-note", { hasText: "#SPILL!: Something stands in the cells that this formula fills." }).waitFor();
});

test("the help of a function shows an example as it is written", async () => {
  await workbook.click(0, 0);
  await page.keyboard.type("=BAY.USABLE(");
  await page.getByText("driveSize").first().waitFor();
  expect(await page.getByText('BAY.USABLE("RAID 6",12,4').count()).toBeGreaterThan(0);
  expect(await page.getByText("BAY.USABLE(=BAY").count()).toBe(0);
  expect(await page.getByText('BAY.USABLE("RAID 6",12,4)', { exact: true }).count()).toBe(1);
  await press("Escape", "Escape");
});

describe("rows with wrapped text", () => {
  const long = "a caution whose words need several lines of this column ".repeat(6).trim();
  const heights = () => page.evaluate(() => [0, 1, 2, 3].map((row) => globalThis.baywright.live.workbook.getActiveSheet().getRowHeight(row)));

  test("grow to what they hold, merged cells too, while the file keeps the heights it was given", async () => {
    await page.evaluate((text) => {
      const look = { wraps: { wrap: true } };
      const rows = [[{ value: text, style: "wraps" }], [{ value: text, style: "wraps" }], [{ value: text, style: "wraps" }, {}], [{ value: "short", style: "wraps" }]];
      const plan = { name: "Cautions", rows, styles: look, columnWidths: [30, 30], rowHeights: { 0: 20, 2: 20, 3: 60 }, merges: [{ row: 2, column: 0, rows: 1, columns: 2 }] };
      return globalThis.baywright.port.apply([{ kind: "add-sheet", plan }]);
    }, long);
    await workbook.showSheet("Cautions");
    await workbook.until(() => Promise.resolve(globalThis.baywright.live.workbook.getActiveSheet().getRowHeight(2) > 60), null);
    const [given, automatic, merged, roomy] = await heights();
    expect(given).toBe(automatic);
    expect(given).toBeGreaterThan(100);
    expect(merged).toBeLessThan(given!);
    expect(roomy).toBe(80);
    await workbook.save(at("cautions.xlsx"));
    const saved = readFile(new Uint8Array(readFileSync(at("cautions.xlsx")))).document.sheets.find(({ name }) => name === "Cautions")!;
    expect(saved.rows.map(({ first, size }) => [first, size])).toEqual([[0, 20.25], [2, 20.25], [3, 60]]);
    await workbook.openFile(at("cautions.xlsx"));
    await workbook.showSheet("Cautions");
    await workbook.until(() => Promise.resolve(globalThis.baywright.live.workbook.getActiveSheet().getRowHeight(2) > 60), null);
    expect((await heights())[0]).toBeGreaterThan(100);
  });

  test("grow with what is typed, and shrink to their least", async () => {
    await page.evaluate(() => {
      const plan = { name: "Notes", rows: [[{ value: "short", style: "wraps" }]], styles: { wraps: { wrap: true } }, columnWidths: [30], rowHeights: { 0: 30 } };
      return globalThis.baywright.port.apply([{ kind: "add-sheet", plan }]);
    });
    await workbook.showSheet("Notes");
    await workbook.typeFrom("Notes", 0, 0, [long], "Enter");
    expect((await heights())[0]).toBeGreaterThan(100);
    await workbook.typeFrom("Notes", 0, 0, ["short"], "Enter");
    expect((await heights())[0]).toBe(40);
  });
});

test("a cell with a list draws its text where its neighbours do", async () => {
  const drawnAt = await page.evaluate(async () => {
    const places: Record<string, number[]> = {};
    const draw = CanvasRenderingContext2D.prototype.fillText;
    CanvasRenderingContext2D.prototype.fillText = function (this: CanvasRenderingContext2D, text: string, x: number, y: number, ...rest: []) {
      if (text === "neighbour" || text === "listed") places[text] = [this.getTransform().f + y * this.getTransform().d];
      draw.call(this, text, x, y, ...rest);
    };
    const plan = {
      name: "Lists", rows: [[{ value: "neighbour" }, { value: "listed" }]], styles: {}, columnWidths: [20, 20],
      validations: [{ area: { row: 0, column: 1, rows: 1, columns: 1 }, rule: { kind: "list" as const, items: ["listed", "other"] }, message: "Choose one.", strict: false }],
    };
    await globalThis.baywright.port.apply([{ kind: "add-sheet", plan }]);
    await new Promise((drawn) => setTimeout(drawn, 500));
    CanvasRenderingContext2D.prototype.fillText = draw;
    return places;
  });
  expect(Object.keys(drawnAt).sort()).toEqual(["listed", "neighbour"]);
  expect(drawnAt["listed"]).toEqual(drawnAt["neighbour"]);
});

test("blanks at the end of pasted lines are not kept", async () => {
  await workbook.paste("Sheet1", 0, 0, [["one", "two  "], ["three", "four "]]);
  expect(await values()).toEqual([["one", "two"], ["three", "four"]]);
});

test("a formula that is typed into a cell for text is computed, and words that begin with its sign stay words", async () => {
  await page.evaluate(() => {
    const rows = Array.from({ length: 6 }, () => [{ style: "text" }]);
    return globalThis.baywright.port.apply([{ kind: "add-sheet", plan: { name: "Words", rows, styles: { text: { format: "@" } }, columnWidths: [40] } }]);
  });
  await workbook.showSheet("Words");
  await workbook.click(0, 0);
  await type("Enter", '=BAY.USABLE("RAID 6",12,4)', "=A1*2", "=> see the door", "=====", "0012", "=SUM(A1,A2");
  const { values: shown, formulas } = await workbook.sheet("Words");
  expect(shown.map(([value]) => value)).toEqual([40, 80, "=> see the door", "=====", "0012", 120]);
  expect(formulas.map(([formula]) => formula)).toEqual(['=BAY.USABLE("RAID 6",12,4)', "=A1*2", null, null, null, "=SUM(A1,A2)"]);
});

test("setting up the tables leads to Sites, with which people begin", async () => {
  await workbook.button("Set up tables").click();
  await workbook.said("Begin with Sites.");
  expect(await page.evaluate(() => globalThis.baywright.port.selection())).toEqual({ sheet: "Sites", area: { row: 4, column: 0, rows: 1, columns: 1 } });
});

test("grid, bar and pane follow the theme of the system", async () => {
  const ground = () => page.evaluate(() => [".top-bar", "#pane .bay"].map((one) => getComputedStyle(document.querySelector(one)!).backgroundColor));
  const light = await ground();
  await page.emulateMedia({ colorScheme: "dark" });
  await page.waitForFunction(() => document.documentElement.classList.contains("univer-dark"));
  const dark = await ground();
  expect(dark.filter((color, place) => color === light[place])).toEqual([]);
  expect(await page.locator("#pane .bay").getAttribute("data-theme")).toBe("dark");
  await page.emulateMedia({ colorScheme: "light" });
  // The page is drawn in other colours a moment later.
  for (let tries = 0; tries < 50 && String(await ground()) !== String(light); tries += 1) await page.waitForTimeout(100);
  expect(await ground()).toEqual(light);
});
