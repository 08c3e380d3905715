import type { FeedPhase } from "./feed-phase";

/**
 * Computes the amperes on the lines L1, L2 and L3 of a three-phase feed.
 *
 * `watts` are those of each phase; `volts` stand between lines; all loads have the one power factor, and the lines follow each other in the order
 * L1, L2, L3. A load between two lines draws its current through both, a sixth of a turn away from that of a load between either and
 * neutral; the phasors are added, not their lengths (any handbook of electrical engineering).
 */
export function lineCurrents(watts: Readonly<Record<FeedPhase, number>>, volts: number, powerFactor: number): readonly [number, number, number] {
  const { L1, L2, L3, "L1-L2": next1, "L2-L3": next2, "L3-L1": next3 } = watts;
  const line = (own: number, next: number, previous: number): number => {
    const along = Math.sqrt(3) * (own + (next + previous) / 2);
    const across = (next - previous) / 2;
    return Math.sqrt(along * along + across * across) / (volts * powerFactor);
  };
  return [line(L1, next1, next3), line(L2, next2, next1), line(L3, next3, next2)];
}
