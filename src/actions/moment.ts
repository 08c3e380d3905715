import type { BuildMoment } from "../planning/commissioning/build";

/** Tells planning, which has no clock, what time it is and which plan it works from. */
export function momentOf(now: Date, planName: string): BuildMoment {
  const pad = (part: number): string => String(part).padStart(2, "0");
  const day = `${now.getFullYear()}-${pad(now.getMonth() + 1)}-${pad(now.getDate())}`;
  return { madeAt: `${day} ${pad(now.getHours())}:${pad(now.getMinutes())}`, instant: now.toISOString(), planName };
}
