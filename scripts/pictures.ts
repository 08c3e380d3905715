// Takes the pictures of the guides from the running page: `npm run pictures`, after `npm run build`.
// `--check` takes none, and fails when what they show is newer than they are.
import { createHash } from "node:crypto";
import { mkdirSync, mkdtempSync, readFileSync, readdirSync, statSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, relative } from "node:path";
import type { Page } from "playwright-core";
import { launchBrowser } from "../tests/e2e/support/launch-browser";
import { serveSite } from "../tests/e2e/support/serve-site";
import { WorkbookPage } from "../tests/e2e/support/workbook-page";
import { reportStale } from "./keep-files";

const root = join(__dirname, "..");
const folder = join(root, "docs", "pictures");
const stamp = join(folder, "shows.txt");

/** What the pictures show: the page, the pane, and what stands in the tables and in a tab, however that comes about. */
const shown = ["src/standalone", "src/taskpane", "src/step", "src/planning/plan/set-up", "tests/golden/tabs"];

function digestOfShown(): string {
  const digest = createHash("sha256");
  for (const part of shown) {
    const whole = join(root, part);
    const files = statSync(whole).isFile() ? [whole] : readdirSync(whole, { recursive: true, encoding: "utf8" }).map((name) => join(whole, name)).sort();
    for (const file of files) if (statSync(file).isFile()) digest.update(relative(root, file)).update(readFileSync(file));
  }
  return digest.digest("hex");
}

const view = (page: Page, name: string): Promise<void> => page.getByRole("tab", { name }).click();

async function buildTabs(workbook: WorkbookPage): Promise<void> {
  await view(workbook.page, "Commission");
  await workbook.page.getByRole("button", { name: /^Build/ }).first().click();
  await workbook.page.getByRole("list", { name: "Report of the build" }).waitFor({ timeout: 120_000 });
}

/** Arranges what is to be seen; answers with the page on which it is. */
const scenes: Readonly<Record<string, (workbook: WorkbookPage) => Promise<Page>>> = {
  async workbook(workbook) {
    await workbook.showSheet("Arrays");
    await view(workbook.page, "Plan");
    await workbook.page.getByText("3 sites, 6 arrays").waitFor();
    return workbook.page;
  },
  async check(workbook) {
    const { values } = await workbook.sheet("Arrays");
    const column = values[3]!.indexOf("Rack");
    await workbook.page.evaluate((at) => globalThis.baywright.port.apply([{ kind: "write", sheet: "Arrays", row: 5, column: at, cells: [[{ value: "RR-R9" }]] }]), column);
    await workbook.showSheet("Arrays");
    await view(workbook.page, "Check");
    await workbook.page.getByText("RR-R9").first().waitFor();
    return workbook.page;
  },
  async functions(workbook) {
    await workbook.showSheet("Networks");
    await view(workbook.page, "Functions");
    await workbook.page.getByRole("searchbox", { name: "Find a function" }).fill("subnet");
    return workbook.page;
  },
  async tab(workbook) {
    await buildTabs(workbook);
    await workbook.showSheet((await workbook.sheetNames()).find((name) => name.includes("installation"))!);
    return workbook.page;
  },
  async step(workbook) {
    await buildTabs(workbook);
    const file = join(mkdtempSync(join(tmpdir(), "pictures-")), "thornmere.xlsx");
    await workbook.save(file);
    const phone = await workbook.context.browser()!.newContext({ viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true });
    const page = await phone.newPage();
    await page.goto(new URL("step/", workbook.page.url()).href);
    const choosing = page.waitForEvent("filechooser");
    await page.getByRole("button", { name: "Choose the .xlsx file" }).tap();
    await (await choosing).setFiles(file);
    await page.getByRole("button", { name: /installation/ }).first().tap();
    await page.getByRole("button", { name: /^Next open step/ }).tap();
    // The first step that says what gets hurt.
    const [caution, next] = [page.getByText("Caution", { exact: true }), page.getByRole("button", { name: "Next ›" })];
    while ((await caution.count()) === 0 && (await next.count()) > 0) await next.tap();
    return page;
  },
};

async function main(): Promise<void> {
  mkdirSync(folder, { recursive: true });
  const { server, url } = await serveSite(process.env["SITE"] ?? join(root, "dist"));
  const browser = await launchBrowser();
  for (const [name, arrange] of Object.entries(scenes)) {
    const workbook = await WorkbookPage.open(browser, url);
    const page = await arrange(workbook);
    await workbook.settle();
    await page.waitForTimeout(1_500);
    await page.screenshot({ path: join(folder, `${name}.png`) });
    if (page !== workbook.page) await page.context().close();
    await workbook.close();
    console.log(`docs/pictures/${name}.png`);
  }
  await browser.close();
  server.close();
  writeFileSync(stamp, `${digestOfShown()}\n`);
}

if (process.argv.includes("--check")) {
  if (readFileSync(stamp, "utf8").trim() !== digestOfShown()) reportStale(["docs/pictures"], "npm run build && npm run pictures");
} else {
  void main();
}
