import { basename } from "node:path";
import type { Browser, BrowserContext, Locator, Page } from "playwright-core";
import type { Grid } from "../../../src/standalone/grid/open-grid";
import type { SheetSnapshot } from "../../../src/sheet";

declare global {
  // The page shows its grid under this name.
  var baywright: Grid;
}

/** The browser workbook in a browser, driven as a person drives it: clicks and keys go to the page, answers are read from the grid. */
export class WorkbookPage {
  private constructor(
    readonly page: Page,
    readonly context: BrowserContext,
    /** What went wrong on the page: errors of its scripts and requests that left the site. */
    readonly faults: string[],
  ) {}

  /** Opens the page as somebody who was never there before, and waits until its grid can be used. */
  static async open(browser: Browser, address = process.env["BAYWRIGHT_URL"]!): Promise<WorkbookPage> {
    return WorkbookPage.openIn(await browser.newContext({ viewport: { width: 1440, height: 900 }, acceptDownloads: true }), address, []);
  }

  /** Opens the page in another tab of the same browser. */
  openTab(): Promise<WorkbookPage> {
    return WorkbookPage.openIn(this.context, new URL(".", this.page.url()).href, this.faults);
  }

  /** Opens the page in another tab of a browser that may know it already. */
  static async openIn(context: BrowserContext, address: string, faults: string[] = []): Promise<WorkbookPage> {
    // A busy machine is no fault: only what hangs is to end here.
    context.setDefaultTimeout(120_000);
    const page = await context.newPage();
    page.on("pageerror", (error) => faults.push(String(error)));
    page.on("request", (request) => {
      if (!request.url().startsWith(address) && !/^(data|blob):/.test(request.url())) faults.push(`request to ${request.url()}`);
    });
    const opened = new WorkbookPage(page, context, faults);
    await page.goto(address);
    await opened.ready();
    return opened;
  }

  /** Waits until the grid is up and has computed. */
  async ready(): Promise<void> {
    await this.page.waitForFunction(() => document.documentElement.dataset["ready"] === "true");
    await this.settle();
  }

  async settle(): Promise<void> {
    await this.page.evaluate(() => globalThis.baywright.live.settle());
  }

  /** Brings a sheet to the front by its tab at the foot of the grid. */
  async showSheet(name: string): Promise<void> {
    await this.page.evaluate((sheet) => globalThis.baywright.port.apply([{ kind: "select", sheet, area: { row: 0, column: 0, rows: 1, columns: 1 } }]), name);
  }

  /** Types another name over a sheet's tab and presses Enter. */
  async renameSheet(name: string, to: string): Promise<void> {
    const tab = this.page.getByText(name, { exact: true });
    // Two clicks that a busy page sees too far apart are no double click to it, so it is asked again until the tab can be typed over.
    while ((await tab.getAttribute("contenteditable")) !== "true") await tab.dblclick();
    await this.page.keyboard.press("ControlOrMeta+a");
    await this.page.keyboard.type(to);
    await this.page.keyboard.press("Enter");
  }

  /** Clicks a cell of the sheet in front, once more where a busy page was not there yet; row and column count from 0. */
  async click(row: number, column: number): Promise<void> {
    for (let tries = 0; tries < 5; tries += 1) {
      const { x, y } = await this.place(row, column);
      await this.page.mouse.click(x, y);
      if (await this.isSelected(row, column)) return;
    }
  }

  /** Tells whether a cell of the sheet in front is in the selection, or comes to be in it within a second. */
  private isSelected(row: number, column: number): Promise<boolean> {
    const selects = this.until(
      async ([down, across]) => {
        const { area } = await globalThis.baywright.port.selection();
        return down >= area.row && down < area.row + area.rows && across >= area.column && across < area.column + area.columns;
      },
      [row, column] as const,
      1_000,
    );
    return selects.then(() => true, () => false);
  }

  /** Asks the page until it answers yes. (What the driver waits for itself must answer at once: a promise is a yes to it.) */
  async until<A>(ask: (given: A) => Promise<boolean>, given: A, limit = 120_000): Promise<void> {
    const end = Date.now() + limit;
    while (!(await this.page.evaluate<boolean>(`(${String(ask)})(${JSON.stringify(given)})`))) {
      if (Date.now() > end) throw new Error(`The page did not come to answer yes to ${String(ask)}`);
      await this.page.waitForTimeout(20);
    }
  }

  /** Opens the menu of a cell. */
  async openMenu(row: number, column: number): Promise<void> {
    const { x, y } = await this.place(row, column);
    await this.page.mouse.click(x, y, { button: "right" });
  }

  /** Moves the pointer over a cell. */
  async hover(row: number, column: number): Promise<void> {
    const { x, y } = await this.place(row, column);
    await this.page.mouse.move(x, y, { steps: 4 });
  }

  /** Types into a cell of the sheet in front and presses Enter. */
  async type(row: number, column: number, text: string): Promise<void> {
    await this.click(row, column);
    await this.page.keyboard.type(text);
    await this.page.keyboard.press("Enter");
    await this.typed();
  }

