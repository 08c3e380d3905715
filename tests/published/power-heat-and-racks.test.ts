import { circuitUse, current, heat, rackUnitMillimetres } from "../../src/planning/facility";
import { watts } from "../../src/planning/quantity";

describe("heat", () => {
  test("NIST SP 811 appendix B.8: 1 BTU(IT) an hour is 2.930 711 E-01 W", () => {
    expect((1 / heat(watts(1), "btu/h")).toPrecision(7)).toBe("0.2930711");
  });

  test("derived from 1055.05585262 J a BTU(IT): 1 kW is 3412.141633 BTU an hour", () => {
    expect(heat(watts(1000), "btu/h").toFixed(6)).toBe("3412.141633");
  });

  test("NIST SP 811: one ton of refrigeration, 12 000 BTU(IT) an hour, is 3.516 853 E+03 W (from memory)", () => {
    expect((1 / heat(watts(1), "tons")).toPrecision(7)).toBe("3516.853");
  });
});

describe("three phases, P = √3·V·I·pf: any electrical handbook, from memory", () => {
  test.each([
    [208, 30, 10_808],
    [208, 24, 8_646],
    [400, 16, 11_085],
    [400, 32, 22_170],
    [415, 32, 23_002],
  ])("derived: %i V between lines and %i A carry %i VA", (volts, amperes, voltAmperes) => {
    expect(current(watts(voltAmperes), volts, 1, 3)).toBeCloseTo(amperes, 2);
  });
});

describe("continuous loads: NFPA 70, 210.20(A), the breaker is rated for 125 % of them", () => {
  test.each([
    [16, 20],
    [24, 30],
  ])("%i A all the time need a breaker of %i A", (amperes, rating) => {
    expect(circuitUse(watts(amperes * 208), 208, rating, 0.8)).toBeCloseTo(1, 12);
  });
});

test("IEC 60297-3-100 and EIA/ECA-310: a rack unit is 44.45 mm, 15.875 + 15.875 + 12.7 of its holes", () => {
  expect(rackUnitMillimetres).toBe(44.45);
  expect(15.875 + 15.875 + 12.7).toBeCloseTo(rackUnitMillimetres, 12);
});
