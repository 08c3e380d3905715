import { sameSheetName } from "../sheet";

/** Which sheets to read: their names, or what tells by name and visibility whether one is wanted. */
export type SheetChoice = readonly string[] | SheetTest;

type SheetTest = (sheet: { readonly name: string; readonly visible: boolean }) => boolean;

/** Makes the test of a choice; without one every sheet is wanted. */
export function chosenBy(choice: SheetChoice | undefined): SheetTest {
  if (choice === undefined) return () => true;
  return typeof choice === "function" ? choice : ({ name }) => choice.some((one) => sameSheetName(one, name));
}
