export { sampleRows } from "./sample";
export { missingTables, planSetUp } from "./set-up";
