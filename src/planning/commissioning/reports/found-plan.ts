import type { PlanModel } from "../../plan/model";
import type { ColumnKey, TableKey } from "../../plan/schema";
import { canonicalText, foldName } from "../../text";
import { readStepWords, type ExpandedJob } from "../job";
import { results, type JobRecords, type StepRecord } from "../record";
import { foundCells, foundDrives, seenLast, type FoundCell, type FoundDrive } from "./found-cells";

/** Says of cells of the plan what a tab found there. */
export class FoundPlan {
  private readonly cells: ReadonlyMap<string, FoundCell>;

  constructor(
    private readonly records: JobRecords,
    private readonly expanded: Pick<ExpandedJob, "sections" | "places">,
  ) {
    const seen = foundCells(records, expanded).filter((one) => one.seen !== null);
    this.cells = new Map(seen.map((one) => [keyOf(one.cell.table, one.cell.row, one.cell.column), one]));
  }

  /**
   * Writes what was found of a cell; with what had been planned where that is something else.
   *
   * `unseen` stands there where no step recorded it: what is planned, marked as that, where nothing else is said.
   */
  cell<Key extends TableKey>(table: Key, row: number, column: ColumnKey<Key>, planned: string, unseen = asPlanned(planned)): string {
    const found = this.cells.get(keyOf(table, row, column));
    return found === undefined ? unseen : beside(found.record, textOf(found));
  }

  /** Lists the bays of the arrays of the job with what was read in them. */
  drives(model: PlanModel): FoundDrive[] {
    return foundDrives(this.records, model, this.expanded.places.arrays);
  }

  /** Writes the serial number that was read in a bay; with the planned one where that is another. */
  serialOf({ row, record, seen }: FoundDrive): string {
    return record === null ? asPlanned(row?.serial ?? "") : beside({ ...record, expected: record.expected || (row?.serial ?? "") }, canonicalText(seen));
  }

  /** Lists the serial numbers that were found of what is neither an array nor a drive in its bay. */
  otherSerials(model: PlanModel): StepRecord[] {
    const told = new Set([...[...this.cells.values()].map(({ record }) => record.key), ...this.drives(model).flatMap(({ record }) => record?.key ?? [])]);
    return this.records.steps.filter((record) => record.kind === "serial" && !told.has(record.key) && seenLast(this.records, record) !== null);
  }
}

function keyOf(table: TableKey, row: number, column: string): string {
  return `${table} ${row} ${column}`;
}

function asPlanned(planned: string): string {
  return planned === "" ? "not recorded" : `${planned} (plan)`;
}

function textOf({ record, seen }: FoundCell): string {
  const text = canonicalText(seen, record.kind === "date");
  return record.kind === "size" && record.seenUnit !== "" ? `${text} ${record.seenUnit}` : text;
}

/**
 * Puts what was planned below what was found, where it is something else. What is the same in other capitals is written as planned; an address may be spelt in
 * two ways, and a size be within its tolerance.
 */
function beside({ kind, expected, result }: StepRecord, found: string): string {
  if (foldName(found) === foldName(expected)) return expected;
  const isTaken = expected === "" || (result === results.asExpected && (kind === "address" || kind === "size"));
  return isTaken ? found : `${found}\nplanned ${expected}`;
}

/** Writes what a step tells people to do, without what is said around it: that it is a hold point, what gets hurt, what the maker's guide says. */
export function wordsOf({ step }: StepRecord): string {
  return readStepWords(step).do || step;
}
