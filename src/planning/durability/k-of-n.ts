import { Decimal, exactDecimal, type Share } from "../quantity";

/** Most parts that the sum is worked out for. */
export const mostParts = 10_000;

/**
 * Computes the probability that at least `k` of `n` independent parts work, each with probability `p`:
 * the sum over i from k to n of C(n, i) · p^i · (1 - p)^(n - i).
 *
 * `k` is 1 to n. Terms are exact to 40 digits and all positive, so a result near 0 keeps its digits.
 */
export function atLeastKOfN(k: number, n: number, p: Share): number {
  const works = exactDecimal(p);
  const fails = works.neg().plus(1);
  if (works.isZero()) return 0;
  if (fails.isZero()) return 1;
  const odds = works.div(fails);
  let term = choose(n, k).times(works.pow(k)).times(fails.pow(n - k));
  let sum = term;
  for (let i = k; i < n; i++) {
    term = term.times(odds).times(n - i).div(i + 1);
    sum = sum.plus(term);
  }
  return sum.toNumber();
}

function choose(n: number, k: number): Decimal {
  let ways = new Decimal(1);
  const fewer = Math.min(k, n - k);
  for (let i = 1; i <= fewer; i++) ways = ways.times(n - fewer + i).div(i);
  return ways;
}
