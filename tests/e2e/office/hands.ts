import type { Locator } from "playwright-core";
import { areaAddress, parseAreas, sheetNameOf, type Area } from "../../../src/sheet";
import type { WorkbookPage } from "../support/workbook-page";

/** How a person works: with the keys alone, or with the pointer, and keys only for what is typed. */
export type Way = "keyboard" | "mouse";

export interface Place {
  readonly sheet: string;
  readonly area: Area;
}

/** Reads a place as the name box takes it, such as Sites!B5:C6. */
export function placeOf(text: string): Place {
  const at = text.lastIndexOf("!") + 1;
  return { sheet: sheetNameOf(text.slice(0, at)), area: parseAreas(text.slice(at))[0]! };
}

/** What can be chosen in the menus and lists of the grid. */
const menuEntries = ".univer-popup button, [data-u-context-menu-submenu] button, [data-u-comp=sheets-dropdown-list] .univer-cursor-pointer";

/** What a person's hands do at the browser workbook: each of them works with what is on the page, and with nothing behind it. */
export class Hands {
  /** When the pointer was pressed at a place last, in milliseconds. */
  private readonly pressed = new Map<string, number>();

  constructor(
    readonly workbook: WorkbookPage,
    readonly way: Way,
  ) {}

  get page() {
    return this.workbook.page;
  }

  /** Selects cells: by the name box with keys, by tab and dragging with the pointer. */
  async select(text: string): Promise<void> {
    const { sheet, area } = placeOf(text);
    if (this.way === "keyboard") {
      await this.goTo("[data-u-comp=defined-name]");
      await this.page.keyboard.press("ControlOrMeta+a");
      await this.page.keyboard.type(text);
      await this.page.keyboard.press("Enter");
    } else {
      await this.turnTo(sheet);
      await this.drag({ row: area.row, column: area.column }, { row: area.row + area.rows - 1, column: area.column + area.columns - 1 });
    }
    await this.selected(text);
  }

  /** Clicks the tab of a sheet. */
  async turnTo(sheet: string): Promise<void> {
    await this.apart(sheet);
    await this.tab(sheet).click();
    await this.workbook.until(async (name) => (await globalThis.baywright.port.selection()).sheet === name, sheet);
  }

  tab(sheet: string) {
    return this.page.getByRole("tab", { name: sheet, exact: true });
  }

  /** Waits until these cells are the selected ones, and the keys go to them. */
  async selected(text: string): Promise<void> {
    const wanted = `${text} in the cells`;
    const now = async () => {
      const [{ sheet, area }, inCells] = await this.page.evaluate(async () => [await globalThis.baywright.port.selection(), document.activeElement?.closest("[data-u-comp=editor]") !== null] as const);
      return `${sheet}!${areaAddress(area)} ${inCells ? "in the cells" : "elsewhere on the page"}`;
    };
    const end = Date.now() + 20_000;
    while ((await now()) !== wanted) {
      if (Date.now() > end) throw new Error(`The keys go to ${await now()}, not to ${wanted}.`);
      await this.page.waitForTimeout(20);
    }
  }

  /** Presses keys one after the other, and waits until what was typed stands in its cell. */
  async press(...keys: string[]): Promise<void> {
    for (const key of keys) await this.page.keyboard.press(key);
    await this.workbook.typed();
  }

  async type(text: string, key = "Enter"): Promise<void> {
    await this.page.keyboard.type(text);
    await this.press(key);
  }

  /** Draws the pointer from one cell of the sheet in front to another with the button held. */
  async drag(from: { row: number; column: number }, to: { row: number; column: number }): Promise<void> {
    await this.draw(await this.workbook.place(from.row, from.column), await this.workbook.place(to.row, to.column));
  }

  /** Draws the pointer from one point of the page to another with the button held; it does not move before it is `free` to. */
  async draw(from: Point, to: Point, free?: () => Promise<unknown>): Promise<void> {
    await this.apart(`${Math.round(from.x)} ${Math.round(from.y)}`);
    await this.page.mouse.move(from.x, from.y);
    await this.page.mouse.down();
    await free?.();
    if (from.x !== to.x || from.y !== to.y) await this.page.mouse.move(to.x, to.y, { steps: 12 });
    await this.page.mouse.up();
  }

  /** Lets half a second pass since the last press at a place: two within it would be a double click, which nobody means here. */
  async apart(place: string): Promise<void> {
    await this.page.waitForTimeout(Math.max(0, (this.pressed.get(place) ?? 0) + 550 - Date.now()));
    this.pressed.set(place, Date.now());
  }

  /** The edges of cells of the sheet in front, on the page. */
  edges(text: string): Promise<{ left: number; top: number; right: number; bottom: number }> {
    return this.page.evaluate(({ row, column, rows, columns }) => {
      const sheet = globalThis.baywright.api.getActiveWorkbook()!.getActiveSheet();
      const canvas = document.querySelector("#grid canvas[id^=univer-sheet-main-canvas]")!.getBoundingClientRect();
      const [first, last] = [sheet.getRange(row, column).getCellRect(), sheet.getRange(row + rows - 1, column + columns - 1).getCellRect()];
      return { left: canvas.left + first.left, top: canvas.top + first.top, right: canvas.left + last.right, bottom: canvas.top + last.bottom };
    }, placeOf(text).area);
  }

