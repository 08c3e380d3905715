// Durability: how likely data is lost, how much of it, and how often drives fail.
import { layoutDrives } from "../planning/capacity";
import {
  annualFailureRate,
  atLeastKOfN,
  bitsIn,
  bytesLostPerTerabyte,
  dataLossRange,
  dataLossRisk,
  meanYearsToDataLoss,
  mostParts,
  readFault,
  type Exposure,
} from "../planning/durability";
import type { Bytes, Hours } from "../planning/quantity";
import { number, table } from "./support/answers";
import { failureRate, rangeRows, scrubInterval, waitTime } from "./support/loss-conditions";
import { count, number as anyNumber, numberBy } from "./support/numbers";
import { optional, parameter, type ValuesOf } from "./support/parameter";
import * as given from "./support/parameters";
import { meanTimeToFailure, repairTime, share } from "./support/quantities";
import { worksheetFunction } from "./support/worksheet-function";

const repairHours = parameter("repairHours", "Hours until a failed drive is replaced and rebuilt, such as {example}; a hot spare makes it shorter.", repairTime);
const waitHours = optional("waitHours", "Hours of repairHours before copying begins, such as {example}; counts for spread schemes only. Left out: 1, or all of a shorter repair.", waitTime);

export const mttdl = worksheetFunction({
  id: "MTTDL",
  description: "Computes the mean time to data loss of drives that fail and are repaired independently, one repair at a time.",
  parameters: [
    given.scheme('"RAID 6"'),
    given.members(12),
    parameter("mttfHours", "Mean time to failure of one drive in hours, such as {example}.", meanTimeToFailure),
    repairHours,
    waitHours,
  ],
  answers: number("Years of 8760 hours."),
  examples: ['=BAY.MTTDL("RAID 6",12,1000000,24)', '=BAY.MTTDL("8+3",60,1200000,24,4)'],
  mistakes: ['=BAY.MTTDL("RAID 6",12,0,24)', '=BAY.MTTDL("8+3",60,1200000,24,48)'],
  compute: (scheme, drives, mttf, repair, wait) => meanYearsToDataLoss(layoutDrives(scheme, drives), mttf, repair, wait),
});

/** A failure rate that other rates are multiples of, so not 0. */
const rate = (name: string, what: string, example: string) => parameter(name, `${what}, such as {example}.`, failureRate(example));

const circumstances = [
  given.years("Years looked at", 1000),
  optional("readErrorRate", "Chance that one bit cannot be read, such as {example}. Left out: {default}.", anyNumber({ min: 0, below: 1, default: 0, example: 1e-15 })),
  optional("latentErrors", "Defects that a TB gets in a year, found by a scrub or a read, such as {example}. Left out: {default}.", anyNumber({ min: 0, max: 1e6, default: 0, example: 0.05 })),
  optional("scrubHours", "Hours from one scrub of a drive to the next, such as {example}. Left out: {default}.", scrubInterval),
  optional("sharedCause", "Share of failures that take a second drive with them, such as {example}. Left out: {default}.", share({ default: 0, example: "5%" })),
  waitHours,
] as const;

const lossParameters = [
  given.scheme('"RAID 6"'),
  given.members(12),
  given.driveSize,
  parameter("afr", "Share of drives that fail in a year, such as {example}.", share({ belowOne: true, example: "1.5%" })),
  repairHours,
  ...circumstances,
] as const;

function exposure(driveSize: Bytes, repair: Hours, ...[years, readErrorRate, latentErrors, scrub, sharedCause, wait]: ValuesOf<typeof circumstances>): Exposure {
  return { driveSize, repair, years, readErrorRate, latentErrors, scrub, sharedCause, wait };
}

export const lossrisk = worksheetFunction({
  id: "LOSSRISK",
  description: "Computes the probability of losing data: one failure too many, or a repair that meets what cannot be read.",
  parameters: lossParameters,
  answers: number("Probability from 0 to 1."),
  examples: ['=BAY.LOSSRISK("RAID 6",12,8,"1.5%",24,5,1E-15)', '=BAY.LOSSRISK("8+3",60,16,"1.5%",24,5,1E-15,0.05,336,"5%",4)'],
  mistakes: ['=BAY.LOSSRISK("RAID 6",12,8,1.5,24)'],
  compute: (scheme, drives, driveSize, afr, repair, ...rest) => dataLossRisk(layoutDrives(scheme, drives), { ...exposure(driveSize, repair, ...rest), afr }),
});

