import { noAnswer } from "../../text";
import type { Graph } from "../paths/graph";
import { chanceOf, impossible, inSeries, type Chance } from "./chance";
import { drain } from "./drain";
import { frontierDiagram, isExact } from "./frontier-diagram";
import { wayBetween } from "./stages";

/** How likely two nodes are joined, and how large the diagrams were that it took. */
export interface Availability extends Chance {
  /** States of all diagrams together, and of their largest level; 0 where reductions were enough. */
  readonly states: number;
  readonly peak: number;
}

/** Most cells of work of all diagrams before the question is refused: one to two seconds. */
const mostCells = 64_000_000;

/**
 * Computes the probability that a path of links and nodes that are up joins `from` and `to`, exactly but for rounding.
 *
 * Links and nodes fail independently of each other; the two ends are nodes too, and count; no path runs through a node that does not forward.
 * The way is cut into stages at the single points, what lies on no way is left out, each stage is reduced by series and parallel, and what
 * remains goes through a decision diagram, of which no more is left out than rounding is. `up` and `down` each keep their own digits. Two
 * nodes that nothing joins are down for certain.
 *
 * Refuses a network whose diagram outgrows a fixed amount of work, the same on every machine; nothing is estimated.
 */
export function availability(graph: Graph, from: string, to: string): Availability {
  return drain(availabilityInTurns(graph, from, to));
}

/** Computes what `availability` does, and yields after every so much work. */
export function* availabilityInTurns(graph: Graph, from: string, to: string): Generator<void, Availability, void> {
  const way = wayBetween(graph, from, to);
  if (way === null) return { ...impossible, states: 0, peak: 0 };
  let chance = way.entry;
  let states = 0;
  let peak = 0;
  let cellsLeft = mostCells;
  for (const { network, exit } of way.stages) {
    const answer = yield* frontierDiagram(network, cellsLeft, true);
    if (!isExact(answer)) {
      throw noAnswer("links", graph.linkDown.length, "links are too closely meshed between from and to for an exact answer. Ask AVAILBOUNDS, or for a smaller part of the network.");
    }
    chance = inSeries(inSeries(chance, answer), exit);
    states += answer.states;
    peak = Math.max(peak, answer.peak);
    cellsLeft -= answer.cells;
  }
  return { ...leaveRoundingToTheLarger(chance), states, peak };
}

/** Keeps the digits of the smaller of the two, and makes the larger what is left of 1: there the rounding of a long sum shows least. */
function leaveRoundingToTheLarger({ up, down }: Chance): Chance {
  return up > down ? chanceOf(down) : { up, down: 1 - up };
}
