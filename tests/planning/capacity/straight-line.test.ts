import fc from "fast-check";
import { fitStraightLine, lineAt, placesReached, predictionInterval } from "../../../src/planning/capacity";

describe("where a line reaches a level", () => {
  test("lies between the places at which the bounds of the prediction interval do: put back, both give the level", () => {
    const noise = fc.array(fc.double({ min: -3, max: 3, noNaN: true }), { minLength: 4, maxLength: 20 });
    fc.assert(
      fc.property(noise, fc.double({ min: 0.5, max: 5, noNaN: true }), fc.double({ min: 50, max: 500, noNaN: true }), (scatter, slope, above) => {
        const line = fitStraightLine(scatter.map((one, at) => [30 * at, 1000 + slope * 30 * at + one] as const));
        const level = line.meanY + above;
        const reached = placesReached(line, level, 0.95);
        fc.pre(reached !== null);
        expect(predictionInterval(line, reached.earliest, 0.95)[1]).toBeCloseTo(level, 5);
        expect(lineAt(line, reached.likely)).toBeCloseTo(level, 7);
        expect(predictionInterval(line, reached.latest, 0.95)[0]).toBeCloseTo(level, 5);
        expect(reached.earliest).toBeLessThanOrEqual(reached.likely + 1e-9);
        expect(reached.likely).toBeLessThanOrEqual(reached.latest + 1e-9);
      }),
      { seed: 20, numRuns: 300 },
    );
  });

  test("is one place where all points lie on the line", () => {
    const line = fitStraightLine([[0, 10], [30, 20], [90, 40]]);
    const { earliest, likely, latest } = placesReached(line, 100, 0.95)!;
    expect([earliest, likely, latest].map((place) => place.toFixed(6))).toEqual(["270.000000", "270.000000", "270.000000"]);
  });

  test("is none where the line falls, is level, or scatters more than it rises", () => {
    expect(placesReached(fitStraightLine([[0, 10], [30, 9], [60, 8]]), 20, 0.95)).toBeNull();
    expect(placesReached(fitStraightLine([[0, 10], [30, 10], [60, 10]]), 20, 0.95)).toBeNull();
    expect(placesReached(fitStraightLine([[0, 10], [30, 14], [60, 11]]), 20, 0.95)).toBeNull();
  });
});
