import { invalid, quote } from "../text";
import type { Bytes } from "./brands";
import { Decimal } from "./exact";
import type { Scalar } from "../../sheet";

/** A unit of size: SI (kB = 10^3 bytes ... EB = 10^18) or binary (KiB = 2^10 bytes ... EiB = 2^60), IEC 80000-13. */
export interface SizeUnit {
  readonly symbol: string;
  readonly bytes: bigint;
  readonly base: 2 | 10;
  /** Power of the base: a TB is 10^12 bytes, a TiB 2^40. */
  readonly exponent: number;
}

const units: readonly SizeUnit[] = [
  { symbol: "B", bytes: 1n, base: 10, exponent: 0 },
  ...["kB", "MB", "GB", "TB", "PB", "EB"].map((symbol, index) => unitOf(symbol, 10, 3 * (index + 1))),
  ...["KiB", "MiB", "GiB", "TiB", "PiB", "EiB"].map((symbol, index) => unitOf(symbol, 2, 10 * (index + 1))),
];
const unitByName = new Map(units.map((unit) => [unit.symbol.toLowerCase(), unit]));

/** Every unit as it is written. */
export const unitNames: readonly string[] = units.map(({ symbol }) => symbol);

export const terabyte = unitByName.get("tb")!;
export const tebibyte = unitByName.get("tib")!;
export const gigabyte = unitByName.get("gb")!;
export const megabyte = unitByName.get("mb")!;

/**
 * Reads the name of a unit, in any case; a blank is TB.
 *
 * A correctly written prefix before a small b ("Tb", "Gb", "kb") means bits and is refused.
 */
export function parseUnit(value: Scalar, argument: string): SizeUnit {
  if (value === null) return terabyte;
  if (typeof value !== "string") throw invalid(argument, value, `${argument} is ${quote(value)}. Write a unit in quotes, such as "TB" or "TiB".`);
  return unitNamed(value, argument, value);
}

/** Finds the unit called `name`; `received` is what the sentence quotes when there is none. */
export function unitNamed(name: string, argument: string, received: string): SizeUnit {
  if (/^([KMGTPE]i?|k)?b$|bits?$/.test(name)) {
    throw invalid(argument, received, `${argument} ${quote(received)} is in bits. Write it in bytes, with a capital B.`);
  }
  const unit = unitByName.get(name.toLowerCase());
  if (unit !== undefined) return unit;
  throw invalid(argument, received, `${argument} ${quote(received)} names no known unit. Write one of B, kB, MB, GB, TB, PB, EB, KiB, MiB, GiB, TiB, PiB, EiB.`);
}

/** Gives a size as a number of `unit`: the double nearest to the exact value. */
export function bytesIn(size: Bytes, unit: SizeUnit): number {
  // Each way rounds once: a quotient of two exact doubles (10^18 is one), a decimal text, or a whole number halved `exponent` times.
  if (size < 9007199254740992n) return Number(size) / Number(unit.bytes);
  return unit.base === 10 ? Number(`${size}e-${unit.exponent}`) : Number(size) / 2 ** unit.exponent;
}

/** Gives a size as an exact number of `unit`. */
export function sizeIn(size: Bytes, unit: SizeUnit): Decimal {
  return new Decimal(size.toString()).div(unit.bytes.toString());
}

/** Gives `part` as a share of `whole`. */
export function partOf(part: Bytes, whole: Bytes): number {
  return new Decimal(part.toString()).div(whole.toString()).toNumber();
}

function unitOf(symbol: string, base: 2 | 10, exponent: number): SizeUnit {
  return Object.freeze({ symbol, base, exponent, bytes: BigInt(base) ** BigInt(exponent) });
}
