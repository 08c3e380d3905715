// Durability: how likely data is lost, and how often drives fail.
import { layoutDrives } from "../planning/capacity";
import { annualFailureRate, atLeastKOfN, bitsIn, dataLossRisk, meanYearsToDataLoss, mostParts, readFault } from "../planning/durability";
import { answer } from "./support/answer";
import { readCount, readNumber } from "./support/numbers";
import { readBitErrorRate, readDrives, readMttf, readRepairHours, readScheme, readShare, readSize } from "./support/quantities";

/**
 * Computes the mean time to data loss of drives that fail and are repaired independently, one repair at a time.
 * @customfunction MTTDL
 * @param scheme Redundancy scheme in quotes, such as "RAID 6".
 * @param drives Number of drives, without spares, such as 12.
 * @param mttfHours Mean time to failure of one drive in hours, such as 1200000.
 * @param repairHours Hours until a failed drive is replaced and rebuilt, such as 24; a hot spare makes it shorter.
 * @returns Years of 8760 hours.
 */
export function mttdl(scheme: unknown, drives: unknown, mttfHours: unknown, repairHours: unknown): number {
  return answer("MTTDL", () =>
    meanYearsToDataLoss(
      layoutDrives(readScheme(scheme, "scheme"), readDrives(drives, "drives")),
      readMttf(mttfHours, "mttfHours"),
      readRepairHours(repairHours, "repairHours"),
    ),
  );
}

/**
 * Computes the probability of losing data, a repair that meets an unreadable bit included.
 * @customfunction LOSSRISK
 * @param scheme Redundancy scheme in quotes, such as "RAID 6".
 * @param drives Number of drives, without spares, such as 12.
 * @param driveSize Size of one drive: TB as a number, such as 4, or text such as "960 GB".
 * @param afr Share of drives that fail in a year, such as 1.5%.
 * @param repairHours Hours until a failed drive is replaced and rebuilt, such as 24; a hot spare makes it shorter.
 * @param [years] Years looked at, such as 5. Left out: 1.
 * @param [readErrorRate] Chance that one bit cannot be read, such as 1E-15. Left out: 0.
 * @returns Probability from 0 to 1.
 */
export function lossrisk(
  scheme: unknown,
  drives: unknown,
  driveSize: unknown,
  afr: unknown,
  repairHours: unknown,
  years?: unknown,
  readErrorRate?: unknown,
): number {
  return answer("LOSSRISK", () =>
    dataLossRisk(layoutDrives(readScheme(scheme, "scheme"), readDrives(drives, "drives")), {
      driveSize: readSize(driveSize, "driveSize"),
      afr: readShare(afr, "afr", { belowOne: true }),
      repair: readRepairHours(repairHours, "repairHours"),
      years: readNumber(years, "years", { above: 0, max: 1000, default: 1, example: 5 }),
      readErrorRate: readBitErrorRate(readErrorRate, "readErrorRate", 0),
    }),
  );
}

/**
 * Computes the probability of meeting at least one unreadable bit while reading a size.
 * @customfunction READFAULT
 * @param size What is read: TB as a number, such as 12, or text such as "500 GB".
 * @param errorRate Chance that one bit cannot be read, such as 1E-15.
 * @returns Probability from 0 to 1.
 */
export function readfault(size: unknown, errorRate: unknown): number {
  return answer("READFAULT", () => readFault(bitsIn(readSize(size, "size")), readBitErrorRate(errorRate, "errorRate")).happens);
}

/**
 * Computes the annual failure rate of a drive from its mean time to failure: 1 - exp(-8760 / MTTF).
 * @customfunction AFR
 * @param mttfHours Mean time to failure in hours, such as 1200000.
 * @returns Probability from 0 to 1.
 */
export function afr(mttfHours: unknown): number {
  return answer("AFR", () => annualFailureRate(readMttf(mttfHours, "mttfHours")));
}

/**
 * Computes the probability that at least k of n independent parts work.
 * @customfunction KOFN
 * @param k Parts that must work, such as 3.
 * @param n Parts there are, such as 4.
 * @param p Probability that one part works, such as 0.9.
 * @returns Probability from 0 to 1.
 */
export function kofn(k: unknown, n: unknown, p: unknown): number {
  return answer("KOFN", () => {
    const parts = readCount(n, "n", { min: 1, max: mostParts, example: 4 });
    return atLeastKOfN(readCount(k, "k", { min: 1, max: parts, example: 1 }), parts, readShare(p, "p"));
  });
}
