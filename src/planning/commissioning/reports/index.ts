export { asBuiltChanges } from "./as-built";
export { handoverMark, planHandover } from "./handover";
export { planProgress, progressMark, progressOf, type JobProgress } from "./progress";
