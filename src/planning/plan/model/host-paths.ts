import { buildGraph, searchFrom, singlePointsTo, type Link, type Point, type Search } from "../../resilience";
import type { PlanRow } from "../read";
import { foldName } from "../../text";
import { controllersOf, type PlanIndex } from "./plan-index";

/** How a host and an array of its site reach each other. */
export interface HostPath {
  readonly host: PlanRow<"hosts">;
  readonly array: PlanRow<"arrays">;
  /** Nodes and links whose loss alone parts them, in no order; null where nothing joins them at all. */
  readonly points: readonly Point[] | null;
}

const found = new WeakMap<PlanIndex, readonly HostPath[]>();

/**
 * Works out, for every host that has a link and every array of its site that has a cabled port, what alone parts them.
 *
 * Cables run from the array over its controllers to switches, and from there over links between switches to those of the host; no other
 * host and no other array passes anything on. A node parts an array from a host exactly when, for each switch of the host, it is that
 * switch or parts the array from it; so one search for each array serves all hosts, and arrays cabled alike share one.
 */
export function hostPaths(index: PlanIndex): readonly HostPath[] {
  let list = found.get(index);
  if (list === undefined) {
    list = workOut(index);
    found.set(index, list);
  }
  return list;
}

/** Lists the switches that a host is linked to, one for each link. */
export function switchesOfHost(index: PlanIndex, host: PlanRow<"hosts">): string[] {
  const name = foldName(host.host);
  const ends = [
    ...index.rowsWith("links", "from", name).map(({ to }) => to),
    ...index.rowsWith("links", "to", name).map(({ from }) => from),
  ];
  return ends.flatMap((end) => index.find("switches", end)?.switch ?? []);
}

function workOut(index: PlanIndex): HostPath[] {
  const isSwitch = (name: string): boolean => index.find("switches", name) !== null;
  const fabric = index.rows("links").filter(({ from, to }) => isSwitch(from) && isSwitch(to) && foldName(from) !== foldName(to)).map(({ from, to }) => ({ from, to }));
  const searches = new Map<string, ArraySearch>();
  return [...index.groupBy("hosts", "site").entries()].flatMap(([site, hosts]) => {
    const linked = hosts.map((host) => ({ host, ends: switchesOfHost(index, host) })).filter(({ ends }) => ends.length > 0);
    if (linked.length === 0) return [];
    return index.rowsWith("arrays", "site", site).flatMap((array): HostPath[] => {
      const cables = cablesOf(index, array);
      if (cables.length === 0) return [];
      const key = cables.map(({ from, to }) => `${from}\n${to}`).join("\n\n");
      let search = searches.get(key);
      if (search === undefined) {
        const graph = buildGraph([...cables, ...fabric]);
        search = { search: searchFrom(graph, graph.nodeNumbers.get(start)!), points: new Map() };
        searches.set(key, search);
      }
      return linked.map(({ host, ends }) => ({ host, array, points: pointsOf(search, host, ends) }));
    });
  });
}

/** Names no cell can hold, for the array itself and for its controllers. */
const start = "\u0000array";
const controllerMark = "\u0000controller ";

/**
 * Lists the cables of an array from the array over its controllers to switches, in an order that does not hang on that of the rows.
 *
 * Of more than two cables that run alike two say as much. The way from an array to its controllers stands twice, so that it never counts
 * as a single cable. A lone controller is the array.
 */
function cablesOf(index: PlanIndex, array: PlanRow<"arrays">): Link[] {
  const several = (controllersOf(array)?.length ?? 0) > 1;
  const runs = new Map<string, { readonly link: Link; readonly port: string; isDouble: boolean }>();
  for (const { row, to } of index.portsOf(array)) {
    if (to === null) continue;
    const key = `${several ? foldName(row.controller) : ""}\n${to.switch}`;
    const run = runs.get(key);
    if (run === undefined) runs.set(key, { link: { from: several ? `${controllerMark}${row.controller.trim()}` : start, to: to.switch }, port: row.port, isDouble: false });
    else if (run.port !== row.port) run.isDouble = true;
  }
  const sorted = [...runs.entries()].sort(([a], [b]) => (a < b ? -1 : 1)).flatMap(([, { link, isDouble }]) => (isDouble ? [link, link] : [link]));
  const controllers = several ? [...new Set(sorted.map(({ from }) => from))] : [];
  return [...controllers.flatMap((to): Link[] => [{ from: start, to }, { from: start, to }]), ...sorted];
}

/** A search from arrays that are cabled alike, and what it has answered for hosts. */
interface ArraySearch {
  readonly search: Search;
  readonly points: Map<PlanRow<"hosts">, readonly Point[] | null>;
}

function pointsOf({ search, points }: ArraySearch, host: PlanRow<"hosts">, ends: readonly string[]): readonly Point[] | null {
  let known = points.get(host);
  if (known === undefined) {
    known = pointsBetween(search, host, ends);
    points.set(host, known);
  }
  return known;
}

function pointsBetween(search: Search, host: PlanRow<"hosts">, ends: readonly string[]): Point[] | null {
  const ways = ends.flatMap((end): Point[][] => {
    const node = search.graph.nodeNumbers.get(end.toLowerCase());
    const before = node === undefined ? null : singlePointsTo(search, node);
    return before === null ? [] : [[...before, { kind: "node", name: end }, { kind: "link", name: `${end} - ${host.host}` }]];
  });
  const [first, ...others] = ways;
  if (first === undefined) return null;
  const isLoneLink = ways.length === 1;
  return first
    .filter(({ kind, name }) => others.every((way) => way.some((point) => point.kind === kind && foldName(point.name) === foldName(name))))
    .filter(({ kind, name }) => isLoneLink || kind === "node" || !name.endsWith(` - ${host.host}`))
    .map(({ kind, name }) => ({ kind, name: spoken(name) }));
}

function spoken(name: string): string {
  return name.replaceAll(controllerMark, "controller ").replaceAll(start, "the array");
}
