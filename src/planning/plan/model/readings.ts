import { parseSizeOrZero, type Bytes } from "../../quantity";
import { sheetDayOf, showCell } from "../../../sheet";
import { foldName } from "../../text";
import { heirOf, rowsOf, type PlanRow, type PlanTables } from "../read";
import { tables } from "../schema";
import { groupBy } from "./group-by";
import { orNull } from "./refusal";

/** A row of Readings that says what was read of what on which day. */
export interface PlannedReading {
  readonly row: PlanRow<"readings">;
  readonly date: string;
  readonly size: Bytes;
}

/** Reads the size of a row of Readings; null where it has none, or a unit that is none. */
export function sizeOfReading({ value, unit }: PlanRow<"readings">): Bytes | null {
  return value === null ? null : orNull(() => parseSizeOrZero(unit === "" ? value : `${value} ${unit}`, "Value"));
}

/** Takes a row of Readings for a reading; null where day, what or size is missing. */
export function asReading(row: PlanRow<"readings">): PlannedReading | null {
  const size = sizeOfReading(row);
  return row.date === null || sheetDayOf(row.date) === null || row.what === "" || size === null ? null : { row, date: row.date, size };
}

/** Finds the latest reading among some; of two of one day the one that stands lower in the table. */
export function latestOf(readings: readonly PlannedReading[]): PlannedReading | null {
  return readings.reduce<PlannedReading | null>((latest, one) => (latest === null || one.date >= latest.date ? one : latest), null);
}

/** Lists the arrays of a plan with what was read of them last as what is used: the latest reading counts before the column Used. */
export function takeReadings(plan: PlanTables, arrays: readonly PlanRow<"arrays">[]): readonly PlanRow<"arrays">[] {
  const readings = groupBy(rowsOf(plan, "readings").flatMap((row) => (row.what === "used" ? (asReading(row) ?? []) : [])), ({ row }) => foldName(row.subject));
  if (readings.size === 0) return arrays;
  return arrays.map((array) => {
    const latest = latestOf(readings.get(foldName(array.array)) ?? []);
    if (latest === null) return array;
    const shown = { [tables.arrays.columns.used.header]: `${showCell(latest.row.value)} ${latest.row.unit === "" ? "TB" : latest.row.unit}` };
    return heirOf(array, { used: latest.size }, () => Object.assign(Object.create(null) as Record<string, string>, array.shown, shown));
  });
}
