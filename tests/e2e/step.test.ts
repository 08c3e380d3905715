import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Browser, BrowserContext, Page } from "playwright-core";
import { readTab } from "../../src/planning/commissioning/tab";
import { readSnapshot } from "../../src/workbook/xlsx/read-snapshot";
import { jobName } from "../support/commissioning-plan";
import { runCommand } from "../support/run-command";
import { foundInRows, stepPlan, tabFile } from "../support/step-plan";
import { complaintsOn } from "./support/complaints";
import { launchBrowser } from "./support/launch-browser";
import { serveSite } from "./support/serve-site";


// One story in the order in which it happens: every test goes on where the one before it left off.
let folder: string;
let browser: Browser;
let context: BrowserContext;
let page: Page;
const faults: string[] = [];
const at = (name: string) => join(folder, name);

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), "steps-"));
  browser = await launchBrowser();
  writeFileSync(at("plan.xlsx"), await tabFile());
  context = await browser.newContext({ viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true, acceptDownloads: true });
  context.setDefaultTimeout(60_000);
  page = await openPage();
});

afterAll(async () => {
  await browser.close();
  rmSync(folder, { recursive: true });
});

async function openPage(): Promise<Page> {
  const opened = await context.newPage();
  opened.on("pageerror", (error) => faults.push(String(error)));
  opened.on("console", (message) => {
    if (message.type() === "error") faults.push(message.text());
  });
  opened.on("request", (request) => {
    if (!request.url().startsWith(`${process.env["BAYWRIGHT_URL"]!}step/`) && !/^(data|blob):/.test(request.url())) faults.push(`request to ${request.url()}`);
  });
  return opened;
}

const button = (name: string | RegExp) => page.getByRole("button", { name, exact: true });
const press = (name: string | RegExp) => button(name).tap();
const fill = (label: string, text: string) => page.getByLabel(label, { exact: true }).fill(text);

/** Waits until the screen is that of a row, by its number. */
const onRow = (no: number) => page.getByRole("heading", { level: 1, name: new RegExp(`^No\\. ${no} `) }).waitFor();

/** Everything on the screen fits its width, and whatever can be pressed is as large as a thumb wants it: 44 CSS pixels (WCAG 2.2, 2.5.5). */
async function fitsHand(): Promise<void> {
  const found = await page.evaluate(() => {
    const small = [...document.querySelectorAll<HTMLElement>("button, summary, .choice label, input:not([type=radio]):not([type=file]), textarea")]
      .filter((one) => one.checkVisibility())
      .filter((one) => Math.min(one.getBoundingClientRect().width, one.getBoundingClientRect().height) < 44);
    return { wide: document.documentElement.scrollWidth - window.innerWidth, small: small.map(({ outerHTML }) => outerHTML.slice(0, 80)) };
  });
  expect(found).toEqual({ wide: 0, small: [] });
}

async function chooseFile(path: string): Promise<void> {
  const choosing = page.waitForEvent("filechooser");
  await press("Choose the .xlsx file");
  await (await choosing).setFiles(path);
}

async function giveBack(to: string): Promise<void> {
  const waiting = page.waitForEvent("download");
  await button("Give the file back").first().tap();
  const download = await waiting;
  expect(download.suggestedFilename()).toBe("plan filled.xlsx");
  await download.saveAs(at(to));
}

const tabIn = (file: string) => readTab(readSnapshot(readFileSync(at(file))).sheets.find(({ name }) => name === jobName)!)!;

/** Names that are written where they are not remembered, by the number of the row. */
const names: Readonly<Record<number, Readonly<Record<string, string>>>> = {
  1: { By: "AB" },
  4: { By: "AB", "Witness, somebody else": "CD" },
  8: { By: "AB", "Witness, somebody else": "CD" },
  17: { "Witness, somebody else": "CD" },
  19: { "Witness, somebody else": "CD" },
};

/** Answers one question of the row on the screen as a person does. */
async function answer(label: string, value: unknown): Promise<void> {
  const field = page.getByLabel(label);
  if (value === 46_346) await field.first().fill("2026-11-20");
  else if (await page.getByRole("group", { name: label, exact: true }).count() > 0) await page.getByRole("group", { name: label, exact: true }).getByRole("radio", { name: String(value) }).check();
  else await field.first().fill(String(value));
}

