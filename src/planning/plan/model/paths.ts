import { buildGraph, searchFrom, singlePointsTo, type Link, type Point, type Search } from "../../resilience";
import { foldName } from "../../text";
import type { PlanRow } from "../read";
import type { HostPorts } from "./host-ports";
import { once, oncePer } from "./once";
import type { PlanRows } from "./plan-rows";
import { controllersOf, type PortFacts } from "./port-facts";
import type { Ports } from "./ports";

/** What alone parts a host from an array of its site. */
interface HostPoints {
  readonly host: PlanRow<"hosts">;
  /** Nodes and links whose loss alone parts them, in no order; null where nothing joins them at all. */
  readonly points: readonly Point[] | null;
}

/** How a host and an array of its site reach each other. */
export interface HostPath extends HostPoints {
  readonly array: PlanRow<"arrays">;
}

/** The paths between the hosts and the arrays of a plan. */
export class Paths {
  /**
   * Works out, for every host that has a link and every array of its site that has a cabled port, what alone parts them.
   *
   * Cables run from the array over its controllers to switches, and from there over links between switches to those of the host; no other
   * host and no other array passes anything on. A node parts an array from a host exactly when, for each switch of the host, it is that
   * switch or parts the array from it; so one search for each array serves all hosts, and arrays cabled alike share one.
   */
  readonly all = once((): readonly HostPath[] => this.reached().flatMap(({ array, hosts }) => hosts.map((one) => ({ array, ...one }))));

  /** Lists those of them that something alone parts, or that nothing joins: few, however many hosts and arrays there are. */
  readonly weak = once((): readonly HostPath[] => {
    const weakAmong = oncePer((hosts: readonly HostPoints[]) => hosts.filter(({ points }) => points === null || points.length > 0));
    return this.reached().flatMap(({ array, hosts }) => weakAmong(hosts).map((one) => ({ array, ...one })));
  });

  /** Lists the switches that a host is linked to, one for each cable of its ports; one for each of its links where no port of it is cabled. */
  readonly switchesOf = oncePer((host: PlanRow<"hosts">): readonly string[] => {
    const cabled = this.hostPorts.switchesOf(host);
    if (cabled !== null) return cabled.map((row) => row.switch);
    const ends = [
      ...this.rows.rowsWith("links", "from", host.host).map(({ to }) => to),
      ...this.rows.rowsWith("links", "to", host.host).map(({ from }) => from),
    ];
    return ends.flatMap((end) => this.rows.find("switches", end)?.switch ?? []);
  });

  constructor(
    private readonly rows: PlanRows,
    private readonly ports: Ports,
    private readonly hostPorts: HostPorts,
  ) {}

  /** Names the hosts and arrays of a site of which no cable is known: what parts them from each other is not known either. */
  unknownAt(site: string): readonly string[] {
    const hosts = this.rows.rowsWith("hosts", "site", site).filter((host) => this.switchesOf(host).length === 0).map(({ host }) => host);
    const arrays = this.rows.rowsWith("arrays", "site", site).filter((array) => this.ports.of(array).every(({ to }) => to === null)).map(({ array }) => array);
    return [...hosts, ...arrays].filter((name) => name !== "");
  }

  /** Names the one switch to which all cabled ports of an array go; null where there are several, or none. */
  onlySwitchOf(array: PlanRow<"arrays">): string | null {
    return this.onlySwitchAmong(this.ports.of(array));
  }

  /** Names the one switch to which all those of some ports go that are cabled; null where there are several, or none. */
  onlySwitchAmong(ports: readonly PortFacts[]): string | null {
    return theOneOf(ports.map(({ row }) => row.switch).filter((name) => name !== ""));
  }

  /** Names the one switch that a host is linked to; null where there are several, or none. */
  onlySwitchOfHost(host: PlanRow<"hosts">): string | null {
    return theOneOf(this.switchesOf(host));
  }

