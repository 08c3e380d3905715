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
