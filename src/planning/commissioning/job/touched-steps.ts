import type { ExpandedJob, JobStep } from "./job-step";

/** Counts the steps of a job that two plans make otherwise: those that say or expect something else, and those that only one of them has. */
export function touchedSteps(before: Pick<ExpandedJob, "sections">, now: Pick<ExpandedJob, "sections">): number {
  const [earlier, later] = [wordsOf(before), wordsOf(now)];
  const changed = [...later].filter(([key, words]) => earlier.get(key) !== words).length;
  return changed + [...earlier.keys()].filter((key) => !later.has(key)).length;
}

/** Everything a person would see of each step, by its key; where a value stands in the plan is not seen. */
function wordsOf({ sections }: Pick<ExpandedJob, "sections">): ReadonlyMap<string, string> {
  const words = ({ key, ...step }: JobStep) => [key, JSON.stringify({ ...step, planCell: null })] as const;
  return new Map(sections.flatMap(({ steps }) => steps.map(words)));
}
