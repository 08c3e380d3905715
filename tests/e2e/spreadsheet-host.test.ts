import { execFileSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Browser, Page } from "playwright-core";
import { catalogue } from "../../src/functions/catalogue";
import type { ProbeOutcome } from "../../src/workbook/self-test";
import type { HostOnPage } from "./spreadsheet-host";
import { launchBrowser } from "./support/launch-browser";

declare global {
  /** The host that stands in on the page of this test. */
  var hostOnPage: HostOnPage;
}

const root = join(__dirname, "..", "..");
const library = "https://appsforoffice.microsoft.com/lib/1/hosted/office.js";

let standIn: string;
let browser: Browser;
let page: Page;
let faults: string[];
let requests: string[];

beforeAll(async () => {
  const folder = mkdtempSync(join(tmpdir(), "host-"));
  const options = {
    entryPoints: [join(__dirname, "spreadsheet-host.ts")],
    bundle: true,
    format: "iife",
    target: "es2022",
    outfile: join(folder, "office.js"),
    logLevel: "error",
  };
  // In a process of its own: the builder does not run inside the test runner's realm.
  execFileSync(process.execPath, ["-e", `require("esbuild").buildSync(${JSON.stringify(options)})`], { cwd: root, stdio: "inherit" });
  // The client that the vendor ships for the web, byte for byte, and what stands in for the program behind it.
  const client = readFileSync(join(root, "node_modules", "@microsoft", "office-js", "dist", "excel-web-16.00.js"), "utf8");
  standIn = `${client}\n${readFileSync(join(folder, "office.js"), "utf8")}`;
  rmSync(folder, { recursive: true });
  browser = await launchBrowser();
});

afterAll(() => browser.close());

beforeEach(async () => {
  page = await browser.newPage({ viewport: { width: 360, height: 900 } });
  faults = [];
  requests = [];
  page.on("pageerror", (error) => faults.push(String(error)));
  page.on("console", (message) => message.type() === "error" && faults.push(message.text()));
  page.on("request", (request) => requests.push(request.url()));
  await page.route(library, (route) => route.fulfill({ contentType: "text/javascript", body: standIn }));
  await page.goto(`${process.env["BAYWRIGHT_URL"]!}taskpane.html`);
  await page.getByRole("tab", { name: "Plan" }).waitFor();
});

afterEach(async () => {
  await page.close();
  expect(faults).toEqual([]);
});

const said = (text: string) => page.locator(".bay-status [role=status]", { hasText: text }).waitFor();
const sheetNames = () => page.evaluate(() => globalThis.hostOnPage.book.sheetNames());

async function pressRibbon(name: string): Promise<void> {
  await page.evaluate((button) => new Promise<void>((completed) => void globalThis.hostOnPage.buttons.get(button)!({ completed })), name);
}

describe("the pane in the spreadsheet host", () => {
  test("hands over every worksheet function, follows the host's dark theme and asks nobody but its own site and the host library", async () => {
    expect((await page.evaluate(() => globalThis.hostOnPage.functions)).sort()).toEqual(catalogue.map(({ id }) => id).sort());
    expect(await page.locator("[data-theme]").getAttribute("data-theme")).toBe("dark");
    expect(requests.filter((url) => !url.startsWith(process.env["BAYWRIGHT_URL"]!))).toEqual([library]);
  });

  test("the ribbon's Check and Build turn to their views and end their events", async () => {
    await pressRibbon("showCheck");
    await page.locator("#bay-check").waitFor({ state: "visible" });
    await pressRibbon("showCommission");
    await page.locator("#bay-commission").waitFor({ state: "visible" });
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
    expect(await page.evaluate(() => globalThis.hostOnPage.startUp)).toEqual(["Load", "None"]);
  });

  test("tries the program on a sheet of its own by keyboard, tells what was found and gives one text of it", async () => {
    await page.evaluate(() => { globalThis.hostOnPage.book.sheet("Sheet1").setFormat(0, 0, "0.00"); });
    await page.getByRole("button", { name: "Menu" }).focus();
    await page.keyboard.press("Enter");
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

  test("a ribbon button ends its event where the pane cannot be shown", async () => {
    await page.evaluate(() => { globalThis.hostOnPage.refusesPane = true; });
    await pressRibbon("showCheck");
    expect(await page.locator("#bay-check").isVisible()).toBe(false);
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
    expect(formats).toContain("@");
  });

  test("checks the sample, builds a tab for each of its jobs and draws every view under the page's own policy", async () => {
    await page.getByRole("button", { name: "Load the sample" }).click();
    await said("Thornmere");
    for (const view of ["Check", "Commission", "Functions", "Plan"]) {
      await page.getByRole("tab", { name: view }).click();
      await page.locator(`#bay-${view.toLowerCase()}[aria-busy=false] > *`).first().waitFor();
    }
    const before = (await sheetNames()).length;
    await page.getByRole("tab", { name: "Commission" }).click();
    await page.getByRole("button", { name: /^Build/ }).first().click();
    await said("built");
    const names = await sheetNames();
    expect(names.length).toBeGreaterThan(before);
    expect(names).not.toContain("BAY unfinished");
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
    await page.unroute(library);
    await page.route(library, (route) => route.abort());
    await page.reload();
    await page.locator("#pane", { hasText: "The host library could not be loaded" }).waitFor();
    expect(faults.some((one) => one.includes("ERR_FAILED"))).toBe(true);
    faults.length = 0;
  });
});
