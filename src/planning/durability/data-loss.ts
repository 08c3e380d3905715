import type { Layout } from "../capacity";
import { hours, hoursPerYear, readAs15Digits, share, type Bytes, type Hours, type Share } from "../quantity";
import { invalid, noAnswer } from "../text";
import { criticalShare } from "./critical-share";
import { hourlyFailureRate } from "./failure-rate";
import { meanHoursToLoss } from "./hours-to-loss";
import { buildLossChain } from "./loss-chain";
import { lossWithin, type LossChances } from "./loss-within";
import { bitsIn, chanceOfAny, meanFaults } from "./read-fault";

/**
 * Computes the mean time to data loss of a layout in years of 8760 hours: drives only, no read faults, no shared causes.
 *
 * Each group is a chain of its own and the first loss counts: the time of one group is divided by their number, which is right where
 * failures are rare and too short where they are not (20 pairs of drives of 1000 h, repaired within 240.5 h: 178.95 h, and not the exact
 * 281.49 h). `wait`, at most `repair`, counts for spread schemes only; left out: one hour, or all of a shorter repair. Spares are not
 * members: having one shows in `repair`. Refuses more than 100 failures tolerated; no answer past 1.8e308.
 */
export function meanYearsToDataLoss(layout: Layout, mttf: Hours, repair: Hours, wait?: Hours): number {
  const rates = { failureRate: 1 / mttf, sharedCause: share(0), repair, wait: waitWithin(repair, wait), unread: chanceOfAny(0) };
  const years = meanHoursToLoss(buildLossChain(layout, rates)) / layout.groups / hoursPerYear;
  if (Number.isFinite(years)) return years;
  throw noAnswer("scheme", layout.scheme.name, `scheme ${layout.scheme.name} on ${layout.members} drives lasts longer than a cell can hold. Write fewer drives.`);
}

/** What the loss of data depends on besides layout and failure rate. */
export interface Exposure {
  readonly driveSize: Bytes;
  /** Mean hours from a first failure to its repair. */
  readonly repair: Hours;
  readonly years: number;
  /** Chance that one bit read cannot be read; below 1. */
  readonly readErrorRate: number;
  /** Defects that a TB gets in a year and that stand until it is scrubbed or read; left out: none. */
  readonly latentErrors?: number;
  /** Hours from one scrub of a drive to the next; left out: 168. */
  readonly scrub?: Hours;
  /** Share of failures that take a second drive with them; left out: none. */
  readonly sharedCause?: Share;
  /** Hours of `repair`, at most all, before anything is copied; for spread schemes only. Left out: one, or all of a shorter repair. */
  readonly wait?: Hours;
}

/** What the loss of data depends on besides the layout. */
export interface LossConditions extends Exposure {
  /** Annual failure rate of a drive, below 1. */
  readonly afr: Share;
}

/**
 * Computes the probability that a layout loses data within some years: 1 - (1 - p)^groups, p that of one group, the exact transient of
 * its chain from all drives whole.
 *
 * A loss is a failure more than is tolerated, or a repair with nothing left to correct it that meets an unreadable bit. Assumes drives
 * alike with a constant rate, dependent only in pairs, and repairs that are exponential and one at a time. Such a repair forgets what was
 * restored before the next failure: against a rebuild of fixed speed that overstates the loss of a spread code by up to 1·2·…·m where
 * nothing waits. Keeps its digits down to about 1e-280; 0 where a double cannot hold it. Refuses more than 100 failures tolerated.
 */
export function dataLossRisk(layout: Layout, conditions: LossConditions): number {
  const { byDrives, byReading } = lossOfOneGroup(layout, conditions);
  return -Math.expm1(layout.groups * Math.log1p(-Math.min(1, byDrives + byReading)));
}

