import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Browser } from "playwright-core";
import { launchBrowser } from "./launch-browser";
import { WorkbookPage } from "./workbook-page";

/** What the tests of a story share: one browser, and a folder for the files that people hand on. */
export interface Story {
  /** Path of a file in the folder of the story. */
  at(name: string): string;
  open(): Promise<WorkbookPage>;
}

/** Begins the story of a test file; browser and folder are there for its tests and gone after them. */
export function beginStory(name: string): Story {
  let folder: string;
  let browser: Browser;
  beforeAll(async () => {
    folder = mkdtempSync(join(tmpdir(), `${name}-`));
    browser = await launchBrowser();
  });
  afterAll(async () => {
    await browser.close();
    rmSync(folder, { recursive: true });
  });
  return { at: (file) => join(folder, file), open: () => WorkbookPage.open(browser) };
}

/** Closes a page of a story, on which nothing may have gone wrong. */
export async function closeWhole(workbook: WorkbookPage): Promise<void> {
  await workbook.close();
  expect(workbook.faults).toEqual([]);
}
