// The browser workbook in a real browser: how soon it can be used, how long it computes, how long it keeps the page from answering.
import { mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Browser } from "playwright-core";
import { openHeadless } from "../src/headless/open-headless";
import { isError, type SheetPlan, type WorkbookSnapshot } from "../src/sheet";
import { launchBrowser } from "../tests/e2e/support/launch-browser";
import { serveSite } from "../tests/e2e/support/serve-site";
import { WorkbookPage } from "../tests/e2e/support/workbook-page";
import { largeSite } from "../tests/support/large-site";
import { snapshotOf } from "../tests/support/plain-workbook";
import { thirtySites } from "../tests/support/thirty-sites";
import { makePlan, workbookOf } from "./large-plan";
import { printBench, sink, type BenchLine } from "./support";

const visits = 5;

export default async function benchWorkbook(): Promise<void> {
  const { server, url } = await serveSite(join(process.cwd(), "dist"));
  const lines: BenchLine[] = [];
  const browser = await launchBrowser();
  try {
    lines.push(...(await firstVisits(browser, url)));
    lines.push(await recalculation(browser, url, 10_000, 600), await recalculation(browser, url, 100_000, 7_000));
    lines.push(await longestBlock(browser, url));
    lines.push(...(await twoHundredArrays(browser, url)));
    lines.push(...(await jobOfTwentyArrays(browser, url)));
    lines.push(...(await thirtySitesBoard(browser, url)));
  } finally {
    await browser.close();
    server.close();
  }
  printBench("The browser workbook in Chromium (npm run build first)", lines);
}

/** Visits as somebody who was never there, each time in a fresh profile: medians. */
async function firstVisits(browser: Browser, url: string): Promise<BenchLine[]> {
  const times: { pane: number; grid: number; formula: number }[] = [];
  for (let visit = 0; visit < visits; visit++) {
    const workbook = await WorkbookPage.open(browser, url);
    times.push(
      await workbook.page.evaluate(async () => {
        const { port, live } = globalThis.baywright;
        await port.apply([{ kind: "add-sheet", plan: { name: "First", styles: {}, columnWidths: [], rows: [[{ formula: '=BAY.USABLE("RAID 6",12,4)' }]] } }]);
        await live.settle();
        const [pane, grid] = ["pane up", "grid up"].map((mark) => performance.getEntriesByName(mark)[0]!.startTime) as [number, number];
        return { pane, grid, formula: performance.now() };
      }),
    );
    await workbook.close();
  }
  return [
    limitLine("pane up", middle(times.map(({ pane }) => pane)), 2_000),
    limitLine("grid up", middle(times.map(({ grid }) => grid)), 2_000),
    limitLine("first formula answered", middle(times.map(({ formula }) => formula)), 3_000),
  ];
}

/** Fills a sheet with cells that all look at one, changes that one, and waits until every cell shows its new answer. */
async function recalculation(browser: Browser, url: string, cells: number, limit: number): Promise<BenchLine> {
  const workbook = await WorkbookPage.open(browser, url);
  await workbook.page.getByRole("button", { name: "New", exact: true }).click();
  await workbook.page.getByText("A new plan is on the desk.").waitFor();
  const times = await workbook.page.evaluate(async (count) => {
    const { port, live } = globalThis.baywright;
    const width = 100;
    const rows = Array.from({ length: count / width }, (_, row) =>
      Array.from({ length: width }, (_cell, column) => ({ formula: `=BAY.USABLE("RAID 6",${12 + ((row * width + column) % 500)},Sheet1!$A$1)` })),
    );
    await port.apply([{ kind: "write", sheet: "Sheet1", row: 0, column: 0, cells: [[{ value: 1 }]] }, { kind: "add-sheet", plan: { name: "Bench", styles: {}, columnWidths: [], rows } }]);
    await live.settle();
    const taken: number[] = [];
    for (let size = 2; size < 5; size++) {
      const start = performance.now();
      await port.apply([{ kind: "write", sheet: "Sheet1", row: 0, column: 0, cells: [[{ value: size }]] }]);
      await live.settle();
      taken.push(performance.now() - start);
      const shown = (await port.read(["Bench"])).sheets.find(({ name }) => name === "Bench")!.values;
      // A calculation that did not take place would be fast.
      if (shown[0]![0] !== 10 * size || shown.at(-1)!.at(-1) === null) throw new Error(`The cells do not follow: ${JSON.stringify(shown[0]![0])}.`);
    }
    return taken;
  }, cells);
  await workbook.close();
  return limitLine(`${cells} function cells recalculated`, middle(times), limit);
}

/** Types into the sample plan and measures the longest the page did not answer. */
async function longestBlock(browser: Browser, url: string): Promise<BenchLine> {
  const workbook = await WorkbookPage.open(browser, url);
  // What the page still has to do after it came up is not about editing.
  await workbook.page.waitForTimeout(3_000);
  await workbook.showSheet("Arrays");
  await workbook.page.waitForTimeout(1_000);
  await workbook.page.evaluate(() => {
    const blocks: number[] = [];
    Object.assign(globalThis, { blocks });
    new PerformanceObserver((list) => {
      for (const { duration } of list.getEntries()) blocks.push(duration);
    }).observe({ type: "longtask" });
  });
  for (const [row, text] of [[4, "A"], [5, "B"], [6, "C"]] as const) await workbook.type(row, 1, `Renamed ${text}`);
  // The plan is kept in the browser once nobody types any more: that counts too.
  await workbook.page.waitForTimeout(3_000);
  const blocks = await workbook.page.evaluate(() => (globalThis as unknown as { blocks: number[] }).blocks);
  sink(blocks);
  await workbook.close();
  return limitLine("longest block while the sample plan is edited", Math.max(0, ...blocks), 200);
}

