import type { PlannedFeedLoad } from "../plan/model";
import { formatAmps, formatPercent } from "../text";

/** Says in words what the feeds of a site carry. */
export function describeFeedLoads(site: string, loads: readonly PlannedFeedLoad[], unfed: readonly string[]): string {
  const each = loads.map(({ row, normal, worst }) => {
    const excess = worst.ok ? "" : normal.ok ? ": too much once another feed is lost" : ": too much already";
    const atWorst = `${formatAmps(worst.worstAmps)} of ${formatAmps(worst.limitAmps)} (${formatPercent(worst.share)})`;
    return `${row.feed} carries ${formatAmps(normal.worstAmps)}, at worst ${atWorst}${excess}.`;
  });
  return `${site}: ${each.join(" ")}${unfed.length === 0 ? "" : ` On no feed yet, and in no bar: ${unfed.join(", ")}.`}`;
}
