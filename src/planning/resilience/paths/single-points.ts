import { findEnds, linkName, notJoined, type Graph, type Point } from "./graph";

/** A depth-first search of a graph from one node, from which the single points to every other node can be read off. */
export interface Search {
  readonly graph: Graph;
  readonly from: number;
  /** When each node was reached, from 0; -1: never. */
  readonly reached: Int32Array;
  /** Earliest node that the subtree of each node reaches by one link outside the tree. */
  readonly low: Int32Array;
  /** Link by which each node was reached, and the node at its other end; -1 at the start. */
  readonly parentLink: Int32Array;
  readonly parent: Int32Array;
}

/**
 * Searches a graph depth first from node `from`, noting how far back each subtree reaches (Hopcroft and Tarjan, Algorithm 447,
 * Communications of the ACM 16(6), 1973). Takes time of nodes and links, and no recursion. All nodes are taken to forward.
 */
export function searchFrom(graph: Graph, from: number): Search {
  const count = graph.names.length;
  const reached = new Int32Array(count).fill(-1);
  const low = new Int32Array(count);
  const parentLink = new Int32Array(count).fill(-1);
  const parent = new Int32Array(count).fill(-1);
  const next = graph.firstNeighbour.slice();
  let clock = 0;
  reached[from] = clock++;
  for (let node = from; node !== -1; ) {
    const place = next[node]!;
    if (place === graph.firstNeighbour[node + 1]!) {
      const above = parent[node]!;
      if (above !== -1) low[above] = Math.min(low[above]!, low[node]!);
      node = above;
      continue;
    }
    next[node] = place + 1;
    const link = graph.neighbourLinks[place]!;
    const neighbour = graph.neighbours[place]!;
    if (link === parentLink[node]) continue;
    if (reached[neighbour] !== -1) {
      low[node] = Math.min(low[node]!, reached[neighbour]!);
      continue;
    }
    reached[neighbour] = low[neighbour] = clock++;
    parentLink[neighbour] = link;
    parent[neighbour] = node;
    node = neighbour;
  }
  return { graph, from, reached, low, parentLink, parent };
}

/** One link on the way to a node, with the node it leads to, and whether each of them alone parts the two ends. */
export interface Step {
  readonly link: number;
  readonly node: number;
  readonly linkParts: boolean;
  readonly nodeParts: boolean;
}

/**
 * Lists the steps of the tree path from the start of a search to `to`, which must have been reached.
 *
 * A link of that path parts its ends when nothing below it reaches above it; a node when nothing below the next node reaches above it.
 * What is not on the path can never part them.
 */
export function stepsTo(search: Search, to: number): Step[] {
  const { reached, low, parent, parentLink } = search;
  const steps: Step[] = [];
  let below = -1;
  for (let node = to; node !== search.from; node = parent[node]!) {
    const nodeParts = below !== -1 && low[below]! >= reached[node]!;
    const linkParts = low[node]! > reached[parent[node]!]!;
    steps.push({ link: parentLink[node]!, node, linkParts, nodeParts });
    below = node;
  }
  return steps.reverse();
}

/**
 * Lists every node and link whose loss alone parts `from` and `to`, in their order on the way; the two themselves are not among them.
 *
 * Refuses two nodes that nothing joins. To ask for many nodes from one end, use `searchFrom` once and `singlePointsTo` for each.
 */
export function singlePoints(whole: Graph, from: string, to: string): Point[] {
  const { graph, start, end } = findEnds(whole, from, to);
  const points = singlePointsTo(searchFrom(graph, start), end);
  if (points === null) throw notJoined(graph, from, to);
  return points;
}

/** Lists the single points on the way from the start of a search to node `to`, as `singlePoints` does; null where nothing joins them. */
export function singlePointsTo(search: Search, to: number): Point[] | null {
  if (search.reached[to] === -1) return null;
  return stepsTo(search, to).flatMap(({ link, node, linkParts, nodeParts }): Point[] => [
    ...(linkParts ? [{ kind: "link" as const, name: linkName(search.graph, link) }] : []),
    ...(nodeParts ? [{ kind: "node" as const, name: search.graph.names[node]! }] : []),
  ]);
}
