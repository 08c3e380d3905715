import { usualContinuousShare, type Phases } from "../../facility";
import { feedLoads, type Feed, type FeedLoad, type PoweredDevice } from "../../resilience";
import type { PlanRow } from "../read";
import { splitFeed, type PlanIndex } from "./plan-index";

/** What a feed of the plan carries, while all is well and at worst. */
export interface PlannedFeedLoad {
  readonly row: PlanRow<"feeds">;
  readonly normal: FeedLoad;
  readonly worst: FeedLoad;
}

const loads = new WeakMap<PlanIndex, readonly PlannedFeedLoad[]>();

/** Works out the loads of every feed whose volts and breaker are known; supplies on feeds that have no row are left out. */
export function plannedFeedLoads(index: PlanIndex): readonly PlannedFeedLoad[] {
  let list = loads.get(index);
  if (list === undefined) {
    list = workOut(index);
    loads.set(index, list);
  }
  return list;
}

function workOut(index: PlanIndex): PlannedFeedLoad[] {
  const rows = index.rows("feeds").filter((row) => index.find("feeds", row.feed) === row);
  const feeds = rows.map(feedOf);
  const devices = [...index.rows("arrays"), ...index.rows("switches")].map((row) => deviceOf(index, row)).filter(({ feeds: supplies }) => supplies.length > 0);
  // A supply that is a device of its own has nothing to take over: its worst load is its normal one.
  const supplies = devices.flatMap(({ name, watts, feeds: names }) => names.map((feed) => ({ name, watts: watts / names.length, feeds: [feed] })));
  const normal = feedLoads(supplies, feeds);
  const worst = feedLoads(devices, feeds);
  return rows.map((row, at) => ({ row, normal: normal[at]!, worst: worst[at]! })).filter(({ row }) => isKnown(row));
}

function isKnown({ volts, breakerA }: PlanRow<"feeds">): boolean {
  return volts !== null && volts > 0 && breakerA !== null && breakerA > 0;
}

function feedOf(row: PlanRow<"feeds">): Feed {
  return {
    name: row.feed,
    volts: isKnown(row) ? row.volts! : 1,
    breakerAmps: isKnown(row) ? row.breakerA! : 1,
    phases: phasesOf(row),
    continuousShare: row.continuousShare ?? usualContinuousShare,
    powerFactor: row.powerFactor !== null && row.powerFactor > 0 ? row.powerFactor : 1,
  };
}

function phasesOf({ phases }: PlanRow<"feeds">): Phases {
  return phases === 3 ? 3 : 1;
}

function deviceOf(index: PlanIndex, row: PlanRow<"arrays"> | PlanRow<"switches">): PoweredDevice {
  const feeds = [row.feedA, row.feedB].flatMap((text): string[] => {
    const { feed, phase } = splitFeed(text);
    const found = feed === "" ? null : index.find("feeds", feed);
    if (found === null) return [];
    return [phase !== null && phasesOf(found) === 3 ? `${found.feed}/${phase}` : found.feed];
  });
  return { name: "array" in row ? row.array : row.switch, watts: row.watts ?? 0, feeds };
}
