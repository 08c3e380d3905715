import { chanceNumbers, exchangeablePlaces, type OrderStep } from "./exchangeable-places";
import type { TwoTerminalNetwork } from "./two-terminal-network";

/** Looks at nodes and links that all the orders tried may take together, and how many the classes of one order take for each link. */
const mostLooks = 2_000_000;
const looksALink = 5;

/**
 * Chooses the order in which a decision diagram takes the nodes of a network up.
 *
 * The diagram has at each step about as many states as there are ways to part the nodes taken up that still have links to come (the frontier),
 * those that may be exchanged not told apart. So the best order keeps the frontier narrow and alike, and takes the two ends up late: from then on
 * all states tell their parts from the others. In a fabric that means the spines first, then the leaves that only pass on, then those of the
 * ends. Two orders are tried from each start: breadth first, and always the node that keeps the frontier narrowest. The best by
 * the estimate of its states is answered; the same on every machine.
 */
export function eliminationOrder(network: TwoTerminalNetwork): readonly OrderStep[] {
  const neighbours: number[][] = network.nodes.map(() => []);
  for (const { a, b } of network.links) {
    neighbours[a]!.push(b);
    neighbours[b]!.push(a);
  }
  const chances = chanceNumbers(network);
  const starts = new Set([network.source, network.sink, ...network.nodes.keys()]);
  let best: readonly OrderStep[] = [];
  let least = Infinity;
  const looks = { left: mostLooks };
  for (const start of starts) {
    for (const order of [breadthFirst(start, neighbours), narrowest(start, neighbours, network, looks)]) {
      if (order === null) continue;
      const steps = exchangeablePlaces(network, chances, order);
      const estimate = estimateStates(steps, network);
      if (best.length === 0 || estimate < least) [best, least] = [steps, estimate];
      looks.left -= looksALink * network.links.length;
    }
    if (looks.left < 0) break;
  }
  return best;
}

function breadthFirst(start: number, neighbours: readonly (readonly number[])[]): number[] {
  const order = [start];
  const seen = new Set(order);
  for (const node of order) {
    for (const next of neighbours[node]!) {
      if (seen.has(next)) continue;
      seen.add(next);
      order.push(next);
    }
  }
  return order;
}

/**
 * Takes up, of the nodes beside the frontier, always the one after which it is narrowest; of equals the one that has waited longest, but the ends
 * after all others. Null where it takes too many looks.
 */
function narrowest(start: number, neighbours: readonly (readonly number[])[], { source, sink }: TwoTerminalNetwork, looks: { left: number }): number[] | null {
  const open = neighbours.map((list) => list.length);
  // What taking a node up adds to the frontier: itself, if it has links to come, less those that have no other link to come.
  const growth = open.map((count, node) => (count > 0 ? 1 : 0) + (node === source || node === sink ? 0.5 : 0));
  const taken = new Uint8Array(neighbours.length);
  const beside = new Set([start]);
  const order: number[] = [];
  while (beside.size > 0) {
    let chosen = -1;
    for (const node of beside) if (chosen === -1 || growth[node]! < growth[chosen]!) chosen = node;
    looks.left -= beside.size;
    if (looks.left < 0) return null;
    beside.delete(chosen);
    taken[chosen] = 1;
    order.push(chosen);
    for (const next of neighbours[chosen]!) {
      open[next]! -= 1;
      if (taken[next] === 0) {
        beside.add(next);
        if (open[next] === 0) growth[next]! -= 1;
      }
    }
    for (const last of [chosen, ...neighbours[chosen]!]) {
      if (taken[last] === 1 && open[last] === 1) for (const next of neighbours[last]!) if (taken[next] === 0) growth[next]! -= 1;
    }
  }
  return order;
}

/**
 * Adds up the estimated states of the steps of an order: those of every class, the ends each in one of its own; times 3 for each end that has
 * left the frontier.
 */
function estimateStates(steps: readonly OrderStep[], { source, sink }: TwoTerminalNetwork): number {
  const sizes = new Map<number, number>();
  let states = 1;
  let estimate = 0;
  const resize = (member: number, by: number): void => {
    const size = sizes.get(member) ?? 0;
    sizes.set(member, size + by);
    states *= statesOfClass(size + by) / statesOfClass(size);
  };
  const isEnd = (node: number): boolean => node === source || node === sink;
  for (const { node, entering, changes } of steps) {
    for (const { node: other, before, after } of changes) {
      if (isEnd(other)) {
        if (after === 0) states *= 3 / statesOfClass(1);
      } else {
        resize(before, -1);
        if (after !== 0) resize(after, 1);
      }
    }
    if (isEnd(node)) states *= entering === 0 ? 3 : statesOfClass(1);
    else if (entering !== 0) resize(entering, 1);
    estimate += states;
  }
  return estimate;
}

/**
 * Estimates the ways in which `size` nodes that may be exchanged lie in parts, or are down: the partitions of the whole numbers up to `size`,
 * by the asymptotic form of Hardy and Ramanujan (1918, from memory), scaled so that one node has about four ways.
 */
function statesOfClass(size: number): number {
  return size === 0 ? 1 : Math.exp(Math.PI * Math.sqrt((2 * size) / 3)) / (3.3 * Math.sqrt(size));
}
