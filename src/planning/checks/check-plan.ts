import type { WorkbookSnapshot } from "../../sheet";
import { PlanModel } from "../plan/model";
import type { Finding, Rule, Weight } from "./finding";

const order: Readonly<Record<Weight, number>> = { stop: 0, warn: 1, note: 2 };

/** Runs rules over a workbook as of a day (an ISO date) and lists what they find: by weight, then rule by rule, then down the sheet. */
export function checkPlan(workbook: WorkbookSnapshot, rules: readonly Rule[], today: string): Finding[] {
  const model = new PlanModel(workbook);
  return rules
    .flatMap(({ name, weight, check }): Finding[] => check(model, today).map((remark) => ({ rule: name, weight, ...remark })))
    .sort((a, b) => order[a.weight] - order[b.weight]);
}
