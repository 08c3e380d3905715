import fc from "fast-check";
import { blockingProbability, waitingProbability } from "../../../src/planning/rates";

/** Erlang B by its sum, term by term. */
function blockedBySum(servers: number, offered: number): number {
  let [term, sum] = [1, 1];
  for (let busy = 1; busy <= servers; busy += 1) {
    term *= offered / busy;
    sum += term;
  }
  return term / sum;
}

test("one server turns away its load's share, and lets wait what it is busy with", () => {
  expect(blockingProbability(1, 0.5)).toBeCloseTo(1 / 3, 15);
  expect(waitingProbability(1, 0.5)).toBeCloseTo(0.5, 15);
});

test("without load nobody is turned away or waits", () => {
  expect(blockingProbability(4, 0)).toBe(0);
  expect(waitingProbability(4, 0)).toBe(0);
});

test("the recursion agrees with the sum", () => {
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 60 }), fc.double({ min: 0.01, max: 60, noNaN: true }), (servers, offered) => {
      expect(Math.abs(blockingProbability(servers, offered) / blockedBySum(servers, offered) - 1)).toBeLessThan(1e-12);
    }),
    { seed: 3, numRuns: 500 },
  );
});

test("more wait than are turned away, and fewer with every server more", () => {
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 40 }), fc.double({ min: 0.05, max: 0.99, noNaN: true }), (servers, load) => {
      const offered = load * servers;
      expect(waitingProbability(servers, offered)).toBeGreaterThanOrEqual(blockingProbability(servers, offered));
      expect(waitingProbability(servers + 1, offered)).toBeLessThan(waitingProbability(servers, offered));
    }),
    { seed: 4, numRuns: 300 },
  );
});
