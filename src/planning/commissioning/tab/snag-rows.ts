import { showCell, type Cell, type Scalar } from "../../../sheet";
import { aboutText, goneStep, snagFields, snagFingerprint, type Snag } from "../record";
import type { JobStep } from "../job";
import { kindsOnTab } from "./kind-on-tab";
import { snagColumns } from "./snag-columns";
import { hidden, inShownColumns, rowOf, styled } from "./tab-cells";
import { tags } from "./tab-columns";
import { snagFormulas, untouchedSnag, type RowSpan } from "./tab-formulas";
import type { TabStyle } from "./tab-styles";

/** A step with the number that it has on the tab. */
export interface NumberedStep {
  readonly no: number;
  readonly step: JobStep;
}

/** Where a row for snags stands, its id, and the steps that snags are about. */
export interface SnagPlace {
  /** Row of the sheet, from 0. */
  readonly row: number;
  readonly id: string;
  readonly stepRows: RowSpan;
  readonly snagRows: RowSpan;
  /** The steps by their keys. */
  readonly steps: ReadonlyMap<string, NumberedStep>;
}

/** Lays out a row for snags, blank or with one that was carried to it. */
export function snagRow(snag: Snag | undefined, { row, id, stepRows, snagRows, steps }: SnagPlace): Cell[] {
  const about = snag === undefined ? undefined : steps.get(snag.key);
  const cells = inShownColumns("notAsked");
  for (const field of snagFields) cells[snagColumns[field]] = styled(snag?.typed[field] ?? null, field === "byWhen" ? "typedDate" : "typedText");
  cells[snagColumns.id] = styled(id, "no");
  cells[snagColumns.about] = styled(snag === undefined ? null : numberOf(snag, about), "typedNumber");
  cells[snagColumns.foundAgain] = foundAgainCell(snag?.typed.foundAgain ?? null, about);

  const formulas = snagFormulas(row, stepRows, snagRows);
  for (const answer of Object.keys(formulas) as (keyof typeof formulas)[]) {
    cells[snagColumns[answer]] = { formula: formulas[answer], value: untouchedSnag[answer], style: answer === "stepId" ? "stepId" : "hidden" };
  }
  if (snag !== undefined && snag.key !== "" && about === undefined) {
    cells[snagColumns.stepId] = styled(snag.stepId, "stepId");
    cells[snagColumns.key] = hidden(snag.key);
  }
  cells.key = hidden(tags.snag);
  cells.carried = hidden(snag === undefined ? null : snagFingerprint(snag));
  return rowOf(cells);
}

/**
 * Lays out what the retest found, as its step records it; a number stays one where the step is not known, so that it can be compared.
 *
 * Digits that stand for a text, as a serial number, were typed before anybody knew which step they are about: they are text.
 */
function foundAgainCell(value: Scalar, about: NumberedStep | undefined): Cell {
  const style: TabStyle = about === undefined ? "typedNumber" : kindsOnTab[about.step.expectation.kind].foundStyle;
  return styled(style === "typedText" && typeof value === "number" ? showCell(value) : value, style);
}

/** Says which row a snag is about in the new numbering; what somebody wrote in place of a number stays. */
function numberOf(snag: Snag, step: NumberedStep | undefined): Scalar {
  const text = aboutText(snag);
  if (text !== "") return text;
  return snag.key === "" ? snag.typed.about : (step?.no ?? goneStep);
}
