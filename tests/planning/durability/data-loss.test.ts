import { layoutDrives, parseScheme } from "../../../src/planning/capacity";
import { bytesLostPerTerabyte, dataLossRange, dataLossRisk, meanYearsToDataLoss, mostRangeRows, type LossConditions } from "../../../src/planning/durability";
import { hours, parseSize, share } from "../../../src/planning/quantity";
import { problemOf } from "../../support/sentence";

const lay = (scheme: string, drives: number) => layoutDrives(parseScheme(scheme, "scheme"), drives);
const years = (scheme: string, drives: number, mttf = 1e6, repair = 24, wait?: number) =>
  meanYearsToDataLoss(lay(scheme, drives), hours(mttf), hours(repair), wait === undefined ? undefined : hours(wait));
const usual: LossConditions = { driveSize: parseSize(4, "driveSize"), afr: share(0.02), repair: hours(24), years: 1, readErrorRate: 0 };
const risk = (scheme: string, drives: number, other: Partial<LossConditions> = {}) => dataLossRisk(lay(scheme, drives), { ...usual, ...other });
const lost = (scheme: string, drives: number, other: Partial<LossConditions> = {}) => bytesLostPerTerabyte(lay(scheme, drives), { ...usual, ...other });

describe("mean time to data loss", () => {
  test("of equal groups is that of one group divided by their number", () => {
    expect(years("RAID 60 8+2", 30)).toBeCloseTo(years("RAID 6", 10) / 3, 6);
    expect(years("RAID 10", 8)).toBeCloseTo(years("RAID 1", 2) / 4, 6);
  });

  test("so divided is too short where failures are not rare: 20 pairs of 1000 h, repaired within 240.5 h, 178.95 h", () => {
    expect(years("RAID 10", 40, 1000, 240.5) * 8760).toBeCloseTo(178.95, 2);
  });

  test("counts drives that fill no group for nothing", () => {
    expect(years("RAID 60 8+2", 29)).toBe(years("RAID 60 8+2", 20));
  });

  test("of a spread code that waits all the time is that of one group over all its drives", () => {
    expect(years("8+2", 12, 1e6, 24, 24) / years("RAID 6", 12)).toBeCloseTo(1, 14);
    expect(years("3 copies", 12, 1e6, 24, 24)).toBe(years("8+2", 12, 1e6, 24, 24));
  });

  test("of a spread code grows as the wait shrinks, and a wait left out is one hour, or all of a shorter repair", () => {
    expect(years("8+3", 60, 1e6, 24, 0)).toBeGreaterThan(years("8+3", 60, 1e6, 24, 1));
    expect(years("8+3", 60, 1e6, 24)).toBe(years("8+3", 60, 1e6, 24, 1));
    expect(years("8+3", 60, 1e6, 0.5)).toBe(years("8+3", 60, 1e6, 0.5, 0.5));
  });

  test("grows with every parity", () => {
    expect(years("RAID 5", 12)).toBeGreaterThan(years("none", 12));
    expect(years("RAID 6", 12)).toBeGreaterThan(years("RAID 5", 12));
    expect(years("triple parity", 12)).toBeGreaterThan(years("RAID 6", 12));
  });

  test("past what a cell can hold has no answer", () => {
    expect(problemOf(() => years("2+100", 102, 1e9))).toMatchObject({
      kind: "no-answer",
      argument: "scheme",
      sentence: "scheme 2+100 on 102 drives lasts longer than a cell can hold. Write fewer drives.",
    });
  });

  test("a wait longer than the repair is refused, in groups too", () => {
    for (const scheme of ["8+2", "RAID 6"]) {
      expect(problemOf(() => years(scheme, 12, 1e6, 24, 48))).toMatchObject({
        argument: "waitHours",
        sentence: "waitHours is 48, longer than repairHours 24, of which it is a part. Write at most 24.",
      });
    }
  });
});

describe("risk of losing data", () => {
  test("is years over the mean time where it is small", () => {
    const mttf = 8760 / -Math.log1p(-1e-4);
    expect(risk("RAID 6", 12, { afr: share(1e-4), years: 5 }) * years("RAID 6", 12, mttf)).toBeCloseTo(5, 1);
    expect(risk("RAID 6", 12, { afr: share(1e-4), years: 1000 }) * years("RAID 6", 12, mttf)).toBeCloseTo(1000, 1);
  });

  test("is nothing where drives never fail, and nearly certain where they mostly do", () => {
    expect(risk("RAID 6", 12, { afr: share(0), readErrorRate: 1e-15 })).toBe(0);
    expect(risk("none", 100, { afr: share(0.9) })).toBeCloseTo(1, 12);
  });

  test("of one drive without redundancy is its annual failure rate", () => {
    expect(risk("none", 1, { afr: share(0.015) })).toBeCloseTo(0.015, 15);
  });

  test("of more groups is that of one, any of them", () => {
    const one = risk("RAID 5 4+1", 5, { afr: share(0.5), repair: hours(500) });
    expect(risk("RAID 5 4+1", 15, { afr: share(0.5), repair: hours(500) })).toBeCloseTo(1 - (1 - one) ** 3, 12);
  });

  test.each<[string, Partial<LossConditions>, Partial<LossConditions>]>([
    ["the read-error rate", { readErrorRate: 1e-16 }, { readErrorRate: 1e-15 }],
    ["latent errors", { latentErrors: 0.01 }, { latentErrors: 0.1 }],
    ["the time between scrubs", { latentErrors: 0.01, scrub: hours(168) }, { latentErrors: 0.01, scrub: hours(720) }],
    ["shared causes", { sharedCause: share(0.01) }, { sharedCause: share(0.1) }],
    ["the wait", { wait: hours(1) }, { wait: hours(12) }],
    ["the repair", { repair: hours(24) }, { repair: hours(48) }],
    ["the years", { years: 1 }, { years: 2 }],
    ["the failure rate", { afr: share(0.01) }, { afr: share(0.02) }],
  ])("grows with %s", (_what, less, more) => {
    expect(risk("8+2", 24, more)).toBeGreaterThan(risk("8+2", 24, less));
  });

  test("what is left out is no latent error, no shared cause, a scrub a week", () => {
    expect(risk("8+2", 24, { latentErrors: 0, sharedCause: share(0), wait: hours(1) })).toBe(risk("8+2", 24));
    expect(risk("8+2", 24, { latentErrors: 0.1, scrub: hours(168) })).toBe(risk("8+2", 24, { latentErrors: 0.1 }));
  });

  test("a certain read fault makes the last failure tolerated worthless", () => {
    expect(risk("RAID 6", 12, { readErrorRate: 1 }) / risk("RAID 5", 12)).toBeCloseTo(1, 2);
  });

  test("stays 0, not an error, where a double cannot hold it", () => {
    expect(risk("2+100", 102, { afr: share(1e-4) })).toBe(0);
    expect(lost("2+100", 102, { afr: share(1e-4) })).toBe(0);
  });
});

