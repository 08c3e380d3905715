export { recordKinds, type RecordKind } from "./record-kinds";
export { tableKeys, type TableRow, type TableRows } from "./table-row";
export { tables, type Column, type ColumnKind, type Table, type TableKey, type Tables } from "./tables";
