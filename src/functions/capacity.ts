// Capacity: how much of the raw space is usable, and when it will be full.
import {
  breakDown,
  commonSchemes,
  compareSchemes,
  demandTerabytes,
  driveBytes,
  drivesFor,
  effectiveBytes,
  layoutDrives,
  layoutRows,
  planExpansion,
  roomWithout,
  schemeEfficiency,
  sectorSizes,
  survivedFailures,
  usableBytes,
  usableOfMixed,
  yearsUntilFull,
} from "../planning/capacity";
import { bytesIn, partOf, tebibyte, terabyte, type Bytes } from "../planning/quantity";
import { answer } from "./support/answer";
import { readChoice } from "./support/choice";
import { readCount } from "./support/numbers";
import { readDrives, readDrivesOrNone, readFill, readGrowth, readReduction, readScheme, readShare, readSize, readSizeOrZero, readSpares, readUnit } from "./support/quantities";
import { answerYears, readDriveSizes, readPoolMembers, readSchemes } from "./support/capacity-ranges";
import { readName } from "./support/names";

/**
 * Computes the usable capacity of equal drives after spares, redundancy and the reserved share.
 * @customfunction USABLE
 * @param scheme Redundancy scheme in quotes, such as "RAID 6", "RAID 60 8+2", "3 copies" or "8+2".
 * @param drives Number of drives, spares included, such as 12.
 * @param driveSize Size of one drive: TB as a number, such as 4, or text such as "960 GB".
 * @param [spares] Hot spare drives among them, such as 1. Left out: 0.
 * @param [reserve] Share of the usable space kept free, such as 10%. Left out: 0.
 * @param [unit] Unit of the answer, such as "TiB". Left out: "TB".
 * @returns Usable capacity in the unit asked for.
 */
export function usable(scheme: unknown, drives: unknown, driveSize: unknown, spares?: unknown, reserve?: unknown, unit?: unknown): number {
  return answer("USABLE", () => {
    const layout = layoutDrives(readScheme(scheme, "scheme"), readDrives(drives, "drives"), readSpares(spares, "spares"));
    const size = usableBytes(layout, readSize(driveSize, "driveSize"), readShare(reserve, "reserve", { default: 0 }));
    return bytesIn(size, readUnit(unit, "unit"));
  });
}

/**
 * Shows where the raw capacity goes, line by line; the lines add up to Raw.
 * @customfunction BREAKDOWN
 * @param scheme Redundancy scheme in quotes, such as "RAID 6".
 * @param drives Number of drives, spares included, such as 12.
 * @param driveSize Size of one drive: TB as a number, such as 4, or text such as "960 GB".
 * @param [spares] Hot spare drives among them, such as 1. Left out: 0.
 * @param [reserve] Share of the usable space kept free, such as 10%. Left out: 0.
 * @returns Table of Line, TB, TiB and Share of raw.
 */
export function breakdown(scheme: unknown, drives: unknown, driveSize: unknown, spares?: unknown, reserve?: unknown): unknown[][] {
  return answer("BREAKDOWN", () => {
    const layout = layoutDrives(readScheme(scheme, "scheme"), readDrives(drives, "drives"), readSpares(spares, "spares"));
    const parts = breakDown(layout, readSize(driveSize, "driveSize"), readShare(reserve, "reserve", { default: 0 }));
    const line = (name: string, size: Bytes): (string | number)[] => [
      name,
      bytesIn(size, terabyte),
      bytesIn(size, tebibyte),
      partOf(size, parts.raw),
    ];
    return [
      ["Line", "TB", "TiB", "Share"],
      line("Raw", parts.raw),
      line("Spare drives", parts.spares),
      line("Outside a group", parts.outside),
      line("Redundancy", parts.redundancy),
      line("Reserve", parts.reserve),
      line("Usable", parts.usable),
    ];
  });
}

