// Slow twins: answers by trying everything, for graphs of a few links.
import type { FallibleNode, Link } from "../../../../src/planning/resilience";

/** Names of the nodes that do not forward. */
function endNodes(nodes: readonly FallibleNode[]): ReadonlySet<string> {
  return new Set(nodes.filter(({ forwards = true }) => !forwards).map(({ name }) => name));
}

/** Tells whether `to` can be reached from `from` over the links given, without the nodes in `gone`, and through none of those that do not forward. */
export function isJoined(links: readonly Link[], from: string, to: string, gone: ReadonlySet<string> = new Set(), nodes: readonly FallibleNode[] = []): boolean {
  if (gone.has(from) || gone.has(to)) return false;
  const stops = endNodes(nodes);
  const reached = new Set([from]);
  for (let grown = true; grown; ) {
    grown = false;
    for (const link of links) {
      for (const [near, far] of [[link.from, link.to], [link.to, link.from]] as const) {
        if (gone.has(near) || gone.has(far) || !reached.has(near) || reached.has(far) || (near !== from && stops.has(near))) continue;
        reached.add(far);
        grown = true;
      }
    }
  }
  return reached.has(to);
}

/** A graph as bits: a bit for each node, for each link the bits of its two ends, and the bits of the nodes that forward. */
interface BitGraph {
  readonly linkEnds: readonly number[];
  readonly bitOf: (name: string) => number;
  readonly forwarding: number;
}

function asBits(links: readonly Link[], nodes: readonly FallibleNode[]): BitGraph {
  const names = [...new Set(links.flatMap((link) => [link.from, link.to]))];
  const bitOf = (name: string): number => 1 << names.indexOf(name);
  const stops = endNodes(nodes);
  const forwarding = names.reduce((bits, name) => (stops.has(name) ? bits : bits | bitOf(name)), 0);
  return { linkEnds: links.map((link) => bitOf(link.from) | bitOf(link.to)), bitOf, forwarding };
}

/** Tells whether `to` can be reached from `from` without the nodes in `gone` and the links in `cut`, both as bits; only `forwarding` nodes pass on. */
function reaches({ linkEnds, forwarding }: BitGraph, from: number, to: number, gone: number, cut: number): boolean {
  if (((from | to) & gone) !== 0) return false;
  const working = linkEnds.filter((ends, link) => (ends & gone) === 0 && ((cut >> link) & 1) === 0);
  let reached = from;
  for (let before = 0; before !== reached; ) {
    before = reached;
    for (const ends of working) if ((ends & reached & (forwarding | from)) !== 0) reached |= ends;
  }
  return (reached & to) !== 0;
}

/** Bits behind the point of the numbers that combinations are added up in: about 240 digits. */
const fractionBits = 800n;

/** Writes a probability as a whole number of 2^-800: exactly, where it has no digits beyond that. */
function asFixed(probability: number): bigint {
  let [whole, doublings] = [probability, 0n];
  for (; !Number.isInteger(whole); doublings += 1n) whole *= 2;
  return (BigInt(whole) << fractionBits) >> doublings;
}

function asNumber(fixed: bigint): number {
  const dropped = Math.max(0, fixed.toString(2).length - 64);
  return Number(fixed >> BigInt(dropped)) * 2 ** (dropped - Number(fractionBits));
}

/** Adds up the probability of every combination of what is up and what is down, with 800 bits, so that the smaller sum keeps its digits. */
export function enumerateAvailability(links: readonly Link[], nodes: readonly FallibleNode[], from: string, to: string): { up: number; down: number } {
  const graph = asBits(links, nodes);
  const { bitOf } = graph;
  const nodeBits = nodes.map(({ name }) => bitOf(name));
  const one = 1n << fractionBits;
  const parts = [...links, ...nodes].map(({ unavailability = 0 }) => asFixed(unavailability));
  const sums = { up: 0n, down: 0n };
  const addFrom = (part: number, combination: number, probability: bigint): void => {
    if (probability === 0n) return;
    if (part === parts.length) {
      const gone = nodeBits.reduce((bits, bit, index) => bits | ((combination >> (links.length + index)) & 1 ? bit : 0), 0);
      sums[reaches(graph, bitOf(from), bitOf(to), gone, combination) ? "up" : "down"] += probability;
      return;
    }
    addFrom(part + 1, combination, (probability * (one - parts[part]!)) >> fractionBits);
    addFrom(part + 1, combination | (1 << part), (probability * parts[part]!) >> fractionBits);
  };
  addFrom(0, 0, one);
  return { up: asNumber(sums.up), down: asNumber(sums.down) };
}

/** Lists the nodes between the two ends. */
export function innerNodes(links: readonly Link[], from: string, to: string): string[] {
  return [...new Set(links.flatMap((link) => [link.from, link.to]))].filter((name) => name !== from && name !== to);
}

/** Finds the size of a smallest set of inner nodes and links, or of links alone, that parts the ends, trying all sets of one size after another. */
export function smallestCut(links: readonly Link[], from: string, to: string, kind: "node" | "link", known: readonly FallibleNode[] = []): number {
  const graph = asBits(links, known);
  const { bitOf } = graph;
  const nodes = kind === "node" ? innerNodes(links, from, to).map(bitOf) : [];
  const isPartedByMore = (count: number, first: number, gone: number, cut: number): boolean => {
    if (count === 0) return !reaches(graph, bitOf(from), bitOf(to), gone, cut);
    for (let one = first; one < nodes.length + links.length; one += 1) {
      const node = nodes[one];
      const parted = node !== undefined ? isPartedByMore(count - 1, one + 1, gone | node, cut) : isPartedByMore(count - 1, one + 1, gone, cut | (1 << (one - nodes.length)));
      if (parted) return true;
    }
    return false;
  };
  let size = 0;
  while (!isPartedByMore(size, 0, 0, 0)) size += 1;
  return size;
}

/** Finds the most simple paths of which no two share an inner node, or a link, by trying every choice of paths. */
export function mostDisjointPaths(links: readonly Link[], from: string, to: string, kind: "node" | "link", nodes: readonly FallibleNode[] = []): number {
  const paths = simplePaths(links, from, to, endNodes(nodes)).map((path) => new Set(kind === "node" ? [...path.nodes, ...path.direct] : path.links));
  const most = (index: number, used: ReadonlySet<string>): number => {
    if (index === paths.length) return 0;
    const without = most(index + 1, used);
    const path = paths[index]!;
    return [...path].some((part) => used.has(part)) ? without : Math.max(without, 1 + most(index + 1, new Set([...used, ...path])));
  };
  return most(0, new Set());
}

interface Path {
  readonly nodes: readonly string[];
  readonly links: readonly string[];
  /** The link, where it joins the two ends directly. */
  readonly direct: readonly string[];
}

function simplePaths(links: readonly Link[], from: string, to: string, stops: ReadonlySet<string>): Path[] {
  const found: Path[] = [];
  const walk = (node: string, nodes: readonly string[], used: readonly string[]): void => {
    if (node === to) {
      found.push({ nodes: nodes.slice(1), links: used, direct: used.length === 1 ? used : [] });
      return;
    }
    if (node !== from && stops.has(node)) return;
    links.forEach((link, index) => {
      const next = link.from === node ? link.to : link.to === node ? link.from : null;
      if (next !== null && !nodes.includes(next)) walk(next, [...nodes, node], [...used, `link ${index}`]);
    });
  };
  walk(from, [], []);
  return found;
}
