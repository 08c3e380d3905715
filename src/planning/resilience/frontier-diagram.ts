import type { Chance } from "./chance";
import { eliminationOrder } from "./elimination-order";
import { placesAWord, StateTable } from "./state-table";
import type { TwoTerminalNetwork } from "./two-terminal-network";

/** What a decision diagram came to. */
export interface DiagramAnswer {
  /** Chance that the two ends are joined; null where the diagram outgrew its bound. */
  readonly chance: Chance | null;
  /** States of all levels together, and of the largest. */
  readonly states: number;
  readonly peak: number;
  /** Work done: states looked at times the width of their frontier. */
  readonly cells: number;
}

/** Numbers by which a state says what a place of the frontier belongs to; parts beside these are numbered from 3 as they appear. */
const dead = 0;
const withSource = 1;
const withSink = 2;
const firstPart = 3;

/** Widest frontier, two new nodes included, so that the number of every part fits five bits. */
const widestFrontier = 29;

/** One decision: whether a node or a link is up. */
interface Level {
  /** What the nodes that join the frontier here begin as; `firstPart` for a part of its own. */
  readonly enter: readonly number[];
  /** Places of the link's two ends in the frontier; the same place twice for a node. */
  readonly a: number;
  readonly b: number;
  readonly chance: Chance;
  /** Places of the frontier that are still needed afterwards. */
  readonly keep: Uint16Array;
  /** Of those, 1 where one link is still to come: alone in its part such a node leads nowhere. */
  readonly lastLink: Uint8Array;
  readonly sourceEntered: boolean;
  readonly sinkEntered: boolean;
}

/**
 * Computes how likely the two ends of a network are joined, exactly but for rounding.
 *
 * A decision diagram over nodes and links, kept one level at a time: a state says which nodes of the frontier hang together, which parts hold
 * an end and which nodes are down; equal states are one, their probabilities added. (The frontier method: Hardy, Lucet, Limnios, IEEE
 * Transactions on Reliability 56(3), 2007, from memory.)
 *
 * Gives up once more than `mostCells` cells (states times the width of their frontier) have been looked at, or where the frontier is too wide.
 */
export function frontierDiagram(network: TwoTerminalNetwork, mostCells: number): DiagramAnswer {
  let up = 0;
  let down = 0;
  let states = 0;
  let peak = 0;
  let cells = 0;
  let layer = new StateTable(0, 1);
  layer.add(1);
  const levels = planLevels(network);
  if (levels.some(({ keep }) => keep.length + 2 > widestFrontier)) return { chance: null, states, peak, cells };
  for (const level of levels) {
    const next = new StateTable(level.keep.length, 2 * layer.count);
    const settled = decide(level, layer, next);
    up += settled.up;
    down += settled.down;
    states += next.count;
    peak = Math.max(peak, next.count);
    cells += layer.count * (layer.width + 1);
    if (cells > mostCells) return { chance: null, states, peak, cells };
    layer = next;
  }
  return { chance: { up, down }, states, peak, cells };
}

