/** Every word that Result may say of a step; it is blank while nothing was found. */
export const results = {
  asExpected: "As expected",
  differs: "Differs",
  checkAgain: "Check again",
  needsSecondName: "Needs a second name",
  compareByEye: "Compare by eye",
  waived: "Waived",
  notApplicable: "Not applicable",
} as const;

export type Result = (typeof results)[keyof typeof results];

/** Finds the result that a text says; null where it is blank or none of ours. */
export function readResult(text: string): Result | null {
  return Object.values(results).find((result) => result === text) ?? null;
}
