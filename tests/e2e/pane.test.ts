import { mkdtempSync, rmSync } from "node:fs";
import type { Server } from "node:http";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Browser, Page } from "playwright-core";
import { isFurther, tableKeys } from "../../src/planning/plan/schema";
import type { WorkbookSnapshot } from "../../src/sheet";
import type { PlainPort } from "../support/plain-workbook";
import { complaintsOn } from "./support/complaints";
import { launchBrowser } from "./support/launch-browser";
import { buildPaneSite } from "./support/pane-site";
import { serveSite } from "./support/serve-site";

declare global {
  /** What the page of this test shows of itself. */
  var page: { readonly port: PlainPort; returned: WorkbookSnapshot | null; turnTheme(to: string): void };
}

const views = ["Plan", "Check", "Commission", "Functions"] as const;

let folder: string;
let server: Server;
let address: string;
let browser: Browser;
let page: Page;
let faults: string[];

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), "pane-"));
  buildPaneSite(folder);
  ({ server, url: address } = await serveSite(folder));
  browser = await launchBrowser();
});

afterAll(async () => {
  await browser.close();
  server.close();
  rmSync(folder, { recursive: true });
});

afterEach(async () => {
  await page.close();
  expect(faults).toEqual([]);
});

async function open({ width = 320, theme = "light", sample = true, steps = "" } = {}): Promise<void> {
  page = await browser.newPage({ viewport: { width, height: 900 } });
  faults = [];
  page.on("pageerror", (error) => faults.push(String(error)));
  page.on("console", (message) => message.type() === "error" && faults.push(message.text()));
  await page.goto(`${address}?theme=${theme}${steps === "" ? "" : `&steps=${steps}`}`);
  if (!sample) return;
  await button("Load the sample").click();
  await said("Thornmere");
}

const button = (name: string | RegExp) => page.getByRole("button", { name });

/** Waits until the status line says something. */
async function said(text: string): Promise<void> {
  await page.locator(".bay-status [role=status]", { hasText: text }).waitFor();
}

async function turnTo(view: string): Promise<void> {
  await page.getByRole("tab", { name: view }).click();
  await page.locator(`#bay-${view.toLowerCase()}[aria-busy=false] > *`).waitFor();
}

/** Waits until nothing on the page moves or changes its colour any more. */
async function still(): Promise<void> {
  await page.waitForFunction(() => document.getAnimations().every(({ playState }) => playState !== "running"));
}

/** Writes into the column of a planning table, as somebody else would who edits the workbook; row 1 is the first below the header. */
function edit(sheet: string, header: string, row: number, value: string | number | null): Promise<void> {
  return page.evaluate(
    ({ sheet: name, header: text, row: at, value: what }) => {
      const { port } = globalThis.page;
      const column = port.workbook.sheets.find((one) => one.name === name)!.values[3]!.indexOf(text);
      return port.apply([{ kind: "write", sheet: name, row: 3 + at, column, cells: [[{ value: what }]] }]);
    },
    { sheet, header, row, value },
  );
}

function cell(sheet: string, header: string, row: number): Promise<unknown> {
  return page.evaluate(
    ({ sheet: name, header: text, row: at }) => {
      const { values } = globalThis.page.port.workbook.sheets.find((one) => one.name === name)!;
      return values[3 + at]![values[3]!.indexOf(text)];
    },
    { sheet, header, row },
  );
}

/** What the accessibility checker finds; of a theme other than the light one its colours are asked, as all else is the same in each. */
function complaints(theme: Theme): Promise<readonly string[]> {
  return complaintsOn(page, theme === "light" ? {} : { runOnly: ["cat.color"] });
}

const themes = ["light", "dark", "contrast"] as const;
type Theme = (typeof themes)[number];

test.each(themes)("the accessibility checker finds nothing in any view, preview, menu or dialog, in the %s theme", async (theme) => {
  await open({ theme });
  await edit("Ports", "Address", 2, null);
  await edit("Jobs", "Job", 1, "Reading/Room");
  for (const view of views) {
    await turnTo(view);
    if (view === "Plan") {
      await button(/Assign addresses/).click();
      await page.getByRole("region", { name: "Assign addresses: changes" }).waitFor();
    }
    if (view === "Functions") await page.locator("summary:visible").first().click();
    await still();
    expect({ view, complaints: await complaints(theme) }).toEqual({ view, complaints: [] });
  }
  await button("Menu").click();
  expect(await complaints(theme)).toEqual([]);
  await page.getByRole("menuitem", { name: "About" }).click();
  expect(await complaints(theme)).toEqual([]);
  await page.keyboard.press("Escape");
  await button("Menu").click();
  await page.getByRole("menuitem", { name: "Self-test" }).click();
  const selfTest = page.getByRole("dialog", { name: "Self-test" });
  await selfTest.getByRole("button", { name: "Start" }).click();
  await selfTest.getByText("1 thing of 4 differs").waitFor();
  await selfTest.getByText("As expected (1)").click();
  await still();
  expect(await complaints(theme)).toEqual([]);
});

