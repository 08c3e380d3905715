// The model of data loss, written a second time: in decimals of 70 digits, from the definitions, and solved by plain methods that know
// nothing of the shape of the chain. Slow, and independent of src.
import DecimalJs from "decimal.js";

const Decimal = DecimalJs.clone({ precision: 70 });
type Decimal = DecimalJs;

/** What the model is asked about. A number stands for the decimal that is written with its digits. */
export interface LossModel {
  /** Drives of one group, all of them for a spread code. */
  readonly drives: number;
  readonly data: number;
  readonly redundancy: number;
  readonly spread: boolean;
  readonly driveBytes: number | bigint;
  readonly afr: number;
  readonly repair: number;
  readonly wait: number;
  readonly readErrorRate: number;
  readonly latentErrors: number;
  readonly scrub: number;
  readonly sharedCause: number;
}

/** Rates an hour from one state to another; the two last states are the losses, by drives and by reading. */
export type WideRates = readonly ReadonlyMap<number, Decimal>[];

export function wide(value: number | bigint | string | Decimal): Decimal {
  return new Decimal(typeof value === "bigint" ? value.toString() : value);
}

const one = wide(1);

/** How far `ours` is from `exact`, in parts of `exact`. */
export function relativeError(ours: number, exact: Decimal | string): number {
  return wide(ours).minus(exact).div(exact).abs().toNumber();
}

export function failureRate(afr: number): Decimal {
  return one.minus(afr).ln().neg().div(8760);
}

function choose(n: number, k: number): Decimal {
  let ways = one;
  for (let i = 1; i <= k; i++) ways = ways.times(n - k + i).div(i);
  return ways;
}

/** Share of one drive's stripes that touch all of `failed` drives, by counting stripes. */
export function touchedShare({ drives, data, redundancy, spread }: LossModel, failed: number): Decimal {
  const width = data + redundancy;
  return spread ? choose(drives - failed, width - failed).div(choose(drives - 1, width - 1)) : one;
}

/** Mean number of defects that the last repair meets. */
export function defects(model: LossModel): Decimal {
  const bits = wide(model.driveBytes).times(8 * model.data).times(touchedShare(model, Math.max(1, model.redundancy)));
  const latent = wide(model.latentErrors).times(bits.div("8e12")).times(model.scrub).div(2 * 8760);
  return bits.times(one.minus(model.readErrorRate).ln().neg()).plus(latent);
}

export function repairHours(model: LossModel, failed: number): Decimal {
  if (!model.spread) return wide(model.repair);
  const copying = wide(model.repair).minus(model.wait).times(touchedShare(model, failed));
  return copying.times(model.drives - 1).div(model.drives - failed).plus(model.wait);
}

export function ratesOf(model: LossModel, rate = failureRate(model.afr)): WideRates {
  const { drives, redundancy } = model;
  const [lostByDrives, lostByReading] = [redundancy + 1, redundancy + 2];
  const unread = one.minus(defects(model).neg().exp());
  const from = Array.from({ length: redundancy + 3 }, () => new Map<number, Decimal>());
  const add = (state: number, to: number, rateTo: Decimal) => from[state]!.set(to, rateTo.plus(from[state]!.get(to) ?? 0));
  for (let failed = 0; failed <= redundancy; failed++) {
    const working = drives - failed;
    const pairs = working === 1 ? wide(0) : wide(model.sharedCause);
    add(failed, failed + 1, one.minus(pairs).times(working).times(rate));
    add(failed, Math.min(failed + 2, lostByDrives), pairs.times(working).div(2).times(rate));
    if (failed === 0) continue;
    const repairs = one.div(repairHours(model, failed));
    if (failed < redundancy) add(failed, failed - 1, repairs);
    else {
      add(failed, failed - 1, repairs.times(one.minus(unread)));
      add(failed, lostByReading, repairs.times(unread));
    }
  }
  return from;
}

function rateOut(rates: WideRates, state: number): Decimal {
  return [...rates[state]!.values()].reduce((sum, rate) => sum.plus(rate), wide(0));
}

function fastest(rates: WideRates): Decimal {
  return Decimal.max(...rates.map((_, state) => rateOut(rates, state)));
}

