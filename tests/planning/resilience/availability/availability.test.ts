import fc from "fast-check";
import { availability, buildGraph, type Link } from "../../../../src/planning/resilience";
import { enumerateAvailability } from "../paths/brute-force";
import { smallGraphs } from "../paths/small-graphs";

function closeTo(value: number, expected: number): boolean {
  return Math.abs(value - expected) <= 1e-12 * Math.max(expected, 1e-3);
}

function grid(rows: number, columns: number, unavailability: number): Link[] {
  const links: Link[] = [];
  for (let row = 0; row < rows; row += 1) {
    for (let column = 0; column < columns; column += 1) {
      const from = `${row}/${column}`;
      if (column + 1 < columns) links.push({ from, to: `${row}/${column + 1}`, unavailability });
      if (row + 1 < rows) links.push({ from, to: `${row + 1}/${column}`, unavailability });
    }
  }
  return links;
}

describe("availability", () => {
  test("equals the sum over every combination, on 2000 random graphs of links and nodes that fail", () => {
    let diagrams = 0;
    fc.assert(
      fc.property(smallGraphs, ({ links, nodes }) => {
        const { up, down, states } = availability(buildGraph(links, nodes), "n0", "n1");
        diagrams += states > 0 ? 1 : 0;
        const expected = enumerateAvailability(links, nodes, "n0", "n1");
        expect(closeTo(up, expected.up)).toBe(true);
        expect(closeTo(down, expected.down)).toBe(true);
      }),
      { seed: 20260501, numRuns: 2000 },
    );
    // Where reductions do everything the diagram is not tried: they must not on most.
    expect(diagrams).toBeGreaterThan(200);
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
        expect(closeTo(up(links), (1 - q) * up(contracted) + q * up(rest))).toBe(true);
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

  test("counts the ends themselves among the nodes that fail", () => {
    const nodes = [{ name: "HOST", unavailability: 0.1 }, { name: "array", unavailability: 0.2 }];
    expect(availability(buildGraph([{ from: "host", to: "array", unavailability: 0.5 }], nodes), "host", "array").up).toBeCloseTo(0.9 * 0.8 * 0.5, 15);
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

  test("refuses what outgrows its bound, with a sentence, and never guesses", () => {
    const full: Link[] = [];
    for (let a = 0; a < 40; a += 1) for (let b = 0; b < a; b += 1) full.push({ from: `n${a}`, to: `n${b}`, unavailability: 0.5 });
    expect(() => availability(buildGraph(full), "n0", "n1")).toThrow(expect.objectContaining({ kind: "no-answer", argument: "links" }));
  });
});