describe("bytes lost for each usable TB", () => {
  test("without redundancy are those of one drive of all", () => {
    expect(lost("none", 4) / risk("none", 4)).toBeCloseTo(1e12 / 4, 3);
  });

  test("in a pair are all", () => {
    expect(lost("RAID 1", 2) / risk("RAID 1", 2)).toBeCloseTo(1e12, 3);
  });

  test("do not hang on the number of groups, where losses are rare", () => {
    expect(lost("RAID 60 8+2", 100) / lost("RAID 60 8+2", 10)).toBeCloseTo(1, 14);
  });

  test("in a spread code are few: a loss takes only the stripes that touch every failed drive", () => {
    // Three of 24 drives, of each of which 9/23 · 8/22 of the stripes.
    expect(lost("8+2", 24) / risk("8+2", 24)).toBeCloseTo((1e12 * 3 * 9 * 8) / (24 * 23 * 22), 1);
  });

  test("by a repair that meets defects are 4096 each", () => {
    // 1000 defects a TB and year, half of a scrub interval of 200 years: 100,000 in each of the 24 TB that are read, for 24 TB usable.
    const conditions = { latentErrors: 1000, scrub: hours(200 * 8760), repair: hours(1e-6) };
    expect(lost("RAID 6", 8, conditions) / risk("RAID 6", 8, conditions) / 4096 / 1e5).toBeCloseTo(1, 4);
  });

  test("are of the first loss only: more read faults, each of which costs little, come before a loss of drives", () => {
    expect(risk("8+2", 24, { readErrorRate: 1e-15 })).toBeGreaterThan(risk("8+2", 24));
    expect(lost("8+2", 24, { readErrorRate: 1e-15 })).toBeLessThan(lost("8+2", 24));
  });
});

describe("a range of failure rates", () => {
  const range = (rows: number) => dataLossRange(lay("RAID 6", 12), share(0.005), share(0.08), usual, rows);

  test("goes from the low to the high rate, evenly by ratio, each row the risk at its rate", () => {
    expect(range(5).map(({ afr }) => afr)).toEqual([0.005, 0.01, 0.02, 0.04, 0.08]);
    for (const row of range(7)) expect(row.risk).toBe(risk("RAID 6", 12, { afr: row.afr }));
  });

  test("has rates of 15 digits, and its ends as they were written", () => {
    const rates = dataLossRange(lay("RAID 6", 12), share(0.0123456789), share(0.0987654321), usual, 9).map(({ afr }) => afr);
    expect(rates.map((afr) => Number(afr.toPrecision(15)))).toEqual(rates);
    expect([rates[0], rates[8]]).toEqual([0.0123456789, 0.0987654321]);
  });

  test("ends at the high rate as it is, with more than 15 digits too", () => {
    expect(dataLossRange(lay("RAID 6", 12), share(0.1), share(0.1 + 0.2), usual, 3).at(-1)!.afr).toBe(0.1 + 0.2);
  });

  test("has at most 100 rows, and fewer where a row is long work: a code that survives 38 failures has 93, one that survives 100 has 5", () => {
    const most = (redundancy: number): number => mostRangeRows(lay(`2+${redundancy}`, redundancy + 2));
    expect([2, 37, 38, 60, 100, 120].map(most)).toEqual([100, 100, 93, 25, 5, 5]);
    // The work of a row grows with the cube of the states: 40 and 80 of them, beside the two of a loss.
    expect(most(38) / most(78)).toBeCloseTo(8, 0);
  });

  test("from the high to the low rate is refused", () => {
    expect(problemOf(() => dataLossRange(lay("RAID 6", 12), share(0.08), share(0.02), usual, 5))).toMatchObject({
      argument: "afrLow",
      sentence: "afrLow is 0.08, above afrHigh 0.02. Write the lower rate first.",
    });
  });

  test("of one rate says it in every row", () => {
    expect(new Set(dataLossRange(lay("RAID 6", 12), share(0.02), share(0.02), usual, 3).map(({ risk: one }) => one)).size).toBe(1);
  });
});