async function doRow(no: number): Promise<void> {
  await onRow(no);
  await fitsHand();
  const found = [foundInRows[no - 1]!].flat();
  const stepIds = ["T-20", "T-21", "T-22", "T-23"];
  const labelOf = (index: number): string => (no >= 13 && no <= 16 ? `Found ${stepIds[index]}` : no >= 20 && no <= 23 ? `Found n-${index + 1} bay ${no - 19}` : "Found");
  for (const [index, value] of found.entries()) await answer(labelOf(index), value);
  if (found[0] === 7.3) await page.getByRole("radio", { name: "TiB" }).check();
  for (const [label, name] of Object.entries(names[no] ?? {})) await fill(label, name);
  await press("Record");
  await page.locator(".outcome").first().waitFor();
  await fitsHand();
}

describe("a technician with a phone", () => {
  test("has the page whole after its first load, and its worker keeps nothing outside its own folder", async () => {
    await page.goto(`${process.env["BAYWRIGHT_URL"]!}step/`);
    await page.getByText("The page itself opens without a network from now on.").waitFor();
    await fitsHand();
    const kept = await page.evaluate(async () => {
      const names = await caches.keys();
      const requests = await Promise.all(names.map(async (name) => (await caches.open(name)).keys()));
      return { names, paths: requests.flat().map(({ url }) => new URL(url).pathname), scope: (await navigator.serviceWorker.ready).scope };
    });
    expect(kept.names).toHaveLength(1);
    expect(kept.scope).toBe(`${process.env["BAYWRIGHT_URL"]!}step/`);
    expect(kept.paths.filter((path) => !path.startsWith("/step/"))).toEqual([]);
    expect(kept.paths.map((path) => path.replace(/\.[0-9a-f]{10}\./, ".")).sort()).toEqual(["/step/", "/step/icon.svg", "/step/manifest.webmanifest", "/step/step.css", "/step/step.js"]);
  });

  test("opens it without a network, and is told what a file is wrong that is none of ours", async () => {
    const session = await context.newCDPSession(page);
    await context.setOffline(true);
    await session.send("Network.enable");
    await session.send("Network.emulateNetworkConditions", { offline: true, latency: 0, downloadThroughput: 0, uploadThroughput: 0 });
    await page.reload();
    expect(await page.evaluate(() => navigator.onLine)).toBe(false);
    writeFileSync(at("notes.xlsx"), "notes");
    await chooseFile(at("notes.xlsx"));
    await page.getByText("This file is no .xlsx workbook, or it is damaged.").waitFor();
    await chooseFile(at("plan.xlsx"));
    await page.getByRole("heading", { name: jobName }).waitFor();
    await page.getByText("0 of 24 steps settled").waitFor();
    await fitsHand();
  });

  test("does three steps, and may not go past the hold point before two have signed it", async () => {
    await press("Next open step: No. 1 T-02");
    for (const no of [1, 2, 3]) {
      await doRow(no);
      await page.getByText("As expected").waitFor();
      await press("Next ›");
    }
    await onRow(4);
    expect(await button("Sign first").isDisabled()).toBe(true);
    expect(await page.getByLabel("By", { exact: true }).inputValue()).toBe("");
    await page.getByRole("radio", { name: "Yes" }).check();
    await press("Record");
    await page.getByText("By is empty. Write the name.").waitFor();
    await fill("By", "AB");
    await fill("Witness, somebody else", "ab");
    await press("Record");
    await page.getByText("Needs a second name").waitFor();
    expect(await button("Sign first").isDisabled()).toBe(true);

    await press("List");
    await page.getByText("Arrays", { exact: true }).waitFor();
    await button(/^5 T-10 n-1/).tap();
    await page.getByText("Nothing is done here yet: hold point No. 4 T-09 (n-1) comes first").waitFor();
    expect(await button("Record").count()).toBe(0);
    await press("Go to the hold point");
    await onRow(4);
    await fill("Witness, somebody else", "CD");
    await press("Sign");
    await page.getByText("Go on.").waitFor();
    await page.getByText("5 answers stand on this device alone.").waitFor();
  });

  test("gives the file back at the hold point, and is shown what still stands on the device alone", async () => {
    await giveBack("at-hold-point.xlsx");
    await page.getByText("plan filled.xlsx is in the downloads of this device.").waitFor();
    expect(await button("Give the file back").count()).toBe(0);
    expect(tabIn("at-hold-point.xlsx").steps.filter(({ settled }) => settled)).toHaveLength(4);
    await press("Next ›");
    await doRow(5);
  });

  test("raises a snag where something differs, and the retest in it settles the step", async () => {
    await press("Next ›");
    await onRow(6);
    await answer("Found", "5,5");
    await press("Record");
    await page.getByText('Found "5,5" has a comma. Write 5.5.').waitFor();
    await answer("Found", "5");
    await press("Record");
    await page.getByText("Differs").waitFor();
    await press("Raise a snag");
    await fitsHand();
    expect(await page.getByLabel("What was found").inputValue()).toBe("Found 5, expected 4");
    await fill("Who puts it right", "EF");
    await fill("By when", "2026-12-01");
    await press("Raise the snag");
    await press(/^Snag S-1/);
    await fitsHand();
    await fill("Found again", "4");
    await page.getByRole("radio", { name: "Closed" }).check();
    await fill("By", "EF");
    await press("Keep it");
    await onRow(6);
    await page.getByText("As expected").waitFor();
    await page.getByText("Found 5").first().waitFor();
  });

  test("does the rest, a subject of the grids at a time, without ever scrolling sideways", async () => {
    for (let no = 7; no <= 24; no += 1) {
      await press("Next ›");
      await doRow(no);
    }
    await press("Next ›");
    await page.getByText("24 of 24 steps settled").waitFor();
    await fitsHand();
  });

  test("finds everything again after the page was closed, still without a network", async () => {
    await page.close();
    page = await openPage();
    await page.goto(`${process.env["BAYWRIGHT_URL"]!}step/`);
    await page.getByRole("heading", { name: "Open from last time" }).waitFor();
    await press(/^plan.xlsx/);
    await page.getByText("24 of 24 steps settled").waitFor();

    const other = await openPage();
    await other.goto(`${process.env["BAYWRIGHT_URL"]!}step/`);
    await other.getByRole("button", { name: /^plan.xlsx/ }).tap();
    await other.getByText("Another window of this browser has this file open.").waitFor();
    await other.close();
    await giveBack("returned.xlsx");
  });

  test("went through all of it without an error and without a request beyond the page's own folder", () => {
    expect(faults).toEqual([]);
  });
});

