import type { Scalar } from "../../sheet";
import { foldName, invalid, quote } from "../text";
import { memoise } from "../quantity";

/**
 * How a scheme lies on the drives.
 *
 * - `one-group`: every drive belongs to one group, however many there are;
 * - `fixed-groups`: groups of a fixed number of drives, what fills no group is left outside;
 * - `spread`: every stripe takes some of the drives, and all drives take part.
 */
export type Grouping = "one-group" | "fixed-groups" | "spread";

/** A redundancy scheme, not yet laid on a number of drives. */
export interface Scheme {
  /** Canonical text, such as `RAID 6 8+2`. */
  readonly name: string;
  readonly grouping: Grouping;
  /** Drives of data in a group or stripe; null: all that redundancy leaves. */
  readonly data: number | null;
  /** Drives of redundancy in a group or stripe; null: all but the one of data. */
  readonly redundancy: number | null;
  readonly leastDrives: number;
  readonly mostDrives: number;
  /** Redundancy is copies, not parity. */
  readonly mirrored: boolean;
}

/** Most drives that any calculation takes. */
export const mostDrives = 100_000;

/**
 * Reads a redundancy scheme; case and spaces do not matter.
 *
 * `none`, `RAID 0`; `RAID 1` (2 or 3 drives), `mirror` (2 to 4); `RAID 10`, `striped mirror`; `N copies`; `RAID 5`, `single parity`, `RAID 6`,
 * `double parity`, `triple parity`, each also in fixed groups with a shape (`RAID 60 8+2`); `8+2`, an erasure code spread over all
 * drives. `RAID-10`, `raid1+0` and `R6` are read as what they mean. Level names as in the SNIA Common RAID Disk Data Format. Refuses
 * RAID 50 and 60 without a shape, a shape whose second number is not the level's, fewer than two drives of data, and a number, which is
 * what an unquoted 8+2 arrives as.
 */
export function parseScheme(value: Scalar, argument: string): Scheme {
  if (typeof value === "string") return parseSchemeText(value, argument);
  if (value === null) throw invalid(argument, value, `${argument} is blank. Put the scheme in quotes, such as "RAID 6" or "8+2".`);
  throw invalid(argument, value, `${argument} is ${quote(value)}, not text. Put the scheme in quotes: "8+2".`);
}

const writeScheme = 'Write one such as "RAID 6", "RAID 60 8+2", "3 copies" or "8+2".';

const plainSchemes: Readonly<Record<string, Scheme>> = {
  raid0: oneGroup("RAID 0", null, 0, 1),
  none: oneGroup("none", null, 0, 1),
  raid1: { ...oneGroup("RAID 1", 1, null, 2), mostDrives: 3, mirrored: true },
  mirror: { ...oneGroup("mirror", 1, null, 2), mostDrives: 4, mirrored: true },
  raid10: { ...fixedGroups("RAID 10", 1, 1), leastDrives: 4, mirrored: true },
  stripedmirror: { ...fixedGroups("striped mirror", 1, 1), leastDrives: 4, mirrored: true },
  raid5: oneGroup("RAID 5", null, 1, 3),
  singleparity: oneGroup("single parity", null, 1, 3),
  raid6: oneGroup("RAID 6", null, 2, 4),
  doubleparity: oneGroup("double parity", null, 2, 4),
  tripleparity: oneGroup("triple parity", null, 3, 5),
};

const parityLevels: Readonly<Record<string, { readonly name: string; readonly redundancy: number }>> = {
  raid5: { name: "RAID 5", redundancy: 1 },
  raid50: { name: "RAID 50", redundancy: 1 },
  singleparity: { name: "single parity", redundancy: 1 },
  raid6: { name: "RAID 6", redundancy: 2 },
  raid60: { name: "RAID 60", redundancy: 2 },
  doubleparity: { name: "double parity", redundancy: 2 },
  tripleparity: { name: "triple parity", redundancy: 3 },
};

