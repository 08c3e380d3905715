// Values of 17 digits that were computed apart from this code, or stand in print, asked as a cell would ask; the source of each is in its title.
import { byteslost, lossrange, lossrisk, mttdl } from "../../src/functions/durability";
import { availability, availBounds, feedLoad, outage, pathCount, place } from "../../src/functions/resilience";
import values from "../planning/durability/independent-values.json";
import { completeGraphs, fabrics, gridOfTwelve, twoPlanes } from "../planning/resilience/availability/reference-values";
import { bridge, complete, fabric, grid, type Topology } from "../planning/resilience/availability/topologies";
import { relativeError } from "../support/loss-model-in-decimals";

type Arguments = Readonly<Record<string, string | number | null | undefined>>;

/** What stands in a cell: sizes and schemes as text, all else a number; what is not given is left out. */
const cellsOf = (given: Arguments, names: readonly string[]): unknown[] =>
  names.map((name) => {
    const value = given[name];
    return value === null || value === undefined || ["scheme", "driveSize"].includes(name) ? value : Number(value);
  });

const exposed = ["repairHours", "years", "readErrorRate", "latentErrors", "scrubHours", "sharedCause", "waitHours"];
const calls: Readonly<Record<string, (given: Arguments) => unknown>> = {
  MTTDL: (given) => mttdl(...cellsOf(given, ["scheme", "drives", "mttfHours", "repairHours", "waitHours"])),
  LOSSRISK: (given) => lossrisk(...cellsOf(given, ["scheme", "drives", "driveSize", "afr", ...exposed])),
  BYTESLOST: (given) => byteslost(...cellsOf(given, ["scheme", "drives", "driveSize", "afr", ...exposed])),
  LOSSRANGE: (given) => lossrange(...cellsOf(given, ["scheme", "drives", "driveSize", "afrLow", "afrHigh", ...exposed, "rows"])).slice(1),
};
const asked = values.filter(({ answer }) => answer in calls);

test("the four functions of lost data are all asked", () => {
  expect(new Set(asked.map(({ answer }) => answer)).size).toBe(4);
});

test.each(asked.map(({ answer, arguments: given, value, source }) => [answer, Object.values(given).join(", "), source, { given, value }] as const))(
  "%s of %s: %s",
  (answer, _given, _source, { given, value }) => {
    const ours = [calls[answer]!(given)].flat(2);
    const expected = [value].flat(2);
    expect(ours).toHaveLength(expected.length);
    ours.forEach((one, index) => expect(relativeError(Number(one), expected[index]!)).toBeLessThan(1e-12));
  },
);

const linkRows = (links: Topology["links"]): unknown[][] => links.map(({ from, to, unavailability }) => [from, to, unavailability]);
const nodeRows = (nodes: Topology["nodes"]): unknown[][] => nodes.map(({ name, unavailability }) => [name, unavailability]);

test.each(fabrics.map((one) => [one.fabric.spines[0]!.count, one.fabric.leaves, one.fabric.leaf, one.source, one] as const))(
  "AVAILABILITY of %i spines and %i leaves that are down %p of the time: %s",
  (_spines, _leaves, _down, _source, { fabric: shape, up }) => {
    const { links, nodes } = fabric(shape);
    expect(relativeError(availability(linkRows(links), "host", "array", nodeRows(nodes)), up)).toBeLessThan(1e-12);
  },
);

test(`AVAILABILITY of two planes: ${twoPlanes.source}`, () => {
  const ends = ["h-L1", "h-L2", "L3-a", "L4-a", ...["L1-S1", "S1-L3", "L1-S2", "S2-L3", "L2-S3", "S3-L4", "L2-S4", "S4-L4"]];
  const spines = ["S1", "S2", "S3", "S4"].map((name) => [name, 0.05, true]);
  expect(relativeError(availability(ends.map((one) => [...one.split("-"), 0.1]), "h", "a", spines), twoPlanes.up)).toBeLessThan(1e-12);
});

