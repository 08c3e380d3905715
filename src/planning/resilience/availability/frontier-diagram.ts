import { DiagramLevel } from "./diagram-level";
import { planSteps, type DiagramStep } from "./diagram-steps";
import type { TwoTerminalNetwork } from "./two-terminal-network";

/** Cells of work after which a diagram lets others have their turn: some milliseconds. */
const cellsATurn = 200_000;

/** Share of the work for which the likeliest states are followed alone, before all are: where parts seldom fail that is enough. */
const glanceShare = 1 / 16;

/** What may stay open, as a share of the smaller chance, in an answer that counts as exact: less than one operation rounds. */
const negligibleShare = 2 ** -53;

/** What a decision diagram came to. */
export interface DiagramAnswer {
  /** Probability of the states in which the two ends were found joined, and of those in which they were parted for good. */
  readonly up: number;
  readonly down: number;
  /** Probability of the states left open for want of work, at most; 0 where the other two are exact but for rounding. */
  readonly open: number;
  /** States of all levels together, and of the largest; 0 where reductions were enough. */
  readonly states: number;
  readonly peak: number;
  /** Work done: words of the states written. */
  readonly cells: number;
  /** Times that one probability was added to another. */
  readonly additions: number;
}

/** What a diagram comes to that is too wide to begin. */
const unbegun: DiagramAnswer = { up: 0, down: 0, open: 1, states: 0, peak: 0, cells: 0, additions: 0 };

/**
 * Computes how likely the two ends of a network are joined, exactly but for rounding where nothing stays open.
 *
 * A decision diagram over the nodes, kept one level at a time: a state says which places of the frontier hang together and which parts hold
 * an end; places that may be exchanged are counted and not told apart; equal states are one, their probabilities added. (The frontier
 * method: Hardy, Lucet, Limnios, IEEE Transactions on Reliability 56(3), 2007, from memory; the counting is our own.)
 *
 * Takes at most `mostCells` cells of work, the same on every machine. Where that may be too little, each step takes but its share, the heaviest
 * states first, so that little stays open; that is all unless the answer must be exact, in which case every state is settled if so much
 * work allows it. All is open where the frontier is too wide. Yields after every so much work.
 */
export function* frontierDiagram(network: TwoTerminalNetwork, mostCells: number, mustBeExact: boolean): Generator<void, DiagramAnswer, void> {
  const [only, ...others] = network.links;
  if (only !== undefined && others.length === 0) return { ...unbegun, ...only.chance, open: 0 };
  const steps = planSteps(network);
  if (steps === null) return unbegun;
  if (!mustBeExact) return yield* runDiagram(steps, mostCells, true, Infinity);
  // The smaller chance is a half at most.
  const glance = yield* runDiagram(steps, glanceShare * mostCells, true, negligibleShare / 2);
  if (isExact(glance)) return glance;
  const whole = yield* runDiagram(steps, mostCells - glance.cells, false, 0);
  return { ...whole, cells: glance.cells + whole.cells };
}

/** Tells whether no more was left open than rounding takes. */
export function isExact({ up, down, open }: DiagramAnswer): boolean {
  return open <= negligibleShare * Math.min(up, down);
}

/** Runs a diagram, sharing the work out among its steps or not, until more than `mostOpen` has been left open. */
function* runDiagram(steps: readonly DiagramStep[], mostCells: number, isSharing: boolean, mostOpen: number): Generator<void, DiagramAnswer, void> {
  const level = new DiagramLevel();
  let states = 0;
  let peak = 0;
  let turnEnds = cellsATurn;
  for (const [index, step] of steps.entries()) {
    // Twice an even share of what is left, as the steps in the middle need more than those at either end; the last step may take all.
    const share = isSharing ? 2 / (steps.length - index + 1) : 1;
    level.begin(step, level.cells + share * (mostCells - level.cells), isSharing);
    while (level.expand(turnEnds)) {
      turnEnds = level.cells + cellsATurn;
      yield;
    }
    level.end();
    states += level.count;
    peak = Math.max(peak, level.count);
    if (level.open > mostOpen) {
      // Given up: what would go on to the next level stays open too.
      level.open = 1;
      break;
    }
  }
  const { up, down, open, cells, additions } = level;
  return { up, down, open, states, peak, cells, additions };
}
