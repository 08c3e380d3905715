import type { PlanCell, PlanModel } from "../plan/model";
import type { PlanRow } from "../plan/read";
import { foldName } from "../text";
import type { NeededPart } from "./needed-parts";

/** The cell of a plan in which the serial of a part stands, and what stands there: what the tab of a job expects. */
export interface ExpectedSerial {
  readonly cell: PlanCell;
  readonly serial: string;
}

/** Finds where the plan says the serial of a part; null where it has no row for it, and for what has no serial in the plan, such as a cable. */
export function expectedOf(model: PlanModel, { kind, for: name, shelf, bay }: PlanRow<"parts"> | NeededPart): ExpectedSerial | null {
  const array = model.find("arrays", name);
  if (array === null) return null;
  if (kind === "array") return { cell: { table: "arrays", row: array.row, column: "serial" }, serial: array.serial };
  if (kind === "shelf") {
    const there = model.drives.shelfNamed(name, shelf);
    return there === null ? null : { cell: { table: "shelves", row: there.row, column: "serial" }, serial: there.serial };
  }
  const drive = kind === "drive" ? model.drives.inPlace(array).find((one) => foldName(one.shelf) === foldName(shelf) && one.bay === bay) : undefined;
  return drive === undefined ? null : { cell: { table: "drives", row: drive.row, column: "serial" }, serial: drive.serial };
}
