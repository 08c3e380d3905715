export { hostTableName, locateTable, markerText } from "./locate-table";
export { readPlan, requireTables, rowsOf, type Plan, type PlanRow, type ReadTable } from "./read-plan";
export { initialSettings, lastIdSettings, readSettings, settingRules, type SettingFault, type Settings } from "./settings";
