import { stepWords, type JobSection, type JobStep } from "../job";
import { answersOf, type CarriedRecords, type CarriedStep } from "../record";
import { groupBy } from "../../plan/model";
import type { GridSlot } from "./grid-rows";

/** A row of a section as it will be laid out. */
export type SectionRow =
  | { readonly is: "visit" | "grid-head" | "grid-labels" | "list-head" }
  | WordsRow
  | StepRowPlan
  | { readonly is: "grid"; readonly slots: readonly (GridSlot | null)[]; readonly apart: readonly string[] };

/** What steps of a list say, once above the rows of all that say the same. */
export interface WordsRow {
  readonly is: "words";
  readonly steps: readonly JobStep[];
}

/** A row of a list: a step, and where what it says stands. */
export interface StepRowPlan {
  readonly is: "step";
  readonly step: JobStep;
  readonly words: StepWordsPlace;
}

/** Where the words of a step stand: in its own row, right above it, or above an earlier row of the same words, that of the step named. */
export type StepWordsPlace = "own" | "above" | JobStep;

/**
 * Plans the rows of a section: the heading of the visit that begins with it, then a row a step. Its title stands beside the first words.
 *
 * Of a list: what steps say over the whole width, above the first of the rows that it is about. Of a grid: the same, rows with what can stand side
 * by side, then, under the headers of a list, the steps that want more than a pair of cells, and the one that signs for all of them.
 */
export function sectionRows({ visit, steps, columns }: JobSection, records: Pick<CarriedRecords, "steps" | "snags">): SectionRow[] {
  const grid: SectionRow[] = [];
  const list: StepRowPlan[] = [];
  for (const ofRow of bySubject(steps)) {
    const slots: (GridSlot | null)[] = Array.from({ length: Math.max(0, ...columns.map(({ slot }) => slot!.place + 1)) }, () => null);
    const apart: string[] = [];
    let hasFirst = false;
    for (const step of ofRow) {
      const carried = records.steps.get(step.key);
      if (step.slot !== null && fitsSlot(step, carried, hasFirst) && !records.snags.some(({ key }) => key === step.key)) {
        slots[step.slot.place] = { step, carried };
        hasFirst = true;
        continue;
      }
      // What a step of a grid says stands above the grid; what signs for it says so itself.
      list.push({ is: "step", step, words: step.slot === null ? "own" : "above" });
      apart.push(step.slot?.head ?? step.stepId);
    }
    if (hasFirst) grid.push({ is: "grid", slots, apart });
  }
  const head: SectionRow[] = visit === "" ? [] : [{ is: "visit" }];
  if (columns.length === 0) return [...head, ...listRows(steps)];
  // The headers of a list stand on every page: a signature alone goes without them.
  const isSignedAlone = list.every(({ words }) => words === "own");
  return [...head, { is: "grid-head" }, ...(grid.length === 0 ? [] : [{ is: "grid-labels" } as const, ...grid]), ...(isSignedAlone ? [] : [{ is: "list-head" } as const]), ...list];
}

/** Plans the rows of a list: each step's own, and above the first of those that say the same what they say. */
function listRows(steps: readonly JobStep[]): SectionRow[] {
  const saying = groupBy(steps, (step) => `${step.stepId}: ${stepWords(step)}`);
  return steps.flatMap((step): SectionRow[] => {
    const same = saying.get(`${step.stepId}: ${stepWords(step)}`)!;
    return same[0] === step ? [{ is: "words", steps: same }, { is: "step", step, words: "above" }] : [{ is: "step", step, words: same[0]! }];
  });
}

/** Gathers the steps that share the row of a subject in a grid; any other one is alone. */
function bySubject(steps: readonly JobStep[]): JobStep[][] {
  const rows: JobStep[][] = [];
  for (const step of steps) {
    const above = rows.at(-1);
    if (step.slot !== null && above?.[0]?.slot?.rowId === step.slot.rowId) above.push(step);
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
  const asked = { kind, wanted, expected: shown, seenUnit: step.unit, no: "", expectedBefore: "", errors: [], sign: "none", slot: { place: 0, rowKey: "", signKey: "", head: "" } } as const;
  const { compares } = answersOf({ ...asked, typed: carried.typed }, []);
  return compares === "" || compares === "yes";
}
