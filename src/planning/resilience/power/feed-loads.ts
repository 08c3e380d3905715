import { continuousLimit, current, type Phases } from "../../facility";
import { invalid, quote } from "../../text";

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

/** A device and the feeds that its power supplies hang on, one entry a supply. */
export interface PoweredDevice {
  readonly name: string;
  /** What the whole device draws. */
  readonly watts: number;
  /** Names of feeds; `A/L2` is phase L2 of the three-phase feed A. */
  readonly feeds: readonly string[];
  /** Where it stands, for a sentence about it, such as `supplies row 4`. */
  readonly at?: string;
}

/** What a feed carries, and what it may. */
export interface FeedLoad {
  readonly feed: string;
  readonly normalWatts: number;
  /** Most watts after the loss of any one other feed. */
  readonly worstWatts: number;
  /** Most amperes on a line of it, then. */
  readonly worstAmps: number;
  readonly limitAmps: number;
  /** Worst current as a share of the limit. */
  readonly share: number;
  readonly ok: boolean;
}

/** Watts of a feed that are on no named phase, then those on L1, L2 and L3. */
type PhaseWatts = readonly number[];

/** Rounding that a share may carry without being over its limit. */
const roundingShare = 1e-12;

/**
 * Computes what each feed carries while all are up, and at worst after the loss of any one other feed.
 *
 * A device shares its load equally among its supplies, and after the loss of a feed among those that are left; one with no other supply goes dark.
 * On a three-phase feed the line with the most on it counts, and a device that names no phase is taken to be wholly on that line:
 * its current is that of a load between line and neutral. Watts are of the whole feed. The worst watts and the worst amperes may belong to
 * different losses. Refuses a feed that is not in the table, and a phase of a feed that has only one.
 */
export function feedLoads(devices: readonly PoweredDevice[], feeds: readonly Feed[]): FeedLoad[] {
  const numbers = numberFeeds(feeds);
  const normal = feeds.map((): number[] => [0, 0, 0, 0]);
  // What the loss of one feed adds to another, for the pairs of feeds that share a device.
  const added = feeds.map(() => new Map<number, number[]>());
  for (const device of devices) {
    const supplies = device.feeds.map((text) => findSupply(text, device.at ?? `supplies ${quote(device.name)}`, feeds, numbers));
    for (const { feed, phase } of supplies) normal[feed]![phase]! += device.watts / supplies.length;
    for (const lost of new Set(supplies.map(({ feed }) => feed))) {
      const left = supplies.filter(({ feed }) => feed !== lost);
      for (const { feed, phase } of left) {
        const extra = added[feed]!.get(lost) ?? [0, 0, 0, 0];
        extra[phase]! += device.watts / left.length - device.watts / supplies.length;
        added[feed]!.set(lost, extra);
      }
    }
  }

  return feeds.map((feed, index): FeedLoad => {
    const before = normal[index]!;
    const cases = [before, ...[...added[index]!.values()].map((extra) => before.map((watts, phase) => watts + extra[phase]!))];
    const worstAmps = Math.max(...cases.map((watts) => lineCurrent(watts, feed)));
    const limitAmps = continuousLimit(feed.breakerAmps, feed.continuousShare);
    const share = worstAmps / limitAmps;
    return {
      feed: feed.name,
      normalWatts: total(before),
      worstWatts: Math.max(...cases.map(total)),
      worstAmps,
      limitAmps,
      share,
      ok: share <= 1 + roundingShare,
    };
  });
}

function total(watts: PhaseWatts): number {
  return watts.reduce((sum, one) => sum + one, 0);
}

/** Computes the current on the line of a feed that has the most on it. */
function lineCurrent([unnamed = 0, ...named]: PhaseWatts, feed: Feed): number {
  const lineVolts = feed.phases === 3 ? feed.volts / Math.sqrt(3) : feed.volts;
  return current(unnamed + Math.max(...named), lineVolts, feed.powerFactor);
}

function numberFeeds(feeds: readonly Feed[]): ReadonlyMap<string, number> {
  const numbers = new Map<string, number>();
  feeds.forEach(({ name, at = "feeds" }, index) => {
    if (numbers.has(name.toLowerCase())) throw invalid("feeds", name, `${at}: ${quote(name)} stands twice. Give each feed one row.`);
    numbers.set(name.toLowerCase(), index);
  });
  return numbers;
}

interface Supply {
  readonly feed: number;
  /** 0: none named. */
  readonly phase: number;
}

function findSupply(text: string, at: string, feeds: readonly Feed[], numbers: ReadonlyMap<string, number>): Supply {
  const whole = numbers.get(text.toLowerCase());
  if (whole !== undefined) return { feed: whole, phase: 0 };
  const named = /^(.+?)\s*\/\s*L([123])$/i.exec(text);
  const feed = named === null ? undefined : numbers.get(named[1]!.toLowerCase());
  if (feed === undefined) {
    throw invalid("supplies", text, `${at}: feed ${quote(text)} is not in feeds. Add it there or mend the name (A, A/L2).`);
  }
  if (feeds[feed]!.phases === 1) {
    throw invalid("supplies", text, `${at}: ${quote(text)} names a phase, but the feed has one. Write the feed alone.`);
  }
  return { feed, phase: Number(named![2]) };
}
