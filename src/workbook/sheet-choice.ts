import { sameSheetName, type SheetSnapshot } from "../sheet";

/** Which sheets to read: their names, or what tells by name, visibility and tables whether one is wanted. */
export type SheetChoice = readonly string[] | SheetTest;

type SheetTest = (sheet: SheetFacts) => boolean | ByHead;

/** What is known of a sheet before its cells are read. */
export interface SheetFacts {
  readonly name: string;
  readonly visible: boolean;
  readonly hasTables: boolean;
}

/** Leaves to the first rows of a sheet whether it is wanted. Of one that is not, these rows are answered; in a host their values alone. */
export interface ByHead {
  readonly rows: number;
  readonly isWanted: (head: SheetSnapshot) => boolean;
}

/** Makes the test of a choice; without one every sheet is wanted. */
export function chosenBy(choice: SheetChoice | undefined): SheetTest {
  if (choice === undefined) return () => true;
  return typeof choice === "function" ? choice : ({ name }) => choice.some((one) => sameSheetName(one, name));
}

/** Reads a sheet that is at hand as far as it is chosen: `read` answers its first rows, be it none or all. */
export function readChosen(choice: SheetChoice | undefined, sheet: SheetFacts, read: (rows: number) => SheetSnapshot): SheetSnapshot {
  const chosen = chosenBy(choice)(sheet);
  if (typeof chosen === "boolean") return read(chosen ? Infinity : 0);
  const head = read(chosen.rows);
  return chosen.isWanted(head) ? read(Infinity) : head;
}
