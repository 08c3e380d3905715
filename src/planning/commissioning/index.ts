export { asBuiltChanges } from "./as-built";
export { acceptReturned, compareReturned, type ReturnedChange, type ReturnedItem, type ReturnedTab } from "./bring-back";
export {
  buildJob, jobNamed, jobsOf, readCommissioningPlan,
  type AdjustReading, type BuildMoment, type CommissioningPlan, type JobBuild,
} from "./build-job";
export { isSpent, type CarryCounts } from "./carry-records";
export { openItems, type OpenItem } from "./close-out";
export { derivedFields } from "./derived-fields";
export { handoverMark, planHandover } from "./handover";
export { idOfJob } from "./job-steps";
export { planProgress, progressMark, progressOf, type JobProgress } from "./progress";
export { builtInProcedures } from "./procedures/built-in-procedures";
export { isTab, readPlannedTab, readTab, readTabs, stateCell, wholeState } from "./read-tab";
export { checkSeal, sealOf, type Seal, type SealCheck } from "./seal";
export { reopenBlocks, sealBlocks } from "./seal-cells";
export { sheetNameWith, tabFamily, type TabFamily } from "./tab-family";
export { isClosed, type SnagRecord, type StepRecord, type TabReading } from "./tab-reading";
export { parseCondition, type Comparison } from "./condition";
export { parseExpectation, type Expectation } from "./expectation";
export { fieldsOf, parseTemplate, type Template } from "./template";
export { changedRows, type CellBlock } from "./cell-blocks";