  /** Lists the cabled arrays, each with the linked hosts of its site; arrays that are cabled alike share their hosts' list. */
  private readonly reached = once((): readonly { readonly array: PlanRow<"arrays">; readonly hosts: readonly HostPoints[] }[] => {
    const fabric = this.fabric();
    return [...this.rows.groupBy("hosts", "site")].flatMap(([site, hosts]) => {
      const linked = hosts.filter((host) => this.switchesOf(host).length > 0);
      const known = new Map<string, readonly HostPoints[]>();
      return this.rows.rowsWith("arrays", "site", site).flatMap((array) => {
        const cables = linked.length === 0 ? [] : this.cablesOf(array);
        if (cables.length === 0) return [];
        const key = cables.map(({ from, to }) => `${from}\n${to}`).join("\n\n");
        const points = known.get(key) ?? this.pointsOf(linked, [...cables, ...fabric]);
        known.set(key, points);
        return [{ array, hosts: points }];
      });
    });
  });

  private pointsOf(hosts: readonly PlanRow<"hosts">[], links: readonly Link[]): readonly HostPoints[] {
    const search = new ArraySearch(links, (host) => this.switchesOf(host));
    return hosts.map((host) => ({ host, points: search.pointsOf(host) }));
  }

  /** Lists the links between switches. */
  private fabric(): Link[] {
    const isSwitch = (name: string): boolean => this.rows.find("switches", name) !== null;
    return this.rows
      .rows("links")
      .filter(({ from, to }) => isSwitch(from) && isSwitch(to) && foldName(from) !== foldName(to))
      .map(({ from, to }) => ({ from, to }));
  }

  /**
   * Lists the cables of an array from the array over its controllers to switches, in an order that does not depend on that of the rows.
   *
   * Of more than two cables that run alike two say as much. The way from an array to its controllers stands twice, so that it never counts
   * as a single cable. A lone controller is the array.
   */
  private cablesOf(array: PlanRow<"arrays">): Link[] {
    const several = (controllersOf(array)?.length ?? 0) > 1;
    const runs: { readonly controller: string; readonly link: Link; readonly socket: string; isDouble: boolean }[] = [];
    for (const { row, to, socket } of this.ports.of(array)) {
      if (to === null) continue;
      const controller = several ? foldName(row.controller) : "";
      const run = runs.find((one) => one.link.to === to.switch && one.controller === controller);
      const from = several ? `${controllerMark}${row.controller.trim()}` : start;
      if (run === undefined) runs.push({ controller, link: { from, to: to.switch }, socket, isDouble: false });
      else if (run.socket !== socket) run.isDouble = true;
    }
    const placeOf = ({ controller, link }: (typeof runs)[number]): string => `${controller}\n${link.to}`;
    const sorted = runs.sort((a, b) => (placeOf(a) < placeOf(b) ? -1 : 1)).flatMap(({ link, isDouble }) => (isDouble ? [link, link] : [link]));
    const controllers = several ? [...new Set(sorted.map(({ from }) => from))] : [];
    return [...controllers.flatMap((to): Link[] => [{ from: start, to }, { from: start, to }]), ...sorted];
  }
}

/** Gives the name that all of a list are, without case; null where there are several, or none. */
function theOneOf(names: readonly string[]): string | null {
  const [first] = names;
  return first !== undefined && names.every((name) => foldName(name) === foldName(first)) ? first : null;
}

/** Names no cell can hold, for the array itself and for its controllers. */
const start = "\u0000array";
const controllerMark = "\u0000controller ";

/** A search from arrays that are cabled alike, which answers for every host. */
class ArraySearch {
  private readonly search: Search;

  /** Lists what alone parts the arrays from a node; null where nothing joins them. */
  private readonly pointsAt = oncePer((node: number): readonly Point[] | null => singlePointsTo(this.search, node));

  constructor(
    links: readonly Link[],
    private readonly switchesOf: (host: PlanRow<"hosts">) => readonly string[],
  ) {
    const graph = buildGraph(links);
    this.search = searchFrom(graph, graph.nodeNumbers.get(start)!);
  }

  /** Lists what alone parts the arrays from a host; null where nothing joins them. */
  pointsOf(host: PlanRow<"hosts">): readonly Point[] | null {
    const ways = this.switchesOf(host).flatMap((end): Point[][] => {
      const node = this.search.graph.nodeNumbers.get(foldName(end));
      const before = node === undefined ? null : this.pointsAt(node);
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
}

function spoken(name: string): string {
  return name.replaceAll(controllerMark, "controller ").replaceAll(start, "the array");
}
