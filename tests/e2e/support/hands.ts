import type { Locator } from "playwright-core";
import type { WorkbookPage } from "./workbook-page";

/**
 * Seconds of the operators of the Keystroke-Level Model (Card, Moran and Newell 1980), from memory: a key of somebody who does not type for a living, pointing with
 * the mouse, pressing and releasing its button, a hand that goes to it or back, and the thought before each unit of work.
 */
const seconds = { key: 0.28, point: 1.1, button: 0.2, home: 0.4, think: 1.35 } as const;

/** The hands of somebody who works on the page: what they do is done there, and counted. */
export class Hands {
  /** Clicks, choices from lists included. */
  clicks = 0;
  /** Cells and fields into which something was typed. */
  cells = 0;
  keys = 0;
  /** Everything that went into a cell, to see what kind of thing people had to type. */
  readonly typed: string[] = [];

  constructor(private readonly workbook: WorkbookPage) {}

  /** How long hands alone take over all of it: nobody reads, looks up or waits. */
  get seconds(): number {
    const { key, point, button, home, think } = seconds;
    return this.clicks * (think + home + point + button) + this.cells * think + this.keys * key;
  }

  async click(target: Locator): Promise<void> {
    this.clicks += 1;
    await target.click();
  }

  press(name: string | RegExp): Promise<void> {
    return this.click(this.workbook.page.getByRole("button", { name, exact: typeof name === "string" }));
  }

  /** Opens a list and chooses: two clicks. */
  async choose(label: string, option: string): Promise<void> {
    this.clicks += 2;
    await this.workbook.page.getByLabel(label, { exact: true }).selectOption(option);
  }

  /** Clicks a field and types into it. */
  async fill(field: Locator, text: string): Promise<void> {
    this.count([text]);
    this.clicks += 1;
    await field.fill(text);
  }

  /** Goes to a cell with a click on its sheet and one on the cell, and types with a key after each text; "" passes a cell over. */
  async typeFrom(sheet: string, row: number, column: number, texts: readonly string[], key: "Tab" | "Enter" = "Tab"): Promise<void> {
    this.count(texts);
    this.clicks += 2;
    await this.workbook.typeFrom(sheet, row, column, texts, key);
  }

  private count(texts: readonly string[]): void {
    const filled = texts.filter((text) => text !== "");
    this.typed.push(...filled);
    this.cells += filled.length;
    this.keys += texts.join("").length + texts.length;
  }
}
