import { readFileSync, writeFileSync } from "node:fs";
import { buildTabs } from "../src/actions/build-tabs";
import { checkSeal } from "../src/actions/check-seal";
import { acceptAsItIs, closeOut, previewCloseOut } from "../src/actions/close-out";
import { openHeadless } from "../src/headless/open-headless";
import { addPlan, jobName, moment, smallPlan } from "../tests/support/commissioning-plan";
import { tabInSight, typeInto } from "../tests/support/tab-on-sheet";

async function main(): Promise<void> {
  const [mode, file] = process.argv.slice(2);
  if (mode === "make") {
    const workbook = await openHeadless();
    await addPlan(workbook.port, smallPlan());
    for await (const { outcome } of buildTabs(workbook.port, moment, [jobName])) if (!outcome.built) throw new Error(outcome.sentence);
    const tab = await tabInSight(workbook.port);
    const keys = tab.steps.map(({ key }) => key.split("/").slice(1).join("/"));
    await typeInto(workbook.port, tab, Object.fromEntries(keys.map((key, i) => [key, { found: i % 3 === 0 ? "Waived" : "Not applicable", by: "AB", second: "EF", done: 46083 + i * 0.0371, note: ["00012", "a\nb", "1.5", "TRUE", "e\u0301t\u00e9", "2026-03-01", "#N/A", "=1+1", "  x  y "][i % 9]! }])));
    const edits: (readonly [number, number, string | number | boolean])[] = [[1, 30, "Mine"], [20, 30, 1 / 3], [21, 30, "own \u00a0text"], [22, 30, true], [23, 31, 1e21], [24, 31, 0.1 + 0.2], [80, 2, "below"], [4, 29, 12.5]];
    await workbook.port.apply([...edits.map(([row, column, value]) => ({ kind: "write" as const, sheet: tab.sheet, row, column, cells: [[{ value }]] })),
      { kind: "write" as const, sheet: tab.sheet, row: 25, column: 31, cells: [[{ formula: "=AE21*3" }]] }, { kind: "write" as const, sheet: tab.sheet, row: 26, column: 31, cells: [[{ formula: '=AE22&"!"' }]] }]);
    console.log((await previewCloseOut(workbook.port, jobName)).slice(0, 5));
    try { console.log(await acceptAsItIs(workbook.port, jobName, "EF", "so")); } catch (e) { console.log(String(e)); }
    console.log(await closeOut(workbook.port, jobName, "AB", "2026-03-09 14:20"));
    writeFileSync(file!, await workbook.close());
  } else {
    const workbook = await openHeadless(readFileSync(file!));
    const check = await checkSeal(workbook.port, jobName);
    console.log(file, check.holds, check.code, check.changed.map(({ label }) => label).slice(0, 10));
    workbook.dispose();
  }
}
void main();
