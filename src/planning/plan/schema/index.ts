export type { ChoiceColumn, Column, ColumnKind, MeasureColumn, Measures } from "./column";
export { derivedFields, derivedFieldsOf, type DerivedField, type DerivedTexts } from "./derived-fields";
export { forEachKinds, forEachOf, layerTables, type ForEach, type LayerName } from "./for-each";
export { recordKinds, signs, type RecordKind } from "./record-kinds";
export type { Table } from "./table";
export { tableKeys, type TableKey } from "./table-keys";
export type { TableRow, TableRows } from "./table-row";
export { columnsOf, nameColumn, tables, type ColumnKey, type Tables, type TextColumn } from "./tables";
export { schemaVersion } from "./version";
