import { invalid, isTaken, quote, type Problem } from "./problem";

const commaNumber = /^([+-]?)(\d[\d.,]*,[\d.,]*\d)(?![\d.,])(.*)$/s;

/**
 * Explains a text that is a number with a comma, and perhaps a unit or % behind it: "0,95", "3,84 TB", "20,5%". Null where it is none.
 *
 * One comma is a decimal comma, many are groups of thousands, and so is one before a point. What could be both, "3,842 TB", is asked about,
 * but where only the whole number would be taken, as of drives.
 * `read` reads what is proposed, and refuses with a problem what cannot be meant; `unit` is written behind a number without one.
 */
export function explainComma(text: string, argument: string, read: (proposal: string | number) => unknown, unit = ""): Problem | null {
  const [, sign, digits = "", behind = ""] = commaNumber.exec(text) ?? [];
  if (sign === undefined) return null;
  const written = readingsOf(digits).map((number) => sign + number + (behind === "" ? unit : behind));
  const [one, other] = written.map((whole) => (behind + unit === "" ? Number(whole) : whole));
  const isMeant = (proposal?: string | number): proposal is string | number => proposal !== undefined && isTaken(() => read(proposal));
  const start = `${argument} ${quote(text)} has a comma`;
  if (isMeant(one) && other !== undefined) return invalid(argument, text, `${start}: is it ${one} or ${other}? Write it without the comma.`);
  const meant = other ?? one;
  return isMeant(meant) ? invalid(argument, text, `${start}. Write ${meant}.`, meant) : null;
}

/** Spells out, with a point for decimals and nothing between thousands, what digits with commas can mean. */
function readingsOf(digits: string): string[] {
  const decimal = /^(\d+),(\d+)$/.exec(digits);
  if (decimal !== null) return [`${decimal[1]}.${decimal[2]}`, ...(/^[1-9]\d{0,2},\d{3}$/.test(digits) ? [decimal[1]! + decimal[2]!] : [])];
  // 1,234,567 and 1,234.5 group by commas, 1.234,5 by points.
  if (/^\d{1,3}(,\d{3})+(\.\d+)?$/.test(digits)) return [digits.replaceAll(",", "")];
  if (/^\d{1,3}(\.\d{3})+,\d+$/.test(digits)) return [digits.replaceAll(".", "").replace(",", ".")];
  return [];
}
