import { invalid, quote } from "../../planning/text";
import { readScalar } from "./cells";

/** Reads one of a few words or numbers, words in any case; a blank means the first of them. */
export function readChoice<Choice extends string | number>(received: unknown, argument: string, choices: readonly [Choice, ...Choice[]]): Choice {
  const value = readScalar(received, argument);
  if (value === null) return choices[0];
  const chosen = choices.find((choice) => choice === (typeof value === "string" ? value.toLowerCase() : value));
  if (chosen !== undefined) return chosen;
  const written = choices.map((choice) => (typeof choice === "string" ? `"${choice}"` : String(choice))).join(" or ");
  throw invalid(argument, value, `${argument} is ${quote(value)}. Write ${written}.`);
}

/** Reads TRUE or FALSE; a blank and 0 mean FALSE, 1 means TRUE. */
export function readFlag(received: unknown, argument: string): boolean {
  const value = readScalar(received, argument);
  const text = String(value ?? false).toUpperCase();
  if (text === "TRUE" || text === "1") return true;
  if (text === "FALSE" || text === "0") return false;
  throw invalid(argument, value, `${argument} is ${quote(value)}. Write TRUE or FALSE.`);
}