  /** The middle of the head of a cell's column, or of its row. */
  async head(text: string, of: "column" | "row"): Promise<Point> {
    const { left, top, right, bottom } = await this.edges(text);
    const canvas = (await this.page.locator("#grid canvas[id^=univer-sheet-main-canvas]").boundingBox())!;
    return of === "column" ? { x: (left + right) / 2, y: canvas.y + 10 } : { x: canvas.x + 20, y: (top + bottom) / 2 };
  }

  /** Selects the whole row or column of a cell. */
  async selectWhole(text: string, of: "column" | "row"): Promise<void> {
    if (this.way === "keyboard") {
      await this.select(text);
      await this.press(of === "row" ? "Shift+Space" : "Control+Space");
      return;
    }
    await this.turnTo(placeOf(text).sheet);
    const { x, y } = await this.head(text, of);
    await this.page.mouse.click(x, y);
  }

  /** Opens the menu of what is selected, and chooses one entry after the other, each from the menu that the one before opened; entries are patterns. */
  async choose(text: string, of: "cell" | "column" | "row", ...entries: string[]): Promise<void> {
    await this.openMenu(text, of);
    await this.pick(...entries);
  }

  /** Opens the menu of what is selected. */
  async openMenu(text: string, of: "cell" | "column" | "row"): Promise<void> {
    if (this.way === "keyboard") {
      await this.page.keyboard.press("Shift+F10");
      return;
    }
    const { row, column } = placeOf(text).area;
    const { x, y } = of === "cell" ? await this.workbook.place(row, column) : await this.head(text, of);
    await this.page.mouse.click(x, y, { button: "right" });
  }

  /** Chooses entries of the menu that is open. */
  async pick(...entries: string[]): Promise<void> {
    for (const [at, entry] of entries.entries()) {
      const item = this.page.locator(menuEntries).filter({ hasText: new RegExp(`^${entry}$`), visible: true });
      await item.first().waitFor();
      if (this.way === "mouse") {
        if (at < entries.length - 1) await item.first().hover();
        // On its name: beside it there may be a box for a number.
        else await item.first().click({ position: { x: 30, y: 12 } });
        continue;
      }
      await this.downTo(entry);
      await this.page.keyboard.press(at < entries.length - 1 ? "ArrowRight" : "Enter");
    }
    await this.workbook.typed();
  }

  /** Presses the down arrow until an entry of the menu has the keyboard. */
  private async downTo(entry: string): Promise<void> {
    const focused = () => this.page.evaluate(() => (document.activeElement?.matches("[data-u-comp=editor], body") ? null : (document.activeElement?.textContent ?? "")));
    for (let presses = 0; presses < 40; presses += 1) {
      const text = await focused();
      if (text !== null && new RegExp(`^${entry}$`).test(text)) return;
      if (text !== null) await this.page.keyboard.press("ArrowDown");
      await this.page.waitForTimeout(20);
    }
    throw new Error(`The keyboard does not come to "${entry}"; it is at "${await focused()}".`);
  }

  /** Presses the down arrow until the box beside a label has the keyboard. */
  async downToInput(label: string): Promise<void> {
    const isThere = () =>
      this.page.evaluate((wanted) => document.activeElement instanceof HTMLInputElement && (document.activeElement.closest("[class*=univer-min-h-8]")?.textContent ?? "").includes(wanted), label);
    await this.until(() => document.activeElement?.matches("[data-u-comp=editor], body") === false);
    for (let presses = 0; presses < 40; presses += 1) {
      if (await isThere()) return;
      await this.page.keyboard.press("ArrowDown");
    }
    throw new Error(`The keyboard does not come to the box of ${label}.`);
  }

  /** Opens the dialog that finds, or that replaces too. The engine can search some seconds after it is up; until then nothing opens. */
  async openFind(what: "find" | "replace"): Promise<void> {
    const isOpen = () => this.page.evaluate(() => document.activeElement?.tagName === "INPUT" && document.activeElement.closest("[data-u-comp=defined-name]") === null);
    for (let tries = 0; tries < 8; tries += 1) {
      if (this.way === "keyboard") await this.page.keyboard.press(what === "find" ? "Control+f" : "Control+h");
      else {
        await this.tool("ui.operation.open-find-dialog");
        if (what === "replace") await this.page.getByText("Advanced Searching & Replace").click();
      }
      await this.page.waitForTimeout(1_000);
      if (await isOpen()) return;
    }
    throw new Error("Nothing opens that finds.");
  }

  /** Presses a button of the dialog that is open. */
  async pressButton(name: string): Promise<void> {
    const button = this.page.getByRole("button", { name, exact: true });
    if (this.way === "mouse") {
      await button.click();
      return;
    }
    await button.waitFor();
    for (let presses = 0; presses < 20 && !(await hasKeyboard(button)); presses += 1) await this.page.keyboard.press("Tab");
    await this.page.keyboard.press("Enter");
  }

