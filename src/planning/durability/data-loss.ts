import type { Layout } from "../capacity";
import { noAnswer } from "../text";
import { hoursPerYear, type Bytes, type Hours, type Share } from "../quantity";
import { hourlyFailureRate } from "./failure-rate";
import { meanHoursToLoss } from "./loss-chain";
import { bitsIn, readFault, type Chance } from "./read-fault";

const noFault: Chance = { happens: 0, fails: 1 };

/**
 * Computes the mean time to data loss of a layout in years of 8760 hours.
 *
 * Each group is a chain of its own and the first loss counts, so the time of one group is divided by their number; a spread scheme is
 * one chain over all its drives. Spares are not members: having one shows in `repair`. No read faults. No answer past 1.8e308.
 */
export function meanYearsToDataLoss(layout: Layout, mttf: Hours, repair: Hours): number {
  const years = layoutHoursToLoss(layout, 1 / mttf, repair, noFault) / hoursPerYear;
  if (Number.isFinite(years)) return years;
  throw noAnswer("scheme", layout.scheme.name, `scheme ${layout.scheme.name} on ${layout.members} drives lasts longer than a cell can hold. Write fewer drives.`);
}

/** What the risk of losing data hangs on beside the layout. */
export interface LossConditions {
  readonly driveSize: Bytes;
  /** Annual failure rate of a drive, below 1. */
  readonly afr: Share;
  readonly repair: Hours;
  readonly years: number;
  /** Chance that one bit cannot be read. */
  readonly readErrorRate: number;
}

/**
 * Computes the probability that a layout loses data within some years: 1 - exp(-years / mean time to data loss).
 *
 * The repair out of the last survivable state must read the data drives whole, and loses data when it meets an unreadable bit. In a
 * spread scheme only the stripes that touch every failed drive are at that limit, a share of ∏ (k + m - j) / (n - j), j from 1 to m - 1,
 * of them.
 */
export function dataLossRisk(layout: Layout, conditions: LossConditions): number {
  if (conditions.afr === 0) return 0;
  const fault = readFault(bitsAtRisk(layout, conditions.driveSize), conditions.readErrorRate);
  const hours = layoutHoursToLoss(layout, hourlyFailureRate(conditions.afr), conditions.repair, fault);
  return -Math.expm1((-conditions.years * hoursPerYear) / hours);
}

function layoutHoursToLoss(layout: Layout, failureRate: number, repair: Hours, repairFault: Chance): number {
  const chain = { drives: layout.members / layout.groups, tolerance: layout.redundancy, failureRate, repairRate: 1 / repair, repairFault };
  return meanHoursToLoss(chain) / layout.groups;
}

function bitsAtRisk({ scheme, data, redundancy, members }: Layout, driveSize: Bytes): number {
  let bits = bitsIn(driveSize) * data;
  if (scheme.placement === "spread") {
    for (let other = 1; other < redundancy; other++) bits *= (data + redundancy - other) / (members - other);
  }
  return bits;
}
