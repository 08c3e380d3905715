export type { Area } from "./area";
export { changedRows, type CellBlock } from "./cell-block";
export { isBlank, isError, showCell, type CellValue, type Scalar } from "./cell-value";
export { columnLetters } from "./column-letters";
export { isoDateOf, sheetDayOf } from "./sheet-date";
export { longestSheetName, sameSheetName, sheetNameFault } from "./sheet-name";
export type { Cell, CellStyle, ConditionalFormat, PrintPlan, SheetPlan, TablePlan, Validation } from "./sheet-plan";
export type { SheetSnapshot, WorkbookSnapshot } from "./snapshot";