const parseSchemeText = memoise((text: string, argument): Scheme => {
  const spelt = plainSpelling(text);
  const compact = spelt.replace(/\s+/g, "");
  const plain = Object.hasOwn(plainSchemes, compact) ? plainSchemes[compact] : undefined;
  if (plain !== undefined) return Object.freeze(plain);

  // Read before spaces go: "RAID 5 10+1" is groups of 10+1, not the level 51.
  const shaped = /^(raid\s*[56]0(?=\s*\d)|raid\s*[56]|(?:single|double|triple)\s*parity)\s*(\d{1,4})\s*\+\s*(\d{1,4})$/.exec(spelt);
  if (shaped) return Object.freeze(shapedScheme(text, argument, shaped[1]!.replace(/\s+/g, ""), Number(shaped[2]), Number(shaped[3])));

  const code = /^(\d{1,4})\+(\d{1,4})$/.exec(compact);
  if (code) return Object.freeze(spreadCode(text, argument, Number(code[1]), Number(code[2])));

  const copies = /^(\d{1,4})copies$/.exec(compact);
  if (copies) return Object.freeze(spreadCopies(text, argument, Number(copies[1])));

  if (compact === "raid50") throw invalid(argument, text, `${argument} ${quote(text)} lacks its groups. Give the group shape, such as RAID 50 4+1.`);
  if (compact === "raid60") throw invalid(argument, text, `${argument} ${quote(text)} lacks its groups. Give the group shape, such as RAID 60 8+2.`);
  throw invalid(argument, text, `${argument} ${quote(text)} is not a scheme. ${writeScheme}`);
});

/** Spells a scheme as the table of schemes does: `RAID-10`, `raid1+0` and `R10` become `raid 10`, `double-parity` becomes `double parity`. */
function plainSpelling(text: string): string {
  return foldName(text)
    .replace(/^r(?:aid)?[\s-]*(?=\d)/, "raid ")
    .replace(/^(raid [156])\s*\+\s*0(?!\d)/, (_, level: string) => `${level}0`)
    .replace(/(?<=[a-z\d])-(?=[a-z])/g, " ");
}

function shapedScheme(text: string, argument: string, key: string, data: number, redundancy: number): Scheme {
  const level = parityLevels[key]!;
  if (redundancy !== level.redundancy) {
    const parity = `${level.redundancy} ${level.redundancy === 1 ? "drive" : "drives"}`;
    throw invalid(argument, text, `${argument} ${quote(text)}: ${level.name} has parity of ${parity} a group. Write the shape as data+${level.redundancy}, or another level.`);
  }
  refuseFewData(text, argument, data);
  return fixedGroups(`${level.name} ${data}+${redundancy}`, data, redundancy);
}

function spreadCode(text: string, argument: string, data: number, redundancy: number): Scheme {
  if (data === 1 && redundancy > 0) {
    const copies = `${redundancy + 1} copies`;
    throw invalid(argument, text, `${argument} ${quote(text)} is a mirror: ${copies} of all data. Write ${copies}.`, copies);
  }
  refuseFewData(text, argument, data);
  if (redundancy === 0) throw invalid(argument, text, `${argument} ${quote(text)} has no redundancy. Write none, or a code such as ${data}+2.`, "none");
  return spread(`${data}+${redundancy}`, data, redundancy, false);
}

function spreadCopies(text: string, argument: string, copies: number): Scheme {
  if (copies < 2) throw invalid(argument, text, `${argument} ${quote(text)} keeps no second copy. Give 2 copies or more, or none.`);
  return spread(`${copies} copies`, 1, copies - 1, true);
}

function refuseFewData(text: string, argument: string, data: number): void {
  if (data < 2) throw invalid(argument, text, `${argument} ${quote(text)} has too little data: 2 drives are the least. Give more, or RAID 10 or 2 copies for mirrored drives.`);
}

function oneGroup(name: string, data: number | null, redundancy: number | null, leastDrives: number): Scheme {
  return { name, grouping: "one-group", data, redundancy, leastDrives, mostDrives, mirrored: false };
}

function fixedGroups(name: string, data: number, redundancy: number): Scheme {
  return { name, grouping: "fixed-groups", data, redundancy, leastDrives: data + redundancy, mostDrives, mirrored: false };
}

function spread(name: string, data: number, redundancy: number, mirrored: boolean): Scheme {
  return { name, grouping: "spread", data, redundancy, leastDrives: data + redundancy, mostDrives, mirrored };
}
