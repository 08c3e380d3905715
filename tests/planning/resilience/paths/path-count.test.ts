import fc from "fast-check";
import { countPaths, type NetworkPort } from "../../../../src/planning/resilience";
import { problemOf } from "../../../support/sentence";

function port(device: string, network: string, address: string | null = null): NetworkPort {
  return { device, network, address };
}

describe("countPaths", () => {
  test("two host ports and four array ports on two networks make four paths, of which either network carries two", () => {
    const arrayPorts = [port("a1", "n1", "10.0.1.11"), port("a1", "n1", "10.0.1.12"), port("a1", "n2", "10.0.2.11"), port("a1", "n2", "10.0.2.12")];
    expect(countPaths([port("h1", "n1", "10.0.1.1"), port("h1", "n2", "10.0.2.1")], arrayPorts)).toEqual([
      { host: "h1", array: "a1", paths: 4, networks: 2, leastLeft: 2 },
    ]);
  });

  test("equals the pairs of ports tried one by one, and what is left without each network", () => {
    const ports = (names: readonly string[]) => fc.array(fc.tuple(fc.constantFrom(...names), fc.constantFrom("n1", "n2", "n3")), { minLength: 1, maxLength: 8 });
    fc.assert(
      fc.property(ports(["h1", "h2"]), ports(["a1", "a2"]), (hosts, arrays) => {
        const [hostPorts, arrayPorts] = [hosts, arrays].map((list) => list.map(([device, network]) => port(device, network))) as [NetworkPort[], NetworkPort[]];
        for (const { host, array, paths, networks, leastLeft } of countPaths(hostPorts, arrayPorts)) {
          const pairs = hostPorts.flatMap((one) => arrayPorts.filter((other) => one.device === host && other.device === array && one.network === other.network));
          const left = ["n1", "n2", "n3"].map((lost) => pairs.filter(({ network }) => network !== lost).length);
          expect({ paths, networks, leastLeft }).toEqual({ paths: pairs.length, networks: new Set(pairs.map(({ network }) => network)).size, leastLeft: Math.min(...left) });
        }
      }),
      { seed: 20260510, numRuns: 300 },
    );
  });

  test("names match without case, and stand as first written, pairs without a path too", () => {
    const rows = countPaths([port("H1", "Red"), port("h1", "RED"), port("h2", "blue")], [port("A1", "red"), port("A2", "Green")]);
    expect(rows).toEqual([
      { host: "H1", array: "A1", paths: 2, networks: 1, leastLeft: 0 },
      { host: "H1", array: "A2", paths: 0, networks: 0, leastLeft: 0 },
      { host: "h2", array: "A1", paths: 0, networks: 0, leastLeft: 0 },
      { host: "h2", array: "A2", paths: 0, networks: 0, leastLeft: 0 },
    ]);
  });

  test("an address that two controllers share is one port of the network, however it is spelt", () => {
    const array = [port("a", "n1", "fd00::1"), port("a", "n1", "FD00:0:0::1"), port("a", "n2", "fd00::1"), port("b", "n1", "fd00::1"), port("b", "n1", "slot 1"), port("b", "n1", "Slot 1")];
    expect(countPaths([port("h", "n1"), port("h", "n2")], array).map(({ paths }) => paths)).toEqual([2, 2]);
  });

  test("ports without an address are ports of their own", () => {
    expect(countPaths([port("h", "n1"), port("h", "n1")], [port("a", "n1"), port("a", "n1")])[0]!.paths).toBe(4);
  });

  test("refuses more pairs than an answer has rows for", () => {
    const many = (count: number, name: string): NetworkPort[] => Array.from({ length: count }, (_, index) => port(`${name}${index}`, "n"));
    expect(countPaths(many(250, "h"), many(400, "a"))).toHaveLength(100_000);
    expect(problemOf(() => countPaths(many(401, "h"), many(250, "a")))).toMatchObject({
      kind: "no-answer",
      argument: "hostPorts",
      sentence: "hostPorts and arrayPorts make 100250 pairs; 100000 are the most. Give the ports of one site.",
    });
  });
});
