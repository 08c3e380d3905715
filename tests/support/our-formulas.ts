import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { buildJob, jobsOf, readCommissioningPlan } from "../../src/planning/commissioning/build";
import { builtInProcedures } from "../../src/planning/commissioning/procedure";
import { planSetUp, sampleRows } from "../../src/planning/plan/set-up";
import type { TableRows } from "../../src/planning/plan/schema";
import { formulaTokens, type SheetPlan } from "../../src/sheet";
import { moment, planWorkbook } from "./commissioning-plan";

const golden = join(__dirname, "..", "golden", "tabs");

/** Lists every formula of the sample's tables and of the golden tabs: of cells, of what may be typed, and of conditional formats. */
export function ourFormulas(): string[] {
  const tables = planSetUp({ sheets: [] }, { ...sampleRows(), ...builtInProcedures });
  const tabs = readdirSync(golden).map((name) => {
    const rows = JSON.parse(readFileSync(join(golden, name, "plan.json"), "utf8")) as TableRows;
    const source = readCommissioningPlan(planWorkbook({ ...rows, ...builtInProcedures }));
    return buildJob(source, jobsOf(source)[0]!, () => "new", moment).tab;
  });
  return [...new Set([...tables, ...tabs].flatMap(formulasOf))];
}

function formulasOf({ rows, validations = [], conditionalFormats = [] }: SheetPlan): string[] {
  return [
    ...rows.flatMap((row) => row.flatMap(({ formula }) => formula ?? [])),
    ...validations.flatMap(({ rule }) => (rule.kind === "list-of" ? [rule.formula] : [])),
    ...conditionalFormats.map(({ formula }) => formula),
  ];
}

/** Lists the native functions and the operators of a formula. */
export function partsOf(formula: string): string[] {
  return formulaTokens(formula.slice(1)).flatMap(({ kind, text }) => {
    if (kind === "function") return /^BAY\./i.test(text) ? [] : [text.toUpperCase()];
    return kind === "other" ? (text.match(/<>|<=|>=|[=<>&*/+-]/g) ?? []) : [];
  });
}