test.each(completeGraphs)("AVAILABILITY of a complete graph on $nodes nodes by Gilbert's recurrence of 1959 (from memory)", ({ nodes, link, up }) => {
  expect(relativeError(availability(linkRows(complete(nodes, () => link)), "n0", "n1"), up)).toBeLessThan(1e-12);
});

test(`AVAILBOUNDS of a 12×12 grid holds the value between six digits: ${gridOfTwelve.source}`, () => {
  const [low, high, gap] = availBounds(linkRows(grid(12, 12, 0.1)), "0/0", "11/11")[1]!.map(Number) as [number, number, number];
  expect(low).toBeLessThan(Number(gridOfTwelve.up));
  expect(high).toBeGreaterThan(Number(gridOfTwelve.up));
  expect(gap).toBeLessThan(1e-6);
});

test("AVAILBOUNDS of the bridge at .9 holds 0.97848 (Billinton and Allan, from memory), no wider than disjoint paths and cuts", () => {
  const [low, high] = availBounds(linkRows(bridge(0.1)), "in", "out")[1]!.map(Number) as [number, number];
  expect(low).toBeLessThanOrEqual(0.97848);
  expect(high).toBeGreaterThanOrEqual(0.97848);
  expect(high - low).toBeLessThanOrEqual(0.0162);
});

// By the definition of the model; what can be placed and survived was found by a flow of an independent library (networkx).
test.each<[string, number, readonly number[], number | null]>([
  ["RAID 60 2+2", 12, [6, 3, 3], 6],
  ["RAID 10", 6, [3, 2, 1], 3],
  ["RAID 10", 6, [2, 4, 1], 3],
  ["RAID 6 8+2", 20, [9, 9, 9, 9], null],
])("PLACE for %s of %i members into rooms %p: the fullest holds %p, and OUTAGE says whether one loss is survived", (scheme, count, rooms, fullest) => {
  const spill = place(Array.from({ length: count }, (_, member) => [`m${member}`]), rooms.map((room, index) => [`R${index}`, room]), scheme);
  const loads = rooms.map((_, index) => spill.filter(([, domain]) => domain === `R${index}`).length);
  loads.forEach((load, index) => expect(load).toBeLessThanOrEqual(rooms[index]!));
  const [, , , left, survives] = outage(scheme, spill)[1]!;
  expect([survives, left]).toEqual([fullest !== null, 0]);
  if (fullest !== null) expect(Math.max(...loads)).toBe(fullest);
});

test.each<[string, unknown[][], string]>([
  ["2,000 W between two lines", [["a", 2000, "F/L1-L2"]], "9.6153846153846154"],
  ["1,000 W between each two lines", [["a", 1000, "F/L1-L2"], ["b", 1000, "F/L2-L3"], ["c", 1000, "F/L3-L1"]], "8.3271673440811408"],
  ["loads all unlike", [["a", 500, "F/L1"], ["b", 2000, "F/L2-L1"], ["c", 1000, "f / l2 - l3"]], "13.38404894911063"],
])("FEEDLOAD at 208 V of %s: amperes of the worst line with 60 digits (mpmath) from the sum of phasors", (_, supplies, amps) => {
  expect(relativeError(Number(feedLoad(supplies, [["F", 208, 30, 3]])[1]![3]), amps)).toBeLessThan(1e-12);
});

test("PATHCOUNT by its definition: two ports of a host and four of an array on two networks make four paths, and either network carries two", () => {
  const hostPorts = [["h1", "n1", "10.0.1.1"], ["h1", "n2", "10.0.2.1"]];
  const arrayPorts = [["a1", "n1", "10.0.1.11"], ["a1", "n1", "10.0.1.12"], ["a1", "n2", "10.0.2.11"], ["a1", "n2", "10.0.2.12"]];
  expect(pathCount(hostPorts, arrayPorts)).toEqual([["Host", "Array", "Paths", "Networks", "Least left"], ["h1", "a1", 4, 2, 2]]);
});
