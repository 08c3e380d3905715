import fc from "fast-check";
import { atLeastKOfN } from "../../../src/planning/durability";
import { share } from "../../../src/planning/quantity";

/** Tries every combination of working and failed parts. */
function byEnumeration(k: number, n: number, p: number): number {
  let sum = 0;
  for (let states = 0; states < 2 ** n; states++) {
    let working = 0;
    for (let part = 0; part < n; part++) working += (states >> part) & 1;
    if (working >= k) sum += p ** working * (1 - p) ** (n - working);
  }
  return sum;
}

test("equals the sum over every combination of up to ten parts", () => {
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 10 }), fc.integer({ min: 1, max: 10 }), fc.integer({ min: 0, max: 100 }), (a, b, percent) => {
      const [k, n] = [Math.min(a, b), Math.max(a, b)];
      expect(atLeastKOfN(k, n, share(percent / 100))).toBeCloseTo(byEnumeration(k, n, percent / 100), 12);
    }),
    { seed: 16, numRuns: 200 },
  );
});

test.each([
  [1, 1000, 1e-15, 1e-12],
  [10, 10, 1e-15, 1e-150],
  [1, 5, 1, 1],
  [5, 5, 0, 0],
])("at least %i of %i at %p is %p, with its digits", (k, n, p, probability) => {
  expect(Math.abs(atLeastKOfN(k, n, share(p)) - probability)).toBeLessThanOrEqual(probability * 1e-12);
});

test("half of ten thousand even chances: a half and half the middle term", () => {
  // The middle term is 1/√(π·n/2) to first order.
  expect(atLeastKOfN(5000, 10_000, share(0.5))).toBeCloseTo(0.5 + 0.5 / Math.sqrt(Math.PI * 5000), 6);
});
