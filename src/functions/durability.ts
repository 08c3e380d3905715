// Durability: how likely data is lost, and how often drives fail.
import { layoutDrives } from "../planning/capacity";
import { annualFailureRate, atLeastKOfN, bitsIn, dataLossRisk, meanYearsToDataLoss, mostParts, readFault } from "../planning/durability";
import { number } from "./support/answers";
import { count, number as anyNumber, numberBy } from "./support/numbers";
import { optional, parameter } from "./support/parameter";
import * as given from "./support/parameters";
import { meanTimeToFailure, repairTime, share } from "./support/quantities";
import { worksheetFunction } from "./support/worksheet-function";

const repairHours = parameter("repairHours", "Hours until a failed drive is replaced and rebuilt, such as {example}; a hot spare makes it shorter.", repairTime);

export const mttdl = worksheetFunction({
  id: "MTTDL",
  description: "Computes the mean time to data loss of drives that fail and are repaired independently, one repair at a time.",
  parameters: [
    given.scheme('"RAID 6"'),
    given.members(12),
    parameter("mttfHours", "Mean time to failure of one drive in hours, such as {example}.", meanTimeToFailure),
    repairHours,
  ],
  answers: number("Years of 8760 hours."),
  examples: ['=BAY.MTTDL("RAID 6",12,1000000,24)'],
  mistakes: ['=BAY.MTTDL("RAID 6",12,0,24)'],
  compute: (scheme, drives, mttf, repair) => meanYearsToDataLoss(layoutDrives(scheme, drives), mttf, repair),
});

export const lossrisk = worksheetFunction({
  id: "LOSSRISK",
  description: "Computes the probability of losing data, a repair that meets an unreadable bit included.",
  parameters: [
    given.scheme('"RAID 6"'),
    given.members(12),
    given.driveSize,
    parameter("afr", "Share of drives that fail in a year, such as {example}.", share({ belowOne: true, example: "1.5%" })),
    repairHours,
    given.years("Years looked at", 1000),
    optional("readErrorRate", "Chance that one bit cannot be read, such as {example}. Left out: {default}.", anyNumber({ min: 0, max: 1, default: 0, example: 1e-15 })),
  ],
  answers: number("Probability from 0 to 1."),
  examples: ['=BAY.LOSSRISK("RAID 6",12,8,"1.5%",24,5,1E-15)'],
  mistakes: ['=BAY.LOSSRISK("RAID 6",12,8,1.5,24)'],
  compute: (scheme, drives, driveSize, afr, repair, years, readErrorRate) =>
    dataLossRisk(layoutDrives(scheme, drives), { driveSize, afr, repair, years, readErrorRate }),
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