/**
 * Compares redundancy schemes on the same drives.
 * @customfunction SCHEMES
 * @param drives Number of drives, spares included, such as 24.
 * @param driveSize Size of one drive: TB as a number, such as 4, or text such as "960 GB".
 * @param [spares] Hot spare drives among them, such as 1. Left out: 0.
 * @param [schemes] Range of schemes to compare, such as A2:A6. Left out: the common ones that fit.
 * @returns Table of Scheme, Usable TB, Usable TiB, Efficiency, Always survives, At best survives and Write cost.
 */
export function schemes(drives: unknown, driveSize: unknown, spares?: unknown, schemes?: unknown): unknown[][] {
  return answer("SCHEMES", () => {
    const count = readDrives(drives, "drives");
    const spareCount = readSpares(spares, "spares");
    const compared = readSchemes(schemes, "schemes") ?? commonSchemes(count, spareCount);
    return [
      ["Scheme", "Usable TB", "Usable TiB", "Efficiency", "Always survives", "At best survives", "Write cost"],
      ...compareSchemes(compared, count, readSize(driveSize, "driveSize"), spareCount).map((one) => [
        one.scheme.name,
        bytesIn(one.usable, terabyte),
        bytesIn(one.usable, tebibyte),
        one.efficiency,
        one.always,
        one.best,
        one.writeCost,
      ]),
    ];
  });
}

/**
 * Shows which drives form which group, then the spares, then the drives that fill no group.
 * @customfunction LAYOUT
 * @param scheme Redundancy scheme in quotes, such as "RAID 60 8+2".
 * @param drives Number of drives, spares included, such as 24.
 * @param [spares] Hot spare drives among them, such as 2. Left out: 0.
 * @returns Table of Group, First drive, Last drive, Data and Redundancy; in a Spread scheme the last two are drives of one stripe.
 */
export function layout(scheme: unknown, drives: unknown, spares?: unknown): unknown[][] {
  return answer("LAYOUT", () => {
    const laid = layoutDrives(readScheme(scheme, "scheme"), readDrives(drives, "drives"), readSpares(spares, "spares"));
    const names = { group: "", spread: "Spread", spares: "Spares", outside: "Outside a group" };
    return [
      ["Group", "First drive", "Last drive", "Data", "Redundancy"],
      ...layoutRows(laid).map((row) => [row.group ?? names[row.kind], row.firstDrive, row.lastDrive, row.data ?? "", row.redundancy ?? ""]),
    ];
  });
}

/**
 * Computes the usable capacity of drives of unequal sizes; the largest are the spares.
 * @customfunction MIXED
 * @param scheme Redundancy scheme in quotes, such as "RAID 6".
 * @param driveSizes Range with the size of every drive, such as A2:A13: TB as numbers, or text such as "960 GB".
 * @param [spares] Hot spare drives among them, such as 1. Left out: 0.
 * @param [reserve] Share of the usable space kept free, such as 10%. Left out: 0.
 * @param [unit] Unit of the answer, such as "TiB". Left out: "TB".
 * @returns Usable capacity in the unit asked for.
 */
export function mixed(scheme: unknown, driveSizes: unknown[][], spares?: unknown, reserve?: unknown, unit?: unknown): number {
  return answer("MIXED", () => {
    const sizes = readDriveSizes(driveSizes, "driveSizes");
    const kept = readShare(reserve, "reserve", { default: 0 });
    return bytesIn(usableOfMixed(readScheme(scheme, "scheme"), sizes, readSpares(spares, "spares"), kept), readUnit(unit, "unit"));
  });
}

/**
 * Finds the fewest drives, spares included, whose usable capacity reaches a target.
 * @customfunction DRIVESFOR
 * @param scheme Redundancy scheme in quotes, such as "RAID 6".
 * @param target Usable capacity wanted: TB as a number, such as 100, or text such as "100 TiB".
 * @param driveSize Size of one drive: TB as a number, such as 4, or text such as "960 GB".
 * @param [spares] Hot spare drives among them, such as 1. Left out: 0.
 * @param [reserve] Share of the usable space kept free, such as 10%. Left out: 0.
 * @param [fill] Share of the usable space that may be filled, such as 80%. Left out: 1.
 * @returns Number of drives.
 */
