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

/**
 * Leaves to the first rows of a sheet whether it is wanted. Of one that is not these rows are answered, their values alone, or whatever more the
 * workbook has at hand.
 */
export interface ByHead {
  readonly rows: number;
  readonly isWanted: (head: SheetSnapshot) => boolean;
}

/** Makes the test of a choice; without one every sheet is wanted. */
export function chosenBy(choice: SheetChoice | undefined): SheetTest {
  if (choice === undefined) return () => true;
  return typeof choice === "function" ? choice : ({ name }) => choice.some((one) => sameSheetName(one, name));
}

/** Tells whether the cells of a sheet are to be read at all, where reading all of them costs no more than reading the first rows. */
export function mayBeRead(choice: SheetChoice | undefined): (sheet: SheetFacts) => boolean {
  const isChosen = chosenBy(choice);
  return (sheet) => isChosen(sheet) !== false;
}
