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
