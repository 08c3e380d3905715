// Availability of ladders and grids, a cut set of 5,000 links, the outage of 10,000 members, a site of 1,000 arrays.
import { parseScheme } from "../src/planning/capacity";
import { availability, buildGraph, minimumCut, outage, searchFrom, singlePointsTo, type Link, type Placement } from "../src/planning/resilience";
import { medianMs, printBench, type BenchLine } from "./support";

function grid(rows: number, columns: number): Link[] {
  const links: Link[] = [];
  for (let row = 0; row < rows; row += 1) {
    for (let column = 0; column < columns; column += 1) {
      const from = `${row}/${column}`;
      if (column + 1 < columns) links.push({ from, to: `${row}/${column + 1}`, unavailability: 0.1 });
      if (row + 1 < rows) links.push({ from, to: `${row + 1}/${column}`, unavailability: 0.1 });
    }
  }
  return links;
}

function gridLine(rows: number, columns: number, targetMs?: number): BenchLine {
  const links = grid(rows, columns);
  const work = () => availability(buildGraph(links), "0/0", `${rows - 1}/${columns - 1}`);
  const { states, peak } = work();
  return line(`availability of ${rows}×${columns}, ${links.length} links: ${states} diagram nodes, at most ${peak} at once`, medianMs(work, 5), targetMs);
}

function line(what: string, ms: number, targetMs?: number): BenchLine {
  const measured = `${ms.toPrecision(3)} ms`;
  return targetMs === undefined ? { what, measured } : { what, measured, target: `under ${targetMs} ms`, holds: ms < targetMs };
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

export default function benchResilience(): void {
  const mesh = buildGraph(meshed(1000, 5000));
  const members = placement();
  const single: Placement = { domains: members.domains.slice(0, 1) };
  const scheme = parseScheme("8+3", "scheme");
  const groups = parseScheme("RAID 60 8+2", "scheme");
  const cabling = site();
  const host = (graph: ReturnType<typeof buildGraph>) => searchFrom(graph, graph.nodeNumbers.get("host")!);
  printBench("Resilience (median)", [
    gridLine(2, 50),
    gridLine(5, 20),
    gridLine(10, 10, 1000),
    line("cut set of 5,000 links over 1,000 nodes", medianMs(() => minimumCut(mesh, "n0", "n1")), 200),
    line("outage of 10,000 members × 5 columns, spread", medianMs(() => outage(scheme, members)), 200),
    line("outage of 10,000 members × 5 columns, 1,000 groups", medianMs(() => outage(groups, members)), 200),
    line("outage of 10,000 members × 1 column, 1,000 groups", medianMs(() => outage(groups, single)), 200),
    line("graph of 1,000 arrays and 20,000 ports, and the single points from a host to each array", medianMs(() => {
      const search = host(buildGraph(cabling));
      return Array.from({ length: 1000 }, (_, array) => singlePointsTo(search, search.graph.nodeNumbers.get(`array ${array}`)!));
    })),
  ]);
}
