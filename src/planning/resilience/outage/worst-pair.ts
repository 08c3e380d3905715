import { noAnswer } from "../../text";
import type { DomainValues } from "./domain-values";
import { isWorse, lossWith, type Loss, type LossTally } from "./losses";

/** The worst two values, by their places. */
export interface WorstPair {
  readonly first: number;
  readonly second: number;
  readonly loss: Loss;
}

/** Most work on pairs before a placement is refused: about a second. */
const mostWork = 50_000_000;

/**
 * Finds the worst pair of values without trying them all; null where there is but one. `losses` are those of single values.
 *
 * Losing more members never makes an outcome better. So a value whose members all go with another value is left out (unless pieces are spread by
 * domain, where each column is taken by itself), and, with the values sorted by how many members they take, a pair is passed over once neither
 * of the two bounds on it (members lost, losses left) can beat the worst pair so far.
 */
export function worstPair(cells: DomainValues, losses: readonly Loss[], tally: LossTally, isByDomain: boolean): WorstPair | null {
  const { values, pairs } = cells;
  if (values.length < 2) return null;
  let worst = null as WorstPair | null;
  const consider = (a: number, b: number, both: readonly number[]): void => {
    const loss = tally.lossOf(a, b, both);
    if (worst === null || isWorse(loss, worst.loss)) worst = { first: Math.min(a, b), second: Math.max(a, b), loss };
  };
  for (const { first, second, members } of pairs) consider(first, second, members);

  const size = (value: number): number => values[value]!.members.length;
  const bySize = [...values.keys()].sort((a, b) => size(b) - size(a) || a - b);
  const undominated = isByDomain ? bySize : bySize.filter((value) => !isDominated(value, cells));
  // Where one value takes all that any other takes, its pair with any other is as bad as it alone.
  const kept = undominated.length > 1 ? undominated : bySize.slice(0, 2);

  const mostAfter = kept.map((value) => tally.mostTaken(value));
  for (let index = kept.length - 2; index >= 0; index -= 1) mostAfter[index] = Math.max(mostAfter[index]!, mostAfter[index + 1]!);

  for (let i = 0; i + 1 < kept.length; i += 1) {
    const a = kept[i]!;
    for (let j = i + 1; j < kept.length; j += 1) {
      const b = kept[j]!;
      if (worst !== null && !canBeWorse(losses[a]!, mostAfter[j]!, size(a) + size(b), worst)) break;
      consider(a, b, []);
      tally.work += 8;
      if (tally.work > mostWork) {
        throw noAnswer("placement", null, "placement has too many domains that cut across each other for its worst pair. Give fewer columns or rows.");
      }
    }
  }
  return worst;
}

/** Tells whether a value with `loss` and any that takes at most `most` from one group and `lost` members with it can beat `worst`. */
function canBeWorse(loss: Loss, most: number, lost: number, worst: WorstPair): boolean {
  return isWorse(lossWith(lost, loss.survives ? loss.left - most : -1), worst.loss);
}

/** Tells whether another value takes all that this one takes, and more or the same earlier on. */
function isDominated(value: number, { values, soleValue }: DomainValues): boolean {
  const { members } = values[value]!;
  const [member] = members;
  if (member === undefined) return true;
  return soleValue.some((column) => {
    const other = column[member]!;
    const comesFirst = other >= 0 && (values[other]!.members.length > members.length || other < value);
    return comesFirst && members.every((one) => column[one] === other);
  });
}
