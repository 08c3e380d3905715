import { bitsIn, readFault } from "../../../src/planning/durability";
import { parseSize } from "../../../src/planning/quantity";
import { wide } from "../../support/loss-chain-by-elimination";

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
])("%p bits at %p each keep all their digits, both ways", (bits, rate) => {
  const fails = wide(1).minus(rate).ln().times(bits).exp();
  const { happens, fails: ours } = readFault(bits, rate);
  expect(wide(1).minus(fails).minus(happens).div(wide(1).minus(fails)).abs().toNumber()).toBeLessThan(1e-14);
  if (ours > 0) expect(fails.minus(ours).div(fails).abs().toNumber()).toBeLessThan(1e-12);
});

test.each([
  [1e14, 0, 0],
  [8, 1, 1],
])("%p bits at a rate of %p: %p", (bits, rate, happens) => {
  expect(readFault(bits, rate).happens).toBe(happens);
});
