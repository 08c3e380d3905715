import { findEnds, type Graph } from "../paths/graph";
import { searchFrom, stepsTo, type Search } from "../paths/single-points";
import { chanceOf, type Chance } from "./chance";
import { reduceNetwork, type TwoTerminalNetwork } from "./two-terminal-network";

/** A part of the way between two single points, reduced; all of its links lie on some way through it. */
export interface Stage {
  readonly network: TwoTerminalNetwork;
  /** The node at its far end. */
  readonly exit: Chance;
}

/** The way between two ends: its first node, then stage after stage, all of which are needed. */
export interface Way {
  readonly entry: Chance;
  readonly stages: readonly Stage[];
}

/**
 * Cuts the way from `from` to `to` at its single nodes, into one network for each block of the graph on the way; null where nothing joins them.
 *
 * What lies on no way is left out, and each network is reduced.
 */
export function wayBetween(whole: Graph, from: string, to: string): Way | null {
  const { graph, start, end } = findEnds(whole, from, to);
  const search = searchFrom(graph, start);
  if (search.reached[end] === -1) return null;
  const blockOfNode = blocks(search);
  const steps = stepsTo(search, end);
  const linksOf = new Map<number, number[]>(steps.map(({ node }) => [blockOfNode[node]!, []]));
  for (let link = 0; link < graph.linkDown.length; link += 1) {
    const [a, b] = [graph.ends[2 * link]!, graph.ends[2 * link + 1]!];
    linksOf.get(blockOfNode[search.reached[a]! > search.reached[b]! ? a : b]!)?.push(link);
  }
  let entry = start;
  const stages = steps.flatMap(({ node }, index): Stage[] => {
    const block = blockOfNode[node]!;
    const next = steps[index + 1];
    if (next !== undefined && blockOfNode[next.node] === block) return [];
    const network = reduceNetwork(blockNetwork(graph, linksOf.get(block)!, entry, node));
    entry = node;
    return [{ network, exit: chanceOf(graph.nodeDown[node]!) }];
  });
  return { entry: chanceOf(graph.nodeDown[start]!), stages };
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
