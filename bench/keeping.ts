// Typing that is cut off at random moments: the page loaded anew, closed without a question, the browser killed. How much is lost, and whether
// anything is lost that the page had said was kept.
import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { launchMortal } from "../tests/e2e/support/launch-browser";
import { serveSite } from "../tests/e2e/support/serve-site";
import { entriesIn, type Leaving, typeUntil } from "../tests/e2e/support/typed-until";
import { WorkbookPage } from "../tests/e2e/support/workbook-page";
import { seededRandom } from "../tests/support/seeded-random";
import { type BenchLine, printBench, sink } from "./support";

const moments = 60;
const ways: readonly Leaving[] = ["kill", "reload", "close"];

export default async function benchKeeping(): Promise<void> {
  const { server, url } = await serveSite(join(process.cwd(), "dist"));
  const profile = await mkdtemp(join(tmpdir(), "baywright-keeping-"));
  const random = seededRandom(50);
  const lost: Record<Leaving, number[]> = { kill: [], reload: [], close: [] };
  let lies = 0;
  let copies = 0;
  let browser = await launchMortal(profile);
  try {
    let workbook = await WorkbookPage.openIn(browser.context, url);
    for (let moment = 0; moment < moments; moment += 1) {
      const way = ways[moment % ways.length]!;
      const { page } = workbook;
      page.on("dialog", (dialog) => void dialog.accept().catch(() => undefined));
      const leaving = { kill: () => browser.kill(), reload: () => page.reload(), close: () => page.close() };
      const typed = await typeUntil(workbook, 1_500 + random() * 6_000, leaving[way]);
      if (way === "kill") browser = await launchMortal(profile);
      if (way === "reload") await workbook.ready();
      else workbook = await WorkbookPage.openIn(browser.context, url);
      const name = await workbook.page.locator(".plan-name").textContent();
      if (name !== "New plan") copies += 1;
      const back = await entriesIn(workbook);
      const firstLost = typed.entered[back];
      lost[way].push(firstLost === undefined ? 0 : typed.left - firstLost);
      if (back < typed.saidKept) lies += 1;
      sink(back);
      if (process.env["EACH"] !== undefined) console.log(moment, way, name, typed.entered.length, "typed", back, "back", typed.saidKept, "said kept", lost[way].at(-1), "ms lost");
    }
  } finally {
    await browser.kill();
    server.close();
    server.closeAllConnections();
    await rm(profile, { recursive: true, force: true });
  }
  const never = (what: string, times: number): BenchLine => ({ what, measured: String(times), target: "never", holds: times === 0 });
  printBench("Typing that is cut off at random moments (npm run build first)", [
    ...ways.map((way): BenchLine => {
      const longest = Math.max(...lost[way]);
      return { what: `${way}: the oldest typing that was lost, of ${lost[way].length} moments`, measured: `${longest} ms`, target: "at most 2000 ms", holds: longest <= 2_000 };
    }),
    never("something was lost that the page had called kept", lies),
    never("another plan came back", copies),
  ]);
}
