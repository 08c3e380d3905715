import { availability, buildGraph, type Link } from "../../src/planning/resilience";

function bridge(arms: readonly [number, number, number, number], across: number): Link[] {
  const [a, b, c, d] = arms;
  return [
    { from: "in", to: "x", unavailability: 1 - a },
    { from: "x", to: "out", unavailability: 1 - b },
    { from: "in", to: "y", unavailability: 1 - c },
    { from: "y", to: "out", unavailability: 1 - d },
    { from: "x", to: "y", unavailability: 1 - across },
  ];
}

describe("the bridge network, R = 2p² + 2p³ − 5p⁴ + 2p⁵: Billinton and Allan, Reliability Evaluation of Engineering Systems, chapter 5, from memory", () => {
  test.each([
    [0.5, 0.5],
    [0.8, 0.91136],
    [0.9, 0.97848],
    [0.95, 0.994780625],
    [0.99, 0.9997980498],
  ])("equal parts of %p: %p", (p, expected) => {
    expect(availability(buildGraph(bridge([p, p, p, p], p)), "in", "out").up).toBeCloseTo(expected, 12);
  });

  test("the book's own rounding of .99: 0.99979805", () => {
    expect(availability(buildGraph(bridge([0.99, 0.99, 0.99, 0.99], 0.99)), "in", "out").up.toFixed(8)).toBe("0.99979805");
  });

  test("arms of .8, .9 and .9, .8 and a bridge of .9, derived by factoring the bridge: .9·.98² + .1·(1 − .28²) = 0.95652", () => {
    expect(availability(buildGraph(bridge([0.8, 0.9, 0.9, 0.8], 0.9)), "in", "out").up).toBeCloseTo(0.95652, 12);
  });
});

test("the factoring theorem, Rel(G) = p·Rel(G/e) + (1 − p)·Rel(G − e), on the bridge: Colbourn, The Combinatorics of Network Reliability", () => {
  const contracted = buildGraph([
    { from: "in", to: "xy", unavailability: 0.2 },
    { from: "in", to: "xy", unavailability: 0.1 },
    { from: "xy", to: "out", unavailability: 0.1 },
    { from: "xy", to: "out", unavailability: 0.2 },
  ]);
  const deleted = buildGraph(bridge([0.8, 0.9, 0.9, 0.8], 0).slice(0, 4));
  const whole = buildGraph(bridge([0.8, 0.9, 0.9, 0.8], 0.7));
  const up = (graph: typeof whole): number => availability(graph, "in", "out").up;
  expect(up(whole)).toBeCloseTo(0.7 * up(contracted) + 0.3 * up(deleted), 14);
});

/** Gilbert's recurrence: how likely a random graph hangs together, and from that how likely two of its nodes do; q is the chance of no link. */
function gilbert(nodes: number, q: number): number {
  const choose = (n: number, k: number): number => Array.from({ length: k }, (_, i) => (n - i) / (i + 1)).reduce((product, factor) => product * factor, 1);
  const whole: number[] = [0, 1];
  for (let n = 2; n <= nodes; n += 1) {
    whole.push(1 - Array.from({ length: n - 1 }, (_, i) => choose(n - 1, i) * whole[i + 1]! * q ** ((i + 1) * (n - i - 1))).reduce((sum, one) => sum + one, 0));
  }
  const parted = Array.from({ length: nodes - 1 }, (_, i) => choose(nodes - 2, i) * whole[i + 1]! * q ** ((i + 1) * (nodes - i - 1)));
  return 1 - parted.reduce((sum, one) => sum + one, 0);
}

test.each([
  [2, 0.3],
  [3, 0.3],
  [5, 0.7],
  [9, 0.8],
  [14, 0.9],
])("two of %i nodes of a random graph without a link at %p: Gilbert, Random Graphs, Annals of Mathematical Statistics 30 (1959), from memory", (nodes, q) => {
  const links = Array.from({ length: nodes }, (_, a) => Array.from({ length: a }, (__, b): Link => ({ from: `n${a}`, to: `n${b}`, unavailability: q }))).flat();
  expect(availability(buildGraph(links), "n0", "n1").up).toBeCloseTo(gilbert(nodes, q), 12);
});
