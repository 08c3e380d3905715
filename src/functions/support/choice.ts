import { invalid, quote } from "../../planning/text";
import type { Reader } from "./reader";
import { readScalar } from "./scalar";

/** Reads one of a few words or numbers, words (declared in small letters) in any case; a blank means the first of them. */
export function choice<Choice extends string | number>(...choices: readonly [Choice, ...Choice[]]): Reader<Choice> {
  const shown = choices.map((one) => (typeof one === "string" ? `"${one}"` : String(one)));
  return {
    default: shown[0],
    read: (received, place) => {
      const value = readScalar(received, place);
      if (value === null) return choices[0];
      const folded = typeof value === "string" ? value.toLowerCase() : value;
      const chosen = choices.find((one) => one === folded);
      if (chosen !== undefined) return chosen;
      throw invalid(place, value, `${place} is ${quote(value)}. Write ${shown.join(" or ")}.`);
    },
  };
}

/** Reads TRUE or FALSE; a blank and 0 mean FALSE, 1 means TRUE. */
export const flag: Reader<boolean> = {
  default: "FALSE",
  read: (received, place) => {
    const value = readScalar(received, place);
    const text = String(value ?? false).toUpperCase();
    if (text === "TRUE" || text === "1") return true;
    if (text === "FALSE" || text === "0") return false;
    throw invalid(place, value, `${place} is ${quote(value)}. Write TRUE or FALSE.`);
  },
};
