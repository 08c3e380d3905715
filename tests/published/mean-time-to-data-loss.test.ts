import { mttdl } from "../../src/functions/durability";

test("Greenan, Plank, Wylie, HotStorage 2010: single parity lasts ((2n - 1)·λ + μ) / (n·(n - 1)·λ²) (formula from memory)", () => {
  for (const [n, mttf, repair] of [[8, 100_000, 100], [3, 1_000_000, 24], [24, 30_000, 1]] as const) {
    const [rate, mend] = [1 / mttf, 1 / repair];
    const hours = ((2 * n - 1) * rate + mend) / (n * (n - 1) * rate * rate);
    expect(mttdl("RAID 5", n, mttf, repair) / (hours / 8760)).toBeCloseTo(1, 12);
  }
  expect(mttdl("RAID 5", 8, 100_000, 100) * 8760).toBeCloseTo(1_812_500, 4);
});