export const byteslost = worksheetFunction({
  id: "BYTESLOST",
  description: "Computes the expected loss in bytes for each usable TB, by the first loss, which compares schemes of unlike size.",
  parameters: lossParameters,
  answers: number("Bytes for each TB of usable capacity."),
  examples: ['=BAY.BYTESLOST("RAID 6",12,8,"1.5%",24,5,1E-15)', '=BAY.BYTESLOST("8+3",60,16,"1.5%",24,5,1E-15,0.05,336,"5%",4)'],
  mistakes: ['=BAY.BYTESLOST("RAID 6",12,8,"1.5%",24,5,1)'],
  compute: (scheme, drives, driveSize, afr, repair, ...rest) => bytesLostPerTerabyte(layoutDrives(scheme, drives), { ...exposure(driveSize, repair, ...rest), afr }),
});

export const lossrange = worksheetFunction({
  id: "LOSSRANGE",
  description: "Computes the probability of losing data over a span of annual failure rates, evenly by ratio: what is not known is shown.",
  parameters: [
    given.scheme('"RAID 6"'),
    given.members(12),
    given.driveSize,
    rate("afrLow", "Lowest share of drives that may fail in a year", "0.5%"),
    rate("afrHigh", "Highest share of drives that may fail in a year", "8%"),
    repairHours,
    ...circumstances,
    optional("rows", "Failure rates to show, such as {example}. Left out: {default}.", rangeRows),
  ],
  answers: table(["AFR", "Risk"], "Table of AFR and Risk, from the low rate to the high one."),
  examples: ['=BAY.LOSSRANGE("RAID 6",12,8,"0.5%","8%",24,5,1E-15)'],
  mistakes: ['=BAY.LOSSRANGE("RAID 6",12,8,"8%","0.5%",24)'],
  compute: (scheme, drives, driveSize, low, high, repair, years, readErrorRate, latentErrors, scrub, sharedCause, wait, rowsFor) => {
    const layout = layoutDrives(scheme, drives);
    const exposed = exposure(driveSize, repair, years, readErrorRate, latentErrors, scrub, sharedCause, wait);
    return dataLossRange(layout, low, high, exposed, rowsFor(layout)).map(({ afr, risk }) => [afr, risk]);
  },
});

export const readfault = worksheetFunction({
  id: "READFAULT",
  description: "Computes the probability of meeting at least one unreadable bit while reading a size.",
  parameters: [
    given.size("size", "What is read", 12, "500 GB"),
    parameter("errorRate", "Chance that one bit cannot be read, such as {example}.", anyNumber({ min: 0, max: 1, example: 1e-15 })),
  ],
  answers: number("Probability from 0 to 1."),
  examples: ['=BAY.READFAULT("12 TB",1E-14)'],
  mistakes: ['=BAY.READFAULT("12 TB",2)'],
  compute: (size, errorRate) => readFault(bitsIn(size), errorRate).happens,
});

export const afr = worksheetFunction({
  id: "AFR",
  description: "Computes the annual failure rate of a drive from its mean time to failure: 1 - exp(-8760 / MTTF).",
  parameters: [parameter("mttfHours", "Mean time to failure in hours, such as {example}.", meanTimeToFailure)],
  answers: number("Probability from 0 to 1."),
  examples: ["=BAY.AFR(1000000)"],
  mistakes: ["=BAY.AFR(0)"],
  compute: annualFailureRate,
});

export const kofn = worksheetFunction({
  id: "KOFN",
  description: "Computes the probability that at least k of n independent parts work.",
  parameters: [
    parameter("k", "Parts that must work, such as {example}.", numberBy(3, (parts: number) => ({ min: 1, max: parts, whole: true, example: 1 }))),
    parameter("n", "Parts there are, such as {example}.", count({ min: 1, max: mostParts, example: 4 })),
    parameter("p", "Probability that one part works, such as {example}.", share({ example: "0.9" })),
  ],
  answers: number("Probability from 0 to 1."),
  examples: ["=BAY.KOFN(2,3,0.9)"],
  mistakes: ["=BAY.KOFN(4,3,0.9)"],
  compute: (needed, parts, works) => atLeastKOfN(needed(parts), parts, works),
});
