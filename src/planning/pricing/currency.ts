import { Decimal } from "../quantity";

/** Currencies whose amounts have another number of decimals than two, by the list of ISO 4217 (table A.1, read as of 2026-02-01). */
const otherDecimals: ReadonlyMap<string, number> = new Map(
  Object.entries({
    0: "BIF CLP DJF GNF ISK JPY KMF KRW PYG RWF UGX UYI VND VUV XAF XOF XPF",
    3: "BHD IQD JOD KWD LYD OMR TND",
    4: "CLF UYW",
  }).flatMap(([decimals, codes]) => codes.split(" ").map((code): [string, number] => [code, Number(decimals)])),
);

/** Those of them that a sheet's formula tells apart, by their decimals. */
export const currenciesByDecimals = (decimals: number): readonly string[] => [...otherDecimals].flatMap(([code, one]) => (one === decimals ? [code] : []));

/** Tells whether a text has the shape of a code of ISO 4217: three capital letters. */
export function isCurrencyCode(text: string): boolean {
  return /^[A-Z]{3}$/.test(text);
}

/** Gives the decimals of an amount in a currency, its minor unit by ISO 4217; two for what is no code of it. */
export function decimalsOf(currency: string): number {
  return otherDecimals.get(currency) ?? 2;
}

/** Gives the smallest amount of a currency, such as 0.01. */
export function smallestAmount(currency: string): Decimal {
  return new Decimal(10).pow(-decimalsOf(currency));
}
