import type { Graph } from "../paths/graph";
import { inSeries, type Chance } from "./chance";
import { boundByCuts, boundByPaths } from "./disjoint-bounds";
import { drain } from "./drain";
import { frontierDiagram } from "./frontier-diagram";
import { wayBetween } from "./stages";

/** What is proved of the probability that two nodes are joined. */
export interface AvailabilityBounds {
  readonly low: number;
  readonly high: number;
  readonly gap: number;
}

/** Most cells of work of all diagrams: about a second. */
const mostCells = 15_000_000;

/** Relative error of one rounded operation. */
const rounding = 2 ** -53;

/** Most operations that a probability goes through in one step of a diagram, beside being added to others, and for one link elsewhere. */
const operationsAStep = 200;
const operationsALink = 20;

/**
 * Computes bounds that are proved for the probability that a path joins `from` and `to`: for graphs that `availability` refuses.
 *
 * Stage by stage, the better of two. Low: paths that share no part that can fail, or what a decision diagram found joined. High: cuts that
 * share no part, or all but what it found parted. The diagram gets a fixed amount of work, the same on every machine, and follows the
 * likeliest states; where nothing stays open the bounds meet. They are rounded outward by the most that all the operations can have rounded.
 */
export function availabilityBounds(graph: Graph, from: string, to: string): AvailabilityBounds {
  return drain(availabilityBoundsInTurns(graph, from, to));
}

/** Computes what `availabilityBounds` does, and yields after every so much work. */
export function* availabilityBoundsInTurns(graph: Graph, from: string, to: string): Generator<void, AvailabilityBounds, void> {
  const way = wayBetween(graph, from, to);
  if (way === null) return { low: 0, high: 0, gap: 0 };
  let worst = way.entry;
  let best = way.entry;
  let cellsLeft = mostCells;
  let operations = operationsALink * graph.linkDown.length;
  for (const [index, { network, exit }] of way.stages.entries()) {
    const { up, down, open, cells, additions } = yield* frontierDiagram(network, cellsLeft / (way.stages.length - index), false);
    const low = lessDown({ up, down: Math.min(1, down + open) }, boundByPaths(network));
    const high = moreDown({ up: Math.min(1, up + open), down }, boundByCuts(network));
    worst = inSeries(inSeries(worst, low), exit);
    best = inSeries(inSeries(best, high), exit);
    cellsLeft -= cells;
    operations += additions + operationsAStep * network.nodes.length;
  }
  const error = operations * rounding;
  const low = Math.max(0, smaller(moved(worst, error)));
  const high = Math.min(1, larger(moved(best, -error)));
  return { low, high, gap: high - low };
}

function lessDown(one: Chance, other: Chance): Chance {
  return one.down <= other.down ? one : other;
}

function moreDown(one: Chance, other: Chance): Chance {
  return one.down >= other.down ? one : other;
}

/** Computes the probability of being up from the smaller of the two, whose digits are kept, moved by a relative error: above 0 it makes it less up. */
function moved({ up, down }: Chance, error: number): number {
  return down <= up ? 1 - down * (1 + error) : up * (1 - error);
}

/** Answers a number at least one unit in the last place below, or above. */
function smaller(value: number): number {
  return value * (1 - 2 * rounding);
}

function larger(value: number): number {
  return value * (1 + 2 * rounding);
}
