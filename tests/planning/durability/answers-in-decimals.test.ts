// Every answer over the range of its input, against the model written a second time in decimals of 70 digits.
import fc from "fast-check";
import { layoutDrives, parseScheme } from "../../../src/planning/capacity";
import { bytesLostPerTerabyte, dataLossRisk, meanYearsToDataLoss } from "../../../src/planning/durability";
import { bytes, hours, share } from "../../../src/planning/quantity";
import {
  chancesBySquaring,
  chancesByWatching,
  defects,
  failureRate,
  hoursByElimination,
  ratesOf,
  relativeError,
  touchedShare,
  wide,
  type LossModel,
} from "../../support/loss-model-in-decimals";

/** Numbers of at most 12 digits from 10^low to 10^high, evenly by magnitude. */
const magnitude = (low: number, high: number) => fc.double({ min: low, max: high, noNaN: true }).map((exponent) => Number((10 ** exponent).toPrecision(12)));
const few = fc.integer({ min: 0, max: 4 });
const sometimes = <T>(value: T, otherwise: fc.Arbitrary<T>) => fc.oneof(fc.constant(value), otherwise);

/** A scheme, the drives it lies on, and what that makes of one group. */
interface Case {
  readonly scheme: string;
  readonly drives: number;
  readonly groups: number;
  readonly model: LossModel;
  readonly years: number;
}

function shapes(tolerances: fc.Arbitrary<number>): fc.Arbitrary<Pick<Case, "scheme" | "drives" | "groups"> & Pick<LossModel, "data" | "redundancy" | "spread">> {
  return fc.record({ redundancy: tolerances, data: fc.integer({ min: 2, max: 40 }), more: fc.oneof(fc.constant(1), magnitude(0, 3)), groups: fc.integer({ min: 1, max: 200 }), kind: fc.nat(2) }).map(
    ({ redundancy, data, more, groups, kind }) => {
      const drives = Math.round((data + redundancy) * more);
      if (kind === 0 && redundancy <= 2) {
        const name = [`none`, `RAID 50 ${data}+1`, `RAID 60 ${data}+2`][redundancy]!;
        return { scheme: name, drives: groups * (data + redundancy), groups: redundancy === 0 ? 1 : groups, data: redundancy === 0 ? groups * data : data, redundancy, spread: false };
      }
      if (kind === 1 && redundancy > 0) return { scheme: `${redundancy + 1} copies`, drives, groups: 1, data: 1, redundancy, spread: true };
      if (redundancy === 0) return { scheme: "RAID 0", drives, groups: 1, data: drives, redundancy, spread: false };
      return { scheme: `${data}+${redundancy}`, drives, groups: 1, data, redundancy, spread: true };
    },
  );
}

/** The range of the input, but for what `narrower` says. */
function cases(narrower: Partial<Record<"tolerance" | "afr" | "repair" | "waited" | "years", fc.Arbitrary<number>>> = {}): fc.Arbitrary<Case> {
  return fc
    .record({
      shape: shapes(narrower.tolerance ?? few),
      afr: narrower.afr ?? fc.oneof(magnitude(-5, -0.05), fc.constant(0.999999999999)),
      repair: narrower.repair ?? magnitude(-6, 4),
      waited: narrower.waited ?? sometimes(0, fc.double({ min: 0, max: 1, noNaN: true })),
      years: narrower.years ?? magnitude(-4, 3),
      driveBytes: magnitude(9, 14).map(Math.round),
      readErrorRate: sometimes(0, magnitude(-18, -8)),
      latentErrors: sometimes(0, magnitude(-4, 2)),
      scrub: magnitude(0, 4),
      sharedCause: sometimes(0, magnitude(-6, 0)),
    })
    .map(({ shape: { scheme, drives, groups, ...group }, waited, years: span, ...rest }) => ({
      scheme,
      drives,
      groups,
      years: span,
      model: { ...group, ...rest, drives: drives / groups, wait: Number((rest.repair * waited).toPrecision(12)) },
    }));
}

const layoutOf = ({ scheme, drives }: Case) => layoutDrives(parseScheme(scheme, "scheme"), drives);