describe("the lead who gets the file", () => {
  test("finds every record in it as it was answered", () => {
    const { steps, snags, elsewhere } = tabIn("returned.xlsx");
    const expected = foundInRows.flat();
    // What was found first stays, beside the snag.
    expected[5] = 5;
    expect(steps.map(({ typed }) => typed.found)).toEqual(expected);
    expect(snags.map(({ id, stepId, typed }) => ({ id, stepId, ...typed }))).toEqual([
      { id: "S-1", stepId: "T-11", about: 6, foundWrong: "Found 5, expected 4", mender: "EF", byWhen: 46_357, foundAgain: 4, closed: "Closed", by: "EF", note: null },
    ]);
    expect(elsewhere).toEqual([]);
  });

  test("merges it, signs the hold points in the own copy, closes out, seals and checks", async () => {
    const merged = await runCommand("merge-tabs", at("plan.xlsx"), at("returned.xlsx"), "-o", at("merged.xlsx"));
    // Hold points are signed in the lead's own copy: they are shown, not taken.
    expect(merged).toMatchObject({ code: 1, lines: [{ left: 2, jobs: [{ job: jobName, outcome: { built: true, kept: 0 } }] }] });

    page = await openPage();
    await page.goto(`${process.env["BAYWRIGHT_URL"]!}step/`);
    await chooseFile(at("merged.xlsx"));
    await page.getByText("22 of 24 steps settled").waitFor();
    for (const no of [4, 8]) {
      await press(/^Next open step/);
      await onRow(no);
      await page.getByRole("radio", { name: "Yes" }).check();
      await fill("By", "AB");
      await fill("Witness, somebody else", "CD");
      await press("Record");
      await page.getByText("Go on.").waitFor();
      await press("List");
    }
    const waiting = page.waitForEvent("download");
    await press("Give the file back");
    await (await waiting).saveAs(at("signed.xlsx"));

    const closed = await runCommand("close-out", at("signed.xlsx"), "--job", jobName, "--name", "GH", "-o", at("closed.xlsx"));
    expect(closed).toMatchObject({ code: 0, lines: [{ closed: true, open: [] }] });
    const { code } = closed.lines[0]!;
    expect(await runCommand("check-seal", at("closed.xlsx"))).toMatchObject({ code: 0, lines: [{ tabs: [{ job: jobName, holds: true }] }] });
    expect(tabIn("closed.xlsx").seals.map(({ typed }) => typed.code)).toEqual([code]);
  });

  test("can look at the closed tab on the phone, and type nothing into it", async () => {
    await press("Another file");
    await chooseFile(at("closed.xlsx"));
    await page.getByText("This tab is closed and sealed: it can be read here, not written.").first().waitFor();
    await page.getByText("Arrays", { exact: true }).tap();
    await button(/^4 T-09 n-1/).tap();
    await onRow(4);
    await page.getByText("As expected").waitFor();
    expect(await page.getByRole("textbox").count()).toBe(0);
    expect(await button(/Record|Sign|Raise|wrongly/).count()).toBe(0);
  });
});

