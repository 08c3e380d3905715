export { sampleRows } from "./sample";
export { earlierTables, furtherTables, missingTables, planBringUp, planSetUp, planTables } from "./set-up";
