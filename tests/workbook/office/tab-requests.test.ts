import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { buildJob, jobsOf, readCommissioningPlan } from "../../../src/planning/commissioning/build";
import { builtInProcedures } from "../../../src/planning/commissioning/procedure";
import type { TableRows } from "../../../src/planning/plan/schema";
import { sampleRows } from "../../../src/planning/plan/set-up";
import type { SheetPlan } from "../../../src/sheet";
import { sheetSteps } from "../../../src/workbook/office/sheet-steps";
import { moment, planWorkbook } from "../../support/commissioning-plan";
import { hostWorkbook } from "../../support/host-workbook/host-workbook";

const golden = join(__dirname, "..", "..", "golden", "tabs");

function tabOf(rows: TableRows): SheetPlan {
  const source = readCommissioningPlan(planWorkbook({ ...rows, ...builtInProcedures }));
  return buildJob(source, jobsOf(source)[0]!, () => "new", moment).tab;
}

const tabs: readonly (readonly [string, () => SheetPlan])[] = [
  ["the Reading Room of the sample", () => tabOf(sampleRows())],
  ...readdirSync(golden).map((name) => [name, () => tabOf(JSON.parse(readFileSync(join(golden, name, "plan.json"), "utf8")) as TableRows)] as const),
];

/** Writes a tab through the vendor's client: the workbook afterwards, and the one request that wrote it. */
async function written(tab: SheetPlan) {
  const book = hostWorkbook({ calculate: () => "" });
  await book.port.apply([{ kind: "add-sheet", plan: tab }]);
  expect(book.syncs()).toBe(2);
  return { sheet: book.sheet(tab.name), request: book.exchanges().at(-1)! };
}

describe.each(tabs)("the tab of %s", (_name, make) => {
  const tab = make();

  test("arrives cell by cell as it was planned, formulas that were copied too", async () => {
    const { sheet } = await written(tab);
    for (const [row, line] of tab.rows.entries()) {
      for (const [column, { value, formula }] of line.entries()) {
        const wanted = formula ?? value ?? null;
        const found = sheet.formula(row, column) ?? sheet.value(row, column);
        if (found !== (wanted === "" ? null : wanted)) throw new Error(`Row ${row + 1}, column ${column + 1}: ${JSON.stringify(found)} instead of ${JSON.stringify(wanted)}`);
      }
    }
    expect(sheet.conditionalFormats.map(({ settings }) => settings.get("rule.formula"))).toEqual((tab.conditionalFormats ?? []).map(({ formula }) => formula));
  });

  test("is counted as what the client sends or up to a third more", async () => {
    const { request } = await written(tab);
    const counted = sheetSteps(tab, 1).reduce((sum, { bytes }) => sum + bytes, 0);
    expect(counted / request.bytes).toBeGreaterThan(1);
    expect(counted / request.bytes).toBeLessThan(4 / 3);
  });
});

test("the Reading Room's tab goes in one request under 500 kB and 1,500 actions", async () => {
  const { request } = await written(tabOf(sampleRows()));
  console.log(`Reading Room: ${request.bytes} bytes, ${request.actions} actions`);
  expect(request.bytes).toBeLessThan(500_000);
  expect(request.actions).toBeLessThan(1_500);
});
