import type { Browser, BrowserContext, Page } from "playwright-core";
import type { Grid } from "../../../src/standalone/open-grid";
import type { SheetSnapshot } from "../../../src/planning/workbook-model";

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

  private static async openIn(context: BrowserContext, address: string, faults: string[]): Promise<WorkbookPage> {
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

  /** Clicks a cell of the sheet in front; row and column count from 0. */
  async click(row: number, column: number): Promise<void> {
    const { x, y } = await this.place(row, column);
    await this.page.mouse.click(x, y);
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
    await this.page.waitForFunction(() => !globalThis.baywright.api.getActiveWorkbook()!.isCellEditing());
    await this.settle();
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

  private place(row: number, column: number): Promise<{ x: number; y: number }> {
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
