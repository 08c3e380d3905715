import { foldName, invalid, quote } from "../../planning/text";
import type { Reader } from "./reader";
import { readScalar } from "./scalar";

/** Reads one of a few words or numbers, words (declared in small letters) in any case; a blank means the first of them. */
export function choice<Choice extends string | number>(...choices: readonly [Choice, ...Choice[]]): Reader<Choice> {
  const shown = choices.map((one) => (typeof one === "string" ? `"${one}"` : String(one)));
  return {
    default: shown[0],
    offers: choices.map((value) => ({ value })),
    read: (received, place) => {
      const value = readScalar(received, place);
      if (value === null) return choices[0];
      const folded = typeof value === "string" ? foldName(value) : value;
      const chosen = choices.find((one) => one === folded);
      if (chosen !== undefined) return chosen;
      const meant = choices.find((one) => bare(one) === bare(value));
      if (meant !== undefined) throw invalid(place, value, `${place} is ${quote(value)}. Write ${meant}${typeof meant === "number" ? ", without quotes" : ""}.`, meant);
      throw invalid(place, value, `${place} is ${quote(value)}. Choose ${shown.join(" or ")}.`);
    },
  };
}

/** What tells one choice from another: not blanks and dashes within it, nor whether a number is text. */
function bare(choice: string | number | boolean): string {
  return foldName(String(choice)).replace(/[\s_]|(?<!^)-/g, "");
}

/** Reads TRUE or FALSE; a blank and 0 mean FALSE, 1 means TRUE. */
export const flag: Reader<boolean> = {
  default: "FALSE",
  read: (received, place) => {
    const value = readScalar(received, place);
    const text = String(value ?? false).toUpperCase();
    if (text === "TRUE" || text === "1") return true;
    if (text === "FALSE" || text === "0") return false;
    const meant = /^(YES|Y|ON)$/.test(text) ? true : /^(NO|N|OFF)$/.test(text) ? false : null;
    if (meant !== null) throw invalid(place, value, `${place} is ${quote(value)}. Write ${String(meant).toUpperCase()}.`, meant);
    throw invalid(place, value, `${place} is ${quote(value)}. Choose TRUE or FALSE.`);
  },
};
