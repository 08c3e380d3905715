import { afr } from "../../src/functions/durability";

describe("Schroeder, Gibson, FAST '07: datasheet MTTF of 1,000,000 to 1,500,000 h means a nominal annual failure rate of at most 0.88 %", () => {
  test.each([
    [1_000_000, 0.88],
    [1_500_000, 0.58],
  ])("%i h: %p %%, to a hundredth (the lower figure from memory)", (mttf, percent) => {
    expect(Math.abs(100 * afr(mttf) - percent)).toBeLessThanOrEqual(0.01);
    expect(100 * afr(mttf)).toBeLessThanOrEqual(0.88);
  });
});
