import fc from "fast-check";
import { availabilityBounds, availabilityBoundsInTurns, buildGraph, type Link } from "../../../../src/planning/resilience";
import { boundByCuts, boundByPaths } from "../../../../src/planning/resilience/availability/disjoint-bounds";
import { drain } from "../../../../src/planning/resilience/availability/drain";
import { frontierDiagram, isExact } from "../../../../src/planning/resilience/availability/frontier-diagram";
import type { TwoTerminalNetwork } from "../../../../src/planning/resilience/availability/two-terminal-network";
import { seededRandom } from "../../../support/seeded-random";
import { enumerateAvailability } from "../paths/brute-force";
import { smallGraphs } from "../paths/small-graphs";
import { gridOfTwelve } from "./reference-values";
import { bridge, complete, grid } from "./topologies";

function network(links: readonly Link[], from: string, to: string, down: Readonly<Record<string, number>> = {}): TwoTerminalNetwork {
  const names = [...new Set(links.flatMap((link) => [link.from, link.to]))];
  const chance = (unavailability = 0) => ({ up: 1 - unavailability, down: unavailability });
  return {
    nodes: names.map((name) => chance(down[name])),
    links: links.map((link) => ({ a: names.indexOf(link.from), b: names.indexOf(link.to), chance: chance(link.unavailability) })),
    source: names.indexOf(from),
    sink: names.indexOf(to),
  };
}

describe("availabilityBounds", () => {
  test("hold the sum over every combination between them, and meet where the graph is small, on 500 random graphs", () => {
    fc.assert(
      fc.property(smallGraphs, ({ links, nodes }) => {
        const { low, high, gap } = availabilityBounds(buildGraph(links, nodes), "n0", "n1");
        const { up } = enumerateAvailability(links, nodes, "n0", "n1");
        expect(low).toBeLessThanOrEqual(up * (1 + 1e-13));
        expect(high).toBeGreaterThanOrEqual(up * (1 - 1e-13));
        expect(gap).toBe(high - low);
        expect(gap).toBeLessThan(1e-10);
      }),
      { seed: 20260513, numRuns: 500 },
    );
  });

  test("the bridge at .9 is 0.97848 (Billinton and Allan, from memory), between 0.9639 by disjoint paths and 0.9801 by disjoint cuts", () => {
    const { low, high } = availabilityBounds(buildGraph(bridge(0.1)), "in", "out");
    expect(low).toBeLessThan(0.97848);
    expect(high).toBeGreaterThan(0.97848);
    expect(high - low).toBeLessThan(1e-13);
    const middle = network(bridge(0.1), "in", "out");
    expect(boundByPaths(middle).up).toBeCloseTo(0.9639, 14);
    expect(boundByPaths(middle).down).toBeCloseTo(0.0361, 14);
    expect(boundByCuts(middle).up).toBeCloseTo(0.9801, 14);
    expect(boundByCuts(middle).down).toBeCloseTo(0.0199, 14);
  });

  test("a 12×12 grid that has no exact answer is bounded to six digits", () => {
    const { low, high } = availabilityBounds(buildGraph(grid(12, 12, 0.1)), "0/0", "11/11");
    expect(low).toBeLessThan(Number(gridOfTwelve.up));
    expect(high).toBeGreaterThan(Number(gridOfTwelve.up));
    expect(high - low).toBeLessThan(1e-6);
  });

  test("a mesh that is too wide for a diagram is bounded by paths and cuts, stage by stage", () => {
    const mesh = complete(40, (a, b) => (a + 40 * b + 1) / 1700);
    const { low, high } = availabilityBounds(buildGraph([...mesh, { from: "host", to: "n0", unavailability: 0.5 }]), "host", "n39");
    expect(low).toBeGreaterThan(0.4999);
    expect(high).toBeLessThan(0.5 + 1e-11);
  });

  test("bounds keep the digits next to 1", () => {
    const { low, high } = availabilityBounds(buildGraph(bridge(1e-6)), "in", "out");
    // 2q² + 2q³ − 5q⁴ + 2q⁵ of the dual bridge
    const down = 2e-12 + 2e-18 - 5e-24;
    expect(1 - low).toBeGreaterThanOrEqual(down);
    expect(1 - high).toBeLessThanOrEqual(down);
    expect(high - low).toBeLessThan(1e-15);
  });

  test("bounds keep the digits next to 0", () => {
    const p = 2 ** -20;
    const { low, high } = availabilityBounds(buildGraph(bridge(1 - p)), "in", "out");
    // The bridge network of Billinton and Allan, from memory.
    const up = 2 * p ** 2 + 2 * p ** 3 - 5 * p ** 4 + 2 * p ** 5;
    expect(low).toBeLessThanOrEqual(up);
    expect(high).toBeGreaterThanOrEqual(up);
    expect((high - low) / up).toBeLessThan(1e-12);
  });

  test("are 0 where nothing joins the ends, and 1 at most", () => {
    expect(availabilityBounds(buildGraph([{ from: "a", to: "b" }, { from: "c", to: "d" }]), "a", "d")).toEqual({ low: 0, high: 0, gap: 0 });
    const { low, high } = availabilityBounds(buildGraph([{ from: "a", to: "b" }]), "a", "b");
    expect(high).toBe(1);
    expect(low).toBeGreaterThan(1 - 1e-13);
  });

  test("yields after every so much work, and comes to the same in turns as in one go", () => {
    const graph = buildGraph(grid(9, 9, 0.1));
    const work = availabilityBoundsInTurns(graph, "0/0", "8/8");
    let turns = 0;
    let turn = work.next();
    for (; turn.done !== true; turn = work.next()) turns += 1;
    expect(turns).toBeGreaterThan(3);
    expect(turn.value).toEqual(availabilityBounds(graph, "0/0", "8/8"));
  });
});

