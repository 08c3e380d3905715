import { decimalsOf, isCurrencyCode, smallestAmount } from "../../src/planning/pricing";

/** The list of ISO 4217 that is maintained by SIX Group, table A.1 of 2024-06-25 with the codes current on 2026-02-01: every code by its minor unit. */
const minorUnits = {
  0: "BIF CLP DJF GNF ISK JPY KMF KRW PYG RWF UGX UYI VND VUV XAF XOF XPF",
  2:
    "AED AFN ALL AMD AOA ARS AUD AWG AZN BAM BBD BDT BMD BND BOB BOV BRL BSD BTN BWP BYN BZD CAD CDF CHE CHF CHW CNY COP COU CRC CUP CVE CZK DKK DOP DZD EGP ERN ETB EUR FJD FKP GBP GEL " +
    "GHS GIP GMD GTQ GYD HKD HNL HTG HUF IDR ILS INR IRR JMD KES KGS KHR KPW KYD KZT LAK LBP LKR LRD LSL MAD MDL MGA MKD MMK MNT MOP MRU MUR MVR MWK MXN MXV MYR MZN NAD NGN NIO NOK NPR " +
    "NZD PAB PEN PGK PHP PKR PLN QAR RON RSD RUB SAR SBD SCR SDG SEK SGD SHP SLE SOS SRD SSP STN SVC SYP SZL THB TJS TMT TOP TRY TTD TWD TZS UAH USD USN UYU UZS VED VES WST XAD XCD XCG " +
    "YER ZAR ZMW ZWG",
  3: "BHD IQD JOD KWD LYD OMR TND",
  4: "CLF UYW",
};

test.each(Object.entries(minorUnits))("ISO 4217 table A.1: amounts of these currencies have %s decimals", (decimals, codes) => {
  const listed = codes.split(" ");
  expect(listed.filter((code) => decimalsOf(code) !== Number(decimals) || !isCurrencyCode(code))).toEqual([]);
  expect(smallestAmount(listed[0]!).toNumber()).toBe(Number(`1e-${decimals}`));
});

test("what is no code of ISO 4217 by its shape is told, and has two decimals", () => {
  expect(["€", "Euro", "eur", "EU", ""].map(isCurrencyCode)).toEqual([false, false, false, false, false]);
  expect(decimalsOf("€")).toBe(2);
});
