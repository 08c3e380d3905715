import { isIsoDate, sheetDayOf, type Scalar, type WorkbookSnapshot } from "../../../sheet";
import { appendRows, noChanges, type CellWrite, type Changes } from "../../plan/changes";
import { groupBy, type PlanCell, type PlanModel } from "../../plan/model";
import { readCell, type PlanRow } from "../../plan/read";
import { columnsOf, type Column, type ColumnKey, type TableKey, type TableRow } from "../../plan/schema";
import type { CommissioningPlan } from "../build";
import { canonicalText, foldName, noAnswer, Problem } from "../../text";
import { expandJob } from "../job";
import { readingSteps } from "../procedure";
import { signed, type JobRecords, type StepRecord } from "../record";
import { foundCells, foundDrives, isAccepted, seenLast, type FoundCell, type FoundDrive } from "./found-cells";

/** Tables that say what stands at a site: whoever looked there knows better than the plan. What names their rows stays the plan's. */
const tablesOfSites: ReadonlySet<TableKey> = new Set<TableKey>(["sites", "racks", "feeds", "networks", "switches", "hosts", "hostPorts", "shelves", "drives", "ports"]);

/** Columns that commissioning may correct in tables that the plan alone decides otherwise. */
const furtherColumns: { readonly [Key in TableKey]?: readonly ColumnKey<Key>[] } = {
  arrays: ["serial", "firmware", "rack", "bottomUnit", "feedA", "feedB", "used"],
  clusters: ["sharedAddress"],
};

/**
 * Lists what the accepted records of a closed job would change in the plan, as cells to be shown first and written then.
 *
 * A record counts where its step expects one cell of the plan and nothing else, is no limit on one side, and is accepted: as expected, or
 * waived by name, as the tab has judged it. The value is that of the last retest, else the first one found; one that its column cannot take, or about which subjects do not
 * agree, is left out. Serial numbers of drives go by bay: a bay without a row gets one; where another drive was in place, with the day on which it was
 * fitted, its row stays and is given the day on which it was out. What was read of arrays in use becomes rows of Readings. Refuses where drives or readings
 * have no table to go into.
 */
export function asBuiltChanges(workbook: WorkbookSnapshot, source: CommissioningPlan, job: PlanRow<"jobs">, tab: JobRecords): Changes {
  const { model } = source;
  const expanded = expandJob(model, job);
  const isInstalled = model.places.emptiesDrives(job.procedure);
  const drives = foundDrives(tab, model, expanded.places.arrays).filter(({ record }) => record !== null && isAccepted(record));
  const swapped = new Map(drives.flatMap((drive) => (!isInstalled && isSwapped(drive) ? [[drive.row!.row, drive] as const] : [])));
  const found = foundCells(tab, expanded).filter(({ record, step, seen, cell }) => seen !== null && isAccepted(record) && !isLimit(step) && !isDriveSerial(cell));
  const isOfSwapped = ({ cell }: FoundCell): boolean => cell.table === "drives" && swapped.has(cell.row);
  const write = (cell: PlanCell, value: Scalar): CellWrite[] => changed(model.write(cell, value));

  const corrected = groupBy(found.filter((one) => mayCorrect(one.cell) && !isOfSwapped(one)), ({ cell }) => `${cell.table} ${cell.row} ${cell.column}`);
  const added = addDrives(workbook, model, [
    ...drives.filter(({ row }) => row === null).map((drive) => driveRow(drive, isInstalled ? dayOf(drive, tab) : null)),
    ...[...swapped].map(([row, drive]) => {
      const others = found.filter((one) => isOfSwapped(one) && one.cell.row === row);
      return { ...Object.fromEntries(others.map((one) => [one.cell.column, valueOf(one)])), ...driveRow(drive, dayOf(drive, tab)) };
    }),
  ]);
  const read = addReadings(workbook, model, readingsOf(job, tab, model));
  return {
    writes: [
      ...[...corrected.values()].flatMap((group) => {
        const value = agreedValue(group, source);
        return value === null ? [] : write(group[0]!.cell, value);
      }),
      ...[...swapped].flatMap(([row, drive]) => write({ table: "drives", row, column: "takenOut" }, dayOf(drive, tab))),
      ...drives.flatMap(({ row, seen }) => (row === null || swapped.has(row.row) ? [] : write({ table: "drives", row: row.row, column: "serial" }, canonicalText(seen)))),
      ...added.writes,
      ...read.writes,
    ],
    growths: [...added.growths, ...read.growths],
  };
}

/** Lists what a job read of arrays in use, as rows of Readings that are not there yet: all of one day, so that what the arrays of a pool hold can be added up. */
export function readingsOf(job: Pick<PlanRow<"jobs">, "job">, tab: JobRecords, model: PlanModel): TableRow<"readings">[] {
  const read = tab.steps.flatMap((record) => {
    const [what, seen] = [readingSteps[record.stepId], seenLast(tab, record)];
    const value = Number(canonicalText(seen));
    return what === undefined || seen === null || !Number.isFinite(value) ? [] : [{ record, what, value }];
  });
  const date = read.map(({ record }) => dayOf({ record }, tab)).reduce<string | null>((latest, day) => (day !== null && (latest === null || day > latest) ? day : latest), null);
  const rows = read.map(({ record, what, value }): TableRow<"readings"> => ({ date, subject: record.subject, what, value, unit: record.seenUnit || null, source: job.job }));
  return rows.filter((row) => !model.rows("readings").some((there) => isSameReading(there, row)));
}

