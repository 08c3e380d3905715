// Availability of grids, fabrics and a mesh, bounds, a cut set of 5,000 links, placement and outage of many members, a site of 1,000 arrays.
import { parseScheme } from "../src/planning/capacity";
import {
  availability,
  availabilityBounds,
  buildGraph,
  countPaths,
  minimumCut,
  outage,
  placeMembers,
  searchFrom,
  singlePointsTo,
  type Graph,
  type Link,
  type NetworkPort,
  type Placement,
} from "../src/planning/resilience";
import { complete, fabric, grid } from "../tests/planning/resilience/availability/topologies";
import { medianMs, printBench, type BenchLine } from "./support";

function line(what: string, ms: number, targetMs?: number): BenchLine {
  const measured = `${ms.toPrecision(3)} ms`;
  return targetMs === undefined ? { what, measured } : { what, measured, target: `under ${targetMs} ms`, holds: ms < targetMs };
}

function availabilityLine(what: string, graph: Graph, from: string, to: string, targetMs?: number): BenchLine {
  const work = () => availability(graph, from, to);
  const { states, peak } = work();
  return line(`availability of ${what}: ${states} states, at most ${peak} at once`, medianMs(work, 5), targetMs);
}

function gridLine(size: number, targetMs?: number): BenchLine {
  return availabilityLine(`a ${size}×${size} grid`, buildGraph(grid(size, size, 0.1)), "0/0", `${size - 1}/${size - 1}`, targetMs);
}

function fabricLine(spines: readonly number[], leaves: number, targetMs?: number): BenchLine {
  const kinds = spines.map((count, kind) => ({ count, unavailability: 0.0005 * (kind + 1), links: 0.001 * (kind + 1) }));
  const { links, nodes } = fabric({ leaves, spines: kinds, edge: 0.001, leaf: 0.0005 });
  return availabilityLine(`a fabric of ${spines.join(" + ")} spines and ${leaves} leaves, all failing`, buildGraph(links, nodes), "host", "array", targetMs);
}

/** The gap between the bounds of a grid without an exact answer, beside the time that they and the refusal take. */
function boundsLines(size: number, mostGap?: number): BenchLine[] {
  const graph = buildGraph(grid(size, size, 0.1));
  const [from, to] = ["0/0", `${size - 1}/${size - 1}`];
  const refuse = () => {
    try {
      return availability(graph, from, to);
    } catch (refusal) {
      return refusal;
    }
  };
  const { gap } = availabilityBounds(graph, from, to);
  const shown = { what: `bounds of a ${size}×${size} grid: their gap`, measured: gap.toPrecision(2) };
  return [
    mostGap === undefined ? shown : { ...shown, target: `under ${mostGap}`, holds: gap < mostGap },
    line(`bounds of a ${size}×${size} grid`, medianMs(() => availabilityBounds(graph, from, to), 3)),
    line(`availability of a ${size}×${size} grid: refused`, medianMs(refuse, 3)),
  ];
}

/** Numbers below `bound`, the same on every run (linear congruential, constants of Numerical Recipes). */
function numbers(seed: number): (bound: number) => number {
  let state = seed;
  return (bound) => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return Math.floor((state / 2 ** 32) * bound);
  };
}

function meshed(nodes: number, count: number): Link[] {
  const next = numbers(1);
  return Array.from({ length: count }, () => {
    const a = next(nodes);
    return { from: `n${a}`, to: `n${(a + 1 + next(nodes - 1)) % nodes}`, unavailability: 0.01 };
  });
}

/** 10,000 members: themselves, 400 racks in 20 rooms, two of 24 feeds each, 60 switches. */
function placement(): Placement {
  const next = numbers(2);
  const members = Array.from({ length: 10_000 }, (_, member) => member);
  const rack = members.map((member) => member % 400);
  const column = (name: string, cells: (member: number) => string[]) => ({ name, cells: members.map(cells) });
  return {
    domains: [
      column("Member", (member) => [`m${member}`]),
      column("Rack", (member) => [`r${rack[member]!}`]),
      column("Room", (member) => [`room ${rack[member]! % 20}`]),
      column("Feed", (member) => [`f${rack[member]! % 12}`, `f${12 + next(12)}`]),
      column("Switch", () => [`s${next(60)}`]),
    ],
  };
}

/** 1,000 arrays of 20 ports each on 100 leaf switches, two of them an array, and four spines. */
function site(): Link[] {
  const links: Link[] = [];
  for (let array = 0; array < 1000; array += 1) {
    for (let port = 0; port < 20; port += 1) links.push({ from: `array ${array}`, to: `leaf ${(2 * array + (port % 2)) % 100}` });
  }
  for (let leaf = 0; leaf < 100; leaf += 1) for (let spine = 0; spine < 4; spine += 1) links.push({ from: `leaf ${leaf}`, to: `spine ${spine}` });
  for (let spine = 0; spine < 4; spine += 1) links.push({ from: `spine ${spine}`, to: "host" });
  return links;
}

function ports(devices: number, name: string): NetworkPort[] {
  return Array.from({ length: 4 * devices }, (_, port) => ({ device: `${name}${port >> 2}`, network: `n${port & 3}`, address: `10.${port & 3}.${port >> 8}.${port & 255}` }));
}

export default function benchResilience(): void {
  const mesh = buildGraph(meshed(1000, 5000));
  const members = placement();
  const single: Placement = { domains: members.domains.slice(0, 1) };
  const scheme = parseScheme("8+3", "scheme");
  const groups = parseScheme("RAID 60 8+2", "scheme");
  const cabling = site();
  const names = Array.from({ length: 100_000 }, (_, member) => `m${member}`);
  const racks = Array.from({ length: 100 }, (_, rack) => ({ name: `r${rack}`, room: rack % 3 === 0 ? 800 : null }));
  const host = (graph: Graph) => searchFrom(graph, graph.nodeNumbers.get("host")!);
  printBench("Resilience (median; exact unless it says refused)", [
    gridLine(10, 500),
    gridLine(11),
    ...boundsLines(12, 1e-6),
    fabricLine([8], 40, 1000),
    fabricLine([16], 64, 1000),
    fabricLine([8, 8], 64),
    fabricLine([32], 128),
    availabilityLine("two of 30 nodes, each linked to each", buildGraph(complete(30, () => 0.9)), "n0", "n1"),
    line("cut set of 5,000 links over 1,000 nodes", medianMs(() => minimumCut(mesh, "n0", "n1")), 200),
    line("outage of 10,000 members × 5 columns, spread", medianMs(() => outage(scheme, members)), 200),
    line("outage of 10,000 members × 5 columns, spread by domain", medianMs(() => outage(scheme, members, "by domain")), 200),
    line("outage of 10,000 members × 5 columns, 1,000 groups", medianMs(() => outage(groups, members)), 200),
    line("outage of 10,000 members × 1 column, 1,000 groups", medianMs(() => outage(groups, single)), 200),
    line("placement of 100,000 members in 10,000 groups over 100 racks", medianMs(() => placeMembers(names, racks, { scheme: groups }), 5)),
    line("paths from 300 hosts to 300 arrays, four ports each", medianMs(() => countPaths(ports(300, "h"), ports(300, "a")))),
    line("graph of 1,000 arrays and 20,000 ports, and the single points from a host to each array", medianMs(() => {
      const search = host(buildGraph(cabling));
      return Array.from({ length: 1000 }, (_, array) => singlePointsTo(search, search.graph.nodeNumbers.get(`array ${array}`)!));
    })),
  ]);
}