describe.each([320, 450])("at a width of %i px", (width) => {
  test("nothing reaches beyond the edge and the top right corner stays clear", async () => {
    await open({ width });
    for (const view of views) {
      await turnTo(view);
      expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(width);
      expect(await page.locator(".bay-view:not([hidden])").evaluate(({ scrollWidth, clientWidth }) => scrollWidth - clientWidth)).toBeLessThanOrEqual(0);
      const corner = await page.evaluate((right) => document.elementFromPoint(right - 20, 16)!.className, width);
      expect(corner).toBe("bay-bar");
    }
  });
});

test("the theme follows the host while the pane is open", async () => {
  await open({ sample: false });
  const ground = () => page.locator(".bay").evaluate((element) => getComputedStyle(element).backgroundColor);
  const light = await ground();
  await page.evaluate(() => globalThis.page.turnTheme("dark"));
  expect(await ground()).not.toBe(light);
});

describe("by keyboard alone", () => {
  test("arrows go through the tabs, Tab leads into the view", async () => {
    await open();
    await page.getByRole("tab", { name: "Plan" }).focus();
    await page.keyboard.press("ArrowRight");
    await page.locator("#bay-check").waitFor();
    expect(await page.getByRole("tab", { name: "Check" }).getAttribute("aria-selected")).toBe("true");
    await page.keyboard.press("Tab");
    expect(await page.evaluate(() => document.activeElement!.id)).toBe("bay-check");
  });

  test("the menu opens, closes and gives the focus back", async () => {
    await open({ sample: false });
    await button("Menu").focus();
    await page.keyboard.press("Enter");
    await page.locator("fluent-menu-item:focus").waitFor();
    await page.keyboard.press("ArrowUp");
    await page.keyboard.press("Enter");
    await page.getByRole("dialog").waitFor();
    await page.keyboard.press("Escape");
    await page.locator("fluent-button[aria-label=Menu]:focus").waitFor();
  });
});

describe("the Plan view", () => {
  test("sets up tables, says what it added, and touches nothing the second time", async () => {
    await open({ sample: false });
    await button("Set up tables").click();
    await said("tables added. Begin with Sites");
    expect(await page.evaluate(() => globalThis.page.port.workbook.sheets.length)).toBe(1 + tableKeys.filter((key) => !isFurther(key)).length);
    expect(await page.evaluate(() => globalThis.page.port.workbook.sheets[0]!.values[0]![0])).toBe("taken");
    expect(await button("Set up tables").count()).toBe(0);
  });

  test("adds a further table when it is asked for, and does not offer it again", async () => {
    await open();
    await button("Add the table Shelves").click();
    await said("The table Shelves stands on a sheet of its own now");
    expect(await page.evaluate(() => globalThis.page.port.workbook.sheets.map(({ name }) => name))).toContain("Shelves");
    expect(await button("Add the table Shelves").count()).toBe(0);
    expect(await button("Add the table Drives").count()).toBe(1);
  });

  test("shows addresses before it writes them, and writes nothing when left", async () => {
    await open();
    const before = await cell("Ports", "Address", 2);
    await edit("Ports", "Address", 2, null);
    await button(/Assign addresses/).click();
    await page.getByRole("heading", { name: "Assign addresses: 1 cell would change" }).waitFor();
    await button("Leave it as it is").click();
    expect(await cell("Ports", "Address", 2)).toBeNull();
    await button(/Assign addresses/).click();
    await button("Write 1 cell").click();
    await said("1 cell written");
    expect(await cell("Ports", "Address", 2)).toBe(before);
  });

  test("writes nothing when somebody changed the plan after the preview", async () => {
    await open();
    await edit("Ports", "Address", 2, null);
    await button(/Assign addresses/).click();
    await page.getByRole("heading", { name: "Assign addresses: 1 cell would change" }).waitFor();
    await edit("Ports", "Address", 3, null);
    await button("Write 1 cell").click();
    await said("nothing was written");
    expect(await cell("Ports", "Address", 2)).toBeNull();
  });

  test("draws each picture with a name and a description, and copies it as PNG", async () => {
    await open();
    await page.context().grantPermissions(["clipboard-read", "clipboard-write"]);
    for (const name of ["Capacity by pool", "Rack elevation", "Feed loads", "Cabling"]) {
      await page.getByLabel("Picture").selectOption(name);
      const picture = page.locator("svg.bay-picture");
      expect(await picture.locator("> title").textContent()).not.toBe("");
      expect((await picture.locator("> desc").textContent())!.length).toBeGreaterThan(20);
    }
    await button("Copy as PNG").click();
    await said("is copied");
    const size = await page.evaluate(async () => {
      const blob = await (await navigator.clipboard.read())[0]!.getType("image/png");
      return (await createImageBitmap(blob)).width;
    });
    expect(size).toBe(870);
  });

  test("follows the workbook: an array moved onto another is marked in the rack", async () => {
    await open();
    await page.getByLabel("Picture").selectOption("Rack elevation");
    await edit("Arrays", "Rack", 2, "RR-R1");
    await page.locator("svg.bay-picture .item.alarm").first().waitFor();
    expect(await page.locator("figcaption").textContent()).toContain("(overlaps)");
  });
});

