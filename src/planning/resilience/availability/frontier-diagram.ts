import { DiagramLevel } from "./diagram-level";
import { planSteps } from "./diagram-steps";
import type { TwoTerminalNetwork } from "./two-terminal-network";

/** Cells of work after which a diagram lets others have their turn: some milliseconds. */
const cellsATurn = 200_000;

/** What a decision diagram came to. */
export interface DiagramAnswer {
  /** Probability of the states in which the two ends were found joined, and of those in which they were parted for good. */
  readonly up: number;
  readonly down: number;
  /** Probability of the states left open for want of work; 0 where the other two are exact but for rounding. */
  readonly open: number;
  /** States of all levels together, and of the largest; 0 where reductions were enough. */
  readonly states: number;
  readonly peak: number;
  /** Work done: words of the states written. */
  readonly cells: number;
  /** Times that one probability was added to another. */
  readonly additions: number;
}

const unbegun: DiagramAnswer = { up: 0, down: 0, open: 0, states: 0, peak: 0, cells: 0, additions: 0 };

/** How many times its even share of the work that is left a step may take: the steps in the middle need more than those at either end. */
const sharesAStep = 3;

/**
 * Computes how likely the two ends of a network are joined, exactly but for rounding where nothing stays open.
 *
 * A decision diagram over the nodes, kept one level at a time: a state says which places of the frontier hang together and which parts hold
 * an end; places that may be exchanged are counted and not told apart; equal states are one, their probabilities added. (The frontier
 * method: Hardy, Lucet, Limnios, IEEE Transactions on Reliability 56(3), 2007, from memory; the counting is our own.)
 *
 * Takes at most `mostCells` cells of work, the same on every machine. Where that may not be enough and `isBounding`, each step takes but
 * its share, the heaviest states first, so that little stays open; else what is over stays open as it comes. All is open where the frontier is
 * too wide, and nothing is left to do where reductions came down to one link. Yields after every so much work.
 */
export function* frontierDiagram(network: TwoTerminalNetwork, mostCells: number, isBounding: boolean): Generator<void, DiagramAnswer, void> {
  const [only, ...others] = network.links;
  if (only !== undefined && others.length === 0) return { ...unbegun, ...only.chance };
  const steps = planSteps(network);
  if (steps === null) return { ...unbegun, open: 1 };
  const level = new DiagramLevel();
  let states = 0;
  let peak = 0;
  let turnEnds = cellsATurn;
  for (const [index, step] of steps.entries()) {
    const left = mostCells - level.cells;
    level.begin(step, level.cells + (isBounding ? Math.min(left, (sharesAStep * left) / (steps.length - index)) : left), isBounding);
    while (level.expand(turnEnds)) {
      turnEnds = level.cells + cellsATurn;
      yield;
    }
    level.end();
    states += level.count;
    peak = Math.max(peak, level.count);
  }
  const { up, down, open, cells, additions } = level;
  return { up, down, open, states, peak, cells, additions };
}
