import { parseNumber, type NumberRule } from "../../planning/quantity";
import { asTyped, type Reader } from "./reader";
import { readScalar } from "./scalar";

/** Reads a number that keeps to `rule`, at 15 significant digits. A blank means `rule.default`, or is refused. */
export function number(rule: NumberRule): Reader<number> {
  return {
    read: (received, place) => parseNumber(readScalar(received, place), place, rule),
    example: asTyped(rule.example),
    ...(rule.default === undefined ? {} : { default: asTyped(rule.default) }),
  };
}

/** Reads a whole number that keeps to `rule`. */
export function count(rule: NumberRule): Reader<number> {
  return number({ ...rule, whole: true });
}

/** Reads a number whose rule follows from another argument. */
export function numberBy<Given>(example: number, ruleFor: (given: Given) => NumberRule): Reader<(given: Given) => number> {
  return {
    read: (received, place) => {
      const value = readScalar(received, place);
      return (given) => parseNumber(value, place, ruleFor(given));
    },
    example: asTyped(example),
  };
}

/** Reads what `reader` reads; a blank is null, and so is 0, which some hosts hand over for an empty cell. For what 0 could not mean. */
export function orNoneNorZero<Value>(reader: Reader<Value>): Reader<Value | null> {
  const { read } = orNone(reader);
  return { ...reader, read: (received, place) => (readScalar(received, place) === 0 ? null : read(received, place)) };
}

/** Reads what `reader` reads; a blank is null. */
export function orNone<Value>({ read, example, range }: Reader<Value>): Reader<Value | null> {
  return { read: (received, place) => (readScalar(received, place) === null ? null : read(received, place)), example, range };
}
