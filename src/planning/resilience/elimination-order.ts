import type { TwoTerminalNetwork } from "./two-terminal-network";

/** Looks at neighbours that all the orders tried may take together. */
const mostLooks = 4_000_000;

/**
 * Chooses the order in which a decision diagram takes the nodes of a network up.
 *
 * The diagram has at each step about as many states as there are ways to part the nodes taken up that still have links to come (the frontier),
 * so the best order keeps the frontier narrow, and the two ends in it: one that has left it is a part that all states still tell apart. Two
 * orders are tried from each start, the ends first: breadth first, and always the node that keeps the frontier narrowest. The best by
 * the estimate of its states is answered; the same on every machine.
 */
export function eliminationOrder(network: TwoTerminalNetwork): readonly number[] {
  const neighbours: number[][] = network.nodes.map(() => []);
  for (const { a, b } of network.links) {
    neighbours[a]!.push(b);
    neighbours[b]!.push(a);
  }
  const starts = new Set([network.source, network.sink, ...network.nodes.keys()]);
  let best: readonly number[] = [...network.nodes.keys()];
  let least = estimateStates(best, neighbours, network);
  const looks = { count: 0 };
  for (const start of starts) {
    for (const order of [breadthFirst(start, neighbours), narrowest(start, neighbours, looks)]) {
      if (order === null) continue;
      looks.count += 2 * network.links.length;
      const cost = estimateStates(order, neighbours, network);
      if (cost < least) [best, least] = [order, cost];
    }
    if (looks.count > mostLooks) break;
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

/** Takes up, of the nodes beside the frontier, always the one after which it is narrowest; of equals the one that has waited longest. */
function narrowest(start: number, neighbours: readonly (readonly number[])[], looks: { count: number }): number[] | null {
  const open = neighbours.map((list) => list.length);
  const taken = new Uint8Array(neighbours.length);
  const beside = new Set([start]);
  const order: number[] = [];
  while (beside.size > 0) {
    let chosen = -1;
    let least = Infinity;
    for (const node of beside) {
      let growth = open[node]! > 0 ? 1 : 0;
      for (const next of neighbours[node]!) if (taken[next] === 1 && open[next] === 1) growth -= 1;
      looks.count += neighbours[node]!.length;
      if (growth < least) [chosen, least] = [node, growth];
    }
    if (looks.count > mostLooks) return null;
    beside.delete(chosen);
    taken[chosen] = 1;
    order.push(chosen);
    for (const next of neighbours[chosen]!) {
      open[next]! -= 1;
      if (taken[next] === 0) beside.add(next);
    }
  }
  return order;
}

/**
 * Estimates the states of an order: 4^width a step, as the parts that do not cross grow, times 3 for each end that has left the frontier.
 * Infinite for an order that leaves nodes out.
 */
function estimateStates(order: readonly number[], neighbours: readonly (readonly number[])[], { source, sink }: TwoTerminalNetwork): number {
  if (order.length < neighbours.length) return Infinity;
  const open = neighbours.map((list) => list.length);
  const taken = new Uint8Array(neighbours.length);
  let width = 0;
  let estimate = 0;
  for (const node of order) {
    taken[node] = 1;
    if (open[node]! > 0) width += 1;
    for (const next of neighbours[node]!) {
      open[next]! -= 1;
      if (taken[next] === 1 && open[next] === 0) width -= 1;
    }
    const departed = [source, sink].filter((end) => taken[end] === 1 && open[end] === 0).length;
    estimate += 4 ** width * 3 ** departed;
  }
  return estimate;
}
