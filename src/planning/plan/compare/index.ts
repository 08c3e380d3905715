export { comparePlans, type CellDifference, type PlanDifferences, type RowDifference } from "./compare-plans";
