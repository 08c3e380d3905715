import { explainComma, invalid, isPlainNumber, quote, type Problem } from "../text";
import { bytes, type Bytes } from "./brands";
import { divideToNearest, exactFraction } from "./exact";
import { memoise } from "./memoise";
import type { Scalar } from "../../sheet";
import { terabyte, unitNamed } from "./size-unit";

/** A million EB: past it a size is a slip of the keyboard. */
const largest = 10n ** 24n;

/**
 * Reads a size: a number is TB, text carries a unit ("960 GB", "3.84TB", "12 TiB"; any case, with or without a space).
 *
 * The result is whole bytes, the nearest to what was written. Refuses a blank, 0 (see `parseSizeOrZero`), a negative size, one over
 * 10^24 bytes, bits ("4 Tb"), a decimal comma, and text without a unit.
 */
export function parseSize(value: Scalar, argument: string): Bytes {
  const size = parseSizeOrZero(value, argument);
  if (size === 0n) throw invalid(argument, value, `${argument} ${quote(value)} is less than one byte. ${writeSize}`);
  return size;
}

/** Reads a size as `parseSize` does, but takes 0 for an answer, where 0 says something: nothing used yet. */
export function parseSizeOrZero(value: Scalar, argument: string): Bytes {
  if (value === null) throw invalid(argument, value, `${argument} is blank. ${writeSize}`);
  if (typeof value === "string") return parseSizeText(value, argument);
  if (typeof value === "boolean") throw invalid(argument, value, `${argument} is ${quote(value)}. ${writeSize}`);
  return parseTerabytes(value, argument);
}

const writeSize = 'Write TB as a number, such as 4, or text with a unit, such as "960 GB".';

const parseTerabytes = memoise((value: number, argument): Bytes => {
  if (value < 0) throw invalid(argument, value, `${argument} is ${value}, below zero. ${writeSize}`);
  if (value > 1e15) throw tooLarge(value, argument);
  const { numerator, denominator } = exactFraction(value);
  return checked(numerator * terabyte.bytes, denominator, value, argument);
});

const parseSizeText = memoise((text: string, argument): Bytes => {
  const written = /^\+?(\d{0,30})(?:\.(\d{0,30}))?\s*([a-z]+)$/i.exec(text);
  const [, whole = "", part = "", name] = written ?? [];
  if (name === undefined || whole + part === "") throw unreadable(text, argument);
  const unit = unitNamed(name, argument, text);
  return checked(BigInt(whole + part) * unit.bytes, 10n ** BigInt(part.length), text, argument);
});

function checked(numerator: bigint, denominator: bigint, received: string | number, argument: string): Bytes {
  const size = divideToNearest(numerator, denominator);
  if (size > largest) throw tooLarge(received, argument);
  return bytes(size);
}

function tooLarge(received: string | number, argument: string): Problem {
  return invalid(argument, received, `${argument} ${quote(received)} is over a million EB. ${writeSize}`);
}

function unreadable(text: string, argument: string): Problem {
  const comma = explainComma(text, argument, (proposal) => parseSize(proposal, argument), " TB");
  if (comma !== null) return comma;
  if (/^[-−]/.test(text)) return invalid(argument, text, `${argument} ${quote(text)} is below zero. ${writeSize}`);
  if (isPlainNumber(text) && Number(text) <= 1e12) {
    return invalid(argument, text, `${argument} ${quote(text)} is text without a unit. Write it as a number of TB, or "${text} TB".`, Number(text), `${text} TB`);
  }
  return invalid(argument, text, `${argument} ${quote(text)} is not a size. ${writeSize}`);
}
