export { hostTableName, locateTable, markerText, type TableLocation } from "./locate-table";
export { isPlan, readPlan, requireTables, rowsOf, type Plan, type PlanTables, type ReadTable } from "./read-plan";
export { readCell } from "./read-cell";
export { cellOf, heirOf, textOf, type CellFault, type PlanRow, type Reading, type Shown } from "./row";
export { initialSettings, lastIdSettings, readSettings, settingRules, type SettingFault, type Settings } from "./settings";
