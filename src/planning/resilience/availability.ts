import { noAnswer } from "../text";
import { chanceOf, impossible, inSeries, type Chance } from "./chance";
import { frontierDiagram, type DiagramAnswer } from "./frontier-diagram";
import { findEnds, type Graph } from "./graph";
import { searchFrom, stepsTo, type Search } from "./single-points";
import { reduceNetwork, type TwoTerminalNetwork } from "./two-terminal-network";

/** How likely two nodes are joined, and how large the diagrams were that it took. */
export interface Availability extends Chance {
  /** States of all diagrams together, and of their largest level; 0 where reductions were enough. */
  readonly states: number;
  readonly peak: number;
}

/** Most cells (states times the width of their frontier) of all diagrams before the question is refused: under two seconds. */
const mostCells = 30_000_000;

/**
 * Computes the probability that a path of links and nodes that are up joins `from` and `to`, exactly but for rounding.
 *
 * Links and nodes fail independently of each other; the two ends are nodes too, and count. The way is cut into stages at the single points,
 * what lies on no way is left out, each stage is reduced by series and parallel, and what remains goes through a decision diagram.
 * `up` and `down` each keep their own digits. Two nodes that nothing joins are down for certain.
 *
 * Refuses a network whose diagram outgrows a fixed size, the same on every machine; nothing is estimated.
 */
export function availability(graph: Graph, from: string, to: string): Availability {
  const [start, end] = findEnds(graph, from, to);
  const search = searchFrom(graph, start);
  if (search.reached[end] === -1) return { ...impossible, states: 0, peak: 0 };
  let chance: Chance = chanceOf(graph.nodeDown[start]!);
  let states = 0;
  let peak = 0;
  let cells = 0;
  for (const stage of stages(search, end)) {
    const answer = solve(reduceNetwork(stage.network), mostCells - cells);
    if (answer.chance === null) {
      throw noAnswer("links", graph.linkDown.length, `links are too closely meshed between from and to for an exact answer. Ask for a smaller part of the network.`);
    }
    chance = inSeries(chance, answer.chance, chanceOf(graph.nodeDown[stage.exit]!));
    states += answer.states;
    peak = Math.max(peak, answer.peak);
    cells += answer.cells;
  }
  return { ...leaveRoundingToTheLarger(chance), states, peak };
}

/** Keeps the digits of the smaller of the two, and makes the larger what is left of 1: there the rounding of a long sum shows least. */
function leaveRoundingToTheLarger({ up, down }: Chance): Chance {
  return up > down ? { up: 1 - down, down } : { up, down: 1 - up };
}

function solve(network: TwoTerminalNetwork, most: number): DiagramAnswer {
  const [only, ...others] = network.links;
  return only !== undefined && others.length === 0 ? { chance: only.chance, states: 0, peak: 0, cells: 0 } : frontierDiagram(network, most);
}

/** A part of the way between two single points, all of whose links lie on some way through it. */
interface Stage {
  readonly network: TwoTerminalNetwork;
  /** Node of the graph at its far end. */
  readonly exit: number;
}

/** Cuts the way from the start of a search to `end` at its single nodes, into one network for each block of the graph on the way. */
function stages(search: Search, end: number): Stage[] {
  const { graph, from } = search;
  const blockOfNode = blocks(search);
  const steps = stepsTo(search, end);
  const linksOf = new Map<number, number[]>(steps.map(({ node }) => [blockOfNode[node]!, []]));
  for (let link = 0; link < graph.linkDown.length; link += 1) {
    const [a, b] = [graph.ends[2 * link]!, graph.ends[2 * link + 1]!];
    linksOf.get(blockOfNode[search.reached[a]! > search.reached[b]! ? a : b]!)?.push(link);
  }
  let entry = from;
  return steps.flatMap(({ node }, index): Stage[] => {
    const block = blockOfNode[node]!;
    const next = steps[index + 1];
    if (next !== undefined && blockOfNode[next.node] === block) return [];
    const stage = { network: blockNetwork(graph, linksOf.get(block)!, entry, node), exit: node };
    entry = node;
    return [stage];
  });
}

/**
 * Numbers the blocks of the graph (its parts that no single node falls apart) by the node whose tree link opens them.
 *
 * The answer for a node is the block of the link by which it was reached. A link outside the tree is in the block of its lower end.
 */
function blocks({ reached, low, parent }: Search): Int32Array {
  const inOrder = new Int32Array(reached.length).fill(-1);
  reached.forEach((time, node) => {
    if (time !== -1) inOrder[time] = node;
  });
  const block = new Int32Array(reached.length).fill(-1);
  for (const node of inOrder) {
    if (node === -1) break;
    const above = parent[node]!;
    if (above !== -1) block[node] = low[node]! >= reached[above]! ? node : block[above]!;
  }
  return block;
}

function blockNetwork(graph: Graph, links: readonly number[], entry: number, exit: number): TwoTerminalNetwork {
  const places = new Map<number, number>();
  const nodes: Chance[] = [];
  const placeOf = (node: number): number => {
    let place = places.get(node);
    if (place === undefined) {
      place = nodes.length;
      places.set(node, place);
      nodes.push(chanceOf(graph.nodeDown[node]!));
    }
    return place;
  };
  const networkLinks = links.map((link) => ({
    a: placeOf(graph.ends[2 * link]!),
    b: placeOf(graph.ends[2 * link + 1]!),
    chance: chanceOf(graph.linkDown[link]!),
  }));
  return { nodes, links: networkLinks, source: placeOf(entry), sink: placeOf(exit) };
}
