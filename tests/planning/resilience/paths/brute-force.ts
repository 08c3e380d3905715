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

/** Adds up the probability of every combination of what is up and what is down. */
export function enumerateAvailability(links: readonly Link[], nodes: readonly FallibleNode[], from: string, to: string): { up: number; down: number } {
  const graph = asBits(links, nodes);
  const { bitOf } = graph;
  const nodeBits = nodes.map(({ name }) => bitOf(name));
  const parts = [...links.map((link) => link.unavailability ?? 0), ...nodes.map((node) => node.unavailability ?? 0)];
  // Compensated sums (Kahan): a hundred thousand additions would round in the twelfth digit.
  const sums = { up: 0, down: 0 };
  const carried = { up: 0, down: 0 };
  for (let combination = 0; combination < 2 ** parts.length; combination += 1) {
    let probability = 1;
    for (let part = 0; part < parts.length; part += 1) probability *= (combination >> part) & 1 ? parts[part]! : 1 - parts[part]!;
    if (probability === 0) continue;
    const gone = nodeBits.reduce((bits, bit, index) => bits | ((combination >> (links.length + index)) & 1 ? bit : 0), 0);
    const outcome = reaches(graph, bitOf(from), bitOf(to), gone, combination) ? "up" : "down";
    const addend = probability - carried[outcome];
    const sum = sums[outcome] + addend;
    carried[outcome] = sum - sums[outcome] - addend;
    sums[outcome] = sum;
  }
  return sums;
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
