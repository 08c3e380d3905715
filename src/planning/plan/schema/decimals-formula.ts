import { currenciesByDecimals } from "../../pricing";

/** Writes, as part of a formula, to how many decimals the currency in a cell is rounded (ISO 4217); two where the cell is blank. */
export function decimalsIn(cell: string): string {
  return decimalsBy(cell, (list) => `SEARCH(" "&SUBSTITUTE(${cell}," ","")&" "," ${list} ")`);
}

/** How it was written before: a part of a code was taken for the whole. */
export function formerDecimalsIn(cell: string): string {
  return decimalsBy(cell, (list) => `SEARCH(${cell},"${list}")`);
}

function decimalsBy(cell: string, searchIn: (list: string) => string): string {
  const has = (decimals: number): string => `ISNUMBER(${searchIn(currenciesByDecimals(decimals).join(" "))})`;
  return `IF(${cell}="",2,IF(${has(0)},0,IF(${has(3)},3,IF(${has(4)},4,2))))`;
}
