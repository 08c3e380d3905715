import type { JobStep } from "./job-step";

/** Writes what a step says: what gets hurt first, then what is to be done, then what the maker's guide says. */
export function stepWords({ caution, do: what, makersGuide, required }: JobStep): string {
  return [
    ...(caution === "" ? [] : [`CAUTION: ${caution}`]),
    required ? what : `If wanted: ${what}`,
    ...(makersGuide === "" ? [] : [`Maker's guide: ${makersGuide}`]),
  ].join("\n");
}
