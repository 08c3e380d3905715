import type { Scalar } from "../../sheet";
import { explainComma, invalid, isNumberText, quote, type Problem } from "../text";
import { readAs15Digits } from "./exact";

/** Less than this is nothing, where 0 is refused: the counterpart of 1e15, so that no quotient can overflow. */
const leastAboveZero = 1e-15;

/** What a number must be. One of `min` (0 allowed, say) or `above` (0 refused, say) is always there: nothing is unbounded below. */
export type NumberRule = ({ readonly min: number; readonly above?: undefined } | { readonly above: number; readonly min?: undefined }) & {
  /** Largest value allowed; 1e15 where it is left out, so that no result can overflow. */
  readonly max?: number;
  /** First value that is too large. */
  readonly below?: number;
  readonly whole?: boolean;
  /** What a blank means. A blank is refused where there is none. */
  readonly default?: number;
  /** What a person would write, such as 450. */
  readonly example: number;
};

/**
 * Reads one cell as a number, at 15 significant digits.
 *
 * Text is refused even where it looks like a number, because a sheet would not add it up either. `received` is what the sentence
 * quotes where the caller has already made a number of it, such as "20%".
 */
export function parseNumber(value: Scalar, argument: string, rule: NumberRule, received: Scalar = value): number {
  if (value === null && rule.default !== undefined) return rule.default;
  if (typeof value !== "number") throw notANumber(value, argument, rule);
  const read = readAs15Digits(value);
  if (rule.above === 0 && read > 0 && read < leastAboveZero) {
    throw invalid(argument, received, `${argument} is ${quote(received)}, which is nearly 0. Write ${describeRule(rule)}, such as ${rule.example}.`);
  }
  if (!fits(read, rule)) throw invalid(argument, received, `${argument} is ${quote(received)}. Write ${describeRule(rule)}, such as ${rule.example}.`);
  return read;
}

/** Says what a rule allows: "a whole number from 1 to 100000". */
export function describeRule(rule: NumberRule): string {
  const noun = rule.whole === true ? "a whole number" : "a number";
  const low = rule.min ?? rule.above;
  const exclusive = rule.above !== undefined;
  if (rule.below !== undefined) return exclusive ? `${noun} above ${low} and below ${rule.below}` : `${noun} from ${low} to below ${rule.below}`;
  const high = rule.max ?? 1e15;
  return exclusive ? `${noun} above ${low} and at most ${high}` : `${noun} from ${low} to ${high}`;
}

/** Tells whether a number keeps to a rule. */
export function fits(value: number, rule: NumberRule): boolean {
  const highEnough = rule.min !== undefined ? value >= rule.min : value > rule.above;
  const lowEnough = rule.below === undefined ? value <= (rule.max ?? 1e15) : value < rule.below;
  return highEnough && lowEnough && (rule.whole !== true || Number.isInteger(value));
}

function notANumber(value: Exclude<Scalar, number>, argument: string, rule: NumberRule): Problem {
  const write = `Write ${describeRule(rule)}, such as ${rule.example}.`;
  if (value === null) return invalid(argument, value, `${argument} is blank. ${write}`);
  if (typeof value === "boolean") return invalid(argument, value, `${argument} is ${quote(value)}. ${write}`);
  if (isNumberText(value) && fits(readAs15Digits(Number(value)), rule)) {
    return invalid(argument, value, `${argument} is the text ${quote(value)}. Write it as a number, without quotes.`, Number(value));
  }
  const comma = explainComma(value, argument, (proposal) => parseNumber(proposal, argument, rule));
  return comma ?? invalid(argument, value, `${argument} is the text ${quote(value)}. ${write}`);
}
