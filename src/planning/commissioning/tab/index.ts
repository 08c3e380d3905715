export { changedRows } from "./cell-blocks";
export { planTab } from "./plan-tab";
export { isTab, readPlannedTab, readTab, readTabs, stateCell, wholeState } from "./read-tab";
export { reopenBlocks, sealBlocks } from "./seal-cells";
export { snagColumnKeys, snagColumns, tabColumns, typedColumns, type SealColumn, type SnagColumn, type TypedColumn } from "./tab-columns";
export { sheetNameWith, tabFamily, type TabFamily } from "./tab-family";
