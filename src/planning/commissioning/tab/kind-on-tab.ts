import type { Validation } from "../../../sheet";
import type { RecordKind } from "../../plan/schema";
import { seenUnits } from "../procedure";
import { results } from "../record";
import type { TabStyle } from "./tab-styles";

/** What may be typed into a cell, wherever it stands. */
export type EntryRule = Omit<Validation, "area">;

/** Cells, as formulas name them, in which a comparison looks. */
export interface ComparedCells {
  /** What was found: the cell Found, or the retest that a snag hands over. */
  readonly found: string;
  readonly unit: string;
  readonly low: string;
  readonly high: string;
  /** True where anything of the kind will do. */
  readonly isFree: boolean;
}

/** What the tab needs to know of a kind of record. */
interface KindOnTab {
  readonly foundStyle: TabStyle;
  /** Says what may be typed into Found; null where anything may. */
  readonly entryRule: (choices: readonly string[]) => EntryRule | null;
  /** True where people say in which unit they saw it. */
  readonly hasSeenUnit: boolean;
  /** Writes the formula part that says "yes", "no" or, where a person must look, "eye". */
  readonly comparison: (cells: ComparedCells) => string;
}

/** What may be typed in place of a record. */
const insteadOfRecord = [results.notApplicable, results.waived] as const;
const orInstead = `${results.notApplicable} or ${results.waived}`;

/** Most characters that a sheet takes in a list of choices. */
const longestList = 255;

function listRule(choices: readonly string[]): EntryRule | null {
  const items = [...choices, ...insteadOfRecord];
  return items.join(",").length > longestList ? null : { rule: { kind: "list", items }, message: "Choose one of the list.", strict: true };
}

const numberRule = (): EntryRule => ({ rule: { kind: "number" }, message: `Type a number, or ${orInstead}.`, strict: false });
const dateRule = (): EntryRule => ({ rule: { kind: "date" }, message: `Type a date, such as 2026-05-31, or ${orInstead}.`, strict: false });

const inText = { foundStyle: "typedText", entryRule: () => null, hasSeenUnit: false } as const;
const inNumber = { foundStyle: "typedNumber", entryRule: numberRule, hasSeenUnit: false } as const;

/** Every kind of record on the tab. */
export const kindsOnTab: Readonly<Record<RecordKind, KindOnTab>> = {
  tick: { ...inText, entryRule: () => listRule(["Yes", "No"]), comparison: compareTick },
  text: { ...inText, comparison: compareText },
  number: { ...inNumber, comparison: compareNumber },
  size: { ...inNumber, hasSeenUnit: true, comparison: compareSize },
  address: { ...inText, comparison: compareAddress },
  serial: { ...inText, comparison: compareText },
  date: { ...inText, foundStyle: "typedDate", entryRule: dateRule, comparison: compareDate },
  choice: { ...inText, entryRule: listRule, comparison: compareText },
};

/** Says yes where a test holds, and no where it does not or cannot be answered. */
function yesWhere(test: string): string {
  return `IFERROR(IF(${test},"yes","no"),"no")`;
}

function isWithin(value: string, { low, high }: ComparedCells): string {
  return `AND(${value}>=${low},${value}<=${high})`;
}

function compareTick({ found }: ComparedCells): string {
  return `IF(OR(UPPER(${found})="YES",UPPER(${found})="TRUE",UPPER(${found})="X"),"yes","no")`;
}

function compareText({ found, low, isFree }: ComparedCells): string {
  return isFree ? '"yes"' : `IF(UPPER(TRIM(${found}))=${low},"yes","no")`;
}

function compareNumber(cells: ComparedCells): string {
  const value = `VALUE(${cells.found})`;
  return yesWhere(cells.isFree ? `ISNUMBER(${value})` : isWithin(value, cells));
}

function compareSize(cells: ComparedCells): string {
  const { found, unit, isFree } = cells;
  const bytes = `ROUND(VALUE(${found})*IF(${unit}="TB",${seenUnits.TB},IF(${unit}="TiB",${seenUnits.TiB},${seenUnits.bytes})),0)`;
  const isKnown = `OR(${Object.keys(seenUnits).map((name) => `${unit}="${name}"`).join(",")})`;
  return `IF(${isKnown},${yesWhere(isFree ? `${bytes}>=0` : isWithin(bytes, cells))},"eye")`;
}

function compareDate(cells: ComparedCells): string {
  const value = `VALUE(${cells.found})`;
  return yesWhere(cells.isFree ? `${value}>0` : isWithin(`INT(${value})`, cells));
}

/**
 * Compares an address that is spelt canonically (RFC 5952) or in full; another one differs, unless it is spelt otherwise: with a leading
 * zero in a group, or with zero groups that the canonical form would shorten. Those are left to the eye.
 */
function compareAddress({ found, low, high, isFree }: ComparedCells): string {
  if (isFree) return '"yes"';
  const typed = `LOWER(TRIM(${found}))`;
  // Every group stands between colons of its own, and a group of one zero becomes z: what still begins with 0 has a leading zero.
  const groups = `SUBSTITUTE(SUBSTITUTE(SUBSTITUTE(":"&${typed}&":",".",":"),":","::"),":0:",":z:")`;
  const leadingZero = `ISNUMBER(FIND(":0",${groups}))`;
  const longZeros = `AND(ISNUMBER(FIND(":",${typed})),ISNUMBER(FIND(":z::z:",${groups})))`;
  const isShort = `LEN(${typed})<>39`;
  return `IF(OR(${typed}=${low},${typed}=${high}),"yes",IF(AND(${isShort},OR(${leadingZero},${longZeros})),"eye","no"))`;
}