describe("a decision diagram whose work is bounded", () => {
  const ladder = grid(2, 6, 0.1);
  const { up: exactUp, down: exactDown } = enumerateAvailability(ladder, [], "0/0", "1/5");

  test.each([
    ["the likeliest states first", false],
    ["every state, if it can", true],
  ])("loses no probability, whatever the bound on its work, and claims no more than is so: %s", (_, mustBeExact) => {
    const openAfter = Array.from({ length: 500 }, (__, mostCells) => {
      const { up, down, open } = drain(frontierDiagram(network(ladder, "0/0", "1/5"), mostCells, mustBeExact));
      expect(up).toBeLessThanOrEqual(exactUp * (1 + 1e-13));
      expect(down).toBeLessThanOrEqual(exactDown * (1 + 1e-13));
      expect(up + down + open).toBeGreaterThanOrEqual(1 - 1e-13);
      return open;
    });
    expect(openAfter[0]).toBe(1);
    expect(openAfter.at(-1)).toBe(0);
  });

  test("counts as exact only what is, where work ends among states that hardly ever come about", () => {
    const random = seededRandom(7);
    for (const [rows, columns] of [[2, 4], [2, 5], [3, 3]] as const) {
      const links = grid(rows, columns, 0.3).map((link) => (random() < 0.3 ? { ...link, unavailability: 1e-30 } : link));
      const [from, to] = ["0/0", `${rows - 1}/${columns - 1}`] as const;
      const { up, down } = enumerateAvailability(links, [], from, to);
      for (let mostCells = 0; mostCells < 600; mostCells += 1) {
        const answer = drain(frontierDiagram(network(links, from, to), mostCells, true));
        if (!isExact(answer)) continue;
        expect(answer.up / up).toBeCloseTo(1, 12);
        expect(answer.down / down).toBeCloseTo(1, 12);
      }
    }
  });
});

describe("disjoint paths and cuts", () => {
  test("bound the sum over every combination from below and from above, on 500 random graphs", () => {
    fc.assert(
      fc.property(smallGraphs, ({ links }) => {
        const { up, down } = enumerateAvailability(links, [], "n0", "n1");
        const joined = network(links, "n0", "n1");
        fc.pre(boundByPaths(joined).up > 0);
        expect(boundByPaths(joined).up).toBeLessThanOrEqual(up * (1 + 1e-13));
        expect(boundByCuts(joined).down).toBeLessThanOrEqual(down * (1 + 1e-12));
      }),
      { seed: 20260514, numRuns: 500 },
    );
  });

  test("paths may share what never fails, and take the most reliable way first", () => {
    const links = [
      { from: "in", to: "hub", unavailability: 0 },
      { from: "hub", to: "out", unavailability: 0.1 },
      { from: "hub", to: "x", unavailability: 0.3 },
      { from: "x", to: "out", unavailability: 0 },
      { from: "in", to: "out", unavailability: 0.5 },
    ];
    expect(boundByPaths(network(links, "in", "out")).down).toBeCloseTo(0.1 * 0.3 * 0.5, 15);
    expect(boundByPaths(network([...links, { from: "in", to: "x", unavailability: 0 }], "in", "out"))).toEqual({ up: 1, down: 0 });
    // A hub that fails is on one path only: the likelier.
    expect(boundByPaths(network(links, "in", "out", { hub: 0.2 })).down).toBeCloseTo((1 - 0.8 * 0.9) * 0.5, 15);
  });

  test("cuts are the layers between the ends, of nodes as well as links", () => {
    const links = ["in a", "in b", "a out", "b out"].map((ends) => {
      const [from, to] = ends.split(" ") as [string, string];
      return { from, to, unavailability: 0.1 };
    });
    expect(boundByCuts(network(links, "in", "out", { a: 0.2, b: 0.2 })).up).toBeCloseTo(0.99 * 0.96 * 0.99, 15);
    // A way that never fails past one of them leaves no cut there.
    expect(boundByCuts(network([...links, { from: "in", to: "a", unavailability: 0 }], "in", "out")).up).toBeCloseTo(0.99, 15);
  });

  test("a part that is always down is on no path", () => {
    const links = [{ from: "in", to: "x", unavailability: 1 }, { from: "x", to: "out", unavailability: 0.1 }];
    expect(boundByPaths(network(links, "in", "out"))).toEqual({ up: 0, down: 1 });
    expect(boundByCuts(network(links, "in", "out")).up).toBe(0);
  });
});
