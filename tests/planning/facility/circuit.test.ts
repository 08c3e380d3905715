import { circuitUse, current } from "../../../src/planning/facility";
import { watts } from "../../../src/planning/quantity";

describe("circuits", () => {
  test("one phase: watts by volts and power factor, as any electrical handbook has it", () => {
    expect(current(watts(1840), 230)).toBe(8);
    expect(current(watts(1840), 230, 0.8)).toBe(10);
  });

  test("three phases carry the load on three lines, P = √3·V·I·pf, as any electrical handbook has it", () => {
    expect(current(watts(3 * 2300), 230 * Math.sqrt(3), 1, 3)).toBeCloseTo(10, 12);
  });

  test("use is of what the breaker may carry all the time: 80 % of its rating (NFPA 70, 210.20(A): rated for 125 % of a continuous load)", () => {
    expect(circuitUse(watts(1840), 230, 16, 0.8)).toBeCloseTo(8 / 12.8, 15);
    expect(circuitUse(watts(1840), 230, 8, 1)).toBe(1);
  });
});
