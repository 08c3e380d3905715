import { showCell } from "../../../sheet";
import { foldName } from "../../text";
import { heirOf, rowsOf, type PlanRow, type PlanTables } from "../read";
import { tables } from "../schema";
import { groupBy } from "./group-by";

/** Columns of an array that are the shorthand for one set. */
export const setColumns = ["drives", "driveSize", "scheme", "spares"] as const;

/**
 * Lists the arrays of a plan as they are with their drive sets: where an array has rows there, its drives and spares are those of all, and its size and
 * scheme what all of them have, or nothing where they differ; it shows each of them once.
 */
export function joinDriveSets(plan: PlanTables, arrays: readonly PlanRow<"arrays">[]): readonly PlanRow<"arrays">[] {
  const sets = groupBy(rowsOf(plan, "driveSets"), ({ array }) => foldName(array));
  if (sets.size === 0) return arrays;
  return arrays.map((array) => {
    const own = sets.get(foldName(array.array)) ?? [];
    if (own.length === 0) return array;
    const [first] = own;
    const joined = {
      drives: own.reduce<number | null>((sum, { drives }) => (sum === null || drives === null ? null : sum + drives), 0),
      driveSize: own.every(({ driveSize }) => driveSize === first!.driveSize) ? first!.driveSize : null,
      scheme: own.every(({ scheme }) => scheme?.name === first!.scheme?.name) ? first!.scheme : null,
      spares: own.reduce((sum, { spares }) => sum + (spares ?? 0), 0),
    };
    const each = (header: string): string => [...new Set(own.map(({ shown }) => shown[header]?.trim() ?? "").filter((text) => text !== ""))].join(", ");
    const { drives, driveSize, scheme, spares } = tables.arrays.columns;
    const shown = {
      [drives.header]: showCell(joined.drives), [driveSize.header]: each(driveSize.header), [scheme.header]: each(scheme.header), [spares.header]: showCell(joined.spares),
    };
    return heirOf(array, joined, () => Object.assign(Object.create(null) as Record<string, string>, array.shown, shown));
  });
}