describe("the Check view", () => {
  test("findings come and go while somebody edits, and a click selects the cell", async () => {
    await open();
    await turnTo("Check");
    const counts = page.locator(".bay-weights");
    await counts.getByText("Stop 0").waitFor();
    await edit("Ports", "Switch", 1, "nowhere");
    await counts.getByText("Stop 1").waitFor();
    await page.getByRole("button", { name: /"nowhere"/ }).click();
    await page.waitForFunction(() => globalThis.page.port.selected!.sheet === "Ports");
    expect(await page.evaluate(() => globalThis.page.port.selected!.area)).toMatchObject({ row: 4 });
    await edit("Ports", "Switch", 1, "rr-sw1");
    await counts.getByText("Stop 0").waitFor();
    await page.getByText(/^Checked/).waitFor();
  });

  test("mends one finding and then all the rest, each after a preview", async () => {
    await open();
    await edit("Arrays", "Id", 1, null);
    await edit("Jobs", "Job", 1, "Reading/Room");
    await turnTo("Check");
    await button(/^Mend: .*Job/).click();
    await button("Write 1 cell").click();
    await said("1 cell written");
    expect(await cell("Jobs", "Job", 1)).toBe("Reading-Room");
    await button(/Mend all/).click();
    await button(/^Write/).click();
    await said("written");
    expect(await cell("Arrays", "Id", 1)).toMatch(/^A\d{4}$/);
    await page.locator(".bay-weights").getByText("Stop 0").waitFor();
  });
});

