export { buildJob, jobNamed, jobsOf, readCommissioningPlan, type AdjustReading, type BuildMoment, type CommissioningPlan, type JobBuild } from "./build-job";
