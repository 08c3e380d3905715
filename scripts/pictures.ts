// Takes the pictures of the guides from the running page: `npm run pictures`, after `npm run build`.
// `--check` takes none, and fails when what they show is newer than they are.
import { createHash } from "node:crypto";
import { mkdirSync, readFileSync, readdirSync, statSync, writeFileSync } from "node:fs";
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
const shown = ["src/standalone", "src/taskpane", "src/planning/plan/set-up", "tests/golden/tabs"];

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

const scenes: Readonly<Record<string, (workbook: WorkbookPage) => Promise<void>>> = {
  async workbook(workbook) {
    await workbook.showSheet("Arrays");
    await view(workbook.page, "Plan");
    await workbook.page.getByText("3 sites, 6 arrays").waitFor();
  },
  async check(workbook) {
    const { values } = await workbook.sheet("Arrays");
    const column = values[3]!.indexOf("Rack");
    await workbook.page.evaluate((at) => globalThis.baywright.port.apply([{ kind: "write", sheet: "Arrays", row: 5, column: at, cells: [[{ value: "RR-R9" }]] }]), column);
    await workbook.showSheet("Arrays");
    await view(workbook.page, "Check");
    await workbook.page.getByText("RR-R9").first().waitFor();
  },
  async functions(workbook) {
    await workbook.showSheet("Networks");
    await view(workbook.page, "Functions");
    await workbook.page.getByRole("searchbox", { name: "Find a function" }).fill("subnet");
  },
  async tab(workbook) {
    await view(workbook.page, "Commission");
    await workbook.page.getByRole("button", { name: /^Build/ }).first().click();
    await workbook.page.getByRole("list", { name: "Report of the build" }).waitFor({ timeout: 120_000 });
    await workbook.showSheet((await workbook.sheetNames()).find((name) => name.includes("installation"))!);
  },
};

async function main(): Promise<void> {
  mkdirSync(folder, { recursive: true });
  const { server, url } = await serveSite(process.env["SITE"] ?? join(root, "dist"));
  const browser = await launchBrowser();
  for (const [name, arrange] of Object.entries(scenes)) {
    const workbook = await WorkbookPage.open(browser, url);
    await arrange(workbook);
    await workbook.settle();
    await workbook.page.waitForTimeout(1_500);
    await workbook.page.screenshot({ path: join(folder, `${name}.png`) });
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
