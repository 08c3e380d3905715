import fc from "fast-check";
import { layoutDrives, parseScheme } from "../../../src/planning/capacity";
import { dataLossRisk, meanYearsToDataLoss } from "../../../src/planning/durability";
import { hours, parseSize, share } from "../../../src/planning/quantity";
import { meanHoursByElimination, wide } from "../../support/loss-chain-by-elimination";
import { problemOf } from "../../support/sentence";

const lay = (scheme: string, drives: number) => layoutDrives(parseScheme(scheme, "scheme"), drives);
const years = (scheme: string, drives: number, mttf = 1e6, repair = 24) => meanYearsToDataLoss(lay(scheme, drives), hours(mttf), hours(repair));
const risk = (scheme: string, drives: number, afr: number, readErrorRate = 0, span = 1, driveSize = 4, repair = 24) =>
  dataLossRisk(lay(scheme, drives), { driveSize: parseSize(driveSize, "driveSize"), afr: share(afr), repair: hours(repair), years: span, readErrorRate });

describe("mean time to data loss", () => {
  test("of equal groups is that of one group divided by their number", () => {
    expect(years("RAID 60 8+2", 30)).toBeCloseTo(years("RAID 6", 10) / 3, 6);
    expect(years("RAID 10", 8)).toBeCloseTo(years("RAID 1", 2) / 4, 6);
  });

  test("counts drives that fill no group for nothing", () => {
    expect(years("RAID 60 8+2", 29)).toBe(years("RAID 60 8+2", 20));
  });

  test("of a spread code runs over all its drives", () => {
    expect(years("8+2", 12)).toBe(years("RAID 6", 12));
    expect(years("3 copies", 12)).toBe(years("8+2", 12));
  });

  test("grows with every parity", () => {
    expect(years("RAID 5", 12)).toBeGreaterThan(years("none", 12));
    expect(years("RAID 6", 12)).toBeGreaterThan(years("RAID 5", 12));
    expect(years("triple parity", 12)).toBeGreaterThan(years("RAID 6", 12));
  });

  test("past what a cell can hold has no answer", () => {
    expect(problemOf(() => years("mirror", 1000))).toMatchObject({
      kind: "no-answer",
      sentence: "scheme mirror on 1000 drives lasts longer than a cell can hold. Write fewer drives.",
    });
  });
});

describe("risk of losing data", () => {
  test("keeps its digits when it is tiny: it is years over the mean time", () => {
    const afr = 1e-6;
    const mttf = 8760 / -Math.log1p(-afr);
    expect((risk("RAID 6", 12, afr) * years("RAID 6", 12, mttf)) / 1).toBeCloseTo(1, 12);
    expect(risk("RAID 6", 12, afr)).toBeLessThan(1e-12);
  });

  test("is nothing where drives never fail, and nearly certain where they mostly do", () => {
    expect(risk("RAID 6", 12, 0)).toBe(0);
    expect(risk("none", 100, 0.9)).toBeCloseTo(1, 12);
  });

  test("of one drive without redundancy is its annual failure rate", () => {
    expect(risk("none", 1, 0.015)).toBeCloseTo(0.015, 15);
  });

  test("grows with the read-error rate up to that of one parity less", () => {
    expect(risk("RAID 6", 12, 0.02, 1e-15)).toBeGreaterThan(risk("RAID 6", 12, 0.02));
    expect(risk("RAID 6", 12, 0.02, 1)).toBeGreaterThan(risk("RAID 6", 12, 0.02, 1e-15));
    expect(risk("RAID 6", 12, 0.02, 1) / risk("RAID 5", 12, 0.02)).toBeCloseTo(1, 2);
  });

  test("stays 0, not an error, where even a certain read fault cannot bring it into a double", () => {
    expect(risk("mirror", 300, 0.001, 1)).toBe(0);
  });

  test.each<[string, number, number, number, string]>([
    // Whole data drives in a group; for a spread code only the stripes that touch every failed drive.
    ["RAID 5", 8, 7, 1, "1"],
    ["RAID 6", 12, 10, 2, "1"],
    ["RAID 1", 2, 1, 1, "1"],
    ["8+2", 24, 8, 2, "9/23"],
    ["8+3", 24, 8, 3, "(10/23)(9/22)"],
    ["3 copies", 12, 1, 2, "2/11"],
    ["RAID 60 8+2", 20, 8, 2, "1"],
  ])("%s on %i drives reads %i drives in its last repair, times %s", (scheme, drives, data, tolerance, factor) => {
    const touched = { "1": wide(1), "9/23": wide(9).div(23), "(10/23)(9/22)": wide(90).div(23 * 22), "2/11": wide(2).div(11) }[factor]!;
    const groups = scheme === "RAID 60 8+2" ? 2 : 1;
    const afr = 0.02;
    const rate = 1e-15;
    const bits = wide(4e12 * 8 * data).times(touched);
    const hoursToLoss = meanHoursByElimination({
      drives: drives / groups,
      tolerance,
      failureRate: wide(1).minus(afr).ln().neg().div(8760),
      repairRate: wide(1).div(24),
      fault: wide(1).minus(wide(1).minus(rate).ln().times(bits).exp()),
    }).div(groups);
    const expected = wide(1).minus(wide(5 * 8760).div(hoursToLoss).neg().exp());
    const ours = risk(scheme, drives, afr, rate, 5);
    expect(expected.minus(ours).div(expected).abs().toNumber()).toBeLessThan(1e-12);
  });

  test("agrees with elimination at 120 digits to 1e-12", () => {
    const schemes = ["none", "RAID 5", "RAID 6", "triple parity", "4+4"];
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 4 }),
        fc.integer({ min: 8, max: 1000 }),
        fc.double({ min: -4, max: -0.05, noNaN: true }),
        fc.double({ min: -1, max: 4, noNaN: true }),
        fc.integer({ min: 1, max: 20 }),
        (tolerance, drives, afrExponent, repairExponent, span) => {
          const afr = Number((10 ** afrExponent).toPrecision(12));
          const repair = Number((10 ** repairExponent).toPrecision(12));
          const hoursToLoss = meanHoursByElimination({
            drives,
            tolerance,
            failureRate: wide(1).minus(afr).ln().neg().div(8760),
            repairRate: wide(1).div(repair),
            fault: wide(0),
          });
          const expected = wide(1).minus(wide(span * 8760).div(hoursToLoss).neg().exp());
          const ours = risk(schemes[tolerance]!, drives, afr, 0, span, 4, repair);
          expect(expected.minus(ours).div(expected).abs().toNumber()).toBeLessThan(1e-12);
        },
      ),
      { seed: 15, numRuns: 300 },
    );
  });
});
