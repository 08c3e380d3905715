import { problemOf } from "../../../support/sentence";
import fc from "fast-check";
import { availability, availabilityBounds, availabilityInTurns, buildGraph, type Link } from "../../../../src/planning/resilience";
import { enumerateAvailability } from "../paths/brute-force";
import { smallGraphs } from "../paths/small-graphs";
import { completeGraphs, fabrics, twoPlanes } from "./reference-values";
import { complete, fabric, grid, type Topology } from "./topologies";

/** Tells whether two probabilities agree to twelve digits of their own, however small they are. */
function agree(value: number, expected: number): boolean {
  return Math.abs(value - expected) <= 1e-12 * expected;
}

function between({ links, nodes }: Topology, from: string, to: string) {
  return availability(buildGraph(links, nodes), from, to);
}

describe("availability", () => {
  test("equals the sum over every combination, to twelve digits of what is up and of what is down, on 1000 random graphs of links and nodes that fail, some of which do not forward", () => {
    let diagrams = 0;
    fc.assert(
      fc.property(smallGraphs, ({ links, nodes }) => {
        const { up, down, states } = between({ links, nodes }, "n0", "n1");
        diagrams += states > 0 ? 1 : 0;
        const expected = enumerateAvailability(links, nodes, "n0", "n1");
        expect({ up: agree(up, expected.up), down: agree(down, expected.down) }).toEqual({ up: true, down: true });
      }),
      { seed: 20260501, numRuns: 1000 },
    );
    // Where reductions do everything the diagram is not tried: they must not on most.
    expect(diagrams).toBeGreaterThan(70);
  });

  test("equals the sum over every combination on every graph of five nodes, all its links and all its inner nodes alike", () => {
    const pairs = complete(5, () => 0.3);
    const nodes = ["n2", "n3", "n4"].map((name) => ({ name, unavailability: 0.2 }));
    for (let choice = 1; choice < 2 ** pairs.length; choice += 1) {
      const links = pairs.filter((_, pair) => (choice >> pair) & 1);
      const present = (name: string): boolean => links.some(({ from, to }) => from === name || to === name);
      if (!present("n0") || !present("n1")) continue;
      const known = nodes.filter(({ name }) => present(name));
      expect(between({ links, nodes: known }, "n0", "n1").up).toBeCloseTo(enumerateAvailability(links, known, "n0", "n1").up, 13);
    }
  });

  test("obeys the factoring theorem: up with a link contracted, and with it deleted, weighted by the link", () => {
    fc.assert(
      fc.property(smallGraphs, fc.nat(), ({ links }, pick) => {
        const index = pick % links.length;
        const { from, to, unavailability: q = 0 } = links[index]!;
        fc.pre(!["n0", "n1"].includes(from) || !["n0", "n1"].includes(to));
        const [kept, merged] = ["n0", "n1"].includes(to) ? [to, from] : [from, to];
        const rename = (name: string): string => (name === merged ? kept : name);
        // A spur keeps the ends in the table when their last link goes.
        const rest = [...links.filter((_, other) => other !== index), { from: "n0", to: "a", unavailability: 0 }, { from: "n1", to: "b", unavailability: 0 }];
        const contracted = rest.map((link) => ({ ...link, from: rename(link.from), to: rename(link.to) })).filter((link) => link.from !== link.to);
        const up = (list: readonly Link[]): number => availability(buildGraph(list), "n0", "n1").up;
        expect(up(links)).toBeCloseTo((1 - q) * up(contracted) + q * up(rest), 14);
      }),
      { seed: 20260502, numRuns: 500 },
    );
  });

  test("equals the sum over every combination on a 3×4 grid of 17 links, wherever its ends are", () => {
    const links = grid(3, 4, 0.3);
    for (const to of ["2/3", "1/2", "0/3"]) {
      const { down, states } = availability(buildGraph(links), "0/0", to);
      expect(states).toBeGreaterThan(0);
      expect(down).toBeCloseTo(enumerateAvailability(links, [], "0/0", to).down, 12);
    }
  });

  test("is the same in whatever order the links stand, and from either end", () => {
    const links = grid(5, 6, 0.1);
    const { down } = availability(buildGraph(links), "0/0", "4/5");
    expect(availability(buildGraph([...links].reverse()), "4/5", "0/0").down / down).toBeCloseTo(1, 12);
    const shuffled = [...links].sort((one, other) => (one.to + one.from < other.to + other.from ? -1 : 1));
    expect(availability(buildGraph(shuffled), "0/0", "4/5").down / down).toBeCloseTo(1, 12);
  });

  test("keeps the digits of a tiny unavailability, which no subtraction from 1 could", () => {
    const links = ["a", "b", "c"].flatMap((name) => [
      { from: "host", to: name, unavailability: 1e-9 },
      { from: name, to: "array", unavailability: 1e-9 },
    ]);
    const { up, down } = availability(buildGraph(links), "host", "array");
    expect(up).toBe(1);
    // (1 − (1 − 1e-9)²)³ = (2e-9 − 1e-18)³
    expect(down / (2e-9 - 1e-18) ** 3).toBeCloseTo(1, 14);
  });

  test("keeps the digits of a tiny availability too", () => {
    const links = ["a", "b"].flatMap((name) => [
      { from: "host", to: name, unavailability: 1 - 2 ** -30 },
      { from: name, to: "array", unavailability: 1 - 2 ** -30 },
    ]);
    // Two ways of 2^-60 each, less both at once.
    expect(availability(buildGraph(links), "host", "array").up / (2 ** -59 - 2 ** -120)).toBeCloseTo(1, 14);
    const across = availability(buildGraph([...links, { from: "a", to: "b", unavailability: 1 - 2 ** -30 }]), "host", "array").up;
    expect(across / 2 ** -59).toBeCloseTo(1, 8);
  });

  test("leaves out what lies on no way between the ends, however much it is", () => {
    const elsewhere = grid(12, 12, 0.1);
    const links = [{ from: "host", to: "0/0", unavailability: 0.1 }, { from: "host", to: "array", unavailability: 0.2 }, ...elsewhere];
    const answer = availability(buildGraph(links), "host", "array");
    expect(answer).toMatchObject({ states: 0, peak: 0 });
    expect(answer.down).toBeCloseTo(0.2, 15);
    // The mesh hangs on the far end itself, which a ring leads to.
    const ring = [{ from: "host", to: "0/0", unavailability: 0.1 }, { from: "host", to: "x", unavailability: 0.1 }, { from: "x", to: "0/0", unavailability: 0.1 }];
    const ringed = availability(buildGraph([...ring, ...elsewhere]), "host", "0/0");
    expect(ringed).toMatchObject({ states: 0, peak: 0 });
    expect(ringed.down).toBeCloseTo(0.1 * (1 - 0.81), 15);
  });

  test("runs no path through another host, whose links count for nothing then", () => {
    const links = ["host-sw1", "sw1-array", "sw1-h2", "h2-sw2", "sw2-array"].map((ends) => {
      const [from, to] = ends.split("-") as [string, string];
      return { from, to, unavailability: 0.1 };
    });
    expect(between({ links, nodes: [{ name: "h2", forwards: false }] }, "host", "array").up).toBeCloseTo(0.81, 15);
    expect(between({ links, nodes: [{ name: "h2" }] }, "host", "array").up).toBeCloseTo(0.9 * (1 - 0.1 * (1 - 0.729)), 15);
  });

  test("counts the ends themselves among the nodes that fail, in whatever case they are written", () => {
    const nodes = [{ name: "HOST", unavailability: 0.1 }, { name: "array", unavailability: 0.2 }];
    expect(between({ links: [{ from: "host", to: "array", unavailability: 0.5 }], nodes }, "host", "array").up).toBeCloseTo(0.9 * 0.8 * 0.5, 15);
  });

  test("counts links between the same two nodes as parallel", () => {
    const links = [{ from: "a", to: "b", unavailability: 0.1 }, { from: "b", to: "a", unavailability: 0.3 }];
    expect(availability(buildGraph(links), "a", "b").down).toBeCloseTo(0.03, 15);
  });

  test("is 0 where nothing joins the ends", () => {
    expect(availability(buildGraph([{ from: "a", to: "b" }, { from: "c", to: "d" }]), "a", "d")).toMatchObject({ up: 0, down: 1 });
  });

  test("joins a long ladder exactly, as a hand-made recurrence over its rungs does", () => {
    // States of the two rails at each rung: both joined to the start, or one of them; q is the chance that a link is down.
    const [q, p] = [0.1, 0.9];
    let [both, upper, lower] = [1 - q, q, 0];
    for (let rung = 1; rung < 50; rung += 1) {
      // Rails up or down, then the rung: with one rail carrying on, the rung joins the other.
      const one = (from: number): number => from * p;
      const bothRails = both * p * p;
      const onlyUpper = both * p * q + one(upper);
      const onlyLower = both * q * p + one(lower);
      // Parted rails that both carry on are joined anyway; a lone rail joins the other by the rung.
      [both, upper, lower] = [bothRails + (onlyUpper + onlyLower) * p, onlyUpper * q, onlyLower * q];
    }
    const answer = availability(buildGraph(grid(2, 50, q)), "0/0", "1/49");
    expect(answer.up).toBeCloseTo(both + lower, 12);
  });

  test("yields after every so much work, and comes to the same in turns as in one go", () => {
    const graph = buildGraph(grid(9, 9, 0.1));
    const work = availabilityInTurns(graph, "0/0", "8/8");
    let turns = 0;
    let turn = work.next();
    for (; turn.done !== true; turn = work.next()) turns += 1;
    expect(turns).toBeGreaterThan(3);
    expect(turn.value).toEqual(availability(graph, "0/0", "8/8"));
  });

  test("answers an 11×11 grid, within the bounds that are proved for it", () => {
    const graph = buildGraph(grid(11, 11, 0.1));
    const { up, states } = availability(graph, "0/0", "10/10");
    const { low, high } = availabilityBounds(graph, "0/0", "10/10");
    expect(states).toBeGreaterThan(1_000_000);
    expect(up).toBeGreaterThan(low);
    expect(up).toBeLessThan(high);
    expect(high - low).toBeLessThan(1e-7);
  });

  test("leaves out no more than rounding does where it follows the likeliest states alone", () => {
    // Too many states to settle them all; those that matter are few. The bounds are proved, and their gap is that of rounding.
    const graph = buildGraph(grid(12, 12, 1e-6));
    const { down } = availability(graph, "0/0", "11/11");
    const { low, high } = availabilityBounds(graph, "0/0", "11/11");
    expect(1 - down).toBeGreaterThanOrEqual(low);
    expect(1 - down).toBeLessThanOrEqual(high);
    // At either corner both links; or a corner's link and the two behind the other one, of which there are two a corner: 2q² + 4q³ and more.
    expect(down / 1e-12).toBeCloseTo(2 + 4e-6, 9);
  });

  test("refuses what outgrows its bound, with a sentence, and never guesses", () => {
    const sentence =
      "links are too closely meshed between from and to for an exact answer. Ask AVAILBOUNDS, or for a smaller part of the network.";
    // No two links are alike: too wide for a diagram. Narrower, but too much work.
    for (const links of [complete(40, (a, b) => (a + 40 * b + 1) / 1700), grid(14, 14, 0.1)]) {
      const to = links[0]!.from === "n1" ? "n1" : "13/13";
      expect(problemOf(() => availability(buildGraph(links), links[0]!.to === "n0" ? "n0" : "0/0", to))).toMatchObject({ kind: "no-answer", argument: "links", sentence });
    }
  });
});

