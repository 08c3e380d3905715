/** A code of k + m pieces spread over drives, as the simulation takes it. */
export interface SpreadCode {
  readonly drives: number;
  readonly data: number;
  readonly redundancy: number;
}

/** Hours between failures of one drive, of a whole repair, and of that before anything is copied. */
export interface Pace {
  readonly mttf: number;
  readonly repair: number;
  readonly wait: number;
}

/**
 * Estimates the mean hours to data loss where rebuilding has a fixed speed; all it shares with the chain of the functions is that drives
 * fail independently at a constant rate, and rarely.
 *
 * What has to be restored is a fluid: how many stripes lack 1, 2, ... pieces. A failure takes from each its even share. After the last
 * failure nothing is copied for the wait; then the stripes that lack most come first, a piece at a time, at the speed at which all working
 * drives together restore one drive in repair - wait. Data is lost when a drive fails while stripes lack all their redundancy.
 *
 * Losses are rare, so failures are drawn as often as repairs end, and each run counts by how much less likely it was in truth
 * (importance sampling). `next` gives numbers from 0 to below 1.
 */
export function fluidHoursToLoss(code: SpreadCode, pace: Pace, runs: number, next: () => number): { readonly hours: number; readonly relativeError: number } {
  let [sum, squares] = [0, 0];
  for (let run = 0; run < runs; run++) {
    const likelihood = lossAfterFailure(code, pace, next);
    sum += likelihood;
    squares += likelihood * likelihood;
  }
  const perFailure = sum / runs;
  return { hours: pace.mttf / code.drives / perFailure, relativeError: Math.sqrt(squares / runs - perFailure ** 2) / Math.sqrt(runs) / perFailure };
}

/** Follows a failure until all is restored or data is lost; gives the likelihood of a run that loses data, 0 for one that does not. */
function lossAfterFailure({ drives, data, redundancy }: SpreadCode, { mttf, repair, wait }: Pace, next: () => number): number {
  const width = data + redundancy;
  // Stripes by the pieces they lack; those of one drive are the unit.
  const lacking = Array.from({ length: redundancy + 1 }, (_, pieces) => (pieces === 0 ? drives / width - 1 : pieces === 1 ? 1 : 0));
  let likelihood = 1;
  let failed = 1;
  let waiting = wait;
  while (failed > 0) {
    const working = drives - failed;
    const speed = working / (drives - 1) / (repair - wait);
    const hoursToNext = waiting + lacking[failed]! / speed;
    const hazard = working / mttf;
    // Drawn as if a failure came once in that time on average.
    const hoursToFailure = -hoursToNext * Math.log(1 - next());
    const hours = Math.min(hoursToFailure, hoursToNext);
    likelihood *= Math.exp(hours / hoursToNext - hours * hazard);
    const restored = Math.max(0, hours - waiting) * speed;
    lacking[failed - 1]! += restored;
    lacking[failed]! -= restored;
    if (hours === hoursToNext) {
      lacking[failed] = 0;
      waiting = 0;
      failed--;
      continue;
    }
    likelihood *= hazard * hoursToNext;
    if (failed === redundancy) return likelihood;
    for (let pieces = failed; pieces >= 0; pieces--) {
      const hit = (lacking[pieces]! * (width - pieces)) / working;
      lacking[pieces]! -= hit;
      lacking[pieces + 1]! += hit;
    }
    failed++;
    waiting = wait;
  }
  return 0;
}
