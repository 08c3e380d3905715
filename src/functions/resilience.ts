// Resilience: what one loss takes down, and how often.
import * as plan from "../planning/resilience";
import { answer } from "./support/answer";
import { readChoice } from "./support/choice";
import { readFallibleGraph, readGraph } from "./support/links";
import { readName } from "./support/names";
import { readMembers, readPlacement, readRooms } from "./support/placement";
import { readDevices, readFeeds } from "./support/power";
import { readScheme } from "./support/quantities";
import { filledColumn } from "./support/spill";

/**
 * Finds the worst loss of one value of each domain (rack, feed, switch), and of two: what it takes and whether data survive.
 * @customfunction OUTAGE
 * @param scheme Redundancy scheme in quotes, such as "RAID 6 8+2" or "2+1".
 * @param placement Range: a member a row in LAYOUT order, then its rack, feed, ...; A+B goes only with both; a Group column says the group.
 * @returns Table of Domain, Worst, Lost, Left (further losses always survived) and Survives; the last row is the worst pair.
 */
export function outage(scheme: unknown, placement: unknown[][]): unknown[][] {
  return answer("OUTAGE", () => {
    const { domains, pair } = plan.outage(readScheme(scheme, "scheme"), readPlacement(placement, "placement"));
    return [
      ["Domain", "Worst", "Lost", "Left", "Survives"],
      ...domains.map(({ domain, value, lost, left, survives }) => [domain, value, lost, left, survives]),
      ...pairRows(pair),
    ];
  });
}

function pairRows(pair: plan.PairOutage | null): unknown[][] {
  const names = pair?.values.map(({ domain, value }) => `${domain} ${value}`).join(" and ");
  return pair === null ? [] : [["Pair", names, pair.lost, pair.left, pair.survives]];
}

/**
 * Places members over domains such as racks as evenly as their room allows; neighbours in the list stand apart.
 * @customfunction PLACE
 * @param members Range with the name of every member, such as {"A1";"A2";"A3"}, in LAYOUT order.
 * @param domains Range of domain name and, where it is bounded, the members it has room for, such as {"Rack 1",4;"Rack 2",4}.
 * @returns Table of Member and Domain.
 */
export function place(members: unknown[][], domains: unknown[][]): unknown[][] {
  return answer("PLACE", () => {
    const names = readMembers(members, "members");
    const placed = plan.placeMembers(names, readRooms(domains, "domains"));
    return [["Member", "Domain"], ...names.map((name, index) => [name, placed[index]])];
  });
}

/**
 * Lists every node and link whose loss alone parts two ends, in their order on the way.
 * @customfunction SINGLEPOINTS
 * @param links Range of the two ends of each link, such as {"host","sw1";"sw1","array"}.
 * @param from One end, such as "host".
 * @param to Other end, such as "array".
 * @returns A column of nodes and links, the two ends themselves left out.
 */
export function singlePoints(links: unknown[][], from: unknown, to: unknown): string[][] {
  return answer("SINGLEPOINTS", () => {
    const points = plan.singlePoints(readGraph(links, "links"), readName(from, "from"), readName(to, "to"));
    return filledColumn(points.map(({ name }) => name), "links", "links: no single node or link parts the two ends. Nothing to mend here.");
  });
}

/**
 * Finds a smallest set of nodes or links that parts two ends; a link is named only where it joins them directly.
 * @customfunction CUTSET
 * @param links Range of the two ends of each link, such as {"host","sw1";"sw1","array"}.
 * @param from One end, such as "host".
 * @param to Other end, such as "array".
 * @returns A column of nodes and links.
 */
export function cutSet(links: unknown[][], from: unknown, to: unknown): string[][] {
  return answer("CUTSET", () => plan.minimumCut(readGraph(links, "links"), readName(from, "from"), readName(to, "to")).map(({ name }) => [name]));
}

/**
 * Counts the paths between two ends of which no two share a node, or a link; 0 where nothing joins them.
 * @customfunction PATHS
 * @param links Range of the two ends of each link, such as {"host","sw1";"sw1","array"}.
 * @param from One end, such as "host".
 * @param to Other end, such as "array".
 * @param [kind] What no two paths may share: "node" or "link". Left out: "node".
 * @returns The count.
 */
export function paths(links: unknown[][], from: unknown, to: unknown, kind?: unknown): number {
  return answer("PATHS", () =>
    plan.disjointPaths(readGraph(links, "links"), readName(from, "from"), readName(to, "to"), readChoice(kind, "kind", ["node", "link"])),
  );
}

/**
 * Computes the exact probability that a path between two ends is up; links and nodes fail independently.
 * @customfunction AVAILABILITY
 * @param links Range of from, to and unavailability, 0 to 1 (0.001 is down one hour in a thousand), a link a row.
 * @param from One end, such as "host".
 * @param to Other end, such as "array".
 * @param [nodes] Range of node name and unavailability, such as {"sw1",0.0001}. Left out: nodes are always up.
 * @returns Probability, 0 to 1.
 */
export function availability(links: unknown[][], from: unknown, to: unknown, nodes?: unknown[][]): number {
  return answer("AVAILABILITY", () => {
    const graph = readFallibleGraph(links, "links", nodes, "nodes");
    return plan.availability(graph, readName(from, "from"), readName(to, "to")).up;
  });
}

/**
 * Computes what each power feed carries, also after the loss of another. Planning figure: licensed people and local code decide.
 * @customfunction FEEDLOAD
 * @param supplies Range of device (all of it, one row), watts and the feed of each supply; A/L2 is a phase of feed A.
 * @param feeds Range of feed, volts (between lines if 3 phases), breaker A, then if wanted phases, continuous share, power factor.
 * @returns Table of Feed, Normal W, Worst W, Worst A, Limit A, Share and OK.
 */
export function feedLoad(supplies: unknown[][], feeds: unknown[][]): unknown[][] {
  return answer("FEEDLOAD", () => [
    ["Feed", "Normal W", "Worst W", "Worst A", "Limit A", "Share", "OK"],
    ...plan.feedLoads(readDevices(supplies, "supplies"), readFeeds(feeds, "feeds")).map((one) => [
      one.feed,
      one.normalWatts,
      one.worstWatts,
      one.worstAmps,
      one.limitAmps,
      one.share,
      one.ok,
    ]),
  ]);
}
