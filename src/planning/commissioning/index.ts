export { builtInProcedures } from "./procedures/built-in-procedures";
export { buildJob, changedRows, jobsOf, readCommissioningPlan, type BuildMoment, type CellBlock, type CommissioningPlan, type JobBuild } from "./build-job";
export { isSpent, type CarryCounts } from "./carry-records";
export { derivedFields } from "./derived-fields";
export { idOfJob } from "./job-steps";
export { readPlannedTab, readTab, readTabs, stateCell, wholeState } from "./read-tab";
export { sheetNameWith, tabFamily, type TabFamily } from "./tab-family";
export { isClosed, type SnagRecord, type StepRecord, type TabReading } from "./tab-reading";
