import { demand, runway } from "../../src/functions/capacity";
import { sellprice } from "../../src/functions/price";
import { roundToStep } from "../../src/planning/pricing";
import { exactDecimal } from "../../src/planning/quantity";

describe("Microsoft support, ROUND: halves go away from zero", () => {
  test.each([
    [2.15, 0.1, 2.2],
    [2.149, 0.1, 2.1],
    [-1.475, 0.01, -1.48],
    [21.5, 10, 20],
    [626.3, 1000, 1000],
    [1.98, 10, 0],
    [-50.55, 100, -100],
    [23.7825, 0.01, 23.78],
  ])("%p to the nearest %p is %p", (value, step, rounded) => {
    expect(roundToStep(exactDecimal(value), exactDecimal(step)).toNumber()).toBe(rounded);
  });

  test("a price is rounded so too", () => {
    expect(sellprice(2.15, 0, "markup", 0.1)).toBe(2.2);
    expect(sellprice(2.149, 0, "markup", 0.1)).toBe(2.1);
    expect(sellprice(23.7825, 0, "markup", 0.01)).toBe(23.78);
  });
});

describe("DAX, ROUND: ties go away from zero", () => {
  test.each([
    [1.15, 0.1, 1.2],
    [-1.15, 0.1, -1.2],
  ])("%p to %p is %p", (value, step, rounded) => {
    expect(roundToStep(exactDecimal(value), exactDecimal(step)).toNumber()).toBe(rounded);
  });
});

describe("trade definitions of margin and mark-up, published worked examples", () => {
  test("cost 75 at a margin of 25 %, or a mark-up of 33.3 %, sells at 100", () => {
    expect(sellprice(75, 0.25)).toBe(100);
    expect(sellprice(75, "33.3%", "markup", 0.1)).toBe(100);
  });

  test("cost 100 at a mark-up of 25 % sells at 125", () => {
    expect(sellprice(100, "25%", "markup")).toBe(125);
  });
});

test("Microsoft support, RRI: 10,000 grows to 11,000 in 96 periods at 0.09933 % a period", () => {
  const rate = 0.0009933; // as printed
  expect(demand(10_000, rate, 96)).toBeCloseTo(11_000, 0);
  expect(runway(10_000, rate, 11_000)).toBeCloseTo(96, 2);
});
