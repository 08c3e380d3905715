import { foldName, invalid, noAnswer, quote } from "../../text";

/** A cable between two things, both ways alike. */
export interface Link {
  readonly from: string;
  readonly to: string;
  /** Share of the time it is down, 0 to 1; 0 where it is left out. */
  readonly unavailability?: number;
  /** Where it stands, for a sentence about it, such as `links row 4`. */
  readonly at?: string;
}

/** A thing that links join, where more than its name is known. */
export interface FallibleNode {
  readonly name: string;
  /** Share of the time it is down, 0 to 1; 0 where it is left out. */
  readonly unavailability?: number;
  /** Whether it passes on what is meant for others, as a switch does; hosts and arrays do not. True where it is left out. */
  readonly forwards?: boolean;
  /** Where it stands, for a sentence about it, such as `nodes row 2`. */
  readonly at?: string;
}

/**
 * Undirected graph of nodes and links, both numbered from 0 in order of appearance; several links may join the same two nodes.
 *
 * The links at node v stand at `neighbourLinks[firstNeighbour[v]] .. neighbourLinks[firstNeighbour[v + 1] - 1]`, and the nodes at their
 * other ends at the same places of `neighbours`.
 */
export interface Graph {
  /** Names as first written. */
  readonly names: readonly string[];
  /** The two ends of link i at 2i and 2i + 1. */
  readonly ends: Int32Array;
  readonly linkDown: Float64Array;
  readonly nodeDown: Float64Array;
  /** 1 for each node that paths between others may run through. */
  readonly forwards: Uint8Array;
  readonly firstNeighbour: Int32Array;
  readonly neighbours: Int32Array;
  readonly neighbourLinks: Int32Array;
  /** Node by folded name. */
  readonly nodeNumbers: ReadonlyMap<string, number>;
}

/** Most links that a graph is built from. */
export const mostLinks = 200_000;

/**
 * Builds a graph from a table of links, and what is known of its nodes: that they can be down, or do not forward.
 *
 * Names match without case. Takes time of links and nodes. Refuses a link from a node to itself, a node given twice, and one that no link
 * joins, which is most often a misspelling.
 */
export function buildGraph(links: readonly Link[], nodes: readonly FallibleNode[] = []): Graph {
  if (links.length > mostLinks) throw noAnswer("links", links.length, `links has ${links.length} rows; ${mostLinks} are the most. Give the links of one site.`);
  const names: string[] = [];
  const nodeNumbers = new Map<string, number>();
  const nodeOf = (name: string): number => {
    const key = foldName(name);
    let node = nodeNumbers.get(key);
    if (node === undefined) {
      node = names.length;
      nodeNumbers.set(key, node);
      names.push(name);
    }
    return node;
  };
  const ends = new Int32Array(2 * links.length);
  const linkDown = new Float64Array(links.length);
  links.forEach(({ from, to, unavailability = 0, at = "links" }, link) => {
    const [a, b] = [nodeOf(from), nodeOf(to)];
    if (a === b) throw invalid("links", from, `${at} joins ${quote(from)} to itself. Give two different ends.`);
    ends[2 * link] = a;
    ends[2 * link + 1] = b;
    linkDown[link] = unavailability;
  });
  return { names, ends, linkDown, ...readNodes(nodes, nodeNumbers), ...listNeighbours(ends, names.length), nodeNumbers };
}

function readNodes(nodes: readonly FallibleNode[], nodeNumbers: ReadonlyMap<string, number>): Pick<Graph, "nodeDown" | "forwards"> {
  const nodeDown = new Float64Array(nodeNumbers.size);
  const forwards = new Uint8Array(nodeNumbers.size).fill(1);
  const given = new Set<number>();
  for (const { name, unavailability = 0, forwards: passesOn = true, at = "nodes" } of nodes) {
    const node = nodeNumbers.get(foldName(name));
    if (node === undefined) throw invalid("nodes", name, `${at}: ${quote(name)} is at no end of links. Mend the name or add its link.`);
    if (given.has(node)) throw invalid("nodes", name, `${at}: ${quote(name)} stands twice. Give each node one row.`);
    given.add(node);
    nodeDown[node] = unavailability;
    forwards[node] = passesOn ? 1 : 0;
  }
  return { nodeDown, forwards };
}

