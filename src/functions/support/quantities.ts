import { mostDrives, parseReduction, parseScheme, type Scheme } from "../../planning/capacity";
import {
  hours,
  megabytesPerSecond,
  parseGrowth,
  parseShare,
  parseSize,
  parseSizeOrZero,
  parseUnit,
  type Bytes,
  type Fraction,
  type Hours,
  type MegabytesPerSecond,
  type Share,
  type ShareRule,
  type SizeUnit,
} from "../../planning/quantity";
import { readScalar } from "./cells";
import { readCount, readNumber } from "./numbers";

/** Reads a redundancy scheme, such as "RAID 6". */
export function readScheme(received: unknown, argument: string): Scheme {
  return parseScheme(readScalar(received, argument), argument);
}

/** Reads a size above 0: a number of TB, or text with a unit. */
export function readSize(received: unknown, argument: string): Bytes {
  return parseSize(readScalar(received, argument), argument);
}

/** Reads a size that may be 0, such as what is used so far. A blank is refused. */
export function readSizeOrZero(received: unknown, argument: string): Bytes {
  return parseSizeOrZero(readScalar(received, argument), argument);
}

/** Reads the unit of an answer; a blank means TB. */
export function readUnit(received: unknown, argument: string): SizeUnit {
  return parseUnit(readScalar(received, argument), argument);
}

/** Reads a share of a whole, 0 to 1 or text such as "20%". */
export function readShare(received: unknown, argument: string, rule: ShareRule = {}): Share {
  return parseShare(readScalar(received, argument), argument, rule);
}

/** Reads the share of a capacity that may be filled: above 0, a blank means all of it. */
export function readFill(received: unknown, argument: string): Share {
  return readShare(received, argument, { aboveZero: true, default: 1 });
}

/** Reads a yearly growth: 0.2 or "20%". */
export function readGrowth(received: unknown, argument: string): number {
  return parseGrowth(readScalar(received, argument), argument);
}

// Rules that many cells are read by stand here once, not in every call.
const drivesRule = { min: 1, max: mostDrives, whole: true, example: 12 } as const;
const sparesRule = { min: 0, max: mostDrives, whole: true, default: 0, example: 1 } as const;

/** Reads a number of drives. */
export function readDrives(received: unknown, argument: string): number {
  return readNumber(received, argument, drivesRule);
}

/** Reads a number of spare drives; a blank means none. */
export function readSpares(received: unknown, argument: string): number {
  return readNumber(received, argument, sparesRule);
}

/** Reads a number of drives that may be left out; a blank and 0 are null. */
export function readDrivesOrNone(received: unknown, argument: string): number | null {
  return readCount(received, argument, { min: 0, max: mostDrives, default: 0, example: 12 }) || null;
}

/** Reads a data reduction: 3 or "3:1". */
export function readReduction(received: unknown, argument: string): Fraction {
  return parseReduction(readScalar(received, argument), argument);
}

/** Reads a data rate in MB/s, above 0. */
export function readDataRate(received: unknown, argument: string): MegabytesPerSecond {
  return megabytesPerSecond(readNumber(received, argument, { above: 0, max: 1e9, example: 150 }));
}

/** Reads a mean time to failure in hours. */
export function readMttf(received: unknown, argument: string): Hours {
  return hours(readNumber(received, argument, { min: 1, max: 1e12, example: 1_200_000 }));
}

/** Reads the hours that one repair takes. */
export function readRepairHours(received: unknown, argument: string): Hours {
  return hours(readNumber(received, argument, { min: 0.001, max: 1e6, example: 24 }));
}

/** Reads the chance that one bit cannot be read, such as 1e-15. A blank means `blank`, or is refused where there is none. */
export function readBitErrorRate(received: unknown, argument: string, blank?: number): number {
  return readNumber(received, argument, { min: 0, max: 1, default: blank, example: 1e-15 });
}