/**
 * Computes the bytes of user data that a layout is expected to lose within some years for each TB (10^12 bytes) of its usable capacity,
 * by the first loss of each group.
 *
 * A loss by drives costs (m + 1) · k / w drives of data, in a spread scheme times the share of a drive's stripes that touch all of the
 * m + 1, also where a pair failed at once. A loss by reading costs 4096 bytes a defect that is met.
 */
export function bytesLostPerTerabyte(layout: Layout, conditions: LossConditions): number {
  const { byDrives, byReading } = lossOfOneGroup(layout, conditions);
  const { data, redundancy } = layout;
  const drives = layout.members / layout.groups;
  const width = data + redundancy;
  const usableOfGroup = (Number(conditions.driveSize) * data * drives) / width;
  const shareLost = ((redundancy + 1) / drives) * criticalShare(drives, width, redundancy + 1);
  const faults = faultsOfRepair(layout, conditions);
  const sectorsLost = faults === 0 ? 0 : byReading * (faults / chanceOfAny(faults).happens);
  return 1e12 * (byDrives * shareLost + (sectorsLost * sectorBytes) / usableOfGroup);
}

/** Bytes that an unreadable bit takes with it. */
const sectorBytes = 4096;

/** One line of a range of risks. */
export interface RiskAtRate {
  readonly afr: Share;
  readonly risk: number;
}

/**
 * Computes the probability of losing data for annual failure rates from `low` to `high`, as many as `rows`, evenly by ratio, so that
 * what is not known is shown.
 *
 * Rates are rounded to 15 digits, so that each row is what `dataLossRisk` gives for its rate. `rows` is at least 2, `low` above 0.
 * Refuses a low end above the high one.
 */
export function dataLossRange(layout: Layout, low: Share, high: Share, exposure: Exposure, rows: number): RiskAtRate[] {
  if (low > high) throw invalid("afrLow", low, `afrLow is ${low}, above afrHigh ${high}. Write the lower rate first.`);
  return Array.from({ length: rows }, (_, row) => {
    const afr = share(row === rows - 1 ? high : readAs15Digits(low * (high / low) ** (row / (rows - 1))));
    return { afr, risk: dataLossRisk(layout, { ...exposure, afr }) };
  });
}

/**
 * Tells how many rows of `dataLossRange` are worked out at most: 100, and fewer for many failures tolerated, as the work of each grows
 * with the cube of their number; at most about a second in all.
 */
export function mostRangeRows({ redundancy }: Layout): number {
  return Math.max(5, Math.min(100, Math.floor(6e6 / (redundancy + 2) ** 3)));
}

function lossOfOneGroup(layout: Layout, conditions: LossConditions): LossChances {
  const { afr, repair, wait, sharedCause = share(0), years } = conditions;
  const unread = chanceOfAny(faultsOfRepair(layout, conditions));
  const chain = buildLossChain(layout, { failureRate: hourlyFailureRate(afr), sharedCause, repair, wait: waitWithin(repair, wait), unread });
  return lossWithin(chain, years * hoursPerYear);
}

/**
 * Computes the mean number of defects that the last repair meets: unreadable bits, and latent errors that came since the last scrub,
 * half an interval ago on average. It reads `data` drives whole, in a spread scheme only the stripes that touch every failed drive.
 */
function faultsOfRepair(layout: Layout, { driveSize, readErrorRate, latentErrors = 0, scrub = hours(168) }: LossConditions): number {
  const { members, groups, data, redundancy } = layout;
  const bits = bitsIn(driveSize) * data * criticalShare(members / groups, data + redundancy, redundancy);
  return meanFaults(bits, share(readErrorRate)) + latentErrors * (bits / 8e12) * (scrub / 2 / hoursPerYear);
}

function waitWithin(repair: Hours, wait: Hours = hours(Math.min(1, repair))): Hours {
  if (wait <= repair) return wait;
  throw invalid("waitHours", wait, `waitHours is ${wait}, longer than repairHours ${repair}, of which it is a part. Write at most ${repair}.`);
}
