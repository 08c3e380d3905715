import { wilsonInterval } from "../../../scripts/mutations/wilson";

describe("the interval of a share is the score interval of Newcombe, Statistics in Medicine 17 (1998), table I, method 3 (from memory)", () => {
  test.each([
    [81, 263, 0.2553, 0.3662],
    [15, 148, 0.0624, 0.1605],
    [0, 20, 0, 0.1611],
    [1, 29, 0.0061, 0.1718],
  ])("%i of %i lie between %f and %f", (hits, trials, low, high) => {
    const [from, to] = wilsonInterval(hits, trials);
    expect(from).toBeCloseTo(low, 4);
    expect(to).toBeCloseTo(high, 4);
  });
});
