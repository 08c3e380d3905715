import type { JobStep } from "./job-step";

const [holdStart, cautionStart, guideStart] = ["HOLD POINT: ", "CAUTION: ", "Maker's guide: "] as const;

/** Writes what a step says: that it is a hold point, what gets hurt, then what is to be done, then what the maker's guide says. */
export function stepWords({ caution, do: what, makersGuide, required, holdPoint, sign }: JobStep): string {
  return [
    ...(holdPoint ? [`${holdStart}nothing further before this is signed${sign === "two" ? " by two" : ""}.`] : []),
    ...(caution === "" ? [] : [`${cautionStart}${caution}`]),
    required ? what : `If wanted: ${what}`,
    ...(makersGuide === "" ? [] : [`${guideStart}${makersGuide}`]),
  ].join("\n");
}

/** What the words of a step say, part by part; "" where there is no such part. */
export type StepWords = Pick<JobStep, "caution" | "do" | "makersGuide">;

/** Reads what `stepWords` wrote, or somebody in its manner: lines parted by their first words. Of a caution of several lines the first alone is one. */
export function readStepWords(words: string): StepWords {
  const lines = words.split("\n");
  if (lines[0]?.startsWith(holdStart) === true) lines.shift();
  const caution = lines[0]?.startsWith(cautionStart) === true ? lines.shift()!.slice(cautionStart.length) : "";
  const guide = lines.findIndex((line) => line.startsWith(guideStart));
  const [what, makersGuide] = guide < 0 ? [lines, []] : [lines.slice(0, guide), lines.slice(guide)];
  return { caution, do: what.join("\n"), makersGuide: makersGuide.join("\n").slice(guideStart.length) };
}