describe("availability of fabrics, whose spines are counted and not told apart", () => {
  test.each(fabrics.map((value) => [`${value.fabric.spines[0]!.count} spines, ${value.fabric.leaves} leaves, links ${value.fabric.edge}: ${value.source}`, value] as const))(
    "%s",
    (_, value) => {
      const { up, down, peak } = between(fabric(value.fabric), "host", "array");
      expect(Math.abs(up / Number(value.up) - 1)).toBeLessThanOrEqual(1e-12);
      expect(Math.abs(down / Number(value.down) - 1)).toBeLessThanOrEqual(1e-12);
      expect(peak).toBeLessThan(4000);
    },
  );

  test("two planes, whose spines all look alike by degree and are not to be exchanged across them", () => {
    const links = ["host L1", "host L2", "array L3", "array L4", "S1 L1", "S1 L3", "S2 L1", "S2 L3", "S3 L2", "S3 L4", "S4 L2", "S4 L4"].map((ends) => {
      const [from, to] = ends.split(" ") as [string, string];
      return { from, to, unavailability: 0.1 };
    });
    const nodes = ["S1", "S2", "S3", "S4"].map((name) => ({ name, unavailability: 0.05 }));
    expect(Math.abs(between({ links, nodes }, "host", "array").up / Number(twoPlanes.up) - 1)).toBeLessThanOrEqual(1e-12);
    // Leaves between planes: nothing reduces, and a diagram has to keep them apart.
    const wider = [...links, { from: "L1", to: "L4", unavailability: 0.1 }, { from: "L2", to: "L3", unavailability: 0.1 }];
    expect(between({ links: wider, nodes }, "host", "array").up).toBeCloseTo(enumerateAvailability(wider, nodes, "host", "array").up, 13);
  });

  test("small fabrics of two kinds of spines equal the sum over every combination", () => {
    for (const [odd, spine] of [[0.2, 0.1], [0.3, 0.1], [0.3, 0]] as const) {
      const { links, nodes } = fabric({ leaves: 4, spines: [{ count: 2, unavailability: 0.1, links: 0.2 }, { count: 1, unavailability: spine, links: odd }], edge: 0.1, leaf: 0 });
      const known = nodes.filter(({ unavailability }) => unavailability! > 0);
      expect(between({ links, nodes: known }, "host", "array").up).toBeCloseTo(enumerateAvailability(links, known, "host", "array").up, 13);
    }
  });

  test("a fabric of which every link is a little different, so that nothing may be exchanged, is as available to nine digits", () => {
    const alike = fabric({ leaves: 7, spines: [{ count: 4, unavailability: 0.1, links: 0.2 }], edge: 0.1, leaf: 0.1 });
    const unlike = { ...alike, links: alike.links.map((link, index) => ({ ...link, unavailability: link.unavailability! * (1 + 1e-11 * (index % 97)) })) };
    const [one, other] = [alike, unlike].map((topology) => between(topology, "host", "array"));
    expect(one!.up).toBeCloseTo(other!.up, 9);
    expect(one!.peak).toBeLessThan(other!.peak);
  });

  test("one transit leaf with links of its own keeps its place among alike ones", () => {
    const plain = fabric({ leaves: 5, spines: [{ count: 2, unavailability: 0.1, links: 0.2 }], edge: 0.1, leaf: 0 });
    const links = plain.links.map((link) => (link.from === "leaf 4" ? { ...link, unavailability: 0.5 } : link));
    const nodes = plain.nodes.filter(({ unavailability }) => unavailability! > 0);
    expect(between({ links, nodes }, "host", "array").up).toBeCloseTo(enumerateAvailability(links, nodes, "host", "array").up, 13);
  });

  test.each(completeGraphs)("two of $nodes nodes of a complete graph, links down $link: Gilbert's recurrence of 1959 (from memory) with 60 digits", ({ nodes, link, up }) => {
    expect(Math.abs(availability(buildGraph(complete(nodes, () => link)), "n0", "n1").up / Number(up) - 1)).toBeLessThanOrEqual(1e-12);
  });
});
