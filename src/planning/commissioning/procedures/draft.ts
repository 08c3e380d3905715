/** One step as it is written here; the rest of its row follows from its procedure and section. */
export interface StepDraft {
  readonly id: string;
  readonly do: string;
  readonly expect?: string;
  /** What gets hurt when it goes wrong, and how to keep safe; stands before the step. */
  readonly caution?: string;
  /** "tick" where nothing else is said. */
  readonly record?: string;
  readonly unit?: string;
  readonly tolerancePercent?: number;
  readonly tolerance?: number;
  readonly when?: string;
  /** False for a step the job can be closed without. */
  readonly required?: false;
  /** "one" where nothing else is said. */
  readonly sign?: "none" | "two";
  readonly minutes: number;
}

/** One section: what it is repeated for, when, and its steps in order. */
export interface SectionDraft {
  readonly section: string;
  readonly forEach: "site" | "cluster" | "pool" | "array" | "controller" | "port" | "drive" | "prompt";
  readonly when?: string;
  readonly steps: readonly StepDraft[];
}

export interface ProcedureDraft {
  readonly procedure: string;
  readonly sections: readonly SectionDraft[];
}

/** A row of a planning table by its headers. */
export type HeadedRow = Readonly<Record<string, string | number | null>>;

/** Writes the sections of a procedure as rows of the Procedures table. */
export function procedureRows({ procedure, sections }: ProcedureDraft): HeadedRow[] {
  return sections.map(({ section, forEach, when = "" }) => ({ Procedure: procedure, Section: section, "For each": forEach, When: when }));
}

/** Writes the steps of a procedure as rows of the Steps table; what the maker's guide says is left for the user to fill. */
export function stepRows({ procedure, sections }: ProcedureDraft): HeadedRow[] {
  return sections.flatMap(({ section, steps }) =>
    steps.map((step) => ({
      "Step id": step.id,
      Procedure: procedure,
      Section: section,
      When: step.when ?? "",
      Do: step.do,
      Expect: step.expect ?? "",
      "From the maker's guide": "",
      Record: step.record ?? "tick",
      Unit: step.unit ?? "",
      "Tolerance %": step.tolerancePercent ?? null,
      "Tolerance ±": step.tolerance ?? null,
      Required: step.required === false ? "no" : "yes",
      Caution: step.caution ?? "",
      Sign: step.sign ?? "one",
      Minutes: step.minutes,
    })),
  );
}
