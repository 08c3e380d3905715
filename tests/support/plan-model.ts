import { PlanModel } from "../../src/planning/plan/model";
import type { TableRows } from "../../src/planning/plan/schema";
import { planWorkbook } from "./commissioning-plan";

/** Makes the model of a plan that has nothing but these rows. In each table the first of them is row 4, counted from 0. */
export function modelOf(rows: TableRows): PlanModel {
  return new PlanModel(planWorkbook(rows));
}
