import type { CellValue, Scalar, SheetPlan, SheetSnapshot, WorkbookSnapshot } from "../../../sheet";
import { isBlank } from "../../../sheet";
import { canonicalText } from "../../text";
import { at, keptPrefix, sealColumnKeys, snagColumnKeys, tabColumnKeys, tabColumns, tags, typedColumns, type SealColumn, type SnagColumn, type TabColumn } from "./tab-columns";
import type { SealLine, SnagRecord, StepRecord, TabPlaces, TabReading, TypedCells } from "../record";

/** Text of the hidden cell by which a tab is recognised; job id, build, first build and state stand to its right. */
export const tabMarker = "Commissioning tab";
export const wholeState = "whole";
/** Where the state stands on a tab as it is built. */
export const stateCell = { row: 0, column: at.plannedUnit } as const;
export const unfinishedState = "unfinished";

/** Reads every commissioning tab of a workbook, in tab order; sheets that were not asked for are passed over. */
export function readTabs(workbook: WorkbookSnapshot): TabReading[] {
  return workbook.sheets.flatMap((sheet) => readTab(sheet) ?? []);
}

/** Tells whether a sheet is a commissioning tab. */
export function isTab(sheet: SheetSnapshot): boolean {
  return findMarker(sheet) !== null;
}

/**
 * Reads a commissioning tab; null where the sheet is none.
 *
 * It is found by its hidden marker, whatever it is called, and its columns by their headers, so that columns and rows that people
 * added, and rows they sorted, do no harm. Nothing is thrown: what cannot be taken as it stands is remarked on.
 */
