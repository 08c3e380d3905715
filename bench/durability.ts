// Durability: the cost of one answer, and how far the chain stands from a rebuild of fixed speed.
import { layoutDrives, parseScheme } from "../src/planning/capacity";
import { bytesLostPerTerabyte, dataLossRange, dataLossRisk, meanYearsToDataLoss, type LossConditions } from "../src/planning/durability";
import { hours, parseSize, share } from "../src/planning/quantity";
import { seededRandom } from "../tests/support/seeded-random";
import { fluidHoursToLoss } from "./fluid-rebuild";
import { medianMs, printBench, type BenchLine } from "./support";

const usual: LossConditions = { driveSize: parseSize(16, "driveSize"), afr: share(0.015), repair: hours(24), years: 5, readErrorRate: 1e-15, latentErrors: 0.05, sharedCause: share(0.02) };
const lay = (scheme: string, drives: number) => layoutDrives(parseScheme(scheme, "scheme"), drives);

export default function benchDurability(): void {
  printBench("Durability, one answer (median)", [
    line("MTTDL of 8+3 on 60 drives", 1000, 1, (call) => meanYearsToDataLoss(lay("8+3", 60), hours(1_000_000 + call), hours(24))),
    line("MTTDL of 100+100 on 1,000 drives", 100, 1, (call) => meanYearsToDataLoss(lay("100+100", 1000), hours(1_000_000 + call), hours(24))),
    line("LOSSRISK of RAID 6 on 12 drives", 1000, 1, (call) => dataLossRisk(lay("RAID 6", 12), { ...usual, years: 5 + call / 1000 })),
    line("LOSSRISK of 8+3 on 60 drives", 1000, 1, (call) => dataLossRisk(lay("8+3", 60), { ...usual, years: 5 + call / 1000 })),
    line("BYTESLOST of 8+3 on 60 drives", 1000, 1, (call) => bytesLostPerTerabyte(lay("8+3", 60), { ...usual, years: 5 + call / 1000 })),
    line("LOSSRANGE of 8+3 on 60 drives, 20 rows", 50, 20, () => dataLossRange(lay("8+3", 60), share(0.005), share(0.08), usual, 20)),
    line("LOSSRISK of 20+10 on 100 drives", 100, 5, (call) => dataLossRisk(lay("20+10", 100), { ...usual, years: 5 + call / 1000 })),
    line("LOSSRISK of 100+100 on 1,000 drives", 3, 50, (call) => dataLossRisk(lay("100+100", 1000), { ...usual, years: 5 + call / 1000 })),
    line("LOSSRISK of 100+100 on 1,000 drives, AFR 90%, a minute's repair, 1,000 years", 3, 100, (call) =>
      dataLossRisk(lay("100+100", 1000), { ...usual, afr: share(0.9), repair: hours(0.02), years: 1000 - call }),
    ),
  ]);
  printBench("Mean time to data loss: the chain against a rebuild of fixed speed, most exposed stripes first", [
    ...[[4, 1, 12], [8, 1, 24], [8, 2, 12], [8, 2, 24], [8, 2, 60], [4, 2, 24], [16, 2, 60], [8, 3, 12], [8, 3, 24], [8, 3, 60], [16, 3, 60]].flatMap(([data, redundancy, drives]) =>
      [0, 1, 4, 12].map((wait) => fluidLine(data!, redundancy!, drives!, wait)),
    ),
  ]);
}

function line(what: string, calls: number, targetMs: number, answer: (call: number) => unknown): BenchLine {
  const ms = medianMs(() => Array.from({ length: calls }, (_, call) => answer(call))) / calls;
  return { what, measured: ms < 1 ? `${(1000 * ms).toFixed(1)} µs` : `${ms.toFixed(1)} ms`, target: `under ${targetMs} ms`, holds: ms < targetMs };
}

/** Drives of 1.5 % a year, repaired in 24 h. */
function fluidLine(data: number, redundancy: number, drives: number, wait: number): BenchLine {
  const mttf = 8760 / -Math.log1p(-0.015);
  const chain = 8760 * meanYearsToDataLoss(lay(`${data}+${redundancy}`, drives), hours(mttf), hours(24), hours(wait));
  const fluid = fluidHoursToLoss({ drives, data, redundancy }, { mttf, repair: 24, wait }, 200_000, seededRandom(drives + wait));
  const factor = fluid.hours / chain;
  const measured = `fluid lasts ${factor.toFixed(2)} times the chain (± ${(100 * fluid.relativeError).toFixed(1)} %)`;
  // What was restored before the next failure is what the chain forgets: evenly between nothing and all m times over, without a wait.
  const most = [1, 1, 2, 6][redundancy]!;
  return { what: `${data}+${redundancy} on ${drives} drives, ${wait} of 24 h waiting`, measured, target: `1 to ${most}, give or take 3 %`, holds: factor > 0.97 && factor < 1.03 * most };
}
