import { invalid, quote } from "../text";
import { share, type Share } from "./brands";
import { readAs15Digits } from "./exact";
import { parseNumber, type CellValue, type NumberRule } from "./number";

/** Which shares are taken beside those between 0 and 1, and what a blank means. */
export interface ShareRule {
  /** What a blank means. A blank is refused where there is none. */
  readonly default?: number;
  /** Refuses 0, where nothing could follow from it. */
  readonly aboveZero?: boolean;
  /** Refuses 1. */
  readonly belowOne?: boolean;
}

/**
 * Reads a share of a whole, 0 to 1: a number such as 0.2, or text such as "20%".
 *
 * Refuses 20 with "Write 20% or 0.2", because a share and a percentage must never be mixed up.
 */
export function parseShare(value: CellValue, argument: string, rule: ShareRule = {}): Share {
  if (value === null && rule.default !== undefined) return share(rule.default);
  return share(parseProportion(value, argument, shareBounds(rule)));
}

const bounds: Readonly<Record<"whole" | "aboveZero" | "belowOne" | "between", NumberRule>> = {
  whole: { min: 0, max: 1, example: 0.2 },
  aboveZero: { above: 0, max: 1, example: 0.2 },
  belowOne: { min: 0, below: 1, example: 0.2 },
  between: { above: 0, below: 1, example: 0.2 },
};

function shareBounds({ aboveZero, belowOne }: ShareRule): NumberRule {
  if (aboveZero === true) return belowOne === true ? bounds.between : bounds.aboveZero;
  return belowOne === true ? bounds.belowOne : bounds.whole;
}

/** Reads a yearly growth, above -100 % and at most 500 %: a number such as 0.2, or text such as "20%". */
export function parseGrowth(value: CellValue, argument: string): number {
  return parseProportion(value, argument, { above: -1, max: 5, example: 0.2 });
}

/**
 * Reads a number that people also write as a percentage, under `rule`.
 *
 * What is too large as it stands, but would do as a percentage, is refused with both ways of writing it.
 */
export function parseProportion(value: CellValue, argument: string, rule: NumberRule): number {
  const read = typeof value === "string" ? parsePercentage(value, argument, rule.example) : value;
  const most = rule.below ?? rule.max ?? Infinity;
  if (typeof read === "number" && typeof value === "number" && read > most && read / 100 <= most) {
    const shown = readAs15Digits(read);
    throw invalid(argument, value, `${argument} is ${shown}, which means ${readAs15Digits(shown * 100)}%. Write ${shown}% or ${readAs15Digits(shown / 100)}.`);
  }
  return parseNumber(read, argument, rule, value);
}

function parsePercentage(text: string, argument: string, example: number): number {
  const written = /^([+-]?)(\d{0,20}(?:\.\d{0,20})?)\s*%$/.exec(text);
  const digits = written?.[2] ?? "";
  if (/\d/.test(digits)) return readAs15Digits(Number(`${written?.[1] ?? ""}${digits}e-2`));
  const comma = /^(\d+),(\d+)\s*%$/.exec(text);
  if (comma) throw invalid(argument, text, `${argument} ${quote(text)} has a comma. Write ${comma[1]!}.${comma[2]!}%.`);
  throw invalid(argument, text, `${argument} ${quote(text)} is not a share. Write a number such as ${example}, or a percentage such as ${example * 100}%.`);
}
