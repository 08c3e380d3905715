import type { BuildMoment } from "../planning/commissioning/build";

const pad = (part: number): string => String(part).padStart(2, "0");

/** Writes the day of an instant where the person is as an ISO date, such as 2026-05-31. */
export function dayOf(now: Date): string {
  return `${now.getFullYear()}-${pad(now.getMonth() + 1)}-${pad(now.getDate())}`;
}

/** Tells planning, which has no clock, what time it is and which plan it works from. */
export function momentOf(now: Date, planName: string): BuildMoment {
  return { madeAt: `${dayOf(now)} ${pad(now.getHours())}:${pad(now.getMinutes())}`, instant: now.toISOString(), planName };
}
