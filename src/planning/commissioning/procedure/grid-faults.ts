import { orNull } from "../../plan/model";
import type { PlanRow } from "../../plan/read";
import type { ColumnKey } from "../../plan/schema";
import { parseTemplate } from "../../text";
import { parseRecordKind } from "./record-kind";

/** Most steps that a grid shows side by side. */
export const mostSlots = 4;

/** What keeps a section from being shown as a grid: the step it is about, its cell, and what to do. */
export interface GridFault {
  readonly step: PlanRow<"steps">;
  readonly column: ColumnKey<"steps">;
  readonly sentence: string;
}

/**
 * Lists what keeps the steps of a section from standing side by side in a grid: a fifth step, a caution that belongs before one of them, a hold
 * point, which is signed alone, a text that differs by subject, as it stands once above the rows, and a size, which wants a cell for the unit.
 */
export function gridFaults(steps: readonly PlanRow<"steps">[]): GridFault[] {
  return steps.flatMap((step, index): GridFault[] => {
    const fault = (column: ColumnKey<"steps">, what: string): GridFault[] => [{ step, column, sentence: `Step ${step.stepId} ${what}` }];
    if (index === mostSlots) return fault("section", `is the fifth of its section, which is shown as a grid of at most ${mostSlots}. Move it to another section.`);
    if (step.caution.trim() !== "") return fault("caution", "has a caution, which a grid cannot say before it. Show its section as a list.");
    if (step.holdPoint === "yes") return fault("holdPoint", "is a hold point, which wants a row of its own. Show its section as a list.");
    const filled = (["do", "makersGuide"] as const).find((column) => hasField(step[column]));
    if (filled !== undefined) return fault(filled, "stands once above the rows of a grid, so no {{field}} can be filled in it. Write it without.");
    if (orNull(() => parseRecordKind(step.record, "Step"))?.kind === "size") return fault("record", "records a size, which wants a cell for its unit. Show its section as a list.");
    return [];
  });
}

function hasField(text: string): boolean {
  return orNull(() => parseTemplate(text, "Step"))?.some((piece) => "name" in piece) === true;
}
