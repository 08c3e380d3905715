import type { JobStep } from "./job-step";

/** Writes what a step says: that it is a hold point, what gets hurt, then what is to be done, then what the maker's guide says. */
export function stepWords({ caution, do: what, makersGuide, required, holdPoint, sign }: JobStep): string {
  return [
    ...(holdPoint ? [`HOLD POINT: nothing further before this is signed${sign === "two" ? " by two" : ""}.`] : []),
    ...(caution === "" ? [] : [`CAUTION: ${caution}`]),
    required ? what : `If wanted: ${what}`,
    ...(makersGuide === "" ? [] : [`Maker's guide: ${makersGuide}`]),
  ].join("\n");
}
