import { foldName } from "../../text";
import type { PlanRow } from "../read";
import { groupBy } from "./group-by";
import { oncePer } from "./once";
import type { PlanRows } from "./plan-rows";

/** A bay that ought to hold a drive. */
export interface ExpectedDrive {
  /** Blank for a bay of the chassis. */
  readonly shelf: string;
  readonly bay: number;
  /** Its row in the Drives table; null where there is none. */
  readonly row: PlanRow<"drives"> | null;
}

/** The drives of a plan one by one, and the bays that they sit in. */
export class Drives {
  /** Lists the drives of an array that are in place: rows without a day on which the drive was taken out. */
  readonly inPlace = oncePer((array: PlanRow<"arrays">): readonly PlanRow<"drives">[] =>
    this.rows.rowsWith("drives", "array", array.array).filter(({ takenOut }) => takenOut === null),
  );

  /** Lists the shelves of an array. */
  readonly shelvesOf = oncePer((array: PlanRow<"arrays">): readonly PlanRow<"shelves">[] => this.rows.rowsWith("shelves", "array", array.array));

  /**
   * Lists the bays in which an array is expected to have drives, those of the chassis first, then shelf by shelf: one for each drive in place whose bay is
   * known, and where the array has more drives than rows, the lowest bays of the chassis that no row names.
   */
  readonly expectedIn = oncePer((array: PlanRow<"arrays">): readonly ExpectedDrive[] => {
    const rows = this.inPlace(array);
    const known = rows.flatMap((row): ExpectedDrive[] => (row.bay === null ? [] : [{ shelf: row.shelf, bay: row.bay, row }]));
    const [inShelves, inChassis] = [known.filter(({ shelf }) => shelf !== ""), known.filter(({ shelf }) => shelf === "")];
    const named = new Set(inChassis.map(({ bay }) => bay));
    const unnamed: ExpectedDrive[] = [];
    for (let bay = 1; rows.length + unnamed.length < (array.drives ?? 0); bay += 1) if (!named.has(bay)) unnamed.push({ shelf: "", bay, row: null });
    return [...byNumber([...inChassis, ...unnamed]), ...[...groupBy(inShelves, ({ shelf }) => foldName(shelf)).values()].flatMap(byNumber)];
  });

  constructor(private readonly rows: PlanRows) {}

  /** Finds the shelf of an array by its name; null where it has none of that name. */
  shelfNamed(array: string, shelf: string): PlanRow<"shelves"> | null {
    return this.rows.rowsWith("shelves", "array", array).find((row) => foldName(row.shelf) === foldName(shelf)) ?? null;
  }

  /** Tells how many bays the chassis of an array has, by its model; null where that is not known. */
  chassisBays({ model }: PlanRow<"arrays">): number | null {
    return this.rows.find("models", model)?.bays ?? null;
  }

  /** Tells how many bays an array has, its shelves included; null where that of the chassis or of one shelf is not known. */
  baysOf(array: PlanRow<"arrays">): number | null {
    return [this.chassisBays(array), ...this.shelvesOf(array).map(({ bays }) => bays)].reduce((sum, bays) => (sum === null || bays === null ? null : sum + bays));
  }

  /** Tells how many bays there are where a drive sits, in its shelf or in the chassis; null where that is not known. */
  baysBeside({ array, shelf }: PlanRow<"drives">): number | null {
    if (shelf !== "") return this.shelfNamed(array, shelf)?.bays ?? null;
    const row = this.rows.find("arrays", array);
    return row === null ? null : this.chassisBays(row);
  }

  /** Groups the drives in place of an array by the shelf and bay they sit in; a drive whose bay is not known is left out. */
  byBay(array: PlanRow<"arrays">): ReadonlyMap<string, readonly PlanRow<"drives">[]> {
    return groupBy(this.inPlace(array).filter(({ bay }) => bay !== null), bayKey);
  }
}

function byNumber(drives: readonly ExpectedDrive[]): ExpectedDrive[] {
  return [...drives].sort((a, b) => a.bay - b.bay);
}

/** Makes one text of the shelf and the bay that a drive sits in, without case. */
function bayKey({ shelf, bay }: PlanRow<"drives">): string {
  return `${foldName(shelf)}\n${bay}`;
}

/** Says where a drive sits, as people read it, such as rr-array-1 S1 bay 3. */
export function driveLabel({ array, shelf, bay }: Pick<PlanRow<"drives">, "array" | "shelf" | "bay">): string {
  return [array, shelf, bay === null ? "" : `bay ${bay}`].filter((part) => part !== "").join(" ");
}

/** Names a shelf by its array too: its own name is known there alone. */
export function shelfLabel({ array, shelf }: PlanRow<"shelves">): string {
  return `${array} ${shelf}`.trim();
}
