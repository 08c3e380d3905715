import Decimal from "decimal.js";

/** Arithmetic at 120 digits: elimination loses some to cancellation, 60 and more are left. */
const Wide = Decimal.clone({ precision: 120 });

/** What the chain is made of, in exact decimals. */
export interface WideChain {
  readonly drives: number;
  readonly tolerance: number;
  readonly failureRate: Decimal;
  readonly repairRate: Decimal;
  /** Chance that the repair out of the last state fails. */
  readonly fault: Decimal;
}

/**
 * Solves the mean hours to loss of a birth-death chain by the book: it sets up the linear system of mean times, one equation a state,
 *
 *     (sum of the rates out of i) · T(i) - Σ rate(i → j) · T(j) = 1
 *
 * and eliminates with pivots. Slow and general, it knows nothing of the chain's shape.
 */
export function meanHoursByElimination({ drives, tolerance, failureRate, repairRate, fault }: WideChain): Decimal {
  const states = tolerance + 1;
  const zero = new Wide(0);
  const rows = Array.from({ length: states }, () => Array.from({ length: states + 1 }, () => zero));
  for (let i = 0; i < states; i++) {
    const last = i === tolerance;
    const leave = new Wide(failureRate).times(drives - i);
    const back = i === 0 ? zero : new Wide(repairRate).times(last ? new Wide(1).minus(fault) : 1);
    const lost = last && i > 0 ? new Wide(repairRate).times(fault) : zero;
    rows[i]![i] = leave.plus(back).plus(lost);
    if (!last) rows[i]![i + 1] = leave.neg();
    if (i > 0) rows[i]![i - 1] = back.neg();
    rows[i]![states] = new Wide(1);
  }
  return solve(rows)[0]!;
}

/** Decimal of the same width as the solver's, for building its input. */
export function wide(value: number | string | Decimal): Decimal {
  return new Wide(value);
}

function solve(rows: Decimal[][]): Decimal[] {
  const size = rows.length;
  for (let column = 0; column < size; column++) {
    let pivot = column;
    for (let row = column + 1; row < size; row++) if (rows[row]![column]!.abs().gt(rows[pivot]![column]!.abs())) pivot = row;
    [rows[column], rows[pivot]] = [rows[pivot]!, rows[column]!];
    for (let row = column + 1; row < size; row++) {
      if (rows[row]![column]!.isZero()) continue;
      const factor = rows[row]![column]!.div(rows[column]![column]!);
      for (let at = column; at <= size; at++) rows[row]![at] = rows[row]![at]!.minus(factor.times(rows[column]![at]!));
    }
  }
  const answer: Decimal[] = [];
  for (let row = size - 1; row >= 0; row--) {
    let right = rows[row]![size]!;
    for (let at = row + 1; at < size; at++) right = right.minus(rows[row]![at]!.times(answer[at]!));
    answer[row] = right.div(rows[row]![row]!);
  }
  return answer;
}
