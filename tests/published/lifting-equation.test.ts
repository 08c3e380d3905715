// NIOSH Revised Lifting Equation: Applications Manual, DHHS (NIOSH) publication 94-110, revised September 2021. Tables and examples as quoted with page
// numbers by a copy of its text. The manual takes an inch for 2.5 cm in its formulas (10/H in, 25/H cm), and so do these tests.
import { liftLimit, type Lift } from "../../src/planning/facility";
import { frequencyMultiplier } from "../../src/planning/facility/lift-frequency";
import { asymmetryMultiplier, distanceMultiplier, horizontalMultiplier, verticalMultiplier } from "../../src/planning/facility/lift-limit";

const inches = (value: number): number => value * 2.5;
const kilogramsPerPound = 23 / 51;

/** Rounds half away from zero, as the manual's tables do. */
function twoPlaces(value: number): number {
  return Math.round(value * 100 + 1e-9) / 100;
}

describe("tables of NIOSH 94-110", () => {
  test.each([
    [0, 0.78], [5, 0.81], [10, 0.85], [15, 0.89], [20, 0.93], [25, 0.96], [30, 1], [35, 0.96], [40, 0.93], [45, 0.89], [50, 0.85], [55, 0.81], [60, 0.78],
    [65, 0.74], [70, 0.7], [71, 0],
  ])("vertical multiplier at %p in: %p", (height, printed) => {
    expect(twoPlaces(verticalMultiplier(inches(height)))).toBe(printed);
  });

  test.each([
    [5, 1], [10, 1], [15, 0.94], [20, 0.91], [25, 0.89], [30, 0.88], [35, 0.87], [40, 0.87], [45, 0.86], [50, 0.86], [55, 0.85], [60, 0.85], [70, 0.85],
    [71, 0],
  ])("distance multiplier over %p in: %p", (distance, printed) => {
    expect(Math.abs(distanceMultiplier(inches(distance)) - printed)).toBeLessThanOrEqual(0.0051);
  });

  test.each([
    [25, 1], [28, 0.89], [30, 0.83], [32, 0.78], [34, 0.74], [36, 0.69], [38, 0.66], [40, 0.63], [44, 0.57], [46, 0.54], [48, 0.52], [50, 0.5], [52, 0.48],
    [54, 0.46], [56, 0.45], [58, 0.43], [60, 0.42], [63, 0.4], [64, 0],
  ])("horizontal multiplier at %p cm: %p (from memory)", (horizontal, printed) => {
    expect(twoPlaces(horizontalMultiplier(horizontal))).toBe(printed);
  });

  test.each([
    [0, 1], [15, 0.95], [30, 0.9], [45, 0.86], [60, 0.81], [75, 0.76], [90, 0.71], [105, 0.66], [120, 0.62], [135, 0.57], [136, 0],
  ])("asymmetry multiplier at %p degrees: %p (from memory)", (angle, printed) => {
    expect(twoPlaces(asymmetryMultiplier(angle))).toBe(printed);
  });

  // Table 5, page 15: lifts a minute, then up to 1, 2 and 8 hours, each below 75 cm and from there up.
  test.each([
    [0.2, 1, 1, 0.95, 0.95, 0.85, 0.85],
    [0.5, 0.97, 0.97, 0.92, 0.92, 0.81, 0.81],
    [1, 0.94, 0.94, 0.88, 0.88, 0.75, 0.75],
    [2, 0.91, 0.91, 0.84, 0.84, 0.65, 0.65],
    [3, 0.88, 0.88, 0.79, 0.79, 0.55, 0.55],
    [4, 0.84, 0.84, 0.72, 0.72, 0.45, 0.45],
    [5, 0.8, 0.8, 0.6, 0.6, 0.35, 0.35],
    [6, 0.75, 0.75, 0.5, 0.5, 0.27, 0.27],
    [7, 0.7, 0.7, 0.42, 0.42, 0.22, 0.22],
    [8, 0.6, 0.6, 0.35, 0.35, 0.18, 0.18],
    [9, 0.52, 0.52, 0.3, 0.3, 0, 0.15],
    [10, 0.45, 0.45, 0.26, 0.26, 0, 0.13],
    [11, 0.41, 0.41, 0, 0.23, 0, 0],
    [12, 0.37, 0.37, 0, 0.21, 0, 0],
    [13, 0, 0.34, 0, 0, 0, 0],
    [14, 0, 0.31, 0, 0, 0, 0],
    [15, 0, 0.28, 0, 0, 0, 0],
    [15.5, 0, 0, 0, 0, 0, 0],
  ])("frequency multipliers at %p lifts a minute", (liftsPerMinute, ...printed) => {
    const read = [1, 2, 8].flatMap((hours) => [74.9, 75].map((height) => frequencyMultiplier(liftsPerMinute, hours, height)));
    expect(read).toEqual(printed);
  });

  // Table 7: coupling multiplier below 75 cm and from there up.
  test.each([
    ["good" as const, 1, 1],
    ["fair" as const, 0.95, 1],
    ["poor" as const, 0.9, 0.9],
  ])("coupling multiplier of a %s grip", (grip, below, above) => {
    const lift: Lift = { horizontal: 25, from: 74, to: 75, angle: 0, liftsPerMinute: 0.2, hours: 1, grip };
    const { origin, destination } = liftLimit(lift);
    expect(origin / (23 * 0.997)).toBeCloseTo(below, 12);
    expect(destination / 23).toBeCloseTo(above, 12);
  });

  test("frequency adjustment, page 16: ten lifts a minute for eight minutes of every fifteen are 5.33, between the rows 5 and 6", () => {
    const lifts = (10 * 8) / 15;
    expect(lifts).toBeCloseTo(5.33, 2);
    expect(frequencyMultiplier(lifts, 8, 75)).toBeCloseTo(0.35 + (0.27 - 0.35) / 3, 12);
  });
});