export function readTab(sheet: SheetSnapshot): TabReading | null {
  const found = findMarker(sheet);
  if (found === null) return null;
  const { row: markerRow, column: markerColumn } = found;
  const mark = sheet.values[markerRow]!;
  const headerRow = sheet.values.findIndex((line, row) => row > markerRow && row < markerRow + 20 && line.some((cell) => canonicalText(cell) === tabColumns.key.header));
  if (headerRow < 0) return null;
  const { columns, ownColumns } = readHeader(sheet.values[headerRow]!);
  const reader = new RowReader(sheet, columns);

  const tagRow = (tag: string): number => {
    for (let row = headerRow + 1; row < sheet.values.length; row += 1) if (reader.text(row, "key") === tag) return row;
    return sheet.values.length;
  };
  const sealsRow = tagRow(tags.seals);
  const keptRow = Math.min(tagRow(tags.kept), sealsRow);
  const snagsRow = Math.min(tagRow(tags.snags), keptRow);
  const places: TabPlaces = { columns, headerRow, stateCell: { row: markerRow, column: markerColumn + 4 }, snagsRow, keptRow, sealsRow, lastRow: sheet.values.length - 1 };

  const steps: StepRecord[] = [];
  const kept: StepRecord[] = [];
  const snags: SnagRecord[] = [];
  const seals: SealLine[] = [];
  const ownRows: number[] = [];
  const firstStep = sheet.values.findIndex((_, row) => row > headerRow && /^[^#].*\/.*\//s.test(reader.text(row, "key")));
  for (let row = headerRow + 1; row < sheet.values.length; row += 1) {
    const key = reader.text(row, "key");
    if (key.startsWith(keptPrefix)) kept.push(reader.step(row, key.slice(keptPrefix.length)));
    else if (key === tags.snag || (key === "" && row > snagsRow + 1 && row < keptRow)) snags.push(...reader.snag(row, steps));
    else if (key === tags.seal || (key === "" && row > sealsRow + 1)) seals.push(...reader.seal(row));
    else if (key !== "" && !key.startsWith("#")) steps.push(reader.step(row, key));
    else if (key === "" && firstStep >= 0 && row > firstStep && row < snagsRow && reader.isOwnRow(row)) ownRows.push(row);
  }
  return {
    sheet: sheet.name,
    title: canonicalText(sheet.values[markerRow]?.[columns.no ?? 0]),
    visible: sheet.visible,
    attachments: sheet.attachments,
    jobId: canonicalText(mark[markerColumn + 1]),
    build: Number(mark[markerColumn + 2] ?? 0) || 0,
    born: canonicalText(mark[markerColumn + 3]),
    whole: canonicalText(mark[markerColumn + 4]) === wholeState,
    places, steps, snags, kept, seals, ownRows, ownColumns,
    remarks: reader.remarks,
  };
}

/** Reads a planned tab as it will stand on its sheet once it is in place, before any formula has a result. */
export function readPlannedTab(plan: SheetPlan): TabReading {
  const sheet = {
    name: plan.name, visible: true, protected: false, tables: [], attachments: 0,
    values: plan.rows.map((row) => row.map(({ value = null }) => value)),
    formulas: plan.rows.map((row) => row.map(() => null)),
  };
  return { ...readTab(sheet)!, whole: true };
}

function findMarker(sheet: SheetSnapshot): { readonly row: number; readonly column: number } | null {
  for (let row = 0; row < Math.min(sheet.values.length, 20); row += 1) {
    const column = sheet.values[row]!.findIndex((cell) => cell === tabMarker);
    if (column >= 0) return { row, column };
  }
  return null;
}

function readHeader(header: readonly CellValue[]): { readonly columns: Readonly<Record<string, number>>; readonly ownColumns: readonly string[] } {
  const columns: Record<string, number> = {};
  const ownColumns: string[] = [];
  header.forEach((cell, index) => {
    const text = canonicalText(cell);
    const key = tabColumnKeys.find((one) => tabColumns[one].header === text && columns[one] === undefined);
    if (key !== undefined) columns[key] = index;
    else if (text !== "") ownColumns.push(text);
  });
  return { columns, ownColumns };
}

class RowReader {
  readonly remarks: string[] = [];

  constructor(
    private readonly sheet: SheetSnapshot,
    private readonly columns: Readonly<Record<string, number>>,
  ) {}

  cell(row: number, column: TabColumn): CellValue {
    const index = this.columns[column];
    return index === undefined ? null : (this.sheet.values[row]?.[index] ?? null);
  }

  text(row: number, column: TabColumn): string {
    return canonicalText(this.cell(row, column));
  }

  step(row: number, key: string): StepRecord {
    const rule = this.text(row, "rule").split(" ");
    const plannedUnit = this.text(row, "plannedUnit");
    const typed = Object.fromEntries(typedColumns.map((column) => [column, this.typed(row, column)])) as Record<(typeof typedColumns)[number], Scalar>;
    if (typed.unit !== null && canonicalText(typed.unit) === plannedUnit) typed.unit = null;
    return {
      key,
      no: this.text(row, "no"),
      stepId: this.text(row, "stepId"),
      step: this.text(row, "step"),
      subject: this.text(row, "subject"),
      expected: this.text(row, "expected"),
      plannedUnit,
      was: this.text(row, "was"),
      result: this.text(row, "result"),
      isComputed: (this.sheet.formulas[row]?.[this.columns.result ?? -1] ?? null) !== null,
      required: rule[0] === "required",
      sign: rule[1] ?? "none",
      kind: rule[2] ?? "text",
      typed: typed as TypedCells,
      settled: this.cell(row, "settled") === 1,
      minutes: Number(this.cell(row, "minutes")) || 0,
      carried: this.text(row, "carried"),
      digest: this.text(row, "digest"),
      row,
    };
  }

  /** Reads a row for snags; none where it is blank. Which step it is about follows from its number, as a file may hold formulas that were not computed. */
  snag(row: number, steps: readonly StepRecord[]): SnagRecord[] {
    const typed = Object.fromEntries(snagColumnKeys.map((column) => [column, this.typed(row, column)])) as Record<SnagColumn, Scalar>;
    if (snagColumnKeys.every((column) => typed[column] === null)) return [];
    const about = typeof typed.no === "number" ? steps.find(({ no }) => no === canonicalText(typed.no)) : undefined;
    return [{ key: about?.key ?? this.text(row, "plannedUnit"), stepId: about?.stepId ?? this.text(row, "stepId"), typed, carried: this.text(row, "carried"), digest: this.text(row, "digest"), row }];
  }

  seal(row: number): SealLine[] {
    const typed = Object.fromEntries(sealColumnKeys.map((column) => [column, this.typed(row, column)])) as Record<SealColumn, Scalar>;
    return sealColumnKeys.every((column) => typed[column] === null) ? [] : [{ typed, digest: this.text(row, "digest"), row }];
  }

  isOwnRow(row: number): boolean {
    return [...typedColumns, "expected" as const, "stepId" as const].some((column) => !isBlank(this.cell(row, column)));
  }

  /** Takes what was typed: a formula by its result, an error by its text. */
  private typed(row: number, column: TabColumn): Scalar {
    const cell = this.cell(row, column);
    const index = this.columns[column];
    if (index !== undefined && (this.sheet.formulas[row]?.[index] ?? null) !== null) {
      this.remarks.push(`Row ${row + 1} of ${this.sheet.name}: ${tabColumns[column].header} held a formula. Its result was kept; type the value instead.`);
    }
    if (cell === null || cell === "") return null;
    if (typeof cell === "object") {
      this.remarks.push(`Row ${row + 1} of ${this.sheet.name}: ${tabColumns[column].header} shows ${cell.error}. That text was kept; type what was found.`);
      return cell.error;
    }
    return typeof cell === "string" && cell.trim() === "" ? null : cell;
  }
}
