// Drives that fail and are repaired at random, one by one, under the assumptions of the chain and without its rates: it holds the
// solvers. Seeded; bounds of 99.9 %.
import { layoutDrives, parseScheme } from "../../../src/planning/capacity";
import { bytesLostPerTerabyte, dataLossRisk, meanYearsToDataLoss, type LossConditions } from "../../../src/planning/durability";
import { hours, parseSize, share } from "../../../src/planning/quantity";
import { defects, repairHours, type LossModel } from "../../support/loss-model-in-decimals";
import { seededRandom } from "../../support/seeded-random";

interface Loss {
  readonly atHours: number;
  readonly bytes: number;
}

/** Lets one group live until it loses data, or until `end`. Every drive has its own clock; what is exponential may be drawn anew at any time. */
function live(model: LossModel, mean: { readonly repair: readonly number[]; readonly defects: number }, end: number, next: () => number): Loss | null {
  const { drives, data, redundancy, driveBytes, sharedCause } = model;
  const width = data + redundancy;
  const drawHours = (meanHours: number) => -meanHours * Math.log(1 - next());
  const mttf = -8760 / Math.log(1 - model.afr);
  let [failed, now] = [0, 0];
  for (;;) {
    const working = drives - failed;
    // The first of so many clocks.
    const failure = now + drawHours(mttf / working);
    const repair = failed === 0 ? Infinity : now + drawHours(mean.repair[failed]!);
    now = Math.min(failure, repair);
    if (now > end) return null;
    if (failure < repair) {
      // A pair that fails together counts once, whichever of the two failed first: else it would come twice.
      const together = working > 1 && next() < sharedCause;
      if (together && next() < 0.5) continue;
      failed += together ? 2 : 1;
      if (failed > redundancy) {
        let bytes = ((redundancy + 1) * Number(driveBytes) * data) / width;
        if (model.spread) for (let j = 1; j <= redundancy; j++) bytes *= (width - j) / (drives - j);
        return { atHours: now, bytes };
      }
      continue;
    }
    const met = failed === redundancy ? countDefects(mean.defects, next) : 0;
    if (met > 0) return { atHours: now, bytes: 4096 * met };
    failed--;
  }
}

/** Draws a Poisson number: how many draws stay above exp(-mean) when multiplied. */
function countDefects(mean: number, next: () => number): number {
  const least = Math.exp(-mean);
  let count = 0;
  for (let product = 1 - next(); product > least; product *= 1 - next()) count++;
  return count;
}

const calm = { driveBytes: 8e12, readErrorRate: 0, latentErrors: 0, scrub: 168, sharedCause: 0, wait: 0 };
const lives = 40_000;
/** Standard deviations of a normal distribution that 99.9 % lie within. */
const within = 3.2905;

/** Mean and its bounds. */
function meanOf(values: readonly number[]): { readonly mean: number; readonly bound: number } {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  const variance = values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (values.length - 1);
  return { mean, bound: within * Math.sqrt(variance / values.length) };
}

const cases: readonly [string, number, number, LossModel][] = [
  ["RAID 5", 8, 2, { ...calm, drives: 8, data: 7, redundancy: 1, spread: false, afr: 0.2, repair: 240 }],
  ["RAID 5", 8, 2, { ...calm, drives: 8, data: 7, redundancy: 1, spread: false, afr: 0.1, repair: 120, readErrorRate: 2e-15 }],
  ["RAID 1", 2, 5, { ...calm, drives: 2, data: 1, redundancy: 1, spread: false, afr: 0.3, repair: 300, sharedCause: 0.2 }],
  ["RAID 6", 10, 3, { ...calm, drives: 10, data: 8, redundancy: 2, spread: false, afr: 0.5, repair: 400, latentErrors: 0.05, scrub: 720, sharedCause: 0.1 }],
  ["8+3", 30, 2, { ...calm, drives: 30, data: 8, redundancy: 3, spread: true, afr: 0.6, repair: 500, wait: 100, latentErrors: 0.2, scrub: 2000, sharedCause: 0.2 }],
  ["3 copies", 9, 2, { ...calm, drives: 9, data: 1, redundancy: 2, spread: true, afr: 0.6, repair: 300, wait: 20, readErrorRate: 1e-14 }],
];

test.each(cases)("%s on %i drives over %i years: risk and bytes lost lie within the bounds of 40,000 lives", (scheme, drives, years, model) => {
  const mean = { repair: repairsOf(model), defects: defects(model).toNumber() };
  const next = seededRandom(drives + years);
  const losses = Array.from({ length: lives }, () => live(model, mean, years * 8760, next));
  const layout = layoutDrives(parseScheme(scheme, "scheme"), drives);
  const conditions: LossConditions = {
    driveSize: parseSize(8, "driveSize"),
    afr: share(model.afr),
    repair: hours(model.repair),
    years,
    readErrorRate: model.readErrorRate,
    latentErrors: model.latentErrors,
    scrub: hours(model.scrub),
    sharedCause: share(model.sharedCause),
    wait: hours(model.wait),
  };
  const lost = meanOf(losses.map((loss) => (loss === null ? 0 : 1)));
  expect(Math.abs(dataLossRisk(layout, conditions) - lost.mean)).toBeLessThan(lost.bound);
  // Bounds that hold anything would hold nothing.
  expect(lost.bound).toBeLessThan(0.1 * lost.mean);

  const usable = (8 * drives * model.data) / (model.data + model.redundancy);
  const bytes = meanOf(losses.map((loss) => (loss === null ? 0 : loss.bytes / usable)));
  expect(Math.abs(bytesLostPerTerabyte(layout, conditions) - bytes.mean)).toBeLessThan(bytes.bound);
  expect(bytes.bound).toBeLessThan(0.2 * bytes.mean);
});

test.each(cases)("%s on %i drives: the mean time to data loss lies within the bounds of 4,000 lives", (scheme, drives, seed, given) => {
  const model = { ...given, readErrorRate: 0, latentErrors: 0, sharedCause: 0 };
  const next = seededRandom(100 * drives + seed);
  const years = meanOf(Array.from({ length: lives / 10 }, () => live(model, { repair: repairsOf(model), defects: 0 }, Infinity, next)!.atHours / 8760));
  const mttf = -8760 / Math.log(1 - model.afr);
  const ours = meanYearsToDataLoss(layoutDrives(parseScheme(scheme, "scheme"), drives), hours(mttf), hours(model.repair), hours(model.wait));
  expect(Math.abs(ours - years.mean)).toBeLessThan(years.bound);
  expect(years.bound).toBeLessThan(0.1 * years.mean);
});

function repairsOf(model: LossModel): number[] {
  return Array.from({ length: model.redundancy + 1 }, (_, failed) => (failed === 0 ? 0 : repairHours(model, failed).toNumber()));
}
