export { buildJob, type AdjustReading, type BuildMoment, type JobBuild } from "./build-job";
export { isTabOf, jobNamed, jobsOf, readCommissioningPlan, readPlanOfTabs, withTabs, type CommissioningPlan } from "./commissioning-plan";
export { refuseIds, refuseJob, refuseUnsealed } from "./refuse-build";
