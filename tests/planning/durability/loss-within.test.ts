import { lossWithin, type LossState } from "../../../src/planning/durability";
import { relativeError, wide } from "../../support/loss-model-in-decimals";

const state = (rates: Partial<LossState>): LossState => ({ one: 0, two: 0, repaired: 0, unread: 0, ...rates });
const goneBy = (times: ReturnType<typeof wide>) => wide(1).minus(times.neg().exp());

test.each([[1e-9], [1e-3], [0.7], [40]])("without redundancy the chance is 1 - exp(-rate · time), here %p", (times) => {
  const { byDrives, byReading } = lossWithin([state({ one: 0.01 })], 100 * times);
  expect(relativeError(byDrives, goneBy(wide(0.01).times(100 * times)))).toBeLessThan(1e-14);
  expect(byReading).toBe(0);
});

describe("with one failure tolerated there is a closed form, (f·(1 - exp(-s·t)) - s·(1 - exp(-f·t))) / (f - s)", () => {
  test.each([
    [1e-5, 1e-5, 0.1, 0, 8760],
    [3e-6, 2e-6, 1e6, 10, 8760],
    [0.5, 0.25, 3, 1, 1e-6],
    [0.5, 0.25, 3, 1, 2],
    [1e-9, 1e-9, 1e-9, 1e-12, 5e7],
    [2e-4, 1e-4, 1e9, 0, 43_800],
  ])("%p and %p up, %p back, %p by reading, %p hours", (first, second, back, reading, hours) => {
    const { byDrives, byReading } = lossWithin([state({ one: first }), state({ one: second, repaired: back, unread: reading })], hours);
    // f and s solve x² - (the sum of all rates)·x + first·(second + reading) = 0.
    const sum = wide(first).plus(second).plus(back).plus(reading);
    const product = wide(second).plus(reading).times(first);
    const fast = sum.plus(sum.pow(2).minus(product.times(4)).sqrt()).div(2);
    const slow = product.div(fast);
    const loss = fast.times(goneBy(slow.times(hours))).minus(slow.times(goneBy(fast.times(hours)))).div(fast.minus(slow));
    const share = wide(second).div(wide(second).plus(reading));
    expect(relativeError(byDrives, loss.times(share))).toBeLessThan(1e-13);
    if (reading > 0) expect(relativeError(byReading, loss.times(wide(1).minus(share)))).toBeLessThan(1e-13);
  });
});

test("a repair that takes no time leaves a constant rate of loss", () => {
  const [first, second, back, reading, hours] = [2e-4, 1e-4, 1e200, 1e190, 43_800] as const;
  const { byDrives, byReading } = lossWithin([state({ one: first }), state({ one: second, repaired: back, unread: reading })], hours);
  const visits = wide(first).div(wide(back).plus(second).plus(reading));
  const rate = visits.times(wide(second).plus(reading));
  expect(relativeError(byReading, goneBy(rate.times(hours)))).toBeLessThan(1e-13);
  expect(relativeError(byDrives, goneBy(rate.times(hours)).times(second).div(reading))).toBeLessThan(1e-13);
});

test("a state that is passed over is not visited: two by two, three failures tolerated", () => {
  // 0 to 2 to the loss, as if one failure were tolerated and none repaired.
  const pairs = [state({ two: 0.1 }), state({ one: 5, two: 5 }), state({ two: 0.3 }), state({ one: 5 })];
  const { byDrives } = lossWithin(pairs, 10);
  const loss = wide("0.3").times(goneBy(wide(1))).minus(wide("0.1").times(goneBy(wide(3)))).div("0.2");
  expect(relativeError(byDrives, loss)).toBeLessThan(1e-13);
});

test("nothing is lost where nothing fails, nor in no time to speak of", () => {
  expect(lossWithin([state({})], 8760)).toEqual({ byDrives: 0, byReading: 0 });
  expect(lossWithin([state({}), state({ repaired: 1, unread: 1 })], 8760)).toEqual({ byDrives: 0, byReading: 0 });
  expect(lossWithin([state({ one: 1 }), state({ one: 1, repaired: 1 })], 1e-300)).toEqual({ byDrives: 0, byReading: 0 });
});

test("what is not lost by a loss that is certain is nothing", () => {
  const { byDrives, byReading } = lossWithin([state({ one: 1 }), state({ one: 1, repaired: 1, unread: 2 })], 1e6);
  expect(byDrives + byReading).toBeCloseTo(1, 14);
  expect(byReading / byDrives).toBeCloseTo(2, 12);
});