test.each(["light", "dark"] as const)("the accessibility checker finds nothing on any screen, in the %s theme", async (colorScheme) => {
  const checked = await browser.newContext({ viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true, colorScheme });
  page = await checked.newPage();
  await page.goto(`${process.env["BAYWRIGHT_URL"]!}step/`);
  const complaints = async (screen: string) => {
    expect({ screen, found: await complaintsOn(page) }).toEqual({ screen, found: [] });
  };
  const goTo = async (row: RegExp) => {
    await page.evaluate(() => document.querySelectorAll("details").forEach((one) => (one.open = true)));
    await button(row).tap();
  };
  await button("Choose the .xlsx file").waitFor();
  await complaints("start");
  await chooseFile(at("plan.xlsx"));
  await button(/^Next open step/).waitFor();
  await complaints("list");
  await goTo(/^4 T-09 n-1/);
  await complaints("hold point");
  await press("Record");
  await page.getByText("Found is empty.").or(page.getByText("By is empty.")).first().waitFor();
  await complaints("refusal");
  await press("List");
  await goTo(/^13 T-20/);
  await complaints("grid");
  await press("List");
  await goTo(/^2 T-03/);
  await answer("Found", 46_346);
  await fill("By", "AB");
  await press("Record");
  await page.locator(".outcome").waitFor();
  await complaints("outcome");
  await press("Raise a snag");
  await complaints("snag");
  await checked.close();
});

test("a newer release is offered, takes its place once it is asked to, and what was typed stays", async () => {
  const site = at("site");
  // Without the compressed copies, which say the old release; the server counts the files once, so that the new worker is as long as the old one.
  cpSync(join(__dirname, "..", "..", "dist", "step"), join(site, "step"), { recursive: true, filter: (name) => !/\.(gz|br)$/.test(name) });
  const { server, url } = await serveSite(site);
  const fresh = await browser.newContext({ viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true });
  page = await fresh.newPage();
  await page.goto(`${url}step/`);
  await page.getByText("The page itself opens without a network from now on.").waitFor();
  await chooseFile(at("plan.xlsx"));
  await press(/^Next open step/);
  await answer("Found", "At the desk");
  await fill("By", "AB");
  await press("Record");
  await page.getByText("As expected").waitFor();

  const worker = join(site, "step", "worker.js");
  writeFileSync(worker, readFileSync(worker, "utf8").replace(/"name":"\w+"/, `"name":"${"0".repeat(16)}"`));
  await page.reload();
  await page.getByText("A newer release is here. What was typed stays.").waitFor();
  await press("Take it now");
  await page.waitForFunction(() => !document.body.textContent.includes("A newer release is here"));
  await press(/^plan.xlsx/);
  await page.getByText("1 of 24 steps settled").waitFor();
  expect(await page.evaluate(() => caches.keys())).toEqual([`baywright steps ${"0".repeat(16)}`]);
  await fresh.close();
  server.close();
});

test("a phone of 320 pixels, and letters twice as large, need no scrolling sideways either", async () => {
  const small = await browser.newContext({ viewport: { width: 320, height: 640 }, hasTouch: true, isMobile: true, colorScheme: "dark" });
  const plan = stepPlan();
  const long = { do: `Read the label of the ${"very ".repeat(20)}long part`, expect: "SERIAL-0123456789-0123456789-0123456789-0123456789" };
  writeFileSync(at("long.xlsx"), await tabFile({ ...plan, steps: plan.steps!.map((one) => (one.stepId === "T-02" ? { ...one, ...long } : one)) }));
  page = await small.newPage();
  await page.goto(`${process.env["BAYWRIGHT_URL"]!}step/`);
  await chooseFile(at("long.xlsx"));
  await page.getByRole("heading", { name: jobName }).waitFor();
  expect(await page.evaluate(() => getComputedStyle(document.body).backgroundColor)).toBe("rgb(24, 32, 36)");
  for (const size of ["100%", "200%"]) {
    await page.evaluate((given) => (document.documentElement.style.fontSize = given), size);
    await fitsHand();
    await press(/^Next open step/);
    await onRow(1);
    await fitsHand();
    await press("List");
    await page.getByText("Cautions: 1").waitFor();
  }
  await small.close();
});
