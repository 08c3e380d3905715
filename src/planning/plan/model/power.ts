import { usualContinuousShare, type Phases } from "../../facility";
import { watts } from "../../quantity";
import { splitFeedPhase, feedLoads, type Feed, type FeedLoad, type PoweredDevice } from "../../resilience";
import { foldName } from "../../text";
import type { PlanRow } from "../read";
import { devicesOf, type Device } from "./devices";
import { groupBy } from "./group-by";
import { once } from "./once";
import type { PlanRows } from "./plan-rows";

/** What a feed of the plan carries, while all is well and at worst. */
export interface PlannedFeedLoad {
  readonly row: PlanRow<"feeds">;
  readonly normal: FeedLoad;
  readonly worst: FeedLoad;
}

/** What the feeds of a plan carry. */
export class Power {
  /** Lists everything that draws power. */
  readonly devices = once((): readonly Device[] => devicesOf(this.rows.rows("arrays"), this.rows.rows("shelves"), this.rows.rows("switches")));

  /** Lists the loads of every feed whose volts and breaker are known; supplies on feeds that have no row are left out. */
  readonly loads = once((): readonly PlannedFeedLoad[] => this.workOut());

  private readonly byFeed = once(() => new Map(this.loads().map((load) => [load.row, load])));

  private readonly silentByFeed = once(() => {
    const silent = this.devices().filter(({ table, row }) => table !== "shelves" && row.watts === null);
    return groupBy(silent.flatMap(({ row, name }) => [...new Set(this.feedsOf(row))].map((feed) => ({ feed, name }))), ({ feed }) => feed);
  });

  constructor(private readonly rows: PlanRows) {}

  /** Names the arrays and switches on a feed whose watts are not known: what they draw is in no load. A shelf that says none is in its array's. */
  silentOn(feed: PlanRow<"feeds">): readonly string[] {
    return (this.silentByFeed().get(feed) ?? []).map(({ name }) => name);
  }

  /** Finds the row of the feed that a cell names, with or without a phase; null where there is none. */
  feedNamed(text: string): PlanRow<"feeds"> | null {
    return this.rows.find("feeds", splitFeedPhase(text).feed);
  }

  /** Lists the feeds that a device is on, first that of its first supply; those without a row are left out. */
  feedsOf({ feedA, feedB }: Device["row"]): PlanRow<"feeds">[] {
    return [feedA, feedB].flatMap((text) => this.feedNamed(text) ?? []);
  }

  /** Lists the loads of the feeds that some arrays and their shelves are on, each once, in the order in which the arrays name them. */
  loadsOf(arrays: readonly PlanRow<"arrays">[]): PlannedFeedLoad[] {
    const shelves = arrays.flatMap(({ array }) => this.rows.rowsWith("shelves", "array", array));
    const feeds = new Set([...arrays, ...shelves].flatMap((device) => this.feedsOf(device)));
    return [...feeds].flatMap((feed) => this.byFeed().get(feed) ?? []);
  }

  /** Lists the loads of the feeds of a site, in the order of their rows. */
  loadsAt(site: string): PlannedFeedLoad[] {
    return this.loads().filter(({ row }) => foldName(row.site) === foldName(site));
  }

  /** Names the devices of a site that are on no feed of the plan: what they draw is in no load. */
  unfedAt(site: string): string[] {
    const arrays = this.rows.rowsWith("arrays", "site", site);
    // A shelf that says no watts draws what its array's say.
    const shelves = arrays.flatMap(({ array }) => this.rows.rowsWith("shelves", "array", array)).filter((row) => row.watts !== null);
    return devicesOf(arrays, shelves, this.rows.rowsWith("switches", "site", site)).filter(({ row }) => this.feedsOf(row).length === 0).map(({ name }) => name);
  }

  private workOut(): PlannedFeedLoad[] {
    const rows = this.rows.rows("feeds").filter((row) => this.rows.find("feeds", row.feed) === row);
    const feeds = rows.map(feedOf);
    const devices = this.devices().map((device) => this.poweredDevice(device)).filter(({ feeds: supplies }) => supplies.length > 0);
    // A supply that is a device of its own has nothing to take over: its worst load is its normal one.
    const supplies = devices.flatMap(({ name, watts: power, feeds: names }) => names.map((feed) => ({ name, watts: watts(power / names.length), feeds: [feed] })));
    const normal = feedLoads(supplies, feeds);
    const worst = feedLoads(devices, feeds);
    return rows.map((row, at) => ({ row, normal: normal[at]!, worst: worst[at]! })).filter(({ row }) => isKnown(row));
  }

  private poweredDevice({ row, name }: Device): PoweredDevice {
    const feeds = [row.feedA, row.feedB].flatMap((text): string[] => {
      const { phase } = splitFeedPhase(text);
      const found = this.feedNamed(text);
      if (found === null) return [];
      return [phase !== null && phasesOf(found) === 3 ? `${found.feed}/${phase}` : found.feed];
    });
    return { name, watts: row.watts ?? watts(0), feeds };
  }
}

function isKnown({ volts, breakerA }: PlanRow<"feeds">): boolean {
  return volts !== null && volts > 0 && breakerA !== null && breakerA > 0;
}

/** Describes a feed for the model of loads; one whose volts or breaker are not known stands in with 1, and its load is not told. */
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
