export { capacityOf, derivedFields } from "./derived-fields";
export { lookupIn, percent, planCellOf, type PlanCell } from "./scope";
export { JobSubjects } from "./subjects";
