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

/**
 * Begins the story of a test file; browser and folder are there for its tests and gone after them.
 *
 * Where one page serves all of its tests, `use` is given it before them; nothing may have gone wrong on it once they are over.
 */
export function beginStory(name: string, use?: (workbook: WorkbookPage) => void): Story {
  let folder: string;
  let browser: Browser;
  let page: WorkbookPage | null = null;
  beforeAll(async () => {
    folder = mkdtempSync(join(tmpdir(), `${name}-`));
    browser = await launchBrowser();
    if (use === undefined) return;
    page = await WorkbookPage.open(browser);
    use(page);
  });
  afterAll(async () => {
    const faults = page?.faults ?? [];
    await browser.close();
    rmSync(folder, { recursive: true });
    expect(faults).toEqual([]);
  });
  return { at: (file) => join(folder, file), open: () => WorkbookPage.open(browser) };
}

/** Closes a page of a story, on which nothing may have gone wrong. */
export async function closeWhole(workbook: WorkbookPage): Promise<void> {
  await workbook.close();
  expect(workbook.faults).toEqual([]);
}