  /** Waits until what was typed stands in its cell and is computed. */
  async typed(): Promise<void> {
    await this.page.waitForFunction(() => !globalThis.baywright.api.getActiveWorkbook()!.isCellEditing());
    await this.settle();
  }

  /** Goes to a cell as by the name box, and types texts with a key after each: Tab along the row, Enter down the column; "" passes a cell over. */
  async typeFrom(sheet: string, row: number, column: number, texts: readonly string[], key: "Tab" | "Enter" = "Tab"): Promise<void> {
    await this.goTo(sheet, row, column);
    for (const text of texts) {
      // The first key opens the cell; the rest comes in one go, as from an input method.
      await this.page.keyboard.type(text.slice(0, 1));
      await this.page.keyboard.insertText(text.slice(1));
      await this.page.keyboard.press(key);
    }
    await this.typed();
  }

  /** Pastes rows from another program, their cells parted by tabs, with their first cell at this place. */
  async paste(sheet: string, row: number, column: number, rows: readonly (readonly string[])[]): Promise<void> {
    await this.goTo(sheet, row, column);
    await this.context.grantPermissions(["clipboard-read", "clipboard-write"]);
    await this.page.evaluate((text) => navigator.clipboard.writeText(text), rows.map((cells) => cells.join("\t")).join("\n"));
    await this.page.keyboard.press("ControlOrMeta+v");
    const ending = [...rows.at(-1)!].reverse().findIndex((text) => text !== "");
    const corner = { row: row + rows.length - 1, column: column + rows.at(-1)!.length - 1 - ending };
    await this.filled(sheet, corner.row, corner.column);
    await this.settle();
  }

  /** Waits until something stands in a cell: on a busy machine a key arrives after whoever asks for its effect. */
  async filled(sheet: string, row: number, column: number): Promise<void> {
    await this.until(
      async ([name, down, across]) => {
        const { sheets } = await globalThis.baywright.port.read([name]);
        return (sheets.find((one) => one.name === name)?.values[down]?.[across] ?? "") !== "";
      },
      [sheet, row, column] as const,
    );
  }

  /** Saves the workbook as a file. */
  async save(path: string): Promise<void> {
    const waiting = this.page.waitForEvent("download");
    await this.button("Save .xlsx").click();
    await (await waiting).saveAs(path);
  }

  /** Opens a file in the place of the workbook. */
  async openFile(path: string): Promise<void> {
    await this.chooseFile(this.button("Open …"), path);
    await this.page.getByText(`${basename(path)} is open.`).waitFor();
    await this.settle();
  }

  /** Clicks what asks for a file, and gives it one. */
  async chooseFile(asking: Locator, path: string): Promise<void> {
    const choosing = this.page.waitForEvent("filechooser");
    await asking.click();
    await (await choosing).setFiles(path);
  }

  button(name: string | RegExp): Locator {
    return this.page.getByRole("button", { name });
  }

  /** Turns the pane to one of its views. */
  async turnTo(view: string): Promise<void> {
    await this.page.getByRole("tab", { name: view }).click();
    await this.page.locator(`#bay-${view.toLowerCase()} > *`).first().waitFor();
  }

  /** Waits until the pane says something that holds a text, and answers with the whole of it. */
  async said(text: string): Promise<string> {
    return (await this.page.locator(".bay-status [role=status]", { hasText: text }).textContent()) ?? "";
  }

  /** What a sheet holds now. */
  async sheet(name: string): Promise<SheetSnapshot> {
    const { sheets } = await this.page.evaluate((sheet) => globalThis.baywright.port.read([sheet]), name);
    const found = sheets.find((one) => one.name === name);
    if (found === undefined) throw new Error(`There is no sheet ${name}.`);
    return found;
  }

  async sheetNames(): Promise<string[]> {
    return this.page.evaluate(async () => (await globalThis.baywright.port.read([])).sheets.map((sheet) => sheet.name));
  }

  async close(): Promise<void> {
    await this.context.close();
  }

  /** Goes to a cell as by the name box, with the keys in the grid. */
  async goTo(sheet: string, row: number, column: number): Promise<void> {
    await this.showSheet(sheet);
    await this.click(0, 0);
    const area = { row, column, rows: 1, columns: 1 };
    await this.page.evaluate((place) => globalThis.baywright.port.apply([{ kind: "select", ...place }]), { sheet, area });
  }

  /** The middle of a cell of the sheet in front, on the page. */
  place(row: number, column: number): Promise<{ x: number; y: number }> {
    return this.page.evaluate(
      ([down, across]) => {
        const sheet = globalThis.baywright.api.getActiveWorkbook()!.getActiveSheet();
        const cell = sheet.getRange(down!, across!).getCellRect();
        const canvas = document.querySelector("#grid canvas[id^=univer-sheet-main-canvas]")!.getBoundingClientRect();
        return { x: canvas.left + cell.left + cell.width / 2, y: canvas.top + cell.top + cell.height / 2 };
      },
      [row, column],
    );
  }
}
