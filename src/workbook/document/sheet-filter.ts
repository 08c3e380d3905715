import { showCell, type Area, type CellValue, type TablePlan } from "../../sheet";
import { moveArea, moveSpan } from "./move-lines";
import type { Comparison, FilterCondition, LineMove, SheetFilter } from "./workbook-document";

/** A cell as a condition looks at it. */
export interface ShownCell {
  readonly text: string;
  readonly value: CellValue;
}

/** The filters of a sheet on which nobody said anything of them: each of its tables has its arrows, as tables have. */
export function filtersOfTables(tables: readonly TablePlan[]): SheetFilter[] {
  return tables.map(({ name }) => ({ table: name, columns: [] }));
}

/** Finds the area of a filter, its row of arrows included and totals left out; null where its table is gone or shows no header. */
export function areaOfFilter({ table, area }: SheetFilter, tables: readonly TablePlan[]): Area | null {
  if (table === undefined) return area ?? null;
  const found = tables.find(({ name }) => name === table);
  if (found === undefined || found.isHeadless === true) return null;
  return { ...found.area, rows: Math.max(1, found.area.rows - (found.totalRows ?? 0)) };
}

/** Tells whether a filter may keep rows out of sight. */
export function isFiltering({ columns }: SheetFilter): boolean {
  return columns.some(({ condition }) => condition !== undefined);
}

/** Moves a filter when rows or columns come and go; null when all of it went, or its row of arrows. `tables` are those from before. */
export function moveFilter(filter: SheetFilter, tables: readonly TablePlan[], move: LineMove): SheetFilter | null {
  const before = areaOfFilter(filter, tables);
  if (before === null) return filter;
  const area = moveArea(before, move);
  if (area === null || (filter.table === undefined && move.axis === "row" && moveSpan(before.row, 1, move) === null)) return null;
  const columns = move.axis === "row" ? filter.columns : filter.columns.flatMap((one) => {
    const to = moveSpan(before.column + one.column, 1, move);
    return to === null ? [] : [{ ...one, column: to.first - area.column }];
  });
  return { ...filter, ...(filter.table === undefined && { area }), columns };
}

/** The condition of a column, if it has one. */
export function conditionOf({ columns }: SheetFilter, column: number): FilterCondition | undefined {
  return columns.find((one) => one.column === column)?.condition;
}

/** A filter with another condition for a column, or with none. */
export function withCondition(filter: SheetFilter, column: number, condition: FilterCondition | undefined): SheetFilter {
  const old = filter.columns.find((one) => one.column === column);
  const others = filter.columns.filter((one) => one.column !== column);
  const isSaid = condition !== undefined || old?.hidesArrow === true;
  return { ...filter, columns: [...others, ...(isSaid ? [{ ...old, column, condition }] : [])].sort((one, other) => one.column - other.column) };
}

/** Makes the test of a condition. One that is not known here is passed by all. */
export function testOf(condition: FilterCondition): (cell: ShownCell) => boolean {
  if (condition.kind === "other") return () => true;
  if (condition.kind === "list") {
    const texts = new Set(condition.texts.map(fold));
    return ({ text, value }) => (isEmpty(text) ? condition.blank : texts.has(fold(text)) || texts.has(fold(showCell(value))));
  }
  const tests = condition.comparisons.map(comparisonTest);
  return (cell) => (condition.joins ? tests.every((test) => test(cell)) : tests.some((test) => test(cell)));
}

/** Tells whether a cell shows nothing that a person sees. */
export function isEmpty(text: string): boolean {
  return text.trim() === "";
}

function fold(text: string): string {
  return text.trim().toLowerCase();
}

function comparisonTest({ operator, value: wanted }: Comparison): (cell: ShownCell) => boolean {
  const number = wanted.trim() === "" ? NaN : Number(wanted);
  const like = patternOf(wanted);
  const isEqual = ({ text, value }: ShownCell) => (typeof value === "number" && !Number.isNaN(number) ? value === number : like.test(text.trim()));
  if (operator === "equal") return isEqual;
  if (operator === "notEqual") return (cell) => !isEqual(cell);
  const holds = (order: number) => (operator.startsWith("greater") ? order > 0 : order < 0) || (operator.endsWith("OrEqual") && order === 0);
  return ({ value }) => {
    if (!Number.isNaN(number)) return typeof value === "number" && holds(value - number);
    return typeof value === "string" && value !== "" && holds(value.localeCompare(wanted, "en", { sensitivity: "base" }));
  };
}

function patternOf(wanted: string): RegExp {
  const parts = wanted.trim().match(/~[*?~]|[\s\S]/gu) ?? [];
  const pattern = parts.map((part) => (part === "*" ? ".*" : part === "?" ? "." : (part.length > 1 && part.startsWith("~") ? part.slice(1) : part).replace(/[\\^$.*+?()[\]{}|/]/g, "\\$&")));
  return new RegExp(`^${pattern.join("")}$`, "isu");
}

/** Writes a text for a comparison in which no letter stands for others. */
export function literally(text: string): string {
  return text.replace(/[*?~]/g, "~$&");
}

/** Finds the filter that a sheet has of its own. */
export function ownFilter(filters: readonly SheetFilter[] | undefined): SheetFilter | undefined {
  return filters?.find(({ table }) => table === undefined);
}
