import { bitsIn, readFault } from "../../../src/planning/durability";
import { parseSize } from "../../../src/planning/quantity";
import { relativeError, wide } from "../../support/loss-model-in-decimals";

test("a size holds eight bits a byte", () => {
  expect(bitsIn(parseSize(12.5, "size"))).toBe(1e14);
});

test.each([
  [1, 1e-15],
  [1e3, 1e-18],
  [1e14, 1e-14],
  [9.6e13, 1e-15],
  [1e15, 1e-10],
  [8, 0.5],
  [3, 0.999999999999],
])("%p bits at %p each keep all their digits, both ways", (bits, rate) => {
  const fails = wide(1).minus(rate).ln().times(bits).exp();
  const { happens, fails: ours } = readFault(bits, rate);
  expect(relativeError(happens, wide(1).minus(fails))).toBeLessThan(1e-14);
  if (ours > 0) expect(relativeError(ours, fails)).toBeLessThan(1e-12);
});

test.each([
  [1e14, 0, 0],
  [8, 1, 1],
  [0, 1, 0],
])("%p bits at a rate of %p: %p", (bits, rate, happens) => {
  expect(readFault(bits, rate)).toEqual({ happens, fails: 1 - happens });
});