describe("the Commission view", () => {
  test("shows where the page for a phone stands, and says that no phone reaches an address of this machine", async () => {
    await open({ sample: false });
    await turnTo("Commission");
    await page.getByRole("link", { name: `${address}step/` }).waitFor();
    expect(await page.getByText("a phone cannot reach it").count()).toBe(1);
    await page.close();
    await open({ sample: false, steps: "https://baywright.example.com/step/" });
    await turnTo("Commission");
    expect(await page.getByRole("link", { name: "https://baywright.example.com/step/" }).getAttribute("rel")).toBe("noopener");
    expect(await page.getByText("a phone cannot reach it").or(page.getByText("from an https address alone")).count()).toBe(0);
  });

  test("builds the chosen jobs alone and reports each", async () => {
    await open();
    await turnTo("Commission");
    await page.locator("fluent-checkbox").nth(1).click();
    await button("Build 2 tabs").click();
    await said("2 tabs built");
    expect(await page.getByRole("list", { name: "Report of the build" }).getByRole("listitem").count()).toBe(2);
    const names = await page.evaluate(() => globalThis.page.port.workbook.sheets.map(({ name }) => name));
    expect(names).toContain("Reading Room installation");
    expect(names).not.toContain("Bindery installation");
  });

  test("previews a procedure for one array, on a sheet that is no tab", async () => {
    await open();
    await turnTo("Commission");
    await page.getByLabel("Procedure to preview").selectOption("Replace a drive");
    await button("Preview").click();
    await said("shows every step of Replace a drive for one array");
    const rows = await page.evaluate(() => globalThis.page.port.workbook.sheets.find(({ name }) => name === "Preview")!.values);
    expect(rows.flat()).toEqual(expect.arrayContaining(["RDR-040", "two names"]));
    expect(await page.getByRole("button", { name: /^Build 3 tabs$/ }).count()).toBe(1);
  });

  test("stops between two jobs, leaves whole tabs only, and reports those", async () => {
    await open();
    await page.evaluate(() => {
      const { port } = globalThis.page;
      const { values } = port.workbook.sheets.find(({ name }) => name === "Jobs")!;
      const row = (at: number) => {
        const job: Record<string, string> = { Job: `Extra ${at}`, Site: "Bindery", Procedure: "Add an array to a live cluster", Id: `J9${at}` };
        return values[3]!.map((header) => ({ value: typeof header === "string" ? (job[header] ?? null) : null }));
      };
      return port.apply([{ kind: "write", sheet: "Jobs", row: 7, column: 0, cells: Array.from({ length: 30 }, (_, at) => row(at)) }]);
    });
    await turnTo("Commission");
    // As quick as can be: a slow machine may not see the button until the work is done.
    await page.evaluate(() => {
      const press = () => [...document.querySelectorAll<HTMLElement>(".bay-status fluent-button")].find(({ textContent }) => textContent === "Stop")?.click();
      new MutationObserver(press).observe(document.querySelector(".bay-status")!, { childList: true, subtree: true });
    });
    await button("Build 33 tabs").click();
    await said("stopped. What was finished stays");
    const built = await page.getByRole("list", { name: "Report of the build" }).getByRole("listitem").count();
    expect(built).toBeGreaterThan(0);
    expect(built).toBeLessThan(33);
    const tabs = await page.evaluate(() => globalThis.page.port.workbook.sheets.filter(({ name, visible }) => visible && / installation$|^Extra /.test(name)).length);
    const hidden = await page.evaluate(() => globalThis.page.port.workbook.sheets.filter(({ visible }) => !visible).length);
    expect({ tabs, hidden }).toEqual({ tabs: built, hidden: 0 });
  });

  test("says in a sentence why a job was not built, and builds the others", async () => {
    await open();
    await edit("Jobs", "Procedure", 1, "Nobody's procedure");
    await turnTo("Commission");
    await button("Build 3 tabs").click();
    await said("2 tabs built, 1 not");
    await page.getByText(/Not built\..*procedure/i).waitFor();
  });
});