/** Opens a plan of 200 arrays and 4,000 ports, and types into Ports. */
async function twoHundredArrays(browser: Browser, url: string): Promise<BenchLine[]> {
  return withFile(browser, url, workbookOf(makePlan({ sites: 4 })), async (workbook, opened) => {
    const entry = await entryInto(workbook, "Ports", 4_000, "Switch port");
    return [limitLine("200 arrays, 4,000 ports opened", opened, 2_000), limitLine("200 arrays, an entry to the next frame", entry, 250)];
  });
}

/** Builds the tab of one job with 20 arrays of 24 drives, and types what was found. */
async function jobOfTwentyArrays(browser: Browser, url: string): Promise<BenchLine[]> {
  return withFile(browser, url, largeSite({ other: { arrays: "20", racks: "8", switchPorts: "96" } }), async (workbook) => {
    await workbook.turnTo("Commission");
    const start = performance.now();
    await workbook.button("Build 1 tab").click();
    await workbook.said("1 tab built");
    await workbook.settle();
    const built = performance.now() - start;
    const tab = (await workbook.sheetNames()).at(-1)!;
    const entry = await entryInto(workbook, tab, 1_000, "Found");
    return [limitLine("job of 20 arrays, its tab built", built, 5_000), limitLine("job of 20 arrays, an entry to the next frame", entry, 300)];
  });
}

/** Opens a plan of thirty sites with two jobs each, and makes the programme board. */
async function thirtySitesBoard(browser: Browser, url: string): Promise<BenchLine[]> {
  return withFile(browser, url, snapshotOf(thirtySites()), async (workbook, opened) => {
    await workbook.turnTo("Commission");
    const start = performance.now();
    await workbook.button("Programme board").click();
    await workbook.said("lists every job by day and crew");
    return [limitLine("thirty sites opened", opened, 3_000), limitLine("thirty sites, the programme board of 60 jobs", performance.now() - start, 3_000)];
  });
}

/** Opens a plan as a file on the page, and tells how long that took. */
async function withFile(
  browser: Browser, url: string, plan: WorkbookSnapshot, measure: (workbook: WorkbookPage, opened: number) => Promise<BenchLine[]>,
): Promise<BenchLine[]> {
  const folder = await mkdtemp(join(tmpdir(), "bench-workbook-"));
  const workbook = await WorkbookPage.open(browser, url);
  try {
    const path = join(folder, "plan.xlsx");
    await writeFile(path, await saved(plan));
    const start = performance.now();
    await workbook.openFile(path);
    return await measure(workbook, performance.now() - start);
  } finally {
    await workbook.close();
    await rm(folder, { recursive: true });
  }
}

async function saved({ sheets }: WorkbookSnapshot): Promise<Uint8Array> {
  const { port, close } = await openHeadless();
  const planOf = ({ name, tables, values, formulas }: WorkbookSnapshot["sheets"][number]): SheetPlan => ({
    name, tables, styles: {}, columnWidths: [],
    rows: values.map((line, row) => line.map((value, column) => ({ value: isError(value) ? null : value, ...(formulas[row]?.[column] && { formula: formulas[row][column] }) }))),
  });
  await port.apply(sheets.map((sheet) => ({ kind: "add-sheet", plan: planOf(sheet) })));
  return close();
}

/** Types into a column of a sheet, from the first row after `least` that has something there on, and tells how long it took until the grid was drawn again. */
async function entryInto(workbook: WorkbookPage, sheet: string, least: number, header: string): Promise<number> {
  const { values } = await workbook.sheet(sheet);
  const column = values.find((line) => line.includes(header))!.indexOf(header);
  const row = Math.min(least, values.length - 20);
  const times: number[] = [];
  for (let time = 0; time < 5; time += 1) {
    await workbook.goTo(sheet, row + time, column);
    await workbook.page.keyboard.type(String(400 + time));
    await workbook.page.evaluate(() => {
      const taken = new Promise<number>((resolve) => {
        addEventListener("keydown", () => {
          const start = performance.now();
          const drawn = () => requestAnimationFrame(() => requestAnimationFrame(() => resolve(performance.now() - start)));
          setTimeout(() => void globalThis.baywright.live.settle().then(drawn));
        }, { once: true, capture: true });
      });
      Object.assign(globalThis, { taken });
    });
    await workbook.page.keyboard.press("Enter");
    times.push(await workbook.page.evaluate(() => (globalThis as unknown as { taken: Promise<number> }).taken));
  }
  return middle(times);
}

function limitLine(what: string, milliseconds: number, limit: number): BenchLine {
  return { what, measured: `${milliseconds.toFixed(0)} ms`, target: `at most ${limit} ms`, holds: milliseconds <= limit };
}

function middle(values: readonly number[]): number {
  return [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)]!;
}
