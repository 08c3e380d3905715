// Resilience: what one loss takes down, and how often.
import * as plan from "../planning/resilience";
import { column, number, table } from "./support/answers";
import { choice } from "./support/choice";
import { fallibleLinks, fallibleNodes, links as readLinks } from "./support/links";
import { name } from "./support/names";
import { optional, parameter } from "./support/parameter";
import * as given from "./support/parameters";
import { members, placement, rooms } from "./support/placement";
import { feeds, poweredDevices } from "./support/power";
import { filled } from "./support/spill";
import { worksheetFunction } from "./support/worksheet-function";

export const outage = worksheetFunction({
  id: "OUTAGE",
  description: "Finds the worst loss of one value of each domain (rack, feed, switch), and of two: what it takes and whether data survive.",
  parameters: [
    given.scheme('"RAID 6 8+2" or "2+1"'),
    parameter("placement", "Range: a member a row in LAYOUT order, then its rack, feed, ...; A+B goes only with both; a Group column says the group.", placement),
  ],
  answers: table(
    ["Domain", "Worst", "Lost", "Left", "Survives"],
    "Table of Domain, Worst, Lost, Left (further losses always survived) and Survives; the last row is the worst pair.",
  ),
  examples: ['=BAY.OUTAGE("2+1",{"Member","Rack","Feed";"A1","R1","A";"A2","R2","B";"A3","R3","A"})'],
  mistakes: ['=BAY.OUTAGE("2+1",{"Member","Rack";"A1","R1";"A2","";"A3","R3"})'],
  compute: (scheme, placed) => {
    const { domains, pair } = plan.outage(scheme, placed);
    return [...domains.map(({ domain, value, lost, left, survives }) => [domain, value, lost, left, survives]), ...pairRows(pair)];
  },
});

function pairRows(pair: plan.PairOutage | null): (string | number | boolean)[][] {
  if (pair === null) return [];
  const names = pair.values.map(({ domain, value }) => `${domain} ${value}`).join(" and ");
  return [["Pair", names, pair.lost, pair.left, pair.survives]];
}

export const place = worksheetFunction({
  id: "PLACE",
  description: "Places members over domains such as racks as evenly as their room allows; neighbours in the list stand apart.",
  parameters: [
    parameter("members", 'Range with the name of every member, such as {"A1";"A2";"A3"}, in LAYOUT order.', members),
    parameter("domains", 'Range of domain name and, where it is bounded, the members it has room for, such as {"Rack 1",4;"Rack 2",4}.', rooms),
  ],
  answers: table(["Member", "Domain"], "Table of Member and Domain."),
  examples: ['=BAY.PLACE({"A1";"A2";"A3";"A4"},{"Rack 1";"Rack 2";"Rack 3"})'],
  mistakes: ['=BAY.PLACE({"A1";"A2";"A3"},{"Rack 1",1;"Rack 2",1})'],
  compute: (names, domains) => {
    const placed = plan.placeMembers(names, domains);
    return names.map((called, index) => [called, placed[index]!]);
  },
});

const links = parameter("links", 'Range of the two ends of each link, such as {"host","sw1";"sw1","array"}.', readLinks);
const from = parameter("from", 'One end, such as "host".', name);
const to = parameter("to", 'Other end, such as "array".', name);

export const singlePoints = worksheetFunction({
  id: "SINGLEPOINTS",
  description: "Lists every node and link whose loss alone parts two ends, in their order on the way.",
  parameters: [links, from, to],
  answers: column("A column of nodes and links, the two ends themselves left out."),
  examples: ['=BAY.SINGLEPOINTS({"host","sw1";"host","sw2";"sw1","core";"sw2","core";"core","array"},"host","array")'],
  mistakes: ['=BAY.SINGLEPOINTS({"host","sw1";"sw1","sw1"},"host","sw1")'],
  compute: (rows, one, other) => {
    const points = plan.singlePoints(plan.buildGraph(rows), one, other);
    return filled(points.map(({ name: called }) => called), "links", "links: no single node or link parts the two ends. Nothing to mend here.");
  },
});

export const cutSet = worksheetFunction({
  id: "CUTSET",
  description: "Finds a smallest set of nodes or links that parts two ends; a link is named only where it joins them directly.",
  parameters: [links, from, to],
  answers: column("A column of nodes and links."),
  examples: ['=BAY.CUTSET({"host","sw1";"host","sw2";"sw1","array";"sw2","array"},"host","array")'],
  mistakes: ['=BAY.CUTSET({"host","array"},"host","disk")'],
  compute: (rows, one, other) => plan.minimumCut(plan.buildGraph(rows), one, other).map(({ name: called }) => called),
});

export const paths = worksheetFunction({
  id: "PATHS",
  description: "Counts the paths between two ends of which no two share a node, or a link; 0 where nothing joins them.",
  parameters: [links, from, to, optional("kind", 'What no two paths may share: "node" or "link". Left out: {default}.', choice("node", "link"))],
  answers: number("The count."),
  examples: ['=BAY.PATHS({"host","sw1";"host","sw2";"sw1","array";"sw2","array"},"host","array")'],
  mistakes: ['=BAY.PATHS({"host","array"},"host","array","cable")'],
  compute: (rows, one, other, kind) => plan.disjointPaths(plan.buildGraph(rows), one, other, kind),
});

export const availability = worksheetFunction({
  id: "AVAILABILITY",
  description: "Computes the exact probability that a path between two ends is up; links and nodes fail independently.",
  parameters: [
    parameter("links", "Range of from, to and unavailability, 0 to 1 (0.001 is down one hour in a thousand), a link a row.", fallibleLinks),
    from,
    to,
    optional("nodes", 'Range of node name and unavailability, such as {"sw1",0.0001}. Left out: nodes are always up.', fallibleNodes),
  ],
  answers: number("Probability, 0 to 1."),
  examples: ['=BAY.AVAILABILITY({"host","sw1",0.001;"host","sw2",0.001;"sw1","array",0.001;"sw2","array",0.001},"host","array")'],
  mistakes: ['=BAY.AVAILABILITY({"host","array",99.9},"host","array")'],
  compute: (rows, one, other, nodes) => plan.availability(plan.buildGraph(rows, nodes), one, other).up,
});

export const feedLoad = worksheetFunction({
  id: "FEEDLOAD",
  description: "Computes what each power feed carries, also after the loss of another. Planning figure: licensed people and local code decide.",
  parameters: [
    parameter("supplies", "Range of device (all of it, one row), watts and the feed of each supply; A/L2 is a phase of feed A.", poweredDevices),
    parameter("feeds", "Range of feed, volts (between lines if 3 phases), breaker A, then if wanted phases, continuous share, power factor.", feeds),
  ],
  answers: table(["Feed", "Normal W", "Worst W", "Worst A", "Limit A", "Share", "OK"], "Table of Feed, Normal W, Worst W, Worst A, Limit A, Share and OK."),
  examples: ['=BAY.FEEDLOAD({"Array 1",900,"A","B";"Array 2",900,"A","B"},{"A",230,16;"B",230,16})'],
  mistakes: ['=BAY.FEEDLOAD({"Array 1",900,"A","C"},{"A",230,16;"B",230,16})'],
  compute: (supplies, circuits) =>
    plan.feedLoads(supplies, circuits).map((one) => [one.feed, one.normalWatts, one.worstWatts, one.worstAmps, one.limitAmps, one.share, one.ok]),
});
