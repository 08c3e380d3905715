import type { Page } from "playwright-core";
import { areaAddress } from "../../src/sheet";
import { beginStory } from "./support/story";
import type { WorkbookPage } from "./support/workbook-page";

let workbook: WorkbookPage;
let page: Page;
beginStory("desk-habits", (opened) => {
  workbook = opened;
  ({ page } = opened);
});

/** Puts another workbook on the desk, and waits until the bar says so of this one. */
async function bring(name: "New" | "Sample", said: string): Promise<void> {
  const earlier = workbook.button("Close this message");
  if (await earlier.isVisible()) await earlier.click();
  await page.getByRole("button", { name, exact: true }).click();
  await page.getByText(said).waitFor();
  await workbook.settle();
}

beforeEach(() => bring("New", "A new plan is on the desk."));

const selected = async () => areaAddress((await page.evaluate(() => globalThis.baywright.port.selection())).area);

async function select(row: number, column: number): Promise<void> {
  await page.evaluate(async (area) => {
    const { sheet } = await globalThis.baywright.port.selection();
    await globalThis.baywright.port.apply([{ kind: "select", sheet, area }]);
    globalThis.baywright.focus();
  }, { row, column, rows: 1, columns: 1 });
  await page.waitForFunction(() => document.activeElement?.closest("[data-u-comp=editor]") !== null);
}

/** The middle of the line of the formula, on the page. */
async function formulaLine(): Promise<{ x: number; y: number }> {
  const { x, y, width, height } = (await page.locator("[data-u-comp=formula-bar]").boundingBox())!;
  return { x: x + width / 2, y: y + height / 2 };
}

test.each([
  ["Shift+Enter", 0, 3, "D1"], ["ArrowUp", 0, 3, "D1"], ["Shift+Tab", 4, 0, "A5"], ["ArrowLeft", 4, 0, "A5"],
  ["Enter", 199, 3, "D201"], ["ArrowDown", 199, 3, "D201"], ["Tab", 4, 25, "AA5"], ["ArrowRight", 4, 25, "AA5"],
])("%s at the edge of a sheet goes to no other side: from row %d and column %d, counted from 0, to %s", async (key, row, column, to) => {
  await select(row, column);
  await page.keyboard.press(key);
  expect(await selected()).toBe(to);
});

test("a list that is typed down past the last row goes on below, and writes over nothing", async () => {
  await select(198, 0);
  for (const text of ["one", "two", "three"]) {
    await page.keyboard.type(text);
    await page.keyboard.press("Enter");
    await workbook.typed();
  }
  const { values } = await workbook.sheet("Sheet1");
  expect([values.length, values.slice(198).flat(), values[0]]).toEqual([201, ["one", "two", "three"], [null]]);
});

describe("the name box", () => {
  async function jumpTo(address: string): Promise<void> {
    await page.locator("[data-u-comp=defined-name] input").click();
    await page.keyboard.press("ControlOrMeta+a");
    await page.keyboard.type(address);
    await page.keyboard.press("Enter");
  }

  test.each([["$c$3", "C3"], ["B5:D9", "B5:D9"], ["B2000", "B2000"], ["c:c", "C1:C200"], ["5:7", "A5:Z7"]])("leads by %s to %s, into which goes what is typed then", async (address, to) => {
    await jumpTo(address);
    await page.waitForFunction(() => document.activeElement?.closest("[data-u-comp=editor]") !== null);
    // A sheet has more rows once one further down was asked for.
    expect((await selected()).replace("C1:C2050", "C1:C200")).toBe(to);
    await page.keyboard.type("here");
    await page.keyboard.press("Enter");
    await workbook.typed();
    expect((await workbook.sheet("Sheet1")).values.flat()).toContain("here");
  });

  test.each(["A0", "A1048577", "ZZZZ1", "B5,D7", "nowhere"])("says of %j that it is no address, and leads nowhere", async (text) => {
    await select(2, 1);
    await jumpTo(text);
    await page.getByText(`"${text}" is no address of cells. Write one such as B5, B5:D9 or Racks!B5.`).waitFor();
    expect(await selected()).toBe("B3");
  });

  test("is left by Escape for the cells, as it was", async () => {
    await select(2, 1);
    const box = page.locator("[data-u-comp=defined-name] input");
    await box.click();
    await page.keyboard.type("Z9");
    await page.keyboard.press("Escape");
    await page.waitForFunction(() => document.activeElement?.closest("[data-u-comp=editor]") !== null);
    expect([await selected(), await box.inputValue()]).toEqual(["B3", "B3"]);
  });
});

