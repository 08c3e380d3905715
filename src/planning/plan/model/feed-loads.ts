import { foldName } from "../../text";
import { usualContinuousShare } from "../../facility";
import { feedLoads, splitFeedPhase, type FeedLoad, type PoweredDevice } from "../../resilience";
import { rowsOf, type Plan, type PlanRow } from "../read";

/** What every feed of the plan carries, worked out once for all jobs. */
export class FeedLoads {
  private readonly byName: ReadonlyMap<string, FeedLoad>;

  /** Feeds without volts or breaker, and supplies on feeds that are not in the plan, are left out: the checks name them. */
  constructor(plan: Plan) {
    const rows = new Map<string, PlanRow<"feeds">>();
    for (const row of rowsOf(plan, "feeds")) {
      const name = foldName(row.feed);
      if (name !== "" && !rows.has(name) && (row.volts ?? 0) > 0 && (row.breakerA ?? 0) > 0) rows.set(name, row);
    }
    const devices = [...rowsOf(plan, "arrays"), ...rowsOf(plan, "switches")].map((row) => deviceOf(row, rows));
    const loads = feedLoads(
      devices.filter(({ feeds }) => feeds.length > 0),
      [...rows.values()].map((row) => ({
        name: row.feed,
        volts: row.volts!,
        breakerAmps: row.breakerA!,
        phases: row.phases === 3 ? 3 : 1,
        continuousShare: row.continuousShare ?? usualContinuousShare,
        powerFactor: row.powerFactor !== null && row.powerFactor > 0 ? row.powerFactor : 1,
      })),
    );
    this.byName = new Map(loads.map((load) => [foldName(load.feed), load]));
  }

  /** Lists the loads of the feeds that some arrays hang on, in the order in which the arrays name them. */
  of(arrays: readonly PlanRow<"arrays">[]): FeedLoad[] {
    const loads = arrays.flatMap(({ feedA, feedB }) => [feedA, feedB].map((text) => this.byName.get(foldName(splitFeedPhase(text).feed)) ?? null));
    return [...new Set(loads)].filter((load) => load !== null);
  }

  /** Says in one line what the feeds of an array carry at worst; blank where the plan does not tell. */
  describe(array: PlanRow<"arrays">): string {
    return this.of([array])
      .map(({ feed, worstAmps, limitAmps, share }) => `${feed} at worst ${worstAmps.toFixed(1)} of ${limitAmps.toFixed(1)} A (${Math.round(share * 100)}%)`)
      .join(", ");
  }
}

function deviceOf(row: PlanRow<"arrays"> | PlanRow<"switches">, rows: ReadonlyMap<string, PlanRow<"feeds">>): PoweredDevice {
  const feeds = [row.feedA, row.feedB].flatMap((text): string[] => {
    const { feed, phase } = splitFeedPhase(text);
    const found = rows.get(foldName(feed));
    if (found === undefined) return [];
    return [phase !== null && found.phases === 3 ? `${found.feed}/${phase}` : found.feed];
  });
  return { name: "array" in row ? row.array : row.switch, watts: row.watts ?? 0, feeds };
}
