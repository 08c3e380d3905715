import type { JobStep } from "./job-step";

const [holdStart, cautionStart, guideStart] = ["HOLD POINT: ", "CAUTION: ", "Maker's guide: "] as const;

/** Writes what a step says: that it is a hold point, what gets hurt, then what is to be done, then what the maker's guide says. */
export function stepWords({ caution, do: what, makersGuide, required, holdPoint, sign }: JobStep): string {
  const hold = holdPoint ? [`${holdStart}nothing further until ${sign === "two" ? "two have signed" : "it is signed"}.`] : [];
  const first = [...hold, ...(caution === "" ? [] : [`${cautionStart}${caution}`])].join(" ");
  return [
    ...(first === "" ? [] : [first]),
    required ? what : `If wanted: ${what}`,
    ...(makersGuide === "" ? [] : [`${guideStart}${makersGuide}`]),
  ].join("\n");
}

/** What the words of a step say, part by part; "" where there is no such part. */
export type StepWords = Pick<JobStep, "caution" | "do" | "makersGuide">;

/** Reads what `stepWords` wrote, or somebody in its manner: lines parted by their first words. Of a caution of several lines the first alone is one. */
export function readStepWords(words: string): StepWords {
  const lines = words.split("\n");
  // The caution stands behind the hold point; on tabs that were built before it has a line of its own.
  if (lines[0]?.startsWith(holdStart) === true) {
    const at = lines[0].indexOf(` ${cautionStart}`);
    if (at < 0) lines.shift();
    else lines[0] = lines[0].slice(at + 1);
  }
  const caution = lines[0]?.startsWith(cautionStart) === true ? lines.shift()!.slice(cautionStart.length) : "";
  const guide = lines.findIndex((line) => line.startsWith(guideStart));
  const [what, makersGuide] = guide < 0 ? [lines, []] : [lines.slice(0, guide), lines.slice(guide)];
  return { caution, do: what.join("\n"), makersGuide: makersGuide.join("\n").slice(guideStart.length) };
}
