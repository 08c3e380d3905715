// Capacity: how much of the raw space is usable, and when it will be full.
import { breakDown, commonSchemes, compareSchemes, layoutDrives, usableBytes } from "../planning/capacity";
import { bytesIn, partOf, tebibyte, terabyte, type Bytes } from "../planning/quantity";
import { answer } from "./support/answer";
import { readDrives, readScheme, readShare, readSize, readSpares, readUnit } from "./support/quantities";
import { readSchemes } from "./support/schemes";

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
