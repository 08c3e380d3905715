import type { WorkbookSnapshot } from "../../sheet";
import { appendRows, type CellWrite, type Changes } from "../plan/changes";
import { driveLabel, PlanModel } from "../plan/model";
import { requireTables, type PlanRow } from "../plan/read";
import type { TableRow } from "../plan/schema";
import { foldName, invalid, noAnswer, quote } from "../text";
import { expectedOf } from "./expected-serial";
import { partKey } from "./needed-parts";

/**
 * Plans to write the serials of parts that have come into Arrays, Shelves and Drives, where commissioning tabs take what they expect from: a drive whose bay has no
 * row gets one.
 *
 * Refuses one serial on two parts, two parts for one place, and a part whose array or shelf the plan does not have. No answer where drives have no table to go into.
 */
export function takeSerials(workbook: WorkbookSnapshot): Changes {
  const model = new PlanModel(workbook);
  requireTables(model.plan, ["parts"]);
  const come = model.rows("parts").filter(hasComeWithSerial);
  refuseTwice(come);
  const writes: CellWrite[] = [];
  const added: TableRow<"drives">[] = [];
  const inPlace = new Map<string, PlanRow<"parts">>();
  for (const part of come) {
    refuseUnknownPlace(model, part);
    const other = inPlace.get(partKey(part));
    if (other !== undefined) {
      throw invalid("Parts", part.serial, `Serials ${quote(other.serial)} and ${quote(part.serial)} have both come for ${nameOf(part)}. Mend where one of them goes, or clear it.`);
    }
    inPlace.set(partKey(part), part);
    const expected = expectedOf(model, part);
    if (expected === null) added.push({ array: part.for, shelf: part.shelf === "" ? null : part.shelf, bay: part.bay, serial: part.serial });
    else if (foldName(expected.serial) !== foldName(part.serial)) writes.push(...writesOf(model.write(expected.cell, part.serial)));
  }
  if (added.length === 0) return { writes, growths: [] };
  const table = model.table("drives");
  if (table === null) throw noAnswer("Drives", null, `Serials of drives have come (${added.length}), and the plan has no table for them. Add Drives in the Plan view, then choose this again.`);
  const rows = appendRows(workbook, table, "drives", added);
  return { writes: [...writes, ...rows.writes], growths: rows.growths };
}

/** Lists the parts that have come and whose serial the plan does not expect: their tabs would call it different. */
export function serialsNotTaken(model: PlanModel): PlanRow<"parts">[] {
  return model.rows("parts").filter((part) => hasComeWithSerial(part) && foldName(expectedOf(model, part)?.serial ?? "") !== foldName(part.serial));
}

/** Tells whether a part has come and has a serial that belongs in the plan. */
function hasComeWithSerial({ came, serial, kind }: PlanRow<"parts">): boolean {
  return came !== null && serial !== "" && (kind === "array" || kind === "shelf" || kind === "drive");
}

function refuseTwice(parts: readonly PlanRow<"parts">[]): void {
  const seen = new Map<string, PlanRow<"parts">>();
  for (const part of parts) {
    const other = seen.get(foldName(part.serial));
    if (other !== undefined) throw invalid("Parts", part.serial, `Serial ${quote(part.serial)} stands in Parts twice: ${nameOf(other)} and ${nameOf(part)}. Read both labels again.`);
    seen.set(foldName(part.serial), part);
  }
}

function nameOf({ for: array, shelf, bay }: PlanRow<"parts">): string {
  return driveLabel({ array, shelf, bay });
}

function writesOf(write: CellWrite | null): CellWrite[] {
  return write === null ? [] : [write];
}

/** Refuses a part whose place in the plan nobody can tell. */
function refuseUnknownPlace(model: PlanModel, { kind, for: array, shelf, bay, serial }: PlanRow<"parts">): void {
  if (model.find("arrays", array) === null) throw invalid("Parts", array, `${quote(array)}, for which serial ${serial} came, is no array of the plan. Mend For.`);
  if (kind === "drive" && bay === null) throw invalid("Parts", serial, `The drive ${quote(serial)} for ${array} has no bay. Write the bay it goes into.`);
  if (kind === "shelf" && shelf === "") throw invalid("Parts", serial, `The shelf ${quote(serial)} for ${array} has no name. Write it into Shelf, as the Shelves table names it.`);
  if (shelf === "" || model.drives.shelfNamed(array, shelf) !== null) return;
  throw invalid("Parts", shelf, `Shelf ${quote(shelf)} of ${array} is not in the table Shelves. Add it there, or mend the name.`);
}
