import type { JobSection, JobStep } from "../job";
import { answersOf, type CarriedRecords, type CarriedStep } from "../record";
import type { GridSlot } from "./grid-rows";

/** A row of a section as it will be laid out. */
export type SectionRow =
  | { readonly is: "visit" | "title" | "grid-head" | "grid-labels" | "list-head" }
  | { readonly is: "step"; readonly step: JobStep }
  | { readonly is: "grid"; readonly slots: readonly (GridSlot | null)[]; readonly apart: readonly string[] };

/**
 * Plans the rows of a section: the heading of the visit that begins with it, its title, then a row a step.
 *
 * Of a grid: a row a subject with the steps that can stand side by side, then, under the headers of a list, those that want more than a pair of
 * cells, and the step that signs for all of them.
 */
export function sectionRows({ visit, steps, columns }: JobSection, records: Pick<CarriedRecords, "steps" | "snags">): SectionRow[] {
  const grid: SectionRow[] = [];
  const list: SectionRow[] = [];
  for (const ofRow of bySubject(steps)) {
    const slots: (GridSlot | null)[] = columns.map(() => null);
    const apart: string[] = [];
    let hasFirst = false;
    for (const step of ofRow) {
      const carried = records.steps.get(step.key);
      if (step.slot !== null && fitsSlot(step, carried, hasFirst) && !records.snags.some(({ key }) => key === step.key)) {
        slots[step.slot.place] = { step, carried };
        hasFirst = true;
        continue;
      }
      list.push({ is: "step", step });
      apart.push(step.stepId);
    }
    if (hasFirst) grid.push({ is: "grid", slots, apart });
  }
  const head: SectionRow[] = [...(visit === "" ? [] : [{ is: "visit" } as const]), { is: "title" }];
  if (grid.length === 0) return [...head, ...list];
  return [...head, { is: "grid-head" }, { is: "grid-labels" }, ...grid, ...(list.length === 0 ? [] : [{ is: "list-head" } as const, ...list])];
}

/** Gathers the steps that share the row of a subject in a grid; any other one is alone. */
function bySubject(steps: readonly JobStep[]): JobStep[][] {
  const rows: JobStep[][] = [];
  for (const step of steps) {
    const above = rows.at(-1);
    if (step.slot !== null && above?.[0]?.slot?.subjectId === step.slot.subjectId) above.push(step);
    else rows.push([step]);
  }
  return rows;
}

/**
 * Tells whether a pair of cells holds all that is to be said of a step: what was found, where that is as expected, and the note where it is the
 * first of its row. What differs, is waived, or was found under another expectation wants a row of its own, and so does a name.
 */
function fitsSlot(step: JobStep, carried: CarriedStep | undefined, hasFirst: boolean): boolean {
  if (carried === undefined) return true;
  const { unit, recheckedBy, by, witness, done, note } = carried.typed;
  if ([unit, recheckedBy, by, witness, done, hasFirst ? note : null].some((value) => value !== null) || carried.expectedBefore !== "") return false;
  const { kind, shown, wanted } = step.expectation;
  const asked = { kind, wanted, expected: shown, seenUnit: step.unit, no: "", expectedBefore: "", errors: [], sign: "none", slot: { place: 0, rowKey: "", signKey: "" } } as const;
  const { compares } = answersOf({ ...asked, typed: carried.typed }, []);
  return compares === "" || compares === "yes";
}
