// Resilience: what one loss takes down, and how often.
import * as resilience from "../planning/resilience";
import { column, number, table, tableWith } from "./support/answers";
import { choice } from "./support/choice";
import { fallibleLinks, fallibleNodes, forwardingNodes, links as readLinks } from "./support/links";
import { name } from "./support/names";
import { arrayPorts, hostPorts } from "./support/network-ports";
import { orNone } from "./support/numbers";
import { optional, parameter } from "./support/parameter";
import * as given from "./support/parameters";
import { members, placement, rooms } from "./support/placement";
import { feeds, poweredDevices } from "./support/power";
import { scheme } from "./support/quantities";
import { filled } from "./support/spill";
import { worksheetFunction } from "./support/worksheet-function";

export const outage = worksheetFunction({
  id: "OUTAGE",
  description: "Finds the worst loss of one value of each domain (rack, feed, switch), and of two: what it takes and whether data survive.",
  parameters: [
    given.scheme('"RAID 6 8+2" or "2+1"'),
    parameter("placement", "Range: a member a row in LAYOUT order, then its rack, feed, ...; A+B goes only with both; a Group column says the group.", placement),
    optional("pieces", 'For codes spread over all drives: "any" member may hold a piece of a stripe, or as few as can be "by domain". Left out: {default}.', choice(...resilience.pieceSpreads)),
  ],
  answers: table(
    ["Domain", "Worst", "Lost", "Left", "Survives"],
    "Table of Domain, Worst, Lost, Left (further losses always survived) and Survives; the last row is the worst pair.",
  ),
  examples: [
    '=BAY.OUTAGE("2+1",{"Member","Rack","Feed";"A1","R1","A";"A2","R2","B";"A3","R3","A"})',
    '=BAY.OUTAGE("2+2",{"Member","Rack";"N1","R1";"N2","R1";"N3","R1";"N4","R2";"N5","R2";"N6","R2"},"by domain")',
  ],
  mistakes: ['=BAY.OUTAGE("2+1",{"Member","Rack";"A1","R1";"A2","";"A3","R3"})'],
  compute: (redundancy, placed, pieces) => {
    const { domains, pair } = resilience.outage(redundancy, placed, pieces);
    return [...domains.map(({ domain, value, lost, left, survives }) => [domain, value, lost, left, survives]), ...pairRows(pair)];
  },
});

function pairRows(pair: resilience.PairOutage | null): (string | number | boolean)[][] {
  if (pair === null) return [];
  const names = pair.values.map(({ domain, value }) => `${domain} ${value}`).join(" and ");
  return [["Pair", names, pair.lost, pair.left, pair.survives]];
}

export const place = worksheetFunction({
  id: "PLACE",
  description: "Places members over domains such as racks, so that the loss of any one is survived where that can be, then evenly.",
  parameters: [
    parameter("members", 'Range with the name of every member, such as {"A1";"A2";"A3"}, in LAYOUT order, or with headers Member and Group.', members),
    parameter("domains", 'Range of domain name and, where it is bounded, the members it has room for, such as {"Rack 1",4;"Rack 2",4}.', rooms),
    optional("scheme", 'Redundancy scheme of the members, such as "RAID 10". Left out: only a Group column says who belongs together.', orNone(scheme)),
  ],
  answers: tableWith(["Member", "Domain"], "Group", "Table of Member and Domain, and of Group where members have one; OUTAGE tells what it survives."),
  examples: [
    '=BAY.PLACE({"A1";"A2";"A3";"A4"},{"Rack 1";"Rack 2";"Rack 3"})',
    '=BAY.PLACE({"A1";"A2";"A3";"A4";"A5";"A6"},{"Rack 1",2;"Rack 2",4;"Rack 3",1},"RAID 10")',
    '=BAY.PLACE({"Member","Group";"A1",1;"A2",2;"A3",1;"A4",2},{"Rack 1",3;"Rack 2",3})',
  ],
  mistakes: ['=BAY.PLACE({"A1";"A2";"A3"},{"Rack 1",1;"Rack 2",1})'],
  compute: ({ names, groups }, domains, redundancy) => {
    const placed = resilience.placeMembers(names, domains, { scheme: redundancy ?? undefined, groups });
    return names.map((called, index) => [called, placed[index]!, ...(groups === undefined ? [] : [groups[index]!])]);
  },
});

