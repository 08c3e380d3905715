import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { buildTabs } from "../../src/actions/build-tabs";
import { checkSeal } from "../../src/actions/check-seal";
import { acceptAsItIs, closeOut, previewCloseOut } from "../../src/actions/close-out";
import { openHeadless } from "../../src/headless/open-headless";
import { addPlan, jobName, moment, smallPlan } from "../support/commissioning-plan";
import { hasLibreOffice, saveInLibreOffice } from "../support/libre-office";
import { tabInSight, typeInto } from "../support/tab-on-sheet";

const notes = ["00012", "a\nb", "1.5", "TRUE", "e\u0301t\u00e9", "2026-03-01", "=1+1", "  x  y ", "\ud83d\udd27"];

(hasLibreOffice ? test : test.skip)("a sealed tab that LibreOffice has opened and saved holds, and shows a cell that was changed there", async () => {
  const folder = mkdtempSync(join(tmpdir(), "sealed-"));
  const workbook = await openHeadless();
  try {
    await addPlan(workbook.port, smallPlan());
    for await (const { outcome } of buildTabs(workbook.port, moment, [jobName])) expect(outcome.built).toBe(true);
    const tab = await tabInSight(workbook.port);
    const keys = tab.steps.map(({ key }) => key.split("/").slice(1).join("/"));
    const records = keys.map((key, index) => [key, {
      found: index % 3 === 0 ? "Waived" : "Not applicable", by: "AB", witness: "EF", done: 46_083 + index * 0.0371, note: notes[index % notes.length]!,
    }]);
    await typeInto(workbook.port, tab, Object.fromEntries(records) as Parameters<typeof typeInto>[2]);
    // What is kept at 15 digits, a tick, blanks that do not break, a column and formulas of people's own, and an expectation typed over.
    const own = [[1, 40, "Mine"], [20, 40, 1 / 3], [21, 40, "own \u00a0text"], [22, 40, true], [23, 41, 1e21], [24, 41, 0.1 + 0.2], [80, 2, "below"], [21, 5, "N-0001 or so"]] as const;
    const formulas = [[25, 41, "=AO21*3"], [26, 41, '=AO22&"!"']] as const;
    await workbook.port.apply([
      ...own.map(([row, column, value]) => ({ kind: "write" as const, sheet: tab.sheet, row, column, cells: [[{ value }]] })),
      ...formulas.map(([row, column, formula]) => ({ kind: "write" as const, sheet: tab.sheet, row, column, cells: [[{ formula }]] })),
    ]);
    expect((await previewCloseOut(workbook.port, jobName)).map(({ fact }) => fact)).toEqual(["No. 2 T-10 expects something else than the plan."]);
    expect(await acceptAsItIs(workbook.port, jobName, "EF", "Agreed with the desk")).toBe(1);
    const code = await closeOut(workbook.port, jobName, "AB", "2026-03-09 14:20");
    const path = join(folder, "sealed.xlsx");
    writeFileSync(path, await workbook.close());
    const saved = await openHeadless(readFileSync(saveInLibreOffice(path, join(folder, "saved"))));
    try {
      expect(await checkSeal(saved.port, jobName)).toEqual({ code, reopened: false, holds: true, changed: [] });
      await saved.port.apply([{ kind: "write", sheet: tab.sheet, row: 80, column: 2, cells: [[{ value: "below, later" }]] }]);
      expect((await checkSeal(saved.port, jobName)).changed.map(({ label }) => label)).toEqual(["Step of row 81"]);
    } finally {
      saved.dispose();
    }
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
});
