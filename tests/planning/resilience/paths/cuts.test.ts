import { problemOf } from "../../../support/sentence";
import fc from "fast-check";
import { buildGraph, disjointPaths, minimumCut, searchFrom, singlePoints, singlePointsTo, type Link } from "../../../../src/planning/resilience";
import { innerNodes, isJoined, mostDisjointPaths, smallestCut } from "./brute-force";
import { smallGraphs, type SmallGraph } from "./small-graphs";

/** Parts of a graph by the names that points carry; the second of two links between the same nodes is called so. */
function linkNames(links: readonly Link[]): string[] {
  return links.map((link, index) => {
    const ends = new Set([link.from, link.to]);
    const number = links.slice(0, index + 1).filter((other) => ends.has(other.from) && ends.has(other.to)).length;
    return `${link.from} - ${link.to}${number === 1 ? "" : ` (${number})`}`;
  });
}

function isPartedWithout({ links, nodes }: SmallGraph, points: readonly string[]): boolean {
  const names = linkNames(links);
  return !isJoined(links.filter((_, index) => !points.includes(names[index]!)), "n0", "n1", new Set(points), nodes);
}

describe("cuts and disjoint paths", () => {
  test("single points are those whose loss parts the ends, on 2000 random graphs", () => {
    fc.assert(
      fc.property(smallGraphs, ({ links, nodes }) => {
        fc.pre(isJoined(links, "n0", "n1", new Set(), nodes));
        const points = singlePoints(buildGraph(links, nodes), "n0", "n1").map(({ name }) => name);
        const expected = [...innerNodes(links, "n0", "n1"), ...linkNames(links)].filter((name) => isPartedWithout({ links, nodes }, [name]));
        expect([...points].sort()).toEqual(expected.sort());
      }),
      { seed: 20260503, numRuns: 2000 },
    );
  });

  test("the cut parts the ends, nothing smaller does, and it is as large as paths are many, on 2000 random graphs", () => {
    fc.assert(
      fc.property(smallGraphs, ({ links, nodes }) => {
        fc.pre(isJoined(links, "n0", "n1", new Set(), nodes));
        const graph = buildGraph(links, nodes);
        const cut = minimumCut(graph, "n0", "n1").map(({ name }) => name);
        expect(isPartedWithout({ links, nodes }, cut)).toBe(true);
        expect(cut).toHaveLength(smallestCut(links, "n0", "n1", "node", nodes));
        expect(disjointPaths(graph, "n0", "n1", "node")).toBe(cut.length);
        expect(disjointPaths(graph, "n0", "n1", "link")).toBe(smallestCut(links, "n0", "n1", "link", nodes));
      }),
      { seed: 20260504, numRuns: 2000 },
    );
  });

  test("paths are as many as a search of all choices of paths finds", () => {
    fc.assert(
      fc.property(smallGraphs, fc.constantFrom("node" as const, "link" as const), ({ links, nodes: all }, kind) => {
        const few = links.slice(0, 9);
        const nodes = all.filter(({ name }) => few.some((link) => link.from === name || link.to === name));
        fc.pre(["n0", "n1"].every((end) => few.some((link) => link.from === end || link.to === end)));
        expect(disjointPaths(buildGraph(few, nodes), "n0", "n1", kind)).toBe(mostDisjointPaths(few, "n0", "n1", kind, nodes));
      }),
      { seed: 20260505, numRuns: 500 },
    );
  });

  test("single points stand in their order on the way", () => {
    const links = [
      { from: "host", to: "leaf" },
      { from: "leaf", to: "spine 1" },
      { from: "leaf", to: "spine 2" },
      { from: "spine 1", to: "core" },
      { from: "spine 2", to: "core" },
      { from: "core", to: "array" },
      { from: "array", to: "tape" },
    ];
    const points = singlePoints(buildGraph(links), "HOST", "Array");
    expect(points.map(({ name }) => name)).toEqual(["host - leaf", "leaf", "core", "core - array"]);
  });

  test("one search answers for every node it reached", () => {
    const graph = buildGraph([{ from: "a", to: "b" }, { from: "b", to: "c" }, { from: "x", to: "y" }]);
    const search = searchFrom(graph, 0);
    expect([...search.reached]).toEqual([0, 1, 2, -1, -1]);
    expect(singlePointsTo(search, 2)!.map(({ name }) => name)).toEqual(["a - b", "b", "b - c"]);
    expect(singlePointsTo(search, 3)).toBeNull();
  });

  test("a cut names links only where they join the ends directly", () => {
    const links = [{ from: "a", to: "b" }, { from: "a", to: "b" }, { from: "a", to: "c" }, { from: "c", to: "b" }];
    expect(minimumCut(buildGraph(links), "a", "b")).toEqual([
      { kind: "node", name: "c" },
      { kind: "link", name: "a - b" },
      { kind: "link", name: "a - b (2)" },
    ]);
  });

  test("a chain of 100,000 links is searched without running out of stack", () => {
    const links = Array.from({ length: 100_000 }, (_, index) => ({ from: `n${index}`, to: `n${index + 1}` }));
    const graph = buildGraph(links);
    expect(singlePoints(graph, "n0", "n100000")).toHaveLength(199_999);
    expect(disjointPaths(graph, "n0", "n100000", "node")).toBe(1);
  });

  test.each([
    ["a link to itself", "links", () => buildGraph([{ from: "A", to: "a", at: "links row 7" }]), 'links row 7 joins "A" to itself. Give two different ends.'],
    ["an end that is not there", "to", () => singlePoints(buildGraph([{ from: "a", to: "b" }]), "a", "z"), 'to "z" is at no end of links. Write a name that stands there.'],
    ["two ends that are one", "to", () => minimumCut(buildGraph([{ from: "a", to: "b" }]), "a", "A"), 'to "A" is the same node as from. Give two different nodes.'],
    ["a node that no link joins", "nodes", () => buildGraph([{ from: "a", to: "b" }], [{ name: "c", unavailability: 0.1 }]), 'nodes: "c" is at no end of links. Mend the name or add its link.'],
    ["a node given twice", "nodes", () => buildGraph([{ from: "a", to: "b" }], [{ name: "a" }, { name: "A", unavailability: 0.2 }]), 'nodes: "A" stands twice. Give each node one row.'],
    ["a start that is not there", "from", () => disjointPaths(buildGraph([{ from: "a", to: "b" }]), "z", "b", "node"), 'from "z" is at no end of links. Write a name that stands there.'],
  ])("refuses %s", (_, argument, work, sentence) => {
    expect(problemOf(work)).toMatchObject({ kind: "invalid", argument, sentence });
  });

  test("200,000 links are the most", () => {
    const links = new Array<Link>(200_001).fill({ from: "a", to: "b" });
    expect(buildGraph(links.slice(1)).names).toEqual(["a", "b"]);
    const sentence = "links has 200001 rows; 200000 are the most. Give the links of one site.";
    expect(problemOf(() => buildGraph(links))).toMatchObject({ kind: "no-answer", argument: "links", sentence });
  });

  test("no path runs through another host", () => {
    const links = [{ from: "host", to: "sw1" }, { from: "h2", to: "sw1" }, { from: "h2", to: "sw2" }, { from: "array", to: "sw2" }, { from: "array", to: "sw3" }];
    const hosts = ["host", "H2", "array"].map((name) => ({ name, forwards: false }));
    expect(disjointPaths(buildGraph(links), "host", "array", "node")).toBe(1);
    const graph = buildGraph(links, hosts);
    expect(disjointPaths(graph, "host", "array", "node")).toBe(0);
    expect(disjointPaths(graph, "host", "array", "link")).toBe(0);
    // A host that is itself an end is reached all the same.
    expect(singlePoints(graph, "host", "h2").map(({ name }) => name)).toEqual(["host - sw1", "sw1", "h2 - sw1"]);
    const sentence = 'links: nothing that forwards joins "host" to "array". Add the missing link or mend a name or nodes.';
    expect(problemOf(() => singlePoints(graph, "host", "array"))).toMatchObject({ kind: "no-answer", argument: "links", sentence });
    expect(problemOf(() => minimumCut(graph, "host", "array"))).toMatchObject({ kind: "no-answer", argument: "links", sentence });
  });

  test("links keep their names where a host beside them is passed over", () => {
    const links = [{ from: "h2", to: "a" }, { from: "a", to: "b" }, { from: "a", to: "b" }, { from: "h2", to: "b" }];
    const graph = buildGraph(links, [{ name: "h2", forwards: false }]);
    expect(minimumCut(graph, "a", "b").map(({ name }) => name)).toEqual(["a - b", "a - b (2)"]);
  });

  test("ends that nothing joins have no single point and no cut, but a number of paths: none", () => {
    const graph = buildGraph([{ from: "a", to: "b" }, { from: "c", to: "d" }]);
    const sentence = 'links: nothing joins "a" to "d". Add the missing link or mend a name.';
    expect(problemOf(() => singlePoints(graph, "a", "d"))).toMatchObject({ kind: "no-answer", argument: "links", sentence });
    expect(problemOf(() => minimumCut(graph, "a", "d"))).toMatchObject({ kind: "no-answer", argument: "links", sentence });
    expect(disjointPaths(graph, "a", "d", "link")).toBe(0);
  });
});