  /** Opens the menu of the tab of the sheet in front, and chooses an entry. */
  async chooseOfTab(sheet: string, ...entries: string[]): Promise<void> {
    if (this.way === "keyboard") {
      await this.goTo("[data-u-comp=slide-tab-bar]");
      await this.page.keyboard.press("Shift+F10");
    } else await this.tab(sheet).click({ button: "right" });
    await this.pick(...entries);
  }

  /** Presses a button of the toolbar, or opens one of its drop-downs and chooses the entry at a place. */
  async tool(command: string, entry?: number): Promise<void> {
    const tool = this.page.locator(`[data-u-command="${command}"]:visible`);
    const more = this.page.locator("[data-u-comp=ribbon-toolbar-more] button");
    if (this.way === "mouse") {
      if ((await tool.count()) === 0) await more.click();
      if (entry === undefined) await tool.first().click();
      else {
        await tool.first().locator("xpath=descendant-or-self::*[@aria-haspopup]").first().click();
        await this.page.locator("[data-slot=dropdown-menu-item]:visible").nth(entry).click();
      }
    } else {
      await this.goTo("[data-u-comp=ribbon-toolbar]");
      if ((await tool.count()) === 0) {
        await this.tabTo(() => document.activeElement?.getAttribute("aria-label") === "More");
        await this.page.keyboard.press("Enter");
        await tool.first().waitFor();
        await this.until(() => document.activeElement?.closest("[data-slot=popover-content]") !== null);
      }
      const isThere = (wanted: string) => document.activeElement?.closest(`[data-u-command="${wanted}"]`) !== null && document.activeElement!.matches("button, [aria-haspopup]");
      await this.tabTo(isThere, command);
      await this.page.keyboard.press("Enter");
      if (entry !== undefined) {
        const wanted = this.page.getByRole("menuitem").nth(entry);
        await wanted.waitFor();
        await this.until(() => document.activeElement?.getAttribute("role") === "menuitem" || document.activeElement?.getAttribute("role") === "menu");
        // The engine moves the keyboard a moment after each key.
        for (let down = 0; down < 10 && !(await hasKeyboard(wanted)); down += 1) await this.page.keyboard.press("ArrowDown");
        await this.page.keyboard.press("Enter");
        // What is open beside the toolbar has the keyboard still.
        await this.page.keyboard.press("Escape");
      }
    }
    await this.workbook.typed();
  }

  /** Opens the borders of the toolbar and chooses the one at a place: the sixth is all of them. */
  async borders(place: number): Promise<void> {
    const command = "sheet.command.set-border-basic";
    // What opens them is no wider than nothing; its arrow is.
    const trigger = this.page.locator(`[data-u-command="${command}"] [aria-haspopup] > *`).first();
    const border = this.page.locator("[data-slot=popover-content] a").nth(place);
    if (this.way === "mouse") {
      await trigger.click();
      await border.click();
    } else {
      await this.goTo("[data-u-comp=ribbon-toolbar]");
      await this.tabTo((wanted) => document.activeElement?.closest(`[data-u-command="${wanted}"]`) !== null, command);
      await this.page.keyboard.press("Enter");
      await border.waitFor();
      for (let presses = 0; presses < 40 && !(await hasKeyboard(border)); presses += 1) await this.page.keyboard.press("ArrowDown");
      await this.page.keyboard.press("Enter");
    }
    await this.page.keyboard.press("Escape");
    await this.workbook.typed();
  }

  /** Presses F6 until a part of the page has the keyboard. */
  private async goTo(part: string): Promise<void> {
    for (let presses = 0; presses < 8; presses += 1) {
      await this.page.keyboard.press("F6");
      if (await this.page.evaluate((wanted) => document.activeElement?.closest(wanted) !== null, part)) return;
    }
    throw new Error(`F6 does not lead to ${part}.`);
  }

  /** Goes on with Tab until the keyboard is there. */
  private async tabTo(there: (given: string) => boolean, given = ""): Promise<void> {
    for (let presses = 0; presses < 60; presses += 1) {
      if (await this.page.evaluate<boolean>(`(${String(there)})(${JSON.stringify(given)})`)) return;
      await this.page.keyboard.press("Tab");
    }
    throw new Error(`The key Tab does not lead to ${given || String(there)}.`);
  }

  private until(ask: () => boolean): Promise<unknown> {
    return this.page.waitForFunction(ask);
  }

  /** Waits until what was copied or cut, which holds a text, is on the clipboard. */
  async copied(text: string): Promise<void> {
    await this.workbook.until(async (wanted) => (await navigator.clipboard.readText()).includes(wanted), text);
  }

  /** Puts text on the clipboard, as another program does. */
  async copyElsewhere(text: string): Promise<void> {
    await this.page.evaluate((copied) => navigator.clipboard.writeText(copied), text);
  }
}

const hasKeyboard = (item: Locator) => item.evaluate((element) => element === document.activeElement);

export interface Point {
  readonly x: number;
  readonly y: number;
}
