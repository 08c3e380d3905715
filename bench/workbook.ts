// The browser workbook in a real browser: how soon it can be used, how long it computes, how long it keeps the page from answering.
import { join } from "node:path";
import type { Browser } from "playwright-core";
import { launchBrowser } from "../tests/e2e/support/launch-browser";
import { serveSite } from "../tests/e2e/support/serve-site";
import { WorkbookPage } from "../tests/e2e/support/workbook-page";
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

function limitLine(what: string, milliseconds: number, limit: number): BenchLine {
  return { what, measured: `${milliseconds.toFixed(0)} ms`, target: `at most ${limit} ms`, holds: milliseconds <= limit };
}

function middle(values: readonly number[]): number {
  return [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)]!;
}
