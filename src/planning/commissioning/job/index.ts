export { expandJob, idOfJob, type ExpandedJob, type JobStep, type Sign } from "./job-steps";