test.each([0, 10, 90])("what is typed after a press of %d ms into the line of the formula stands in the cell", async (delay) => {
  await select(2, 1);
  const { x, y } = await formulaLine();
  await page.mouse.click(x, y, { delay });
  await page.waitForFunction(() => document.activeElement?.id.endsWith("FORMULA_BAR"));
  await page.keyboard.type("by the line");
  await page.keyboard.press("Enter");
  await workbook.typed();
  expect((await workbook.sheet("Sheet1")).values[2]).toEqual([null, "by the line"]);
});

describe("into cells for text", () => {
  // As a spreadsheet program for the desk puts cells on the clipboard: what they are shown as, and their formats in a style sheet.
  const copied = `<html><head><meta name=ProgId content=Excel.Sheet><style><!--.a{mso-number-format:"\\@";} .b{mso-number-format:"Short Date";} .c{mso-number-format:"0\\.00";}--></style></head>
    <body><table><tr><td class=a>1-2</td><td class=b>01/02/2026</td><td class=c>3.50</td><td class=a>007</td></tr></table></body></html>`;

  test.each([
    ["cells of another spreadsheet program", { "text/html": copied, "text/plain": "1-2" }, ["1-2", "01/02/2026", "3.50", "007"]],
    ["words that look like a date", { "text/plain": "1-2" }, ["1-2", null, null, null]],
    ["numbers with zeros before them", { "text/plain": "007" }, ["007", null, null, null]],
  ])("%s are pasted as they were seen", async (_, clipboard, texts) => {
    await bring("Sample", "The sample plan is on the desk.");
    await workbook.goTo("Sites", 9, 0);
    await page.evaluate(async (given) => {
      await navigator.clipboard.write([new ClipboardItem(Object.fromEntries(Object.entries(given).map(([type, text]) => [type, new Blob([text], { type })])))]);
    }, clipboard);
    await page.keyboard.press("ControlOrMeta+v");
    await workbook.filled("Sites", 9, 0);
    expect((await workbook.sheet("Sites")).values[9]!.slice(0, 4)).toEqual(texts);
  });
});

test("what is typed while the page is busy showing another plan is written over nothing in it, and that is said", async () => {
  await page.evaluate(() => {
    const grid = globalThis.baywright;
    const show = grid.show.bind(grid);
    grid.show = (data) => {
      grid.show = show;
      show(data);
      document.documentElement.dataset["busy"] = "true";
      for (const end = performance.now() + 1_500; performance.now() < end; );
    };
  });
  await select(0, 0);
  await page.getByRole("button", { name: "Sample", exact: true }).click();
  // As soon as the page cannot answer any more.
  const answers = () => Promise.race([page.evaluate(() => true), page.waitForTimeout(300).then(() => false)]);
  while (await answers());
  const typing = page.keyboard.type("late").then(() => page.keyboard.press("Enter"));
  await page.getByText("What was typed while the plan was being opened stands in no cell: type it again.").waitFor();
  await typing;
  expect((await workbook.sheet("Sites")).values.flat()).not.toContain("late");
});

test("a folder that is dropped on the page gets a sentence", async () => {
  await page.evaluate(() => {
    const folder = Object.assign(new File([], "photos"), { arrayBuffer: () => Promise.reject(new DOMException("no file", "NotFoundError")) });
    const drop = Object.assign(new Event("drop", { bubbles: true, cancelable: true }), { dataTransfer: { files: [folder] } });
    document.querySelector("#work")!.dispatchEvent(drop);
  });
  await page.getByText('"photos" cannot be read. Choose one file, no folder, that is still where it was.').waitFor();
});