export function drivesfor(scheme: unknown, target: unknown, driveSize: unknown, spares?: unknown, reserve?: unknown, fill?: unknown): number {
  return answer("DRIVESFOR", () =>
    drivesFor(readScheme(scheme, "scheme"), {
      target: readSize(target, "target"),
      driveSize: readSize(driveSize, "driveSize"),
      spares: readSpares(spares, "spares"),
      reserve: readShare(reserve, "reserve", { default: 0 }),
      fill: readFill(fill, "fill"),
    }),
  );
}

/**
 * Computes the usable share of raw capacity, drives that fill no group counted.
 * @customfunction EFFICIENCY
 * @param scheme Redundancy scheme in quotes, such as "8+2".
 * @param [drives] Number of drives, such as 12; schemes of one group, such as "RAID 6", need it.
 * @returns Share from 0 to 1.
 */
export function efficiency(scheme: unknown, drives?: unknown): number {
  return answer("EFFICIENCY", () => schemeEfficiency(readScheme(scheme, "scheme"), readDrivesOrNone(drives, "drives")));
}

/**
 * Counts the drive failures that are survived at once.
 * @customfunction SURVIVES
 * @param scheme Redundancy scheme in quotes, such as "RAID 60 8+2".
 * @param drives Number of drives, without spares, such as 20.
 * @param [failureCase] "always" whichever drives fail, or "best" where they fall best. Left out: "always".
 * @returns Number of drives.
 */
export function survives(scheme: unknown, drives: unknown, failureCase?: unknown): number {
  return answer("SURVIVES", () =>
    survivedFailures(
      layoutDrives(readScheme(scheme, "scheme"), readDrives(drives, "drives")),
      readChoice(failureCase, "failureCase", ["always", "best"] as const),
    ),
  );
}

/**
 * Converts a size to a unit.
 * @customfunction SIZE
 * @param size Size: TB as a number, such as 4, or text such as "3.5 TiB".
 * @param [unit] Unit of the answer, such as "TiB". Left out: "TB".
 * @returns Size in the unit asked for.
 */
export function size(size: unknown, unit?: unknown): number {
  return answer("SIZE", () => bytesIn(readSize(size, "size"), readUnit(unit, "unit")));
}

/**
 * Computes the exact bytes of a disk drive from the size it is sold as, by the published block counts.
 * @customfunction DRIVEBYTES
 * @param size Size it is sold as, whole GB: TB as a number, such as 4, or text such as "500 GB".
 * @param [sector] Bytes of a block, 512 or 4096. Left out: 512.
 * @returns Bytes.
 */
export function drivebytes(size: unknown, sector?: unknown): number {
  return answer("DRIVEBYTES", () => Number(driveBytes(readSize(size, "size"), readChoice(sector, "sector", sectorSizes))));
}

/**
 * Computes the logical capacity after data reduction.
 * @customfunction EFFECTIVE
 * @param usable Usable capacity: TB as a number, such as 40, or text such as "40 TiB".
 * @param reduction Data reduction, 1 or more, such as 3 or "3:1".
 * @param [fill] Share of the usable space that may be filled, such as 80%. Left out: 1.
 * @returns Logical capacity in TB.
 */
export function effective(usable: unknown, reduction: unknown, fill?: unknown): number {
  return answer("EFFECTIVE", () =>
    bytesIn(effectiveBytes(readSize(usable, "usable"), readReduction(reduction, "reduction"), readFill(fill, "fill")), terabyte),
  );
}

/**
 * Computes what will be used after years of compound growth.
 * @customfunction DEMAND
 * @param used Used today: TB as a number, such as 30, or text such as "30 TiB".
 * @param yearlyGrowth Growth a year, such as 20% or 0.2.
 * @param years Years from today, such as 3, or a range of them.
 * @returns Demand in TB; for a range of years, one answer for each.
 */
