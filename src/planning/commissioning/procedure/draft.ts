import type { Bound, ForEach, RecordKind, TableRow } from "../../plan/schema";

/** One step as it is written here; the rest of its row follows from its procedure and section. */
export interface StepDraft {
  readonly id: string;
  readonly do: string;
  readonly expect?: string;
  /** What gets hurt when it goes wrong, and how to keep safe; stands before the step. */
  readonly caution?: string;
  /** "tick" where nothing else is said. */
  readonly record?: Exclude<RecordKind, "choice"> | `choice:${string}`;
  readonly unit?: string;
  readonly tolerancePercent?: number;
  readonly tolerance?: number;
  readonly bound?: Exclude<Bound, "=">;
  readonly when?: string;
  /** False for a step the job can be closed without. */
  readonly required?: false;
  /** "one" where nothing else is said. */
  readonly sign?: "none" | "two";
  /** True where nothing further may happen before it is done and signed. */
  readonly holdPoint?: true;
  readonly minutes: number;
}

/** One section: what it is repeated for, when, and its steps in order. */
export interface SectionDraft {
  readonly section: string;
  /** Visit that begins with it; without one it belongs to that of the section above. */
  readonly visit?: string;
  readonly forEach: ForEach;
  readonly when?: string;
  /** A list where nothing else is said. */
  readonly shownAs?: "grid";
  readonly steps: readonly StepDraft[];
}

/** Edition of all procedures that stand here; it goes up when a step changes. */
export const edition = "2";

export interface ProcedureDraft {
  readonly procedure: string;
  readonly sections: readonly SectionDraft[];
}

/** Writes the sections of a procedure as rows of the Procedures table. */
export function procedureRows({ procedure, sections }: ProcedureDraft): TableRow<"procedures">[] {
  let visit: string | null = null;
  return sections.map(({ section, forEach, when = null, shownAs = null, visit: begun }) => {
    visit = begun ?? visit;
    return { procedure, edition, section, forEach, when, shownAs, visit };
  });
}

/** Writes the steps of a procedure as rows of the Steps table; what the maker's guide says is left for the user to fill. */
export function stepRows({ procedure, sections }: ProcedureDraft): TableRow<"steps">[] {
  return sections.flatMap(({ section, steps }) =>
    steps.map((step) => ({
      stepId: step.id,
      procedure,
      section,
      when: step.when ?? null,
      do: step.do,
      expect: step.expect ?? null,
      record: step.record ?? "tick",
      unit: step.unit ?? null,
      tolerancePercent: step.tolerancePercent ?? null,
      tolerance: step.tolerance ?? null,
      bound: step.bound ?? null,
      required: step.required === false ? "no" : "yes",
      caution: step.caution ?? null,
      sign: step.sign ?? "one",
      minutes: step.minutes,
      holdPoint: step.holdPoint === true ? "yes" : null,
    })),
  );
}
