import { parseNumber, type NumberRule } from "../../planning/quantity";
import { readScalar } from "./cells";

/** Reads one argument as a number that keeps to `rule`, at 15 significant digits. A blank means `rule.default`, or is refused. */
export function readNumber(received: unknown, argument: string, rule: NumberRule): number {
  return parseNumber(readScalar(received, argument), argument, rule);
}

/** Reads one argument as a whole number that keeps to `rule`. */
export function readCount(received: unknown, argument: string, rule: NumberRule): number {
  return readNumber(received, argument, { ...rule, whole: true });
}
