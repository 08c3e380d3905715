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

describe("Elerath, CACM 52(6) 2009: read faults an hour, of faults a byte and bytes read an hour (table from memory)", () => {
  test.each([
    [8.0e-15, 1.35e9, 1.08e-5],
    [8.0e-14, 1.35e9, 1.08e-4],
    [3.2e-13, 1.35e9, 4.32e-4],
    [8.0e-15, 1.35e10, 1.08e-4],
    [8.0e-14, 1.35e10, 1.08e-3],
    [3.2e-13, 1.35e10, 4.32e-3],
  ])("%p a byte, %p bytes: %p", (faultsPerByte, bytes, faults) => {
    // Rare faults: the chance of one is their mean number, less half its square.
    expect(Math.abs(readfault(`${bytes} B`, faultsPerByte / 8) / faults - 1)).toBeLessThan(0.0025);
  });
});
