// What people do in any spreadsheet, by keyboard alone and by mouse, in the browser workbook: on a fresh plan, a reopened one and one that LibreOffice saved.
import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { grounds } from "../tests/e2e/office/grounds";
import type { Way } from "../tests/e2e/office/hands";
import { officeTasks } from "../tests/e2e/office/tasks";
import { tryTask } from "../tests/e2e/office/try-task";
import { launchBrowser } from "../tests/e2e/support/launch-browser";
import { serveSite } from "../tests/e2e/support/serve-site";
import { WorkbookPage } from "../tests/e2e/support/workbook-page";
import { printBench, sink, type BenchLine } from "./support";

const ways: readonly Way[] = ["keyboard", "mouse"];

/** Does every task in both ways on each workbook; throws at the end where one failed, once all are told. */
export default async function benchOffice(): Promise<void> {
  const { server, url } = await serveSite(join(process.cwd(), "dist"));
  const folder = await mkdtemp(join(tmpdir(), "bench-office-"));
  const browser = await launchBrowser();
  const faults: string[] = [];
  try {
    for (const ground of grounds) {
      const lines: BenchLine[] = [];
      const open = async () => {
        const workbook = await WorkbookPage.open(browser, url);
        await ground.lay(workbook, join(folder, "ground.xlsx"));
        return workbook;
      };
      let workbook = await open();
      for (const task of officeTasks) {
        for (const way of ways) {
          const start = performance.now();
          const fault = await tryTask(workbook, task, way, join(folder, "saved.xlsx")).then(() => workbook.faults[0] ?? null, (thrown: unknown) => String(thrown));
          lines.push({ what: `${way}: ${task.does}`, measured: `${((performance.now() - start) / 1000).toFixed(1)} s`, holds: fault === null });
          if (fault === null) continue;
          faults.push(`${ground.name}, ${way}: ${task.does}: ${fault}`);
          // Whatever it left open or half done is none of the next one's.
          await workbook.close();
          workbook = await open();
        }
      }
      await workbook.close();
      sink(lines);
      printBench(`Tasks in a workbook that is ${ground.name} (npm run build first)`, lines);
    }
  } finally {
    await browser.close();
    server.close();
    await rm(folder, { recursive: true });
  }
  if (faults.length > 0) throw new Error(faults.join("\n"));
}