/** Chances of both losses within `hours`: the exponential of the rates, its series summed for 2^-n of the time and squared n times. */
export function chancesBySquaring(rates: WideRates, hours: Decimal): [byDrives: Decimal, byReading: Decimal] {
  const size = rates.length;
  const squarings = Math.max(0, Math.ceil(fastest(rates).times(hours).log(2).toNumber())) + 6;
  const piece = hours.div(wide(2).pow(squarings));
  const unit = (row: number) => Array.from({ length: size }, (_, column) => wide(row === column ? 1 : 0));
  let matrix = rates.map((_, row) => unit(row));
  for (let term = 40; term > 0; term--) {
    matrix = matrix.map((own, row) => {
      const next = unit(row);
      for (const [to, rate] of rates[row]!) {
        const factor = rate.times(piece).div(term);
        for (let column = 0; column < size; column++) next[column] = next[column]!.plus(factor.times(matrix[to]![column]!.minus(own[column]!)));
      }
      return next;
    });
  }
  for (let squaring = 0; squaring < squarings; squaring++) {
    const before = matrix;
    matrix = before.map((row) => row.map((_, column) => row.reduce((sum, entry, via) => sum.plus(entry.times(before[via]![column]!)), wide(0))));
  }
  return [matrix[0]![size - 2]!, matrix[0]![size - 1]!];
}

/** The same chances, look by look: how likely so many looks fall into the time, times where the chain is after so many. */
export function chancesByWatching(rates: WideRates, hours: Decimal): [byDrives: Decimal, byReading: Decimal] {
  const pace = fastest(rates);
  const looks = pace.times(hours);
  const jumps = rates.map((to, state) => [[state, one.minus(rateOut(rates, state).div(pace))] as const, ...[...to].map(([next, rate]) => [next, rate.div(pace)] as const)]);
  let place = rates.map((_, state) => wide(state === 0 ? 1 : 0));
  let likely = looks.neg().exp();
  const chances: [Decimal, Decimal] = [wide(0), wide(0)];
  for (let look = 0; look < 2 * looks.toNumber() + 300; look++) {
    for (const way of [0, 1] as const) chances[way] = chances[way].plus(likely.times(place.at(way - 2)!));
    const next = place.map(() => wide(0));
    place.forEach((chance, state) => {
      if (!chance.isZero()) for (const [to, share] of jumps[state]!) next[to] = next[to]!.plus(chance.times(share));
    });
    place = next;
    likely = likely.times(looks).div(look + 1);
  }
  return chances;
}

/**
 * Mean hours until either loss, by the book: a linear equation a state,
 *
 *     (sum of the rates out of i) · T(i) - Σ rate(i → j) · T(j) = 1
 *
 * solved by elimination with pivots, at 400 digits, as elimination loses as many as the answer has before its point.
 */
export function hoursByElimination(rates: WideRates): Decimal {
  const Wider = DecimalJs.clone({ precision: 400 });
  const states = rates.length - 2;
  const rows = Array.from({ length: states }, (_, i) => {
    const row = Array.from({ length: states + 1 }, (__, j) => new Wider(j === states ? 1 : 0));
    for (const [to, rate] of rates[i]!) {
      row[i] = row[i]!.plus(rate);
      if (to < states) row[to] = row[to]!.minus(rate);
    }
    return row;
  });
  for (let column = 0; column < states; column++) {
    const pivot = rows.findIndex((row, at) => at >= column && rows.every((other, below) => below < column || other[column]!.abs().lte(row[column]!.abs())));
    [rows[column], rows[pivot]] = [rows[pivot]!, rows[column]!];
    for (const row of rows.slice(column + 1)) {
      const factor = row[column]!.div(rows[column]![column]!);
      for (let at = column; at <= states; at++) row[at] = row[at]!.minus(factor.times(rows[column]![at]!));
    }
  }
  const hours: Decimal[] = [];
  for (let i = states - 1; i >= 0; i--) {
    const known = hours.reduce((sum, time, j) => sum.plus(time.times(rows[i]![j]!)), new Wider(0));
    hours[i] = rows[i]![states]!.minus(known).div(rows[i]![i]!);
  }
  return hours[0]!;
}
