import { mostDrives, parseReduction, parseScheme, type Scheme } from "../../planning/capacity";
import {
  hours,
  megabytesPerSecond,
  parseProportion,
  parseShare,
  parseSize,
  parseSizeOrZero,
  parseUnit,
  unitNames,
  type Bytes,
  type Fraction,
  type Hours,
  type MegabytesPerSecond,
  type NumberRule,
  type Share,
  type ShareRule,
  type SizeUnit,
} from "../../planning/quantity";
import { count, number } from "./numbers";
import { asTyped, mapped, type Offer, type Reader } from "./reader";
import { readScalar } from "./scalar";

/** One scheme of each kind, to begin from. */
const schemeOffers: readonly Offer[] = [
  { value: "none", meaning: "Striping: one failed drive loses data." },
  { value: "RAID 1", meaning: "Mirror: two or three drives hold the same." },
  { value: "RAID 10", meaning: "Mirrored pairs, striped." },
  { value: "3 copies", meaning: "Three copies, spread over all drives." },
  { value: "RAID 5", meaning: "One group with one parity: survives one failed drive." },
  { value: "RAID 6", meaning: "One group with two parities: survives any two failed drives." },
  { value: "triple parity", meaning: "One group with three parities: survives any three failed drives." },
  { value: "RAID 50 4+1", meaning: "Groups of 4 data and 1 parity drive; write your own shape." },
  { value: "RAID 60 8+2", meaning: "Groups of 8 data and 2 parity drives; write your own shape." },
  { value: "8+2", meaning: "Erasure code of 8 data and 2 redundant pieces, spread over all drives; write your own shape." },
];

/** Reads a redundancy scheme, such as "RAID 6". */
export const scheme: Reader<Scheme> = { read: (received, place) => parseScheme(readScalar(received, place), place), offers: schemeOffers };

/** Reads a size above 0: a number of TB, or text with a unit. */
export const size: Reader<Bytes> = { read: (received, place) => parseSize(readScalar(received, place), place) };

/** Reads a size that may be 0, such as what is used so far. A blank is refused. */
export const sizeOrZero: Reader<Bytes> = { read: (received, place) => parseSizeOrZero(readScalar(received, place), place) };

/** Reads the unit of an answer; a blank means TB. */
export const unit: Reader<SizeUnit> = { read: (received, place) => parseUnit(readScalar(received, place), place), example: '"TiB"', default: '"TB"', offers: unitNames.map((value) => ({ value })) };

/** Reads a share of a whole, 0 to 1 or text such as "20%". */
export function share(rule: ShareRule & { readonly example: string }): Reader<Share> {
  return {
    read: (received, place) => parseShare(readScalar(received, place), place, rule),
    example: rule.example,
    ...(rule.default === undefined ? {} : { default: asTyped(rule.default) }),
  };
}

/** Reads a number that people also write as a percentage, such as a growth. */
export function proportion(rule: NumberRule, example: string): Reader<number> {
  return { read: (received, place) => parseProportion(readScalar(received, place), place, rule), example };
}

/** Reads a number of drives. */
export const driveCount = (example: number): Reader<number> => count({ min: 1, max: mostDrives, example });

/** Reads a number of drives that may be left out; a blank and 0 are null. */
export const driveCountOrNone = (example: number): Reader<number | null> =>
  mapped(count({ min: 0, max: mostDrives, default: 0, example }), (drives) => drives || null);

/** Reads a number of spare drives; a blank means none. */
export const spareCount = (example: number): Reader<number> => count({ min: 0, max: mostDrives, default: 0, example });

/** Reads a data reduction: 3 or "3:1". */
export const reduction: Reader<Fraction> = { read: (received, place) => parseReduction(readScalar(received, place), place) };

/** Reads a data rate in MB/s, above 0. */
export const dataRate = (example: number): Reader<MegabytesPerSecond> => mapped(number({ above: 0, max: 1e9, example }), megabytesPerSecond);

/** Reads a mean time to failure in hours. */
export const meanTimeToFailure: Reader<Hours> = mapped(number({ min: 1, max: 1e12, example: 1_200_000 }), hours);

/** Reads the hours that one repair takes. */
export const repairTime: Reader<Hours> = mapped(number({ min: 1e-6, max: 1e6, example: 24 }), hours);
