import fc from "fast-check";
import { lineCurrents } from "../../../../src/planning/resilience/power/line-currents";
import { addPhasors } from "./phasors";

const none = { L1: 0, L2: 0, L3: 0, "L1-L2": 0, "L2-L3": 0, "L3-L1": 0 };

describe("lineCurrents", () => {
  test.each([
    ["2,000 W between two lines at 208 V", { ...none, "L1-L2": 2000 }, ["9.6153846153846154", "9.6153846153846154", "0.0"]],
    ["1,000 W between each two lines at 208 V", { ...none, "L1-L2": 1000, "L2-L3": 1000, "L3-L1": 1000 }, ["8.3271673440811408", "8.3271673440811408", "8.3271673440811408"]],
    ["all unlike", { ...none, L1: 500, "L1-L2": 2000, "L2-L3": 1000 }, ["13.38404894911063", "12.71995822627207", "4.8076923076923077"]],
  ])("%s, worked out with 60 digits (mpmath) from the sum of phasors", (_, watts, expected) => {
    lineCurrents(watts, 208, 1).forEach((amps, line) => expect(Math.abs(amps - Number(expected[line]))).toBeLessThanOrEqual(1e-12 * Number(expected[line])));
  });

  test("equals the currents added as complex numbers, load by load", () => {
    const watts = fc.integer({ min: 0, max: 9000 });
    const loads = fc.record({ L1: watts, L2: watts, L3: watts, "L1-L2": watts, "L2-L3": watts, "L3-L1": watts });
    fc.assert(
      fc.property(loads, fc.constantFrom(208, 400), fc.constantFrom(1, 0.9), (load, volts, factor) => {
        const expected = addPhasors(load, volts, factor);
        lineCurrents(load, volts, factor).forEach((amps, line) => expect(amps).toBeCloseTo(expected[line]!, 9));
      }),
      { seed: 20260509, numRuns: 500 },
    );
  });

  test("loads alike on all lines come to P / (√3 · V · pf), as any handbook has it", () => {
    for (const amps of lineCurrents({ ...none, L1: 1000, L2: 1000, L3: 1000 }, 400, 0.95)) expect(amps).toBeCloseTo(3000 / (Math.sqrt(3) * 400 * 0.95), 12);
  });
});
