import { isoDateOf, sheetDayOf } from "../../../sheet";
import { fitStraightLine, placesReached, schemeEfficiency } from "../../capacity";
import { bytes, share, type Bytes } from "../../quantity";
import { formatTerabytes, foldName, roundTo } from "../../text";
import type { PlanRow } from "../read";
import type { Capacity, PoolContents } from "./capacity";
import { groupBy } from "./group-by";
import { once } from "./once";
import type { PlanRows } from "./plan-rows";
import { asReading, latestOf, type PlannedReading } from "./readings";
import { orNull } from "./refusal";

/** Fewest readings and fewest days from the first to the last over which a line is drawn. */
const [fewestReadings, fewestDays] = [3, 60];

/** Share by which a capacity that was read has to differ from the one before to count as changed: what is shown is rounded. */
const changedFrom = 0.01;

/** Probability with which a further reading lies in the range. */
const confidence = 0.95;

const daysPerYear = 365.25;

/** What the readings of a pool, or of an array that is in none, say about when it will be full. */
export interface Outlook {
  readonly subject: string;
  /** What hosts can store; null where it is not known. */
  readonly capacity: Bytes | null;
  readonly fillLimit: number;
  /** What was read on each day that counts, the first to the last. */
  readonly readings: readonly { readonly date: string; readonly size: Bytes }[];
  /** Day on which the capacity changed and the readings begin anew; null where it never did. */
  readonly begunAnew: string | null;
  /** Bytes by which the line rises in a year; null without a line. */
  readonly yearlyRise: number | null;
  /** Days on which the limit is reached; null where none can be said. */
  readonly reached: { readonly earliest: string; readonly likely: string; readonly latest: string } | null;
  /** What follows, in a sentence. */
  readonly verdict: string;
}

/** What follows of the readings of a plan. */
export class Outlooks {
  /** Lists every pool, and every array that is in none, of which there are readings. */
  readonly all = once((): readonly Outlook[] => [
    ...this.capacity.pools().flatMap((pool) => this.ofPool(pool) ?? []),
    ...this.capacity.arraysIn(null).flatMap((array) => this.ofArray(array) ?? []),
  ]);

  private readonly bySubject = once(() => groupBy(this.rows.rows("readings").flatMap((row) => asReading(row) ?? []), ({ row }) => foldName(row.subject)));

  constructor(
    private readonly rows: PlanRows,
    private readonly capacity: Capacity,
  ) {}

  private of(subject: string, what: "used" | "capacity"): readonly PlannedReading[] {
    return (this.bySubject().get(foldName(subject)) ?? []).filter(({ row }) => row.what === what);
  }

  private ofPool(contents: PoolContents): Outlook | null {
    const { pool, fillLimit, across, arrays } = contents;
    const own = this.of(pool.pool, "used");
    const ofArrays = arrays.map(({ array }) => this.of(array, "used"));
    if (own.length === 0 && ofArrays.every((some) => some.length === 0)) return null;
    // Arrays hold the copies and parity that a scheme over them takes: of the sum of what they hold only so much is data of hosts.
    const data = across === null ? share(1) : orNull(() => share(schemeEfficiency(across, arrays.length)));
    const summed = data === null ? [] : sumByDay(ofArrays, data);
    const changes = [pool.pool, ...arrays.map(({ array }) => array)].flatMap((subject) => changeOf(this.of(subject, "capacity")) ?? []);
    const limit = { capacity: this.capacity.toHosts(contents), fillLimit };
    if (own.length === 0 && summed.length === 0) {
      return { subject: pool.pool, ...limit, ...nothing, verdict: "Its arrays were not all read on one day. Read them together, or write readings of the pool itself." };
    }
    return outlookOf(pool.pool, limit, own.length > 0 ? own : summed, changes);
  }

  private ofArray(array: PlanRow<"arrays">): Outlook | null {
    const own = this.of(array.array, "used");
    const usable = this.capacity.partIn(array, null)?.usable ?? null;
    const changed = changeOf(this.of(array.array, "capacity"));
    return own.length === 0 ? null : outlookOf(array.array, { capacity: usable, fillLimit: this.rows.settings.fillLimit }, own, changed === null ? [] : [changed]);
  }
}

