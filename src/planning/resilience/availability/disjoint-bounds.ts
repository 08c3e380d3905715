import { certain, impossible, inParallel, inSeries, type Chance } from "./chance";
import type { NetworkLink, TwoTerminalNetwork } from "./two-terminal-network";

/** Looks at links that the search for paths may take; what has been found until then is a bound all the same. */
const mostLooks = 2_000_000;

/**
 * Computes a chance that a network is at least as good as: that one of some paths is up which share no part that can fail.
 *
 * Such paths fail independently. Always the most reliable path is taken that is left, until there is none.
 */
export function boundByPaths(network: TwoTerminalNetwork): Chance {
  const { links, nodes, source, sink } = network;
  const walk = walker(network);
  const isGone = { links: new Uint8Array(links.length), nodes: new Uint8Array(nodes.length) };
  const lengthOf = (gone: Uint8Array, chances: (place: number) => Chance) => (place: number): number => (gone[place] === 1 ? Infinity : -Math.log(chances(place).up));
  let bound = impossible;
  for (let looks = 0; bound.down > 0 && looks < mostLooks; looks += links.length) {
    const { distance, via } = walk(lengthOf(isGone.links, (link) => links[link]!.chance), lengthOf(isGone.nodes, (node) => nodes[node]!));
    if (distance[sink] === Infinity) break;
    let path = certain;
    for (let node = sink; node !== source; ) {
      const link = via[node]!;
      path = inSeries(inSeries(path, links[link]!.chance), nodes[node]!);
      if (links[link]!.chance.down > 0) isGone.links[link] = 1;
      if (nodes[node]!.down > 0) isGone.nodes[node] = 1;
      node = otherEnd(links[link]!, node);
    }
    bound = inParallel(bound, path);
  }
  return bound;
}

/**
 * Computes a chance that a network is at most as good as: that none of some cuts is wholly down which share no part.
 *
 * The cuts are the layers of the network by distance from the source, counted in parts that can fail: every path crosses each of them, and
 * they fail independently.
 */
export function boundByCuts(network: TwoTerminalNetwork): Chance {
  const { links, nodes, sink } = network;
  const lengthOf = ({ down }: Chance): number => (down > 0 ? 1 : 0);
  const { distance } = walker(network)((link) => lengthOf(links[link]!.chance), (node) => lengthOf(nodes[node]!));
  const cuts = new Array<Chance>(distance[sink]!).fill(impossible);
  const cross = (level: number, part: Chance): void => {
    if (level < cuts.length) cuts[level] = inParallel(cuts[level]!, part);
  };
  const entering = (node: number): number => distance[node]! - lengthOf(nodes[node]!);
  nodes.forEach((chance, node) => {
    if (chance.down > 0) cross(entering(node), chance);
  });
  for (const { a, b, chance } of links) {
    for (const [near, far] of [[a, b], [b, a]] as const) if (chance.down > 0 && entering(far) === distance[near]! + 1) cross(distance[near]!, chance);
  }
  return cuts.reduce(inSeries, certain);
}

interface Walk {
  /** Distance of each node from the source, its own length included. */
  readonly distance: Float64Array;
  /** Link by which each node is reached. */
  readonly via: Int32Array;
}

/** Makes the search for shortest ways from the source of a network, by lengths of links and nodes of 0 or more. */
function walker({ links, nodes, source }: TwoTerminalNetwork): (linkLength: (link: number) => number, nodeLength: (node: number) => number) => Walk {
  const linksAt = nodes.map((): number[] => []);
  links.forEach(({ a, b }, link) => {
    linksAt[a]!.push(link);
    linksAt[b]!.push(link);
  });
  return (linkLength, nodeLength) => {
    const distance = new Float64Array(nodes.length).fill(Infinity);
    const via = new Int32Array(nodes.length);
    distance[source] = 0;
    const waiting = new Set([source]);
    for (const node of waiting) {
      // A node whose distance shrinks later waits again.
      waiting.delete(node);
      for (const link of linksAt[node]!) {
        const next = otherEnd(links[link]!, node);
        const length = distance[node]! + linkLength(link) + nodeLength(next);
        if (length >= distance[next]!) continue;
        distance[next] = length;
        via[next] = link;
        waiting.add(next);
      }
    }
    return { distance, via };
  };
}

function otherEnd({ a, b }: NetworkLink, node: number): number {
  return a === node ? b : a;
}
