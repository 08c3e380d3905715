import type { Paper } from "../../sheet";

/** Numbers by which a sheet names its paper: ECMA-376 part 1, section 18.3.1.63. */
export const paperSizes = { Letter: "1", A4: "9" } as const satisfies Readonly<Record<Paper, string>>;

/** Finds the paper of a number; undefined for any other, which stays in the file as it is. */
export function paperOf(size: string | undefined): Paper | undefined {
  return (Object.keys(paperSizes) as Paper[]).find((paper) => paperSizes[paper] === size);
}
