import { readfault } from "../../src/functions/durability";

describe("a public project's text: nine drives of 8 TB are read without fault with 0.3 % to 56.2 %", () => {
  test.each([
    [1e-14, 0.3],
    [1e-15, 56.2],
  ])("at one error in 1/%p bits: %p %%", (rate, percent) => {
    expect(100 * (1 - readfault(72, rate))).toBeCloseTo(percent, 1);
  });
});

describe("read faults by 1 - exp(-bits · rate), regression values", () => {
  test.each([
    [12.5, 1e-14, 0.6321206],
    [12, 1e-14, 0.6171071],
    [12, 1e-15, 0.091536],
    [16, 1e-14, 0.7219627],
    [16, 1e-15, 0.1201466],
    [10, 1e-14, 0.550671],
    [10, 1e-15, 0.0768837],
  ])("%p TB at %p: %p", (terabytes, rate, probability) => {
    expect(readfault(terabytes, rate)).toBeCloseTo(probability, 7);
  });
});
