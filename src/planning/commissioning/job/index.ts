export { expandJob, idOfJob } from "./expand-job";
export type { ExpandedJob, JobStep, Sign } from "./job-step";
export { stepWords } from "./step-words";