describe("examples of NIOSH 94-110; their multipliers are rounded to two places, ours are not", () => {
  const inspection: Lift = { horizontal: inches(10), from: inches(22), to: inches(59), angle: 0, liftsPerMinute: 3, hours: 0.75, grip: "fair" };

  test("example 4, package inspection, origin (page 46): 34.9 lb", () => {
    expect(Math.abs(liftLimit(inspection).origin / kilogramsPerPound - 34.9)).toBeLessThan(0.2);
  });

  test("example 4, destination with the load 20 in away: 15.2 lb", () => {
    const { origin, destination, limit } = liftLimit({ ...inspection, horizontalAtEnd: inches(20) });
    expect(Math.abs(destination / kilogramsPerPound - 15.2)).toBeLessThan(0.2);
    expect(Math.abs(origin / kilogramsPerPound - 34.9)).toBeLessThan(0.2);
    expect(limit).toBe(destination);
  });

  test("what ends with a turn is limited there alone: AM = 1 - 0.0032 · 45 (table 4)", () => {
    const { origin, destination } = liftLimit({ ...inspection, angleAtEnd: 45 });
    expect(origin).toBe(liftLimit(inspection).origin);
    expect(destination / liftLimit(inspection).destination).toBeCloseTo(0.856, 12);
  });

  test("example 4, metric: 25 cm away, from 55 to 150 cm, 3 a minute, 45 minutes, fair: 15.7 kg, a lifting index of 0.76 for 12 kg", () => {
    const { origin } = liftLimit({ horizontal: 25, from: 55, to: 150, angle: 0, liftsPerMinute: 3, hours: 0.75, grip: "fair" });
    expect(origin.toFixed(1)).toBe("15.7");
    expect(Math.abs(12 / origin - 0.76)).toBeLessThan(0.01);
  });

  test("example 1, loading punch press stock: 16.3 and 14.5 lb (from memory; table 1 prints .44 for 23 in, where 10/23 is .435)", () => {
    const stock: Lift = { horizontal: inches(23), from: inches(15), to: inches(64), angle: 0, liftsPerMinute: 0.2, hours: 1, grip: "fair" };
    const { origin, destination, limit } = liftLimit(stock);
    const asPrinted = 0.44 / (10 / 23) / kilogramsPerPound;
    expect(Math.abs(origin * asPrinted - 16.3)).toBeLessThan(0.2);
    expect(Math.abs(destination * asPrinted - 14.5)).toBeLessThan(0.2);
    expect(limit).toBe(destination);
  });
});
