/** How a supply is connected to a three-phase feed: between a line and neutral, or between two lines, written in the order of the phase sequence. */
export const feedPhases = ["L1", "L2", "L3", "L1-L2", "L2-L3", "L3-L1"] as const;
export type FeedPhase = (typeof feedPhases)[number];

/**
 * Takes the phase off the name of a feed: `A/L2` is connected to line L2 of feed A, `A/L1-L2` between two of its lines, in either order.
 *
 * Case does not matter, nor blanks around the slash and the dash. What ends in no phase is the name of a feed as it stands.
 */
export function splitFeedPhase(text: string): { readonly feed: string; readonly phase: FeedPhase | null } {
  if (!text.includes("/")) return { feed: text, phase: null };
  const [, feed, one, other] = /^(.*\S)\s*\/\s*(L[123])(?:\s*-\s*(L[123]))?$/i.exec(text.trim()) ?? [];
  const spellings = other === undefined ? [one] : [`${one}-${other}`, `${other}-${one}`];
  const phase = feedPhases.find((known) => spellings.some((spelling) => spelling?.toUpperCase() === known));
  return feed === undefined || phase === undefined ? { feed: text, phase: null } : { feed, phase };
}