const links = parameter("links", 'Range of the two ends of each link, such as {"host","sw1";"sw1","array"}.', readLinks);
const from = parameter("from", 'One end, such as "host".', name);
const to = parameter("to", 'Other end, such as "array".', name);
const nodes = optional("nodes", 'Range of node, unavailability (of no use here) and FALSE if it does not forward, as hosts and arrays: {"host 2","",FALSE}.', forwardingNodes);

const upLinks = parameter("links", "Range of from, to and unavailability, 0 to 1 (0.001 is down one hour in a thousand), a link a row.", fallibleLinks);
const upNodes = optional("nodes", 'Range of node, unavailability and FALSE if it does not forward: {"sw1",0.0001;"host 2",0,FALSE}. Left out: always up.', fallibleNodes);

export const singlePoints = worksheetFunction({
  id: "SINGLEPOINTS",
  description: "Lists every node and link whose loss alone parts two ends, in their order on the way.",
  parameters: [links, from, to, nodes],
  answers: column("A column of nodes and links, the two ends themselves left out."),
  examples: [
    '=BAY.SINGLEPOINTS({"host","sw1";"host","sw2";"sw1","core";"sw2","core";"core","array"},"host","array")',
    '=BAY.SINGLEPOINTS({"host","sw1";"host 2","sw1";"host 2","sw2";"sw1","array";"sw2","array"},"host","array",{"host 2","",FALSE})',
  ],
  mistakes: ['=BAY.SINGLEPOINTS({"host","sw1";"sw1","sw1"},"host","sw1")'],
  compute: (rows, one, other, known) => {
    const points = resilience.singlePoints(resilience.buildGraph(rows, known), one, other);
    return filled(points.map(({ name: called }) => called), "links", "links: no single node or link parts the two ends. Nothing to mend here.");
  },
});

export const cutSet = worksheetFunction({
  id: "CUTSET",
  description: "Finds a smallest set of nodes or links that parts two ends; a link is named only where it joins them directly.",
  parameters: [links, from, to, nodes],
  answers: column("A column of nodes and links."),
  examples: ['=BAY.CUTSET({"host","sw1";"host","sw2";"sw1","array";"sw2","array"},"host","array")'],
  mistakes: ['=BAY.CUTSET({"host","array"},"host","disk")'],
  compute: (rows, one, other, known) => resilience.minimumCut(resilience.buildGraph(rows, known), one, other).map(({ name: called }) => called),
});

export const paths = worksheetFunction({
  id: "PATHS",
  description: "Counts the paths between two ends of which no two share a node, or a link; 0 where nothing joins them.",
  parameters: [links, from, to, optional("kind", 'What no two paths may share: "node" or "link". Left out: {default}.', choice("node", "link")), nodes],
  answers: number("The count."),
  examples: [
    '=BAY.PATHS({"host","sw1";"host","sw2";"sw1","array";"sw2","array"},"host","array")',
    '=BAY.PATHS({"host","sw1";"host 2","sw1";"host 2","sw2";"array","sw2"},"host","array","node",{"host 2","",FALSE})',
  ],
  mistakes: ['=BAY.PATHS({"host","array"},"host","array","cable")', '=BAY.PATHS({"host","sw1";"sw1","array"},"host","array","node",{"host",FALSE})'],
  compute: (rows, one, other, kind, known) => resilience.disjointPaths(resilience.buildGraph(rows, known), one, other, kind),
});

