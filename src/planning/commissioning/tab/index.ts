export { tabSheet } from "./tab-sheet";
export { readPlannedTab, readTab, readTabs } from "./read-tab";
export { reopenBlocks, sealBlocks } from "./seal-blocks";
export { isSpent, sheetNameWith, tabFamily, type TabFamily } from "./tab-family";
export { isTab, stateCell, tabStates } from "./tab-mark";
export type { TabReading } from "./tab-reading";
export { forgedCells, type ForgedCell } from "./twin-cells";
export { refuseFaulty } from "./tab-faults";
