import type { WorkbookSnapshot } from "../../sheet";
import type { Finding, Rule, Weight } from "./finding";
import { PlanIndex } from "../plan/model";

const order: Readonly<Record<Weight, number>> = { stop: 0, warn: 1, note: 2 };

/** Runs rules over a workbook and lists what they find: by weight, then rule by rule, then down the sheet. */
export function checkPlan(workbook: WorkbookSnapshot, rules: readonly Rule[]): Finding[] {
  const index = new PlanIndex(workbook);
  return rules
    .flatMap(({ name, weight, check }): Finding[] => check(index).map((remark) => ({ rule: name, weight, ...remark })))
    .sort((a, b) => order[a.weight] - order[b.weight]);
}