/** Lays the decisions out: node by node in elimination order, each with its links to the nodes before it, the oldest first. */
function planLevels(network: TwoTerminalNetwork): Level[] {
  const { nodes, source, sink } = network;
  const order = eliminationOrder(network);
  const rank = new Int32Array(nodes.length);
  order.forEach((node, index) => (rank[node] = index));
  const backLinks = nodes.map((): { node: number; chance: Chance }[] => []);
  const remaining = new Int32Array(nodes.length);
  for (const { a, b, chance } of network.links) {
    const [early, late] = rank[a]! < rank[b]! ? [a, b] : [b, a];
    backLinks[late]!.push({ node: early, chance });
    remaining[a]! += 1;
    remaining[b]! += 1;
  }

  const levels: Level[] = [];
  let frontier: number[] = [];
  let entering: number[] = [];
  const entered = new Set<number>();
  const addLevel = (first: number, second: number, chance: Chance): void => {
    const before = frontier;
    frontier = before.filter((node) => remaining[node]! > 0);
    levels.push({
      enter: entering,
      a: before.indexOf(first),
      b: before.indexOf(second),
      chance,
      keep: Uint16Array.from(frontier, (node) => before.indexOf(node)),
      lastLink: Uint8Array.from(frontier, (node) => (remaining[node] === 1 ? 1 : 0)),
      sourceEntered: entered.has(source),
      sinkEntered: entered.has(sink),
    });
    entering = [];
  };
  for (const node of order) {
    frontier = [...frontier, node];
    entered.add(node);
    entering.push(node === source ? withSource : node === sink ? withSink : firstPart);
    if (nodes[node]!.down > 0) addLevel(node, node, nodes[node]!);
    for (const { node: early, chance } of backLinks[node]!.sort((x, y) => rank[x.node]! - rank[y.node]!)) {
      remaining[node]! -= 1;
      remaining[early]! -= 1;
      addLevel(early, node, chance);
    }
  }
  return levels;
}

/**
 * Makes the step from the states of one level to those of the next, and answers the probability of the states that are settled by it: the
 * two ends joined, or parted for good.
 *
 * One loop that allocates nothing: it runs millions of times.
 */
function decide(level: Level, layer: StateTable, next: StateTable): Chance {
  const { enter, a, b, chance, keep, lastLink } = level;
  const { width } = layer;
  const needed = (level.sourceEntered ? 1 << withSource : 0) | (level.sinkEntered ? 1 << withSink : 0);
  const parts = new Uint8Array(width + enter.length);
  const names = new Uint8Array(32);
  // Taken out of the loop: an import read in it costs three times the whole step in an unbundled build.
  const perWord = placesAWord;
  let up = 0;
  let down = 0;
  for (let state = 0; state < layer.count; state += 1) {
    const weight = layer.weights[state]!;
    layer.unpack(state, parts);
    // No part of a stored state has a number above its width plus two.
    for (let index = 0; index < enter.length; index += 1) parts[width + index] = enter[index] === firstPart ? firstPart + width + index : enter[index]!;

    const first = parts[a]!;
    const second = parts[b]!;
    const isNode = a === b;
    const changes = isNode || (first !== dead && second !== dead && first !== second);
    const into = first < second ? first : second;
    const gone = changes ? first + second - into : into;
    for (let outcome = 0; outcome < 2; outcome += 1) {
      const isUp = outcome === 0;
      const share = !changes ? (isUp ? weight : 0) : weight * (isUp ? chance.up : chance.down);
      if (share === 0) continue;
      if (isUp && into === withSource && gone === withSink) {
        up += share;
        continue;
      }
      if (isNode && !isUp) parts[a] = dead;
      const renamed = isUp ? gone : -1;

      let once = 0;
      let twice = 0;
      for (const place of keep) {
        const part = parts[place]!;
        const bit = 1 << (part === renamed ? into : part);
        twice |= once & bit;
        once |= bit;
      }
      if ((once & needed) !== needed) {
        down += share;
        continue;
      }

      let seen = 0;
      let fresh = firstPart;
      let word = 0;
      for (let index = 0; index < keep.length; index += 1) {
        let part = parts[keep[index]!]!;
        if (part === renamed) part = into;
        if (part >= firstPart) {
          const bit = 1 << part;
          if (lastLink[index] === 1 && (twice & bit) === 0) {
            part = dead;
          } else {
            if ((seen & bit) === 0) {
              seen |= bit;
              names[part] = fresh++;
            }
            part = names[part]!;
          }
        }
        word = (word << 5) | part;
        if (index % perWord === perWord - 1) {
          next.draft[(index / perWord) | 0] = word;
          word = 0;
        }
      }
      if (keep.length % perWord !== 0) next.draft[(keep.length / perWord) | 0] = word;
      next.add(share);
    }
  }
  return { up, down };
}
