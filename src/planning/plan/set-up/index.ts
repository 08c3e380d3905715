export { sampleRows } from "./sample";
export { earlierTables, missingTables, planBringUp, planSetUp } from "./set-up";
