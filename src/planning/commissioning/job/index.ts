export { clusterStepFault } from "./cluster-step-fault";
export { expandJob, idOfJob } from "./expand-job";
export type { ExpandedJob, JobSection, JobStep, Sign } from "./job-step";
export { readStepWords, stepWords, type StepWords } from "./step-words";
export { anySubject, subjectFault } from "./subject-fault";
export { touchedSteps } from "./touched-steps";
