import fc from "fast-check";
import { energyCost, pricePerUnit } from "../../../src/planning/pricing";
import { exactDecimal } from "../../../src/planning/quantity";

test("price a unit times capacity is the price again", () => {
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 100_000_000 }), fc.integer({ min: 1, max: 1_000_000 }), (cents, gigabytes) => {
      const price = exactDecimal(cents / 100);
      const capacity = exactDecimal(gigabytes / 1000);
      expect(pricePerUnit(price, capacity).times(capacity).toNumber()).toBe(price.toNumber());
    }),
    { seed: 19, numRuns: 500 },
  );
});

test("a kilowatt over a year is 8760 kWh, and cooling adds its share", () => {
  const cost = (watts: number, tariff: number, years: number, overhead: number): number =>
    energyCost(exactDecimal(watts), exactDecimal(tariff), exactDecimal(years), exactDecimal(overhead)).toNumber();
  expect(cost(1000, 1, 1, 0)).toBe(8760);
  expect(cost(450, 0.25, 5, 0.5)).toBe(7391.25);
});
