import { continuousLimit, current, type Phases } from "../../facility";
import { watts as asWatts, type Watts } from "../../quantity";
import { foldName, invalid, quote } from "../../text";
import { feedPhases, splitFeedPhase, type FeedPhase } from "./feed-phase";
import { lineCurrents } from "./line-currents";

/** A power feed and the breaker on it. */
export interface Feed {
  readonly name: string;
  /** Between the line and neutral; between lines where there are three phases. */
  readonly volts: number;
  readonly breakerAmps: number;
  readonly phases: Phases;
  /** Share of the breaker that may be loaded all the time. */
  readonly continuousShare: number;
  readonly powerFactor: number;
  /** Where it stands, for a sentence about it, such as `feeds row 2`. */
  readonly at?: string;
}

/** A device and the feeds of its power supplies, one entry a supply. */
export interface PoweredDevice {
  readonly name: string;
  /** What the whole device draws. */
  readonly watts: Watts;
  /** Names of feeds; `A/L2` is phase L2 of the three-phase feed A, `A/L1-L2` lies between two of its lines. */
  readonly feeds: readonly string[];
  /** Where it stands, for a sentence about it, such as `supplies row 4`. */
  readonly at?: string;
}

/** What a feed carries, and what it may. */
export interface FeedLoad {
  readonly feed: string;
  readonly normalWatts: Watts;
  /** Most watts after the loss of any one other feed. */
  readonly worstWatts: Watts;
  /** Most amperes on a line of it, then. */
  readonly worstAmps: number;
  readonly limitAmps: number;
  /** Worst current as a share of the limit. */
  readonly share: number;
  readonly ok: boolean;
}

/** Watts of a feed by the phase that its supplies name, or that they name none. */
type PhaseWatts = Record<FeedPhase | "none", number>;

const phases = ["none", ...feedPhases] as const;

/** Rounding that a share may carry without being over its limit. */
const roundingShare = 1e-12;

/**
 * Computes what each feed carries while all are up, and at worst after the loss of any one other feed.
 *
 * A device shares its load equally among its supplies, and after the loss of a feed among those that are left; one with no other supply goes dark.
 * On a three-phase feed the line with the most on it counts, and a device that names no phase is taken to be wholly on that line, between it
 * and neutral; see `lineCurrents` for those between two lines. Watts are of the whole feed. The worst watts and the worst amperes may belong to
 * different losses. Refuses a feed that is not in the table, and a phase of a feed that has only one.
 */
export function feedLoads(devices: readonly PoweredDevice[], feeds: readonly Feed[]): FeedLoad[] {
  const numbers = numberFeeds(feeds);
  const normal = feeds.map(noWatts);
  // What the loss of one feed adds to another, for the pairs of feeds that share a device.
  const added = feeds.map(() => new Map<number, PhaseWatts>());
  for (const device of devices) {
    const supplies = device.feeds.map((text) => findSupply(text, device.at ?? `supplies ${quote(device.name)}`, feeds, numbers));
    for (const { feed, phase } of supplies) normal[feed]![phase] += device.watts / supplies.length;
    for (const lost of new Set(supplies.map(({ feed }) => feed))) {
      const left = supplies.filter(({ feed }) => feed !== lost);
      for (const { feed, phase } of left) {
        const extra = added[feed]!.get(lost) ?? noWatts();
        extra[phase] += device.watts / left.length - device.watts / supplies.length;
        added[feed]!.set(lost, extra);
      }
    }
  }

  return feeds.map((feed, index): FeedLoad => {
    const before = normal[index]!;
    const cases = [before, ...[...added[index]!.values()].map((extra) => wattsOf((phase) => before[phase] + extra[phase]))];
    const worstAmps = Math.max(...cases.map((watts) => worstLine(watts, feed)));
    const limitAmps = continuousLimit(feed.breakerAmps, feed.continuousShare);
    const share = worstAmps / limitAmps;
    return {
      feed: feed.name,
      normalWatts: total(before),
      worstWatts: asWatts(Math.max(...cases.map(total))),
      worstAmps,
      limitAmps,
      share,
      ok: share <= 1 + roundingShare,
    };
  });
}

function wattsOf(watts: (phase: FeedPhase | "none") => number): PhaseWatts {
  return {
    none: watts("none"),
    L1: watts("L1"),
    L2: watts("L2"),
    L3: watts("L3"),
    "L1-L2": watts("L1-L2"),
    "L2-L3": watts("L2-L3"),
    "L3-L1": watts("L3-L1"),
  };
}

function noWatts(): PhaseWatts {
  return wattsOf(() => 0);
}

function total(watts: PhaseWatts): Watts {
  return asWatts(phases.reduce((sum, phase) => sum + watts[phase], 0));
}

/** Computes the current on the line of a feed that has the most on it. */
function worstLine(watts: PhaseWatts, { phases: lines, volts, powerFactor }: Feed): number {
  if (lines === 1) return current(asWatts(watts.none), volts, powerFactor);
  const { none, L1, L2, L3 } = watts;
  return Math.max(...lineCurrents({ ...watts, L1: L1 + none, L2: L2 + none, L3: L3 + none }, volts, powerFactor));
}

function numberFeeds(feeds: readonly Feed[]): ReadonlyMap<string, number> {
  const numbers = new Map<string, number>();
  feeds.forEach(({ name, at = "feeds" }, index) => {
    if (numbers.has(foldName(name))) throw invalid("feeds", name, `${at}: ${quote(name)} stands twice. Give each feed one row.`);
    numbers.set(foldName(name), index);
  });
  return numbers;
}

interface Supply {
  readonly feed: number;
  readonly phase: FeedPhase | "none";
}

function findSupply(text: string, at: string, feeds: readonly Feed[], numbers: ReadonlyMap<string, number>): Supply {
  const whole = numbers.get(foldName(text));
  if (whole !== undefined) return { feed: whole, phase: "none" };
  const { feed: name, phase } = splitFeedPhase(text);
  const feed = numbers.get(foldName(name));
  if (feed === undefined || phase === null) {
    throw invalid("supplies", text, `${at}: feed ${quote(text)} is not in feeds. Add it there or mend the name (A, A/L2, A/L1-L2).`);
  }
  if (feeds[feed]!.phases === 1) {
    throw invalid("supplies", text, `${at}: ${quote(text)} names a phase, but the feed has one. Write the feed alone.`);
  }
  return { feed, phase };
}