/** Makes a returned file of the workbook as it stands, in which a technician typed into the first two steps of a tab. */
function fillReturned(tab: string, texts: readonly string[]): Promise<void> {
  return page.evaluate(
    ({ tab: name, texts: typed }) => {
      const { port } = globalThis.page;
      const copy = structuredClone(port.workbook);
      const values = copy.sheets.find((sheet) => sheet.name === name)!.values as (string | null)[][];
      const header = values.findIndex((line) => line.includes("Step id"));
      const found = values[header]!.indexOf("Found");
      const steps = values.flatMap((line, row) => (row > header && /^J\d+\//.test(String(line[values[header]!.indexOf("Key")])) ? [row] : []));
      typed.forEach((text, at) => (values[steps[at]!]![found] = text));
      globalThis.page.returned = copy;
    },
    { tab, texts },
  );
}

describe("a tab that comes back", () => {
  const tab = "Bindery installation";

  async function buildTab(): Promise<void> {
    await open();
    await turnTo("Commission");
    await button("Choose none").click();
    await page.locator("fluent-checkbox").nth(1).click();
    await button("Build 1 tab").click();
    await said("1 tab built");
  }

  test("is shown by who changed what, and only what is accepted is written", async () => {
    await buildTab();
    await fillReturned(tab, ["seen", "seen too"]);
    await button(/Bring back a filled tab/).click();
    await page.getByText("Changed by them: 2").waitFor();
    await page.locator("fluent-checkbox[aria-label^='Accept theirs']").nth(1).click();
    await button("Bring back 1 record").click();
    await said("The accepted records stand in the tabs");
    const cells = await page.evaluate((name) => globalThis.page.port.workbook.sheets.find((sheet) => sheet.name === name)!.values.flat(), tab);
    const found = cells.filter((value) => value === "seen" || value === "seen too");
    expect(found).toEqual(["seen"]);
  });

  test("asks which one stays where both sides typed, and takes neither unasked", async () => {
    await buildTab();
    await fillReturned(tab, ["theirs"]);
    await page.evaluate((name) => {
      const { port, returned } = globalThis.page;
      const theirs = returned!.sheets.find((sheet) => sheet.name === name)!.values;
      const row = theirs.findIndex((line) => line.includes("theirs"));
      return port.apply([{ kind: "write", sheet: name, row, column: theirs[row]!.indexOf("theirs"), cells: [[{ value: "ours" }]] }]);
    }, tab);
    await button(/Bring back a filled tab/).click();
    await page.getByText("Changed by both: choose which one stays: 1").waitFor();
    expect(await button("Bring back 0 records").getAttribute("disabled")).not.toBeNull();
    await page.locator("fluent-checkbox[aria-label^='Accept theirs']").click();
    await button("Bring back 1 record").click();
    await said("is kept at the end of its tab");
  });

  test("says so when the file holds nothing new, or no tab at all", async () => {
    await buildTab();
    await fillReturned(tab, []);
    await button(/Bring back a filled tab/).click();
    await said("holds nothing that is not here already");
    await page.evaluate(() => (globalThis.page.returned = { sheets: [] }));
    await button(/Bring back a filled tab/).click();
    await said("holds no commissioning tab");
  });
});

describe("the life of a tab", () => {
  test("open items lead to their rows; a job that was never sealed is not checked", async () => {
    await open();
    await turnTo("Commission");
    await button("Build 3 tabs").click();
    await said("3 tabs built");
    await page.locator("summary", { hasText: "More" }).first().click();
    await button(/^Close out/).first().click();
    await said("to be settled before");
    await page.getByRole("list", { name: "Open items" }).getByRole("button").nth(1).click();
    await page.waitForFunction(() => globalThis.page.port.selected!.sheet === "Reading Room installation");
    expect(await page.evaluate(() => globalThis.page.port.selected!.area.row)).toBeGreaterThan(5);
    expect(await button(/^Check the seal/).count()).toBe(0);
  });

  test("a handover sheet and a progress sheet are made and brought to the front", async () => {
    await open();
    await turnTo("Commission");
    await button("Build 3 tabs").click();
    await said("3 tabs built");
    await button("Progress sheet").click();
    await said("lists how far every job is");
    expect(await page.evaluate(() => globalThis.page.port.selected!.sheet)).toBe("Progress");
    await page.locator("summary", { hasText: "More" }).first().click();
    await button(/^Handover sheet/).first().click();
    await said("holds what is open, what was found and measured");
    expect(await page.evaluate(() => globalThis.page.port.selected!.sheet)).toContain("handover");
  });
});

describe("the Functions view", () => {
  test("finds a function by a word of its help, shows arguments and inserts an example into the selected cell", async () => {
    await open({ sample: false });
    await turnTo("Functions");
    await page.getByRole("searchbox", { name: "Find a function" }).fill("usable");
    await page.locator("summary", { hasText: "USABLE" }).first().click();
    await button(/^Insert =BAY\.USABLE\("RAID 6",12,4\)/).click();
    await said("Sheet1!B1");
    expect(await page.evaluate(() => globalThis.page.port.applied.at(-1))).toEqual([{ kind: "write", sheet: "Sheet1", row: 0, column: 1, cells: [[{ formula: '=BAY.USABLE("RAID 6",12,4)' }]] }]);
  });

  test("asks before it replaces what stands in the cell", async () => {
    await open({ sample: false });
    await page.evaluate(() => (globalThis.page.port.selected = { sheet: "Sheet1", area: { row: 0, column: 0, rows: 1, columns: 1 } }));
    await turnTo("Functions");
    await page.locator("summary:visible").first().click();
    await button(/^Insert/).first().click();
    await said("is not empty");
    expect(await page.evaluate(() => globalThis.page.port.applied.length)).toBe(0);
    await button("Replace Sheet1!A1").click();
    await said("The example stands in Sheet1!A1");
  });
});

test("text of a cell that looks like markup is shown as the text it is", async () => {
  await open();
  await edit("Jobs", "Job", 1, '<img src=x onerror="document.title=1">');
  await edit("Racks", "Rack", 1, "<b>rack</b>");
  await turnTo("Commission");
  await page.getByText("<img src=x").first().waitFor();
  await turnTo("Check");
  await turnTo("Plan");
  // The one image of ours is the page of the drawings, which has that name as text.
  expect(await page.locator(`#pane img:not([src^="data:image/svg+xml"]), #pane b`).count()).toBe(0);
  expect(await page.title()).toBe("Pane");
});
