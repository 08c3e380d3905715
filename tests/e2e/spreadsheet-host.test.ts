import { execFileSync } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { readFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Browser, Page } from "playwright-core";
import { catalogue } from "../../src/functions/catalogue";
import type { ProbeOutcome } from "../../src/workbook/self-test";
import { readTabs } from "../../src/planning/commissioning/tab";
import { computeSheets, type HeldSheet } from "../support/host-workbook/compute-sheets";
import { readPdf, textOf } from "../support/read-pdf";
import { columnOf } from "../support/tab-on-sheet";
import type { ComputedSheets, HostOnPage } from "./spreadsheet-host";
import { launchBrowser } from "./support/launch-browser";

declare global {
  /** The host that stands in on the page of this test. */
  var hostOnPage: HostOnPage;
}

const root = join(__dirname, "..", "..");
/** Where the page takes the vendor's library from, and where it stands here. */
const library = "https://appsforoffice.microsoft.com/lib/1/hosted/";
const packaged = join(root, "node_modules", "@microsoft", "office-js", "dist");

let folder: string;
let browser: Browser;
let page: Page;
let faults: string[];
let requests: string[];

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), "host-"));
  const options = {
    entryPoints: [join(__dirname, "spreadsheet-host.ts")],
    bundle: true,
    format: "iife",
    target: "es2022",
    // The engine computes here, in the test, not on the page.
    external: ["./compute-sheets"],
    outfile: join(folder, "program.js"),
    logLevel: "error",
  };
  // In a process of its own: the builder does not run inside the test runner's realm.
  execFileSync(process.execPath, ["-e", `require("esbuild").buildSync(${JSON.stringify(options)})`], { cwd: root, stdio: "inherit" });
  browser = await launchBrowser();
});

afterAll(async () => {
  await browser.close();
  rmSync(folder, { recursive: true });
});

beforeEach(async () => {
  page = await browser.newPage({ viewport: { width: 360, height: 900 } });
  faults = [];
  requests = [];
  page.on("pageerror", (error) => faults.push(String(error)));
  page.on("console", (message) => message.type() === "error" && faults.push(message.text()));
  page.on("request", (request) => requests.push(request.url()));
  await page.exposeFunction("computeBeside", async (sheets: readonly HeldSheet[]): Promise<ComputedSheets> => [...(await computeSheets(sheets))].map(([name, results]) => [name, [...results]]));
  await page.addInitScript({ path: join(folder, "program.js") });
  await page.route(`${library}**`, (route) => route.fulfill({ path: join(packaged, new URL(route.request().url()).pathname.replace("/lib/1/hosted/", "")) }));
  await page.goto(`${process.env["BAYWRIGHT_URL"]!}taskpane.html`);
  await page.getByRole("tab", { name: "Plan" }).waitFor();
});

afterEach(async () => {
  await page.close();
  expect(faults).toEqual([]);
});

const said = (text: string) => page.locator(".bay-status [role=status]", { hasText: text }).waitFor();
const sheetNames = () => page.evaluate(() => globalThis.hostOnPage.book.sheetNames());

const pressRibbon = (name: string) => page.evaluate((button) => globalThis.hostOnPage.press(button), name);

/** Types into every row of a tab, as a person does, that its step is waived. */
async function waiveAll(job: string): Promise<void> {
  const sheet = await page.evaluate(async (name) => {
    await globalThis.hostOnPage.book.settle();
    const held = globalThis.hostOnPage.book.sheet(name);
    const { rows, columns } = held.used()!;
    const cells = <T>(of: (row: number, column: number) => T) => Array.from({ length: rows }, (_, row) => Array.from({ length: columns }, (__, column) => of(row, column)));
    return { name, visible: true, protected: false, tables: [], attachments: 0, values: cells((row, column) => held.value(row, column)), formulas: cells((row, column) => held.formula(row, column)) };
  }, job);
  const [tab] = readTabs({ sheets: [sheet] });
  const typed = { found: "Waived", by: "AB", note: "later" };
  const cells = tab!.steps.flatMap(({ row }) => Object.entries(typed).map(([column, text]) => ({ row, column: columnOf(tab!, column), text })));
  await page.evaluate(
    ([name, list]) => {
      for (const { row, column, text } of list) globalThis.hostOnPage.book.type(name, row, column, text);
    },
    [job, cells] as const,
  );
}