const conditionsOf = ({ model, years }: Case) => ({
  driveSize: bytes(BigInt(model.driveBytes)),
  afr: share(model.afr),
  repair: hours(model.repair),
  years,
  readErrorRate: model.readErrorRate,
  latentErrors: model.latentErrors,
  scrub: hours(model.scrub),
  sharedCause: share(model.sharedCause),
  wait: hours(model.wait),
});

/** Risk and bytes lost a usable TB, from the chances of one group. */
function answersFrom({ model, groups }: Case, [byDrives, byReading]: ReturnType<typeof chancesBySquaring>) {
  const { data, redundancy, drives, driveBytes, spread } = model;
  const width = data + redundancy;
  const risk = wide(1).minus(wide(1).minus(byDrives).minus(byReading).pow(groups));
  // Of one drive's stripes, those that touch m drives more: in counts of stripes, C(n - m - 1, w - m - 1) of C(n - 1, w - 1).
  const lostByDrives = wide(driveBytes).times(redundancy + 1).times(data).div(width).times(spread ? touchedShare(model, redundancy + 1) : 1);
  const met = defects(model);
  const lostByReading = met.isZero() ? wide(0) : met.times(4096).div(wide(1).minus(met.neg().exp()));
  const usableTerabytes = wide(driveBytes).times(data).times(spread ? wide(drives).div(width) : groups).div("1e12");
  const lost = byDrives.times(lostByDrives).plus(byReading.times(lostByReading)).times(groups).div(usableTerabytes);
  return { risk, lost };
}

function expectSameAnswers(one: Case, solve: typeof chancesBySquaring): void {
  const exact = answersFrom(one, solve(ratesOf(one.model), wide(one.years).times(8760)));
  // Past the range of a double there is nothing to compare.
  fc.pre(exact.risk.gt("1e-290") && exact.lost.gt("1e-290"));
  expect(relativeError(dataLossRisk(layoutOf(one), conditionsOf(one)), exact.risk)).toBeLessThan(1e-12);
  expect(relativeError(bytesLostPerTerabyte(layoutOf(one), conditionsOf(one)), exact.lost)).toBeLessThan(1e-12);
}

test("risk and bytes lost: up to four failures tolerated, rates over ten orders and more, minutes to a thousand years", () => {
  fc.assert(
    fc.property(cases(), (one) => expectSameAnswers(one, chancesBySquaring)),
    { seed: 21, numRuns: 40 },
  );
});

test("risk and bytes lost: up to a hundred failures tolerated", () => {
  const tolerance = fc.oneof(fc.constant(100), fc.integer({ min: 10, max: 100 }));
  const soon = { afr: magnitude(-1, -0.02), repair: magnitude(1, 3), waited: fc.double({ min: 0.2, max: 1, noNaN: true }), years: magnitude(-4, -2.8) };
  fc.assert(
    fc.property(cases({ tolerance, ...soon }), (one) => expectSameAnswers(one, chancesByWatching)),
    { seed: 22, numRuns: 3 },
  );
});

test("mean time to data loss: up to a hundred failures tolerated", () => {
  fc.assert(
    fc.property(cases({ tolerance: fc.oneof(few, fc.integer({ min: 5, max: 20 })) }), magnitude(0, 9), (one, mttf) => {
      const model = { ...one.model, readErrorRate: 0, latentErrors: 0, sharedCause: 0 };
      const exact = hoursByElimination(ratesOf(model, wide(1).div(mttf))).div(one.groups).div(8760);
      fc.pre(exact.lt("1e300"));
      expect(relativeError(meanYearsToDataLoss(layoutOf(one), hours(mttf), hours(model.repair), hours(model.wait)), exact)).toBeLessThan(1e-12);
    }),
    { seed: 23, numRuns: 100 },
  );
});

test("the two decimal solutions agree with each other to 50 digits", () => {
  const model = { drives: 20, data: 8, redundancy: 3, spread: true, driveBytes: 16e12, afr: 0.5, repair: 50, wait: 5, readErrorRate: 1e-15, latentErrors: 0.1, scrub: 168, sharedCause: 0.1 };
  const rates = ratesOf(model, failureRate(model.afr));
  const [squared, watched] = [chancesBySquaring(rates, wide(400)), chancesByWatching(rates, wide(400))];
  for (const way of [0, 1] as const) expect(squared[way].div(watched[way]).minus(1).abs().toNumber()).toBeLessThan(1e-50);
});
