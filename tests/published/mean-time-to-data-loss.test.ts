import { layoutDrives, parseScheme } from "../../src/planning/capacity";
import { meanYearsToDataLoss } from "../../src/planning/durability";
import { hours } from "../../src/planning/quantity";
import { mttdl } from "../../src/functions/durability";

test("Greenan, Plank, Wylie, HotStorage 2010: single parity lasts ((2n - 1)·λ + μ) / (n·(n - 1)·λ²) (formula from memory)", () => {
  for (const [n, mttf, repair] of [[8, 100_000, 100], [3, 1_000_000, 24], [24, 30_000, 1]] as const) {
    const [rate, mend] = [1 / mttf, 1 / repair];
    const hours = ((2 * n - 1) * rate + mend) / (n * (n - 1) * rate * rate);
    expect(mttdl("RAID 5", n, mttf, repair) / (hours / 8760)).toBeCloseTo(1, 12);
  }
  expect(mttdl("RAID 5", 8, 100_000, 100) * 8760).toBeCloseTo(1_812_500, 4);
});

const years = (scheme: string, drives: number, mttf: number, repair: number) => meanYearsToDataLoss(layoutDrives(parseScheme(scheme, "scheme"), drives), hours(mttf), hours(repair));

test("two parts in parallel, one of them repaired at a time, last (3·λ + μ) / (2·λ²) (any textbook of reliability, from memory)", () => {
  for (const [mttf, repair] of [[1000, 240.5], [500_000, 8]] as const) {
    const [rate, mend] = [1 / mttf, 1 / repair];
    expect((years("RAID 1", 2, mttf, repair) * 8760) / ((3 * rate + mend) / (2 * rate * rate))).toBeCloseTo(1, 12);
  }
});

test("Elerath, Pecht 2009: eight drives of 461,386 h, repaired in 12 h, last 36,162 years by MTTF² / (N·(N + 1)·MTTR) (from memory)", () => {
  // The exact chain is longer by (2n - 1)·MTTR / MTTF, 0.04 %.
  expect(Math.abs(years("RAID 5", 8, 461_386, 12) / 36_162 - 1)).toBeLessThan(0.0005);
});

test("Sathiamoorthy and others 2013, table 1: three copies of 256 MB blocks on nodes of 4 years, 1 Gb/s, 30 PB in all, last 2.3079E+10 days (from memory)", () => {
  // The printed figure wants blocks of 262,144,000 bytes, so a copy of one takes 2.097152 s; a year of 365 days.
  const stripes = 30e15 / (3 * 262_144_000);
  const days = (years("3 copies", 3, 4 * 8760, (262_144_000 * 8) / 1e9 / 3600) / stripes) * 365;
  expect(days.toExponential(4)).toBe("2.3079e+10");
});
