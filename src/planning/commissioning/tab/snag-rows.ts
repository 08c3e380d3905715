import type { Cell, Scalar } from "../../../sheet";
import { aboutText, goneStep, snagFields, snagFingerprint, type Snag } from "../record";
import { hidden, inShownColumns, rowOf, styled } from "./tab-cells";
import { snagAnswers, snagColumns, tags } from "./tab-columns";
import { snagFormulas, untouchedSnag, type RowSpan } from "./tab-formulas";

/** Where a row for snags stands, and the steps that snags are about. */
export interface SnagPlace {
  /** Row of the sheet, from 0. */
  readonly row: number;
  readonly stepRows: RowSpan;
  readonly snagRows: RowSpan;
  /** Number of each step by its key. */
  readonly numbers: ReadonlyMap<string, number>;
}

/** Lays out a row for snags, blank or with one that was carried to it. */
export function snagRow(snag: Snag | undefined, { row, stepRows, snagRows, numbers }: SnagPlace): Cell[] {
  const cells = inShownColumns("notAsked");
  for (const field of snagFields) cells[snagColumns[field]] = styled(snag?.typed[field] ?? null, field === "byWhen" ? "typedDate" : "typedText");
  cells[snagColumns.about] = styled(snag === undefined ? null : numberOf(snag, numbers), "typedNumber");

  const formulas = snagFormulas(row, stepRows, snagRows);
  for (const answer of Object.keys(formulas) as (keyof typeof formulas)[]) {
    cells[snagAnswers[answer]] = {
      formula: formulas[answer],
      ...(snag === undefined && { value: untouchedSnag[answer] }),
      style: answer === "stepId" ? "stepId" : "hidden",
    };
  }
  if (snag !== undefined && snag.key !== "" && !numbers.has(snag.key)) {
    cells[snagAnswers.stepId] = styled(snag.stepId, "stepId");
    cells[snagAnswers.key] = hidden(snag.key);
  }
  cells.key = hidden(tags.snag);
  cells.carried = hidden(snag === undefined ? null : snagFingerprint(snag));
  return rowOf(cells);
}

/** Says which row a snag is about in the new numbering; what somebody wrote in place of a number stays. */
function numberOf(snag: Snag, numbers: ReadonlyMap<string, number>): Scalar {
  const text = aboutText(snag);
  if (text !== "") return text;
  return snag.key === "" ? snag.typed.about : (numbers.get(snag.key) ?? goneStep);
}
