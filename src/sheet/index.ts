export { areasMeet, cellArea, isInArea, sheetSize, type Area, type CellPlace } from "./area";
export { changedRows, type CellBlock } from "./cell-block";
export { areaAddress, cellAddress, parseAreas, parseCell } from "./cell-address";
export { isBlank, isError, showCell, type CellError, type CellValue, type Scalar } from "./cell-value";
export { columnLetters, columnNumber } from "./column-letters";
export { dayOfInstant, instantOfDay, isIsoDate, isoDateOf, sheetDayOf } from "./sheet-date";
export { foldSheetName, longestSheetName, quoteSheetName, sameSheetName, sheetNameFault } from "./sheet-name";
export type { Cell, CellStyle, ConditionalFormat, PrintPlan, SheetPlan, TablePlan, Validation } from "./sheet-plan";
export type { SheetSnapshot, WorkbookSnapshot } from "./snapshot";
