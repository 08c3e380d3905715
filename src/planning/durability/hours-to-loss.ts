import type { LossChain } from "./loss-chain";

/**
 * Computes the mean hours until a chain loses data, from no drive failed.
 *
 * States are taken out from below, one by one: what leads down from a state comes back to it, passes it or is lost, after the time
 * spent below. Then the mean times follow from the top. Only positive numbers are added, multiplied and divided, so no digits are lost
 * however rare the loss (the elimination of Grassmann, Taksar and Heyman, 1985). Infinity where a double cannot hold the answer.
 */
export function meanHoursToLoss(chain: LossChain): number {
  let [next, afterNext] = [0, 0];
  for (const { hours, toNext, toAfterNext } of takeOutFromBelow(chain).reverse()) {
    [next, afterNext] = [hours + toNext * next + toAfterNext * afterNext, next];
    // From here on 0 · Infinity could arise.
    if (next === Infinity) break;
  }
  return next;
}

/** How a state is left for good once all states below it are taken out: the hours that takes, and where it leads. */
interface Passage {
  readonly hours: number;
  readonly toNext: number;
  readonly toAfterNext: number;
  readonly lost: number;
}

function takeOutFromBelow(chain: LossChain): Passage[] {
  let below: Passage = { hours: 0, toNext: 0, toAfterNext: 0, lost: 0 };
  return chain.map(({ one, two, repaired, unread }) => {
    const next = one + repaired * below.toAfterNext;
    const lost = unread + repaired * below.lost;
    const onward = next + two + lost;
    below = { hours: (1 + repaired * below.hours) / onward, toNext: next / onward, toAfterNext: two / onward, lost: lost / onward };
    return below;
  });
}
