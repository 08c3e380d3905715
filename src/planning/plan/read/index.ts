export { hostTableName, locateTable, markerText, type TableLocation } from "./locate-table";
export { isPlan, readPlan, requireTables, rowsOf, type Plan, type PlanTables, type ReadTable } from "./read-plan";
export { cellOf, textOf, type CellFault, type PlanRow } from "./row";
export { initialSettings, lastIdSettings, readSettings, settingRules, type SettingFault, type Settings } from "./settings";
