import type { Cell } from "../../../sheet";
import { foundFields, foundFingerprint, type FoundText } from "../record";
import { hidden, inShownColumns, rowOf, styled } from "./tab-cells";
import { foundColumns, tags } from "./tab-columns";

/** Lays out the row of a text that was found elsewhere; it can be edited there, and is gone at the next build once it is emptied. */
export function foundRow(found: FoundText): Cell[] {
  const cells = inShownColumns("notAsked");
  for (const field of foundFields) cells[foundColumns[field]] = styled(found.typed[field], "typedText");
  return rowOf({ ...cells, key: hidden(tags.text), carried: hidden(foundFingerprint(found)) });
}

/** Lays out the line for those who type a filled print of a build into its tab; once filled it is told, at the next build, as a text found elsewhere. */
export function paperLineRow(build: number): Cell[] {
  const { from, text, place } = foundColumns;
  const cells = inShownColumns("notAsked");
  cells[from] = styled(`Build ${build}`, "text");
  cells[text] = styled(null, "typedText");
  cells[place] = styled("On paper", "text");
  // It was not found outside its place.
  return rowOf({ ...cells, key: hidden(tags.paper), carried: hidden(tags.paper) });
}
