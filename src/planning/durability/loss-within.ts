import type { LossChain, LossState } from "./loss-chain";

/** Probabilities that one group has lost data, by either way. */
export interface LossChances {
  readonly byDrives: number;
  readonly byReading: number;
}

/** Doublings that every time is reached by: so many that the terms left out of a short step do not matter up to 100 failures. */
const leastDoublings = 8;
/** Most times that the chain is watched in a short step, on average, and the terms that are worked out for it. */
const mostWatched = 1 / 4;
const terms = 16;

/**
 * Computes the probabilities that a chain has lost data within `hours`, from no drive failed: the exact transient.
 *
 * The transition probabilities of a step so short that little happens in it are the mean over the Poisson number of jumps
 * (uniformisation), and are then squared until the step is `hours` long. Only numbers that are not negative are added and multiplied, so
 * a chance of 1e-200 keeps its digits as one of 0.5 does; the rows are brought back to a sum of 1 after every product, so that no error
 * grows with the squarings.
 */
export function lossWithin(chain: LossChain, hours: number): LossChances {
  const calm = withoutHaste(chain, hours);
  // Twice the fastest, so that a state is rather kept than left, and its row keeps its digits.
  const pace = 2 * Math.max(...calm.map(rateOut));
  if (pace === 0) return { byDrives: 0, byReading: 0 };
  const doublings = Math.max(leastDoublings, Math.ceil(Math.log2((pace * hours) / mostWatched)));
  let step = shortStep(jumps(calm, pace), (pace * hours) / 2 ** doublings);
  for (let doubling = 0; doubling < doublings; doubling++) step = follow(step, step);
  const fromWhole = step[0]!;
  return { byDrives: fromWhole[chain.length]!, byReading: fromWhole[chain.length + 1]! };
}

/**
 * Slows down a state that is left so soon that its time does not count: within 2^-54 of the whole, and of the time between failures.
 * Where it leads stays as it is. Else a repair of next to nothing would take a thousand squarings.
 */
function withoutHaste(chain: LossChain, hours: number): LossChain {
  const soonest = 2 ** 54 * Math.max(1 / hours, ...chain.map(({ one, two }) => one + two));
  return chain.map((state) => {
    const slower = Math.min(1, soonest / rateOut(state));
    return { one: state.one * slower, two: state.two * slower, repaired: state.repaired * slower, unread: state.unread * slower };
  });
}

function rateOut({ one, two, repaired, unread }: LossState): number {
  return one + two + repaired + unread;
}

/**
 * Transition probabilities, a row and a column for every number of failed drives, then for a loss by drives, a loss by reading, and for
 * as many states that nobody reaches as make up a multiple of four.
 */
type Step = readonly Float64Array[];

/** The jumps of a chain that is watched `pace` times an hour. */
function jumps(chain: LossChain, pace: number): Step {
  const lost = chain.length;
  const step = staying(4 * Math.ceil((chain.length + 2) / 4));
  chain.forEach((state, failed) => {
    const row = step[failed]!;
    const add = (to: number, rate: number): void => {
      row[to] = row[to]! + rate / pace;
    };
    row[failed] = (pace - rateOut(state)) / pace;
    add(Math.min(failed + 1, lost), state.one);
    add(Math.min(failed + 2, lost), state.two);
    add(Math.max(failed - 1, 0), state.repaired);
    add(lost + 1, state.unread);
  });
  return step;
}

function staying(size: number): Step {
  return Array.from({ length: size }, (_, from) => {
    const row = new Float64Array(size);
    row[from] = 1;
    return row;
  });
}

/** Computes the transitions over a time in which the chain is watched `watched` times on average: Σ watched^k / k! · jumps^k. */
function shortStep(once: Step, watched: number): Step {
  let step = staying(once.length);
  // By Horner's rule, every partial sum with its rows at 1: `weight` is what the later terms come to beside the first.
  let weight = 0;
  for (let term = terms; term > 0; term--) {
    weight = (watched / term) * (1 + weight);
    step = follow(once, step);
    step.forEach((row, from) => {
      for (let to = 0; to < row.length; to++) row[to] = weight * row[to]!;
      row[from] = row[from]! + 1;
      bringToSumOne(row);
    });
  }
  return step;
}

/** Computes the transitions of one step after another: the product of their matrices. */
function follow(first: Step, second: Step): Step {
  return first.map((row) => {
    const sums = new Float64Array(row.length);
    // Four rows at a time, so that the sums are read and written a quarter as often.
    for (let via = 0; via < row.length; via += 4) {
      const a = row[via]!;
      const b = row[via + 1]!;
      const c = row[via + 2]!;
      const d = row[via + 3]!;
      // The jumps of a wide code are nearly all zeros.
      if (a + b + c + d === 0) continue;
      const fromA = second[via]!;
      const fromB = second[via + 1]!;
      const fromC = second[via + 2]!;
      const fromD = second[via + 3]!;
      for (let to = 0; to < sums.length; to++) {
        sums[to] = sums[to]! + a * fromA[to]! + b * fromB[to]! + c * fromC[to]! + d * fromD[to]!;
      }
    }
    bringToSumOne(sums);
    return sums;
  });
}

function bringToSumOne(row: Float64Array): void {
  let sum = 0;
  for (const chance of row) sum += chance;
  for (let to = 0; to < row.length; to++) row[to] = row[to]! / sum;
}