const nothing = { readings: [], begunAnew: null, yearlyRise: null, reached: null } as const;

type Limit = Pick<Outlook, "capacity" | "fillLimit">;

function outlookOf(subject: string, limit: Limit, all: readonly { readonly date: string; readonly size: Bytes }[], changes: readonly string[]): Outlook {
  const begunAnew = [...changes].sort().at(-1) ?? null;
  const lastOfDay = new Map([...all].sort(byDay).map(({ date, size }) => [date, size]));
  const readings = [...lastOfDay].map(([date, size]) => ({ date, size })).filter(({ date }) => begunAnew === null || date >= begunAnew);
  const known = { subject, ...limit, ...nothing, readings, begunAnew };
  const [first, last] = [readings[0], readings.at(-1)];
  const days = first === undefined || last === undefined ? 0 : sheetDayOf(last.date)! - sheetDayOf(first.date)!;
  const since = begunAnew === null ? "" : ` since the capacity changed on ${begunAnew}`;
  if (last === undefined || readings.length < fewestReadings || days < fewestDays) {
    return { ...known, verdict: `${readings.length} of ${fewestReadings} readings, over ${days} of ${fewestDays} days${since}: too few for a line. Read on.` };
  }
  const line = fitStraightLine(readings.map(({ date, size }) => [sheetDayOf(date)!, Number(size)]));
  const drawn = { ...known, yearlyRise: line.slope * daysPerYear };
  if (limit.capacity === null) return { ...drawn, verdict: "Its capacity is not known. Fill drives and scheme of its arrays, and the scheme across them." };
  const level = Number(limit.capacity) * limit.fillLimit;
  if (Number(last.size) >= level) return { ...drawn, verdict: `The limit of ${formatTerabytes(BigInt(Math.round(level)))} is reached.` };
  const reached = placesReached(line, level, confidence);
  if (reached === null) return { ...drawn, verdict: line.slope <= 0 ? "Not rising." : "Not rising, as far as these readings tell: they scatter more than they rise." };
  const today = sheetDayOf(last.date)!;
  const [earliest, likely, latest] = [reached.earliest, reached.likely, reached.latest].map((day) => isoDateOf(Math.max(roundTo(3, day), today)));
  if (earliest === null || earliest === undefined || likely === null || likely === undefined || latest === null || latest === undefined) {
    return { ...drawn, verdict: "Rising, but so slowly that no day of the calendar can be named." };
  }
  return { ...drawn, reached: { earliest, likely, latest }, verdict: `Full between ${earliest} and ${latest}, most likely about ${likely}.` };
}

/** Finds the last day on which a capacity was read that is another than the one read before; null where it never was. */
function changeOf(readings: readonly PlannedReading[]): string | null {
  const sorted = [...readings].sort(byDay);
  return sorted.filter(({ size }, at) => at > 0 && isChanged(sorted[at - 1]!.size, size)).at(-1)?.date ?? null;
}

/** ISO dates stand in the order of their letters. */
function byDay(one: { readonly date: string }, other: { readonly date: string }): number {
  return one.date < other.date ? -1 : one.date > other.date ? 1 : 0;
}

function isChanged(before: Bytes, after: Bytes): boolean {
  return Math.abs(Number(after - before)) > changedFrom * Number(before);
}

/** Adds up what all arrays of a pool hold, on the days on which every one of them was read, times the share of it that is data. */
function sumByDay(ofArrays: readonly (readonly PlannedReading[])[], data: number): { readonly date: string; readonly size: Bytes }[] {
  const days = [...new Set(ofArrays[0]?.map(({ date }) => date) ?? [])];
  return days.flatMap((date) => {
    const read = ofArrays.map((some) => latestOf(some.filter((one) => one.date === date)));
    if (read.includes(null)) return [];
    return [{ date, size: bytes(BigInt(Math.round(read.reduce((sum, one) => sum + Number(one!.size), 0) * data))) }];
  });
}