export function demand(used: unknown, yearlyGrowth: unknown, years: unknown): unknown {
  return answer("DEMAND", () => {
    const growth = { used: readSizeOrZero(used, "used"), yearlyGrowth: readGrowth(yearlyGrowth, "yearlyGrowth") };
    return answerYears(years, "years", "Demand TB", (after) => demandTerabytes(growth, after).toNumber());
  });
}

/**
 * Computes the years until a growing demand fills a capacity; 0 when it is full already.
 * @customfunction RUNWAY
 * @param used Used today: TB as a number, such as 30, or text such as "30 TiB".
 * @param yearlyGrowth Growth a year, such as 20% or 0.2.
 * @param capacity Usable capacity: TB as a number, such as 80, or text such as "80 TiB".
 * @param [fill] Share of the capacity that may be filled, such as 80%. Left out: 1.
 * @returns Years.
 */
export function runway(used: unknown, yearlyGrowth: unknown, capacity: unknown, fill?: unknown): number {
  return answer("RUNWAY", () => {
    const growth = { used: readSizeOrZero(used, "used"), yearlyGrowth: readGrowth(yearlyGrowth, "yearlyGrowth") };
    return yearsUntilFull(growth, readSize(capacity, "capacity"), readFill(fill, "fill"));
  });
}

/**
 * Plans year by year how many steps of capacity to buy so that demand stays within the fill share.
 * @customfunction EXPANSION
 * @param used Used today: TB as a number, such as 30, or text such as "30 TiB".
 * @param yearlyGrowth Growth a year, such as 20% or 0.2.
 * @param capacity Usable capacity today: TB as a number, such as 40, or text such as "40 TiB".
 * @param step Usable capacity bought at a time: TB as a number, such as 10, or text such as "10 TiB".
 * @param years Years to plan, such as 5.
 * @param [fill] Share of the capacity that may be filled, such as 80%. Left out: 1.
 * @returns Table of Year, Demand TB, Capacity TB, Steps bought and Fill, each at the end of the year.
 */
export function expansion(
  used: unknown,
  yearlyGrowth: unknown,
  capacity: unknown,
  step: unknown,
  years: unknown,
  fill?: unknown,
): unknown[][] {
  return answer("EXPANSION", () => {
    const growth = { used: readSizeOrZero(used, "used"), yearlyGrowth: readGrowth(yearlyGrowth, "yearlyGrowth") };
    const count = readCount(years, "years", { min: 1, max: 100, example: 5 });
    const plan = planExpansion(growth, readSize(capacity, "capacity"), readSize(step, "step"), count, readFill(fill, "fill"));
    return [
      ["Year", "Demand TB", "Capacity TB", "Steps bought", "Fill"],
      ...plan.map((year) => [year.year, year.demandTerabytes, year.capacityTerabytes, year.stepsBought, year.fill]),
    ];
  });
}

/**
 * Tells whether an array can be taken out of its pool: what must move, and what room the others have.
 * @customfunction POOLROOM
 * @param members Range of array name, usable and used, such as A2:C5; sizes in TB or text with a unit.
 * @param remove Name of the array to take out, such as "North 1".
 * @param [fill] Share of each array that may be filled, such as 80%. Left out: 1.
 * @returns Table of Can be removed, Must move TB, Free room TB and Fill afterwards.
 */
export function poolroom(members: unknown[][], remove: unknown, fill?: unknown): unknown[][] {
  return answer("POOLROOM", () => {
    const room = roomWithout(readPoolMembers(members, "members"), readName(remove, "remove"), readFill(fill, "fill"));
    return [
      ["Can be removed", "Must move TB", "Free room TB", "Fill afterwards"],
      [room.removable, bytesIn(room.moving, terabyte), bytesIn(room.room, terabyte), room.fillAfterwards],
    ];
  });
}
