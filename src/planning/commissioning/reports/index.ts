export { asBuiltChanges } from "./as-built";
export { handoverMark, handoverPack, planHandover, type HandoverPack } from "./handover-pack";
export { planPreview, previewMark } from "./preview";
export { planProgress, progressMark, progressOf, type JobProgress } from "./progress";