export const availability = worksheetFunction({
  id: "AVAILABILITY",
  description: "Computes the exact probability that a path between two ends is up; links and nodes fail independently.",
  parameters: [upLinks, from, to, upNodes],
  answers: number("Probability, 0 to 1."),
  examples: [
    '=BAY.AVAILABILITY({"host","sw1",0.001;"host","sw2",0.001;"sw1","array",0.001;"sw2","array",0.001},"host","array")',
    '=BAY.AVAILABILITY({"From","To","Availability";"host","sw1",0.999;"sw1","array","99.9%"},"host","array",{"sw1",0.0001})',
  ],
  mistakes: ['=BAY.AVAILABILITY({"host","array",99.9},"host","array")', '=BAY.AVAILABILITY({"host","array",0.999},"host","array")'],
  compute: (rows, one, other, known) => resilience.availability(resilience.buildGraph(rows, known), one, other).up,
});

export const availBounds = worksheetFunction({
  id: "AVAILBOUNDS",
  description: "Computes bounds that are proved for the probability that a path between two ends is up, where AVAILABILITY refuses.",
  parameters: [upLinks, from, to, upNodes],
  answers: table(["Low", "High", "Gap"], "Table of Low, High and Gap, the difference of the two."),
  examples: ['=BAY.AVAILBOUNDS({"in","x",0.1;"in","y",0.1;"x","y",0.1;"x","out",0.1;"y","out",0.1},"in","out")'],
  mistakes: ['=BAY.AVAILBOUNDS({"host","array","99.9%"},"host","array")'],
  compute: (rows, one, other, known) => {
    const { low, high, gap } = resilience.availabilityBounds(resilience.buildGraph(rows, known), one, other);
    return [[low, high, gap]];
  },
});

export const pathCount = worksheetFunction({
  id: "PATHCOUNT",
  description: "Counts the paths from every host to every array: one from each host port to each array port in the same network.",
  parameters: [
    parameter("hostPorts", 'Range of host, network and, if known, address, a port a row, such as {"host 1","Data 1";"host 1","Data 2"}.', hostPorts),
    parameter("arrayPorts", "Range of array, network and, if known, address, a port a row, or what PORTPLAN answers; an address counts once.", arrayPorts),
  ],
  answers: table(["Host", "Array", "Paths", "Networks", "Least left"], "Table of Host, Array, Paths, Networks and Least left, after the loss of any one network."),
  examples: ['=BAY.PATHCOUNT({"host 1","Data 1";"host 1","Data 2"},{"Array 1","Data 1";"Array 1","Data 1";"Array 1","Data 2";"Array 1","Data 2"})'],
  mistakes: ['=BAY.PATHCOUNT({"host 1";"host 2"},{"Array 1","Data 1"})'],
  compute: (hosts, arrays) => resilience.countPaths(hosts, arrays).map(({ host, array, paths: count, networks, leastLeft }) => [host, array, count, networks, leastLeft]),
});

export const feedLoad = worksheetFunction({
  id: "FEEDLOAD",
  description: "Computes what each power feed carries, also after the loss of another. Planning figure: licensed people and local code decide.",
  parameters: [
    parameter("supplies", "Range of device (all of it, one row), watts and the feed of each supply; A/L2 is a line of feed A, A/L1-L2 between two.", poweredDevices),
    parameter("feeds", "Range of feed, volts (between lines if 3 phases), breaker A, then if wanted phases, continuous share, power factor.", feeds),
  ],
  answers: table(["Feed", "Normal W", "Worst W", "Worst A", "Limit A", "Share", "OK"], "Table of Feed, Normal W, Worst W, Worst A, Limit A, Share and OK."),
  examples: [
    '=BAY.FEEDLOAD({"Array 1",900,"A","B";"Array 2",900,"A","B"},{"A",230,16;"B",230,16})',
    '=BAY.FEEDLOAD({"Array 1",2000,"A/L1-L2";"Array 2",500,"A/L1"},{"A",208,30,3})',
  ],
  mistakes: ['=BAY.FEEDLOAD({"Array 1",900,"A","C"},{"A",230,16;"B",230,16})'],
  compute: (supplies, circuits) =>
    resilience.feedLoads(supplies, circuits).map((one) => [one.feed, one.normalWatts, one.worstWatts, one.worstAmps, one.limitAmps, one.share, one.ok]),
});