describe("the pane in the spreadsheet host", () => {
  test("hands over every worksheet function, follows the host's dark theme and asks nobody but its own site and the host library", async () => {
    const functions = await page.evaluate(() => Object.keys((CustomFunctions as unknown as { _association: { mappings: object } })._association.mappings));
    expect(functions.sort()).toEqual(catalogue.map(({ id }) => id).sort());
    expect(await page.locator("[data-theme]").getAttribute("data-theme")).toBe("dark");
    const files = requests.filter((url) => !url.startsWith(process.env["BAYWRIGHT_URL"]!)).map((url) => url.replace(library, ""));
    expect(files).toEqual(["office.js", "excel-win32-16.01.js", "en-us/office_strings.js"]);
    expect(await page.evaluate(() => globalThis.hostOnPage.unknown)).toEqual([]);
  });

  test("the ribbon's Check and Build turn to their views and end their events, also where the pane cannot be shown", async () => {
    await pressRibbon("showCheck");
    await page.locator("#bay-check").waitFor({ state: "visible" });
    await pressRibbon("showCommission");
    await page.locator("#bay-commission").waitFor({ state: "visible" });
    expect(await page.locator("#bay-check").isVisible()).toBe(false);
    await page.evaluate(() => { globalThis.hostOnPage.refusesPane = true; });
    await pressRibbon("showCheck");
    expect(await page.locator("#bay-check").isVisible()).toBe(false);
  });

  test("loads with the workbook only where a person turns that on, and no longer once it is turned off", async () => {
    await page.getByRole("button", { name: "Menu" }).click();
    await page.getByRole("menuitem", { name: "Load with this workbook" }).click();
    const dialog = page.getByRole("dialog", { name: "Load with this workbook" });
    await dialog.getByText("It is off in this workbook.").waitFor();
    await dialog.getByRole("button", { name: "Turn on" }).click();
    await dialog.getByText("It is on in this workbook.").waitFor();
    await dialog.getByRole("button", { name: "Turn off" }).click();
    await dialog.getByText("It is off in this workbook.").waitFor();
    expect(await page.evaluate(() => globalThis.hostOnPage.startUp)).toEqual(["Background", "Inactive"]);
  });

  test("tries the program on a sheet of its own by keyboard, tells what was found and gives one text of it", async () => {
    await page.evaluate(() => { globalThis.hostOnPage.book.sheet("Sheet1").setFormat(0, 0, "0.00"); });
    await page.getByRole("button", { name: "Menu" }).focus();
    await page.keyboard.press("Enter");
    // The menu gives the focus to its first item once it is open: whoever is quicker would lose it again.
    await page.locator("fluent-menu-item:focus").waitFor();
    await page.getByRole("menuitem", { name: "Self-test" }).focus();
    await page.keyboard.press("Enter");
    const dialog = page.getByRole("dialog", { name: "Self-test" });
    await dialog.getByRole("button", { name: "Start" }).focus();
    await page.keyboard.press("Enter");
    const box = dialog.getByRole("textbox", { name: "The answers as one text" });
    await box.waitFor();
    const { program, probes } = JSON.parse(await box.inputValue()) as { readonly program: Readonly<Record<string, string>>; readonly probes: readonly ProbeOutcome[] };
    expect(Object.keys(program)).toEqual(["platform", "version", "interface"]);
    expect(program["interface"]).toMatch(/^ExcelApi 1\.\d+$/);
    expect(probes.filter(({ id }) => id.startsWith("text-")).map(({ verdict }) => verdict)).toEqual(new Array(11).fill("as expected"));
    expect(probes.find(({ id }) => id === "load-switch")).toMatchObject({ found: "it is off", verdict: "noted" });
    const counted = probes.filter(({ verdict }) => verdict === "differs").length;
    await dialog.getByRole("status").first().filter({ hasText: counted === 0 ? "Nothing differs" : `${counted} thing` }).waitFor();
    expect(await sheetNames()).toEqual(["Sheet1"]);
    for (const width of [320, 400]) {
      await page.setViewportSize({ width, height: 900 });
      expect(await dialog.evaluate((element) => element.scrollWidth - element.clientWidth)).toBe(0);
    }
    await page.keyboard.press("Escape");
    await page.locator("fluent-button[aria-label=Menu]:focus").waitFor();
  });

  test("says why there was no self-test where no sheet can be added, and adds none", async () => {
    await page.evaluate(() => { globalThis.hostOnPage.book.protect(); });
    await page.getByRole("button", { name: "Menu" }).click();
    await page.getByRole("menuitem", { name: "Self-test" }).click();
    const dialog = page.getByRole("dialog", { name: "Self-test" });
    await dialog.getByRole("button", { name: "Start" }).click();
    await dialog.getByText("The structure of this workbook is protected").waitFor();
    expect(await sheetNames()).toEqual(["Sheet1"]);
  });

  test("loads the sample into the workbook, and leaves no mark that has others load the add-in", async () => {
    await page.getByRole("button", { name: "Load the sample" }).click();
    await said("Thornmere");
    expect(await sheetNames()).toEqual(expect.arrayContaining(["Sheet1", "Sites", "Arrays", "Networks", "Ports"]));
    expect(await page.evaluate(() => globalThis.hostOnPage.startUp)).toEqual([]);
    const { text, formats } = await page.evaluate(() => {
      const sheet = globalThis.hostOnPage.book.sheet("Networks");
      const rows = Array.from({ length: 30 }, (_, row) => row);
      return { text: rows.flatMap((row) => JSON.stringify(sheet.value(row, 2))), formats: rows.map((row) => sheet.format(row, 2)) };
    });
    expect(text.filter((one) => one.includes("/")).length).toBeGreaterThan(2);
    // What formulas come to is seen by the pane as by people: the six arrays of the sample hold something.
    const usable = await page.evaluate(async () => {
      const { book } = globalThis.hostOnPage;
      await book.settle();
      const column = Array.from({ length: 60 }, (_, at) => at).find((at) => book.value("Arrays", 3, at) === "Usable")!;
      return Array.from({ length: 6 }, (_, row) => book.value("Arrays", 4 + row, column));
    });
    expect(usable.filter((value) => typeof value === "number" && value > 0)).toHaveLength(6);
    expect(formats).toContain("@");
  });

  test("sets up, assigns, checks, builds, rebuilds, closes out and hands over a job under the page's own policy", async () => {
    const button = (name: string | RegExp) => page.getByRole("button", { name });
    const turnTo = async (view: string) => {
      await page.getByRole("tab", { name: view }).click();
      await page.locator(`#bay-${view.toLowerCase()}[aria-busy=false] > *`).first().waitFor();
    };
    await button("Load the sample").click();
    await said("Thornmere");
    const job = "Bindery survey";
    await page.evaluate((name) => {
      const { book } = globalThis.hostOnPage;
      const column = (sheet: string, header: string) => Array.from({ length: 40 }, (_, at) => at).find((at) => book.value(sheet, 3, at) === header)!;
      // Somebody has every section as a list, so that each step is waived in a row of its own, clears an address of the plan, and writes a job below its others.
      for (let at = 4; book.value("Procedures", at, 0) !== null; at += 1) book.type("Procedures", at, column("Procedures", "Shown as"), "list");
      book.type("Ports", 4, column("Ports", "Address"), "");
      const row = Array.from({ length: 40 }, (_, at) => at).find((at) => at > 3 && book.value("Jobs", at, column("Jobs", "Job")) === null)!;
      [name, "Bindery", "Site survey", "bi-array-1"].forEach((text, at) => { book.type("Jobs", row, column("Jobs", "Job") + at, text); });
    }, job);
    await button(/^Assign addresses/).click();
    await button("Write 1 cell").click();
    await said("1 cell");
    for (const view of ["Check", "Functions", "Commission"]) await turnTo(view);
    await button("Choose none").click();
    await page.locator(`fluent-checkbox[aria-label="Build ${job}"]`).click();
    await button("Build 1 tab").click();
    await said("1 tab built");
    await waiveAll(job);
    await button("Build 1 tab").click();
    await page.getByRole("list", { name: "Report of the build" }).getByText("records carried over").waitFor();
    expect(await sheetNames()).toEqual(expect.arrayContaining(["Sheet1", "Ports", job, `${job} before 2`]));
    expect(await sheetNames()).not.toContain("BAY unfinished");
    await page.locator(`summary[aria-label="More for ${job}"]`).click();
    await button(/^Close out/).click();
    await page.getByRole("textbox", { name: "Closed by" }).fill("GH");
    await button("Close and seal").click();
    await said("is closed and sealed with code");
    const code = /sealed with code (\S+)\./.exec((await page.locator(".bay-status [role=status]").textContent())!)![1]!;
    await page.locator(`summary[aria-label="More for ${job}"]`).click();
    const waiting = page.waitForEvent("download");
    await button(/^Save PDF/).click();
    const { pages } = await readPdf(await readFile(await (await waiting).path()));
    expect(pages.length).toBeGreaterThan(1);
    for (const one of pages) expect(textOf(one)).toContain(code);
    await button(/^Update plan from this job/).click();
    await said("The plan says already what the accepted records of this job say.");
    expect(await page.evaluate(() => globalThis.hostOnPage.unknown)).toEqual([]);
  });

  test("a cell that is being edited is answered with a sentence and nothing is written", async () => {
    await page.evaluate(() => {
      globalThis.hostOnPage.book.failAt({ sync: 1, code: "InvalidOperationInCellEditMode" });
    });
    await page.getByRole("button", { name: "Load the sample" }).click();
    await said("Press Enter or Esc in the sheet");
    expect(await sheetNames()).toEqual(["Sheet1"]);
  });

  test("says so where the host library cannot be loaded", async () => {
    await page.unroute(`${library}**`);
    await page.route(`${library}**`, (route) => route.abort());
    await page.reload();
    await page.locator("#pane", { hasText: "The host library could not be loaded" }).waitFor();
    expect(faults.some((one) => one.includes("ERR_FAILED"))).toBe(true);
    faults.length = 0;
  });
});
