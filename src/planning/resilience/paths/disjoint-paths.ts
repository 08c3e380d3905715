import { FlowNetwork, unlimited } from "./flow-network";
import { findEnds, linkName, notJoined, type Graph, type Point } from "./graph";

/** What paths may not share. */
export type Disjointness = "node" | "link";

/**
 * Counts the most paths from `from` to `to` of which no two share a node between them, or a link; 0 where nothing joins them.
 *
 * By maximum flow (Menger 1927; Ford and Fulkerson 1956). Links that join the two ends directly are a path each, of either kind.
 */
export function disjointPaths(whole: Graph, from: string, to: string, kind: Disjointness): number {
  const { graph, start, end } = findEnds(whole, from, to);
  return kind === "node" ? splitNodes(graph, start, end).maximise(leaving(start), entering(end)) : linkNetwork(graph).maximise(start, end);
}

/**
 * Finds a smallest set of nodes and links whose loss parts `from` and `to`; as many as there are paths that share no node.
 *
 * Names nodes wherever it can: a link stands there only where it joins the two ends directly. Of several smallest sets it is the one
 * nearest to `from`. Refuses two nodes that nothing joins.
 */
export function minimumCut(whole: Graph, from: string, to: string): Point[] {
  const { graph, start, end } = findEnds(whole, from, to);
  const network = splitNodes(graph, start, end);
  if (network.maximise(leaving(start), entering(end)) === 0) throw notJoined(graph, from, to);
  const depth = network.layer(leaving(start));
  const nodes = graph.names.flatMap((name, node): Point[] => {
    const parts = node !== start && node !== end && depth[entering(node)] !== -1 && depth[leaving(node)] === -1;
    return parts ? [{ kind: "node", name }] : [];
  });
  const links = Array.from(graph.linkDown, (_, link) => link).flatMap((link): Point[] =>
    joinsDirectly(graph, link, start, end) ? [{ kind: "link", name: linkName(graph, link) }] : [],
  );
  return [...nodes, ...links];
}

const entering = (node: number): number => 2 * node;
const leaving = (node: number): number => 2 * node + 1;

/** Every node is an arc of capacity 1 from where links enter it to where they leave it, so that only one path goes through. */
function splitNodes(graph: Graph, start: number, end: number): FlowNetwork {
  const nodes = graph.names.length;
  const links = graph.linkDown.length;
  const network = new FlowNetwork(2 * nodes, nodes + 2 * links);
  for (let node = 0; node < nodes; node += 1) network.addArc(entering(node), leaving(node), 1);
  for (let link = 0; link < links; link += 1) {
    const [a, b] = [graph.ends[2 * link]!, graph.ends[2 * link + 1]!];
    // A node at either end limits a link already, and is then the one that is named.
    const capacity = joinsDirectly(graph, link, start, end) ? 1 : unlimited;
    network.addArc(leaving(a), entering(b), capacity);
    network.addArc(leaving(b), entering(a), capacity);
  }
  return network;
}

function linkNetwork(graph: Graph): FlowNetwork {
  const links = graph.linkDown.length;
  const network = new FlowNetwork(graph.names.length, links);
  for (let link = 0; link < links; link += 1) network.addArc(graph.ends[2 * link]!, graph.ends[2 * link + 1]!, 1, 1);
  return network;
}

function joinsDirectly(graph: Graph, link: number, start: number, end: number): boolean {
  const [a, b] = [graph.ends[2 * link]!, graph.ends[2 * link + 1]!];
  return (a === start && b === end) || (a === end && b === start);
}
