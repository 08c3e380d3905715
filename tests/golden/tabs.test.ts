import { readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { buildJob, jobsOf, readCommissioningPlan } from "../../src/planning/commissioning/build";
import { builtInProcedures } from "../../src/planning/commissioning/procedure";
import { shownColumns, tabColumnKeys, tabColumns } from "../../src/planning/commissioning/tab/tab-columns";
import type { TableRows } from "../../src/planning/plan/schema";
import type { Cell, SheetPlan } from "../../src/sheet";
import { moment, planWorkbook } from "../support/commissioning-plan";

// One folder a procedure: plan.json goes in, tab.txt comes out. Write what comes out with UPDATE_GOLDEN=1, and read the difference.
const folder = join(__dirname, "tabs");
const cases = readdirSync(folder);

/** Writes a tab row by row: number of the row, then each cell that holds something by its column. */
function textOf(tab: SheetPlan): string {
  const lines = tab.rows.flatMap((row, index) => {
    const cells = row.flatMap((cell, column) => {
      // What stands under Built follows from the rest of the row.
      const shown = tabColumnKeys[column] === "built" && index !== 1 ? "" : showCell(cell, column);
      return shown === "" ? [] : [`${tabColumns[tabColumnKeys[column]!].header}: ${shown}`];
    });
    return cells.length === 0 ? [] : [`${index + 1}\n${cells.map((cell) => `  ${cell.replaceAll("\n", "\n    ")}`).join("\n")}`];
  });
  const validations = (tab.validations ?? []).map(({ area, rule }) => {
    const may = rule.kind === "list" ? rule.items.join(" | ") : rule.kind;
    return `rows ${area.row + 1}-${area.row + area.rows} ${tabColumns[tabColumnKeys[area.column]!].header}: ${may}`;
  });
  return `${lines.join("\n")}\n\nWhat may be typed\n${validations.join("\n")}\n\nPages begin at rows ${(tab.print?.breaksBefore ?? []).map((row) => row + 1).join(", ")}\n`;
}

function showCell({ value, formula }: Cell, column: number): string {
  // Formulas are alike in every row: one test of their own reads what they answer.
  if (formula !== undefined) return column < shownColumns ? "(formula)" : "";
  return value === null || value === undefined ? "" : String(value);
}

test("every built-in procedure has its folder", () => {
  const held = cases.map((name) => (JSON.parse(readFileSync(join(folder, name, "plan.json"), "utf8")) as TableRows).jobs![0]!.procedure);
  expect([...new Set(held)].sort()).toEqual([...new Set(builtInProcedures.procedures.map(({ procedure }) => procedure))].sort());
});

test.each(cases)("the tab of tests/golden/tabs/%s is the one that was read and agreed", (name) => {
  const rows = JSON.parse(readFileSync(join(folder, name, "plan.json"), "utf8")) as TableRows;
  const source = readCommissioningPlan(planWorkbook({ ...rows, ...builtInProcedures }));
  const text = textOf(buildJob(source, jobsOf(source)[0]!, () => "new", moment).tab);
  const file = join(folder, name, "tab.txt");
  if (process.env.UPDATE_GOLDEN === "1") writeFileSync(file, text);
  expect(text).toBe(readFileSync(file, "utf8"));
});
