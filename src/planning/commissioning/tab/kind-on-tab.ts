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
  /** What the row shows under Expected. */
  readonly expected: string;
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

/** Says yes where a test holds, else no. */
function yesWhere(test: string): string {
  return `IF(${test},"yes","no")`;
}

/** Takes the spaces out of a cell, those that do not break too: what is left is the same in every spreadsheet program, which TRIM does not promise. */
export function bare(cell: string): string {
  return `SUBSTITUTE(SUBSTITUTE(${cell}," ",""),"\u00a0","")`;
}

function isWithin(value: string, { low, high }: ComparedCells): string {
  return `AND(${value}>=${low},${value}<=${high})`;
}

function compareTick({ found }: ComparedCells): string {
  return `IF(ISLOGICAL(${found}),IF(${found},"yes","no"),IF(OR(${found}="Yes",${found}="TRUE",${found}="X"),"yes","no"))`;
}

/** A text that differs in its spaces alone is for one to look at, and so is a number that has the digits of a text: programs differ in whether the two are equal. */
function compareText({ found, low, isFree }: ComparedCells): string {
  return isFree ? '"yes"' : `IF(AND(ISTEXT(${found}),${found}=${low}),"yes",IF(${isSame(bare(found), bare(low))},"eye","no"))`;
}

/** Tells whether a cell holds a real number: to some programs a tick is one too. */
export function isNumber(cell: string): string {
  return `AND(ISNUMBER(${cell}),NOT(ISLOGICAL(${cell})))`;
}

/** Compares a real number; digits typed as text are read otherwise by every program, so that they pass only as they are expected, letter by letter. */
function numberElseText({ found, expected }: ComparedCells, test: string): string {
  return `IF(${isNumber(found)},${test},IF(AND(ISTEXT(${found}),${found}=${expected}),"yes","eye"))`;
}

function compareNumber(cells: ComparedCells): string {
  return numberElseText(cells, cells.isFree ? '"yes"' : yesWhere(isWithin(cells.found, cells)));
}

function compareSize(cells: ComparedCells): string {
  const { found, unit, isFree } = cells;
  const bytes = `ROUND(${found}*IF(${unit}="TB",${seenUnits.TB},IF(${unit}="TiB",${seenUnits.TiB},${seenUnits.bytes})),0)`;
  const isKnown = `OR(${Object.keys(seenUnits).map((name) => `${unit}="${name}"`).join(",")})`;
  return `IF(${isKnown},IF(${isNumber(found)},${yesWhere(isFree ? `${bytes}>=0` : isWithin(bytes, cells))},"eye"),"eye")`;
}

function compareDate(cells: ComparedCells): string {
  const { found, isFree } = cells;
  return numberElseText(cells, yesWhere(isFree ? `${found}>0` : isWithin(`INT(${found})`, cells)));
}

/** Tells whether two texts that formulas made are one, whatever their capitals: between such texts = may read a wildcard. */
export function isSame(one: string, other: string): string {
  return `EXACT(LOWER(${one}),LOWER(${other}))`;
}

/** Tells whether a text holds a part, which FIND does not answer alike where the text holds a wildcard. */
function holds(text: string, part: string): string {
  return `LEN(SUBSTITUTE(${text},"${part}",""))<LEN(${text})`;
}

/**
 * Compares an address that is spelt canonically (RFC 5952) or in full; another one differs, unless it is spelt otherwise: with spaces, a leading
 * zero in a group, or with zero groups that the canonical form would shorten. Those are left to the eye.
 */
function compareAddress({ found, low, high, isFree }: ComparedCells): string {
  if (isFree) return '"yes"';
  // Every group stands between colons of its own, and a group of one zero becomes z: what still begins with 0 has a leading zero.
  const groups = `SUBSTITUTE(SUBSTITUTE(SUBSTITUTE(":"&${found}&":",".",":"),":","::"),":0:",":z:")`;
  const leadingZero = holds(groups, ":0");
  const longZeros = `AND(${holds(found, ":")},${holds(groups, ":z::z:")})`;
  const isShort = `LEN(${found})<>39`;
  const isSpaced = `${isSame(bare(found), low)},${isSame(bare(found), high)}`;
  return `IF(OR(${found}=${low},${found}=${high}),"yes",IF(OR(${isSpaced},AND(${isShort},OR(${leadingZero},${longZeros}))),"eye","no"))`;
}
