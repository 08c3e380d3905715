import fc from "fast-check";
import { liftLimit, type Lift } from "../../../src/planning/facility";
import { frequencyMultiplier } from "../../../src/planning/facility/lift-frequency";

const easy: Lift = { horizontal: 25, from: 75, to: 75, angle: 0, liftsPerMinute: 0.2, hours: 1, grip: "good" };

describe("liftLimit", () => {
  test("is the load constant where nothing stands against the lift", () => {
    expect(liftLimit(easy)).toEqual({ origin: 23, destination: 23, limit: 23 });
  });

  test.each<[string, Partial<Lift>]>([
    ["further than 63 cm away", { horizontal: 63.1 }],
    ["higher than 175 cm", { to: 176 }],
    ["beginning higher than 175 cm", { from: 176, to: 100 }],
    ["turned by more than 135 degrees", { angle: 136 }],
    ["more often than 15 times a minute", { liftsPerMinute: 15.1 }],
  ])("is 0 %s", (_, change) => {
    expect(liftLimit({ ...easy, ...change }).limit).toBe(0);
  });

  test("a hand nearer than 25 cm and a way shorter than 25 cm cost nothing", () => {
    expect(liftLimit({ ...easy, horizontal: 10, from: 60, to: 75 }).destination).toBe(23);
  });

  test("is still above 0 at 63 cm, at 175 cm high, turned by 135 degrees, over a way of 175 cm, as table 1 to 4 print it", () => {
    const edge: Lift = { ...easy, horizontal: 63, from: 0, to: 175, angle: 135 };
    // 23 · 25/63 · (0.82 + 4.5/175) · (1 − 0.0032·135) · 0.7 where the lift ends, 75 cm below the knuckles 0.775.
    const shared = ((23 * 25) / 63) * (0.82 + 4.5 / 175) * 0.568;
    expect(liftLimit(edge).destination).toBeCloseTo(shared * 0.7, 12);
    expect(liftLimit(edge).origin).toBeCloseTo(shared * 0.775, 12);
  });

  test.each([
    [25, 1],
    [25.5, 0.82 + 4.5 / 25.5],
    [176, 0],
  ])("over a way of %p cm costs a factor of %p", (distance, factor) => {
    expect(liftLimit({ ...easy, from: 0, to: distance }).origin).toBeCloseTo(23 * 0.775 * factor, 12);
  });

  test("is the lower of both ends, and moving down is as limited as moving up", () => {
    const up = liftLimit({ ...easy, from: 20, to: 150 });
    expect(up.limit).toBe(Math.min(up.origin, up.destination));
    expect(up.destination).toBeLessThan(up.origin);
    expect(liftLimit({ ...easy, from: 150, to: 20 }).limit).toBe(up.limit);
  });

  test("takes the frequency column by the height where the lift begins, and the grip by that of each end", () => {
    expect(liftLimit({ ...easy, from: 80, to: 60, liftsPerMinute: 9, hours: 8 }).limit).toBeGreaterThan(0);
    expect(liftLimit({ ...easy, from: 60, to: 80, liftsPerMinute: 9, hours: 8 }).limit).toBe(0);
    const fair = liftLimit({ ...easy, from: 60, to: 90, grip: "fair" });
    expect(fair.origin / fair.destination).toBeCloseTo(0.95, 12);
  });

  test.each([
    ["between two rows of the table", 2.5, 1, 100, (0.91 + 0.88) / 2],
    ["between 0.2 and 0.5 lifts a minute", 0.35, 1, 100, (1 + 0.97) / 2],
    ["seldom", 0.01, 1, 100, 1],
    ["for an hour and a half: the class of up to two hours", 1, 1.5, 100, 0.88],
    ["for a little over two hours: the class of up to eight", 1, 2.01, 100, 0.75],
    ["towards a row of 0", 8.5, 8, 60, 0.09],
    ["over eight hours", 1, 8.5, 100, 0],
  ])("reads the frequency multiplier %s", (_, liftsPerMinute, hours, height, expected) => {
    expect(frequencyMultiplier(liftsPerMinute, hours, height)).toBeCloseTo(expected, 12);
  });

  test("never grows with reach, turn, frequency or hours", () => {
    const lifts = fc.record({
      horizontal: fc.double({ min: 1, max: 80, noNaN: true }),
      from: fc.double({ min: 0, max: 190, noNaN: true }),
      to: fc.double({ min: 0, max: 190, noNaN: true }),
      angle: fc.double({ min: 0, max: 150, noNaN: true }),
      liftsPerMinute: fc.double({ min: 0.01, max: 20, noNaN: true }),
      hours: fc.double({ min: 0.1, max: 8, noNaN: true }),
      grip: fc.constantFrom("good" as const, "fair" as const, "poor" as const),
    });
    const worse = fc.constantFrom("horizontal" as const, "angle" as const, "liftsPerMinute" as const, "hours" as const);
    fc.assert(
      fc.property(lifts, worse, fc.double({ min: 1, max: 1.5, noNaN: true }), (lift, key, factor) => {
        const harder = { ...lift, [key]: lift[key] * factor };
        expect(liftLimit(harder).limit).toBeLessThanOrEqual(liftLimit(lift).limit + 1e-12);
        expect(liftLimit(lift).limit).toBeLessThanOrEqual(23);
      }),
      { seed: 20260509, numRuns: 1000 },
    );
  });
});
