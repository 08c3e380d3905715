import { certain, inParallel, inSeries, type Chance } from "./chance";

/** A link of a network, with the places of its two nodes. */
export interface NetworkLink {
  readonly a: number;
  readonly b: number;
  readonly chance: Chance;
}

/** A network between two nodes that are always up; the nodes are numbered from 0. */
export interface TwoTerminalNetwork {
  readonly nodes: readonly Chance[];
  readonly links: readonly NetworkLink[];
  readonly source: number;
  readonly sink: number;
}

/**
 * Shrinks a network without changing how likely its two ends are joined; afterwards at most one link joins any two nodes.
 *
 * Links between the same two nodes become one (parallel); a node with two links and the links become one link (series); a node with one link
 * is left out, for no way leads through it. Whatever a reduction makes possible is done too, in time of nodes and links.
 */
export function reduceNetwork(network: TwoTerminalNetwork): TwoTerminalNetwork {
  const { source, sink } = network;
  const linksAt = network.nodes.map(() => new Map<number, Chance>());
  const join = (a: number, b: number, chance: Chance): void => {
    const there = linksAt[a]!.get(b);
    const joined = there === undefined ? chance : inParallel(there, chance);
    linksAt[a]!.set(b, joined);
    linksAt[b]!.set(a, joined);
  };
  // Sorted, so that parallel links come to the same digits wherever they stand: what looks alike to a reader must be equal here.
  for (const { a, b, chance } of [...network.links].sort((one, other) => one.chance.down - other.chance.down)) join(a, b, chance);

  const removed = new Uint8Array(network.nodes.length);
  const waiting = network.nodes.map((_, node) => node);
  for (let node = waiting.pop(); node !== undefined; node = waiting.pop()) {
    // A hub is asked about once for each neighbour that goes: its links are not to be listed each time.
    if (removed[node] === 1 || node === source || node === sink || linksAt[node]!.size > 2) continue;
    const links = [...linksAt[node]!];
    removed[node] = 1;
    for (const [neighbour] of links) linksAt[neighbour]!.delete(node);
    if (links.length === 2) {
      const [[a, first], [b, second]] = links as [[number, Chance], [number, Chance]];
      join(a, b, inSeries(inSeries(first, second), network.nodes[node]!));
    }
    waiting.push(...links.map(([neighbour]) => neighbour));
  }

  const kept = network.nodes.map((_, node) => node).filter((node) => removed[node] === 0);
  const place = new Map(kept.map((node, index) => [node, index]));
  return {
    nodes: kept.map((node) => (node === source || node === sink ? certain : network.nodes[node]!)),
    links: kept.flatMap((a) => [...linksAt[a]!].filter(([b]) => a < b).map(([b, chance]) => ({ a: place.get(a)!, b: place.get(b)!, chance }))),
    source: place.get(source)!,
    sink: place.get(sink)!,
  };
}
