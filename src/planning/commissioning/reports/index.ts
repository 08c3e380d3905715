export { asBuiltChanges, readingsOf } from "./as-built";
export { handoverMark, handoverPack, planHandover, type HandoverPack } from "./handover-pack";
export { planPreview, previewMark } from "./preview";
export { planProgress, progressMark, progressOf, type JobProgress } from "./progress";
export { programmeOf, type PlannedWork, type ProgrammeLine } from "./programme";
export { planProgramme, programmeMark } from "./programme-sheet";