function listNeighbours(ends: Int32Array, nodes: number): Pick<Graph, "firstNeighbour" | "neighbours" | "neighbourLinks"> {
  const firstNeighbour = new Int32Array(nodes + 1);
  for (const node of ends) firstNeighbour[node + 1]! += 1;
  for (let node = 0; node < nodes; node += 1) firstNeighbour[node + 1]! += firstNeighbour[node]!;
  const next = firstNeighbour.slice();
  const neighbours = new Int32Array(ends.length);
  const neighbourLinks = new Int32Array(ends.length);
  ends.forEach((node, end) => {
    const place = next[node]!;
    next[node] = place + 1;
    neighbours[place] = ends[end ^ 1]!;
    neighbourLinks[place] = end >> 1;
  });
  return { firstNeighbour, neighbours, neighbourLinks };
}

/** Two ends, and the part of a graph that paths between them may run through. */
export interface EndPair {
  /** Nodes as in the whole graph; links of which an end neither forwards nor is an end of the question are left out. */
  readonly graph: Graph;
  readonly start: number;
  readonly end: number;
}

/**
 * Finds the two ends of a question about a graph, and what of it paths between them may run through: no path runs through another host.
 *
 * Refuses a name that no link has, and two ends that are one.
 */
export function findEnds(graph: Graph, from: string, to: string): EndPair {
  const [start, end] = [findNode(graph, from, "from"), findNode(graph, to, "to")];
  if (start === end) throw invalid("to", to, `to ${quote(to)} is the same node as from. Give two different nodes.`);
  return { graph: withoutBystanders(graph, start, end), start, end };
}

function findNode(graph: Graph, name: string, argument: string): number {
  const node = graph.nodeNumbers.get(foldName(name));
  if (node === undefined) throw invalid(argument, name, `${argument} ${quote(name)} is at no end of links. Write a name that stands there.`);
  return node;
}

function withoutBystanders(graph: Graph, start: number, end: number): Graph {
  if (!graph.forwards.includes(0)) return graph;
  const isOnPaths = (node: number): boolean => graph.forwards[node] === 1 || node === start || node === end;
  const kept = Array.from(graph.linkDown, (_, link) => link).filter((link) => isOnPaths(graph.ends[2 * link]!) && isOnPaths(graph.ends[2 * link + 1]!));
  const ends = Int32Array.from(kept.flatMap((link) => [graph.ends[2 * link]!, graph.ends[2 * link + 1]!]));
  return { ...graph, ends, linkDown: Float64Array.from(kept, (link) => graph.linkDown[link]!), ...listNeighbours(ends, graph.names.length) };
}

/** Makes the problem of two nodes that no chain of links joins. */
export function notJoined(graph: Graph, from: string, to: string): Error {
  const [what, mend] = graph.forwards.includes(0) ? ["nothing that forwards", "mend a name or nodes"] : ["nothing", "mend a name"];
  return noAnswer("links", from, `links: ${what} joins ${quote(from)} to ${quote(to)}. Add the missing link or ${mend}.`);
}

/** Names a link by its ends, such as `SW1 - Host 3`; the second and further ones between the same two nodes carry their number. */
export function linkName(graph: Graph, link: number): string {
  const [a, b] = [graph.ends[2 * link]!, graph.ends[2 * link + 1]!];
  let number = 1;
  for (let place = graph.firstNeighbour[a]!; place < graph.firstNeighbour[a + 1]!; place += 1) {
    if (graph.neighbours[place] === b && graph.neighbourLinks[place]! < link) number += 1;
  }
  const name = `${graph.names[a]} - ${graph.names[b]}`;
  return number === 1 ? name : `${name} (${number})`;
}

/** A node or link of a graph, by what it is called. */
export interface Point {
  readonly kind: "node" | "link";
  readonly name: string;
}
