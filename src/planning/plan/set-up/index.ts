export { sampleRows } from "./sample";
export { earlierTables, furtherTables, missingTables, planBringUp, planFormulas, planSetUp, planTables } from "./set-up";
