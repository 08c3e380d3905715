export { expandJob, idOfJob, type ExpandedJob, type JobStep } from "./job-steps";