function isSameReading(there: PlanRow<"readings">, { date, subject, what, source }: TableRow<"readings">): boolean {
  return there.date === date && there.what === what && foldName(there.subject) === foldName(String(subject)) && foldName(there.source) === foldName(String(source));
}

/** Adds rows of readings; refuses where the plan has no table for them. */
function addReadings(workbook: WorkbookSnapshot, model: PlanModel, rows: readonly TableRow<"readings">[]): Changes {
  if (rows.length === 0) return noChanges;
  const table = model.table("readings");
  if (table !== null) return appendRows(workbook, table, "readings", rows.map((row) => ({ ...row, date: sheetDayOf(String(row.date)) ?? row.date ?? null })));
  throw noAnswer("Readings", null, `The job read what is used (${rows.length}), and the plan has no table for it. Add Readings in the Plan view, then choose this again.`);
}

/** Leaves out a write of what stands there already. */
function changed(write: CellWrite | null): CellWrite[] {
  return write === null || foldName(canonicalText(write.before)) === foldName(canonicalText(write.value)) ? [] : [write];
}

/** Adds rows of drives; refuses where the plan has no table for them. */
function addDrives(workbook: WorkbookSnapshot, model: PlanModel, rows: readonly TableRow<"drives">[]): Changes {
  if (rows.length === 0) return noChanges;
  const table = model.table("drives");
  if (table !== null) return appendRows(workbook, table, "drives", rows);
  const sentence = `The job recorded serial numbers of drives (${rows.length}), and the plan has no table for them. Add Drives in the Plan view, then choose this again.`;
  throw noAnswer("Drives", null, sentence);
}

/** Tells whether a cell is the serial number of a drive: those go by bay, whether the plan has a row for the bay or not. */
function isDriveSerial({ table, column }: PlanCell): boolean {
  return table === "drives" && column === "serial";
}

function mayCorrect({ table, column: key }: PlanCell): boolean {
  const column = columnNamed(table, key);
  if (column === null || column.required === true) return false;
  return tablesOfSites.has(table) || (furtherColumns[table] as readonly string[] | undefined)?.includes(key) === true;
}

function columnNamed(table: TableKey, key: string): Column | null {
  return columnsOf(table).find(([name]) => name === key)?.[1] ?? null;
}

/** Tells whether a step only sets a limit: what is measured against it says nothing about the limit. */
function isLimit({ expectation: { wanted, shown } }: FoundCell["step"]): boolean {
  return wanted?.by === "range" && /^at (least|most) /.test(shown);
}

/** Finds what is accepted of a cell: of one subject the last thing; null where several subjects say different things, or the column cannot take it. */
function agreedValue(group: readonly FoundCell[], { model }: Pick<CommissioningPlan, "model">): Scalar {
  const last = new Map(group.map((one) => [foldName(one.step.subject), one]));
  const values = [...last.values()].map(valueOf);
  const [value = null] = values;
  const { cell } = group[0]!;
  if (value === null || values.some((other) => foldName(canonicalText(other)) !== foldName(canonicalText(value)))) return null;
  const column = columnNamed(cell.table, cell.column)!;
  if (column.from !== undefined && model.find(column.from, canonicalText(value)) === null) return null;
  return isReadBy(column, value) ? value : null;
}

function isReadBy(column: Column, value: Scalar): boolean {
  try {
    readCell(value, column);
    return true;
  } catch (thrown) {
    if (thrown instanceof Problem) return false;
    throw thrown;
  }
}

/** Writes what was seen as the column of the plan takes it: a size with its unit, a count as a number, the rest as text. */
function valueOf({ cell, record, seen }: FoundCell): Scalar {
  const column = columnNamed(cell.table, cell.column);
  if (column?.kind === "size") return record.seenUnit === "" ? seen : `${canonicalText(seen)} ${record.seenUnit}`;
  if (column?.kind !== "count" && column?.kind !== "number" && column?.kind !== "share") return canonicalText(seen, column?.kind === "date");
  const number = Number(canonicalText(seen));
  return Number.isFinite(number) ? number : column.kind === "share" ? canonicalText(seen) : null;
}

/** Tells whether another drive sits in a bay than the one that the plan says was fitted there on a day. */
function isSwapped({ row, seen }: FoundDrive): boolean {
  return row !== null && row.fitted !== null && row.serial !== "" && foldName(row.serial) !== foldName(canonicalText(seen));
}

function driveRow({ array, shelf, bay, seen }: FoundDrive, fitted: string | null): TableRow<"drives"> {
  return { array: array.array, shelf: shelf === "" ? null : shelf, bay, serial: canonicalText(seen), fitted };
}

/** Finds the day on which a drive was seen in its bay: that beside its record, else that of the seal; null where neither is a day. */
function dayOf({ record }: { readonly record: StepRecord | null }, tab: JobRecords): string | null {
  const days = [record === null ? null : signed(record, tab.steps).typed.done, tab.seals.at(-1)?.typed.sealed ?? null];
  return days.map((day) => canonicalText(day, true).slice(0, 10)).find(isIsoDate) ?? null;
}
