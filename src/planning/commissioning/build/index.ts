export { buildJob, type AdjustReading, type BuildMoment, type JobBuild } from "./build-job";
export { jobNamed, jobsOf, readCommissioningPlan, readPlanOfTabs, tabSheetsOf, withTabs, type CommissioningPlan } from "./commissioning-plan";
export { refuseIds, refuseUnsealed } from "./refuse-build";
