// Values of 17 digits that were computed apart from this code, or stand in print; the source of each is in its title.
import { layoutDrives, parseScheme } from "../../../src/planning/capacity";
import { bytesLostPerTerabyte, criticalShare, dataLossRange, dataLossRisk, meanYearsToDataLoss } from "../../../src/planning/durability";
import { hours, parseSize, share } from "../../../src/planning/quantity";
import { relativeError } from "../../support/loss-model-in-decimals";
import values from "./independent-values.json";

type Arguments = Readonly<Record<string, string | number | null | undefined>>;

const layoutOf = ({ scheme, drives }: Arguments) => layoutDrives(parseScheme(scheme ?? null, "scheme"), Number(drives));
const waitOf = ({ waitHours }: Arguments) => (waitHours === null || waitHours === undefined ? undefined : hours(Number(waitHours)));

const exposureOf = (given: Arguments) => ({
  driveSize: parseSize(given["driveSize"] ?? null, "driveSize"),
  repair: hours(Number(given["repairHours"])),
  years: Number(given["years"]),
  readErrorRate: Number(given["readErrorRate"]),
  latentErrors: Number(given["latentErrors"] ?? 0),
  scrub: hours(Number(given["scrubHours"] ?? 168)),
  sharedCause: share(Number(given["sharedCause"] ?? 0)),
  wait: waitOf(given),
});
const conditionsOf = (given: Arguments) => ({ ...exposureOf(given), afr: share(Number(given["afr"])) });

const answers: Readonly<Record<string, (given: Arguments) => number | number[][]>> = {
  LOSSRISK: (given) => dataLossRisk(layoutOf(given), conditionsOf(given)),
  BYTESLOST: (given) => bytesLostPerTerabyte(layoutOf(given), conditionsOf(given)),
  MTTDL: (given) => meanYearsToDataLoss(layoutOf(given), hours(Number(given["mttfHours"])), hours(Number(given["repairHours"])), waitOf(given)),
  LOSSRANGE: (given) => {
    const [low, high] = [share(Number(given["afrLow"])), share(Number(given["afrHigh"]))];
    return dataLossRange(layoutOf(given), low, high, exposureOf(given), Number(given["rows"])).map(({ afr, risk }) => [afr, risk]);
  },
  "critical share": ({ drives, width, failed }) => criticalShare(Number(drives), Number(width), Number(failed)),
};

test.each(values.map(({ answer, arguments: given, value, source }) => [answer, Object.values(given).join(", "), source, { given, value }] as const))(
  "%s of %s: %s",
  (answer, _given, _source, { given, value }) => {
    const ours = [answers[answer]!(given)].flat(2);
    const expected = [value].flat(2);
    expect(ours).toHaveLength(expected.length);
    ours.forEach((one, index) => expect(relativeError(one, expected[index]!)).toBeLessThan(1e-12));
  },
);
