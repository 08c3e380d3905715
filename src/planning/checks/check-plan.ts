import type { WorkbookSnapshot } from "../../sheet";
import { PlanModel } from "../plan/model";
import type { Finding, Rule, Weight } from "./finding";

const order: Readonly<Record<Weight, number>> = { stop: 0, warn: 1, note: 2 };

/** Runs rules over a workbook and lists what they find: by weight, then rule by rule, then down the sheet. */
export function checkPlan(workbook: WorkbookSnapshot, rules: readonly Rule[]): Finding[] {
  const model = new PlanModel(workbook);
  return rules
    .flatMap(({ name, weight, check }): Finding[] => check(model).map((remark) => ({ rule: name, weight, ...remark })))
    .sort((a, b) => order[a.weight] - order[b.weight]);
}
