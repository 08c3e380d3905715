import fc from "fast-check";
import {
  formatAddress,
  parseAddress,
  parseControllerNames,
  parsePortNames,
  parsePrefix,
  parseRanges,
  planPorts,
  type KeptPort,
  type PlannedPort,
  type PortArray,
  type PortNetwork,
  type PortSharing,
} from "../../../src/planning/addressing";
import { problemOf } from "../../support/sentence";

function array(name: string, row = 1, sharing: PortSharing | null = null, controllers = "A,B", ports = "0,1,2"): PortArray {
  return { name, controllers: parseControllerNames(controllers), ports: parsePortNames(ports), sharing, row };
}

function network(name: string, prefix: string, gateway: string | null = null, row = 1): PortNetwork {
  return { name, prefix: parsePrefix(prefix), gateway: gateway === null ? null : parseAddress(gateway), row };
}

function kept(text: string, row = 1): KeptPort {
  const [name, controller, port, address] = text.split(" ");
  return { array: name!, controller: controller!, port: port!, address: parseAddress(address!), row };
}

function lines(planned: readonly PlannedPort[]): string[] {
  return planned.map((one) => [one.array, one.controller, one.port, one.network.name, formatAddress(one.address)].join(" "));
}

const two = [network("left", "10.20.1.0/26", "10.20.1.1"), network("right", "10.20.2.0/26", null, 2)];

describe("sharing", () => {
  test("by controller every controller port has its own address, and the networks take turns port by port", () => {
    expect(lines(planPorts([array("x")], two))).toEqual([
      "x A 0 left 10.20.1.2",
      "x A 1 right 10.20.2.1",
      "x A 2 left 10.20.1.3",
      "x B 0 left 10.20.1.4",
      "x B 1 right 10.20.2.2",
      "x B 2 left 10.20.1.5",
    ]);
  });

  test("by array both controllers hold the one address of a port number", () => {
    expect(lines(planPorts([array("x")], two, [], "array"))).toEqual([
      "x A 0 left 10.20.1.2",
      "x A 1 right 10.20.2.1",
      "x A 2 left 10.20.1.3",
      "x B 0 left 10.20.1.2",
      "x B 1 right 10.20.2.1",
      "x B 2 left 10.20.1.3",
    ]);
  });

  test("an array may share otherwise than the rest", () => {
    const planned = planPorts([array("x", 1, "array", "A,B", "1"), array("y", 2, null, "A,B", "1")], two);
    expect(lines(planned)).toEqual(["x A 0 left 10.20.1.2", "x B 0 left 10.20.1.2", "y A 0 left 10.20.1.3", "y B 0 left 10.20.1.4"]);
  });

  test("a shared address may be kept for either controller, or for both", () => {
    const expected = ["x A 0 left 10.20.1.9", "x B 0 left 10.20.1.9"];
    const one = array("x", 1, "array", "A,B", "1");
    expect(lines(planPorts([one], two, [kept("x B 0 10.20.1.9")]))).toEqual(expected);
    expect(lines(planPorts([one], two, [kept("x A 0 10.20.1.9"), kept("x B 0 10.20.1.9", 2)]))).toEqual(expected);
  });
});

describe("networks", () => {
  test("with both families every port has an address in each", () => {
    const planned = planPorts([array("x", 1, null, "A", "0,1")], [...two, network("six", "fd00:1::/64", null, 3)]);
    expect(lines(planned)).toEqual(["x A 0 left 10.20.1.2", "x A 0 six fd00:1::1", "x A 1 right 10.20.2.1", "x A 1 six fd00:1::2"]);
    expect(planned.map((one) => one.network.prefix.length)).toEqual([26, 64, 26, 64]);
  });

  test("gateway and reserved addresses are never given away", () => {
    const held = { ...network("left", "10.20.1.0/29", "10.20.1.6"), reserved: parseRanges(["10.20.1.1-10.20.1.2"], 4) };
    expect(lines(planPorts([array("x", 1, null, "A", "0,1,2")], [held]))).toEqual(["x A 0 left 10.20.1.3", "x A 1 left 10.20.1.4", "x A 2 left 10.20.1.5"]);
    expect(problemOf(() => planPorts([array("x", 1, null, "A", "0,1,2,3")], [held]))).toMatchObject({
      kind: "no-answer",
      sentence: 'network "left" has no free address left for "x" port 3. Give it a larger prefix.',
    });
  });

  test("an IPv6 gateway may be the router's link-local address", () => {
    const [planned] = planPorts([array("x", 1, null, "A", "1")], [network("six", "fd00:1::/64", "fe80::1")]);
    expect(formatAddress(planned!.network.gateway!)).toBe("fe80::1");
  });

  test("networks of different routing tables may overlap", () => {
    const planned = planPorts([array("x", 1, null, "A", "0,1")], [network("left", "10.20.1.0/26"), { ...network("right", "10.20.1.0/26", null, 2), routing: "second" }]);
    expect(lines(planned)).toEqual(["x A 0 left 10.20.1.1", "x A 1 right 10.20.1.1"]);
  });
});

describe("keeping", () => {
  const arrays = ["x", "y", "z", "w"].map((name, place) => array(name, place + 1));

  test("what was planned can be kept: adding, removing and reordering arrays then moves nothing", () => {
    fc.assert(
      fc.property(fc.subarray(arrays, { minLength: 1 }), fc.shuffledSubarray(arrays, { minLength: 1 }), fc.constantFrom<PortSharing>("controller", "array"), (before, after, sharing) => {
        const first = planPorts(before, two, [], sharing);
        const held = first.map((one, place): KeptPort => ({ ...one, network: one.network.name, row: place + 1 }));
        const second = lines(planPorts(after, two, held, sharing));
        for (const line of lines(first)) if (after.some(({ name }) => line.startsWith(`${name} `))) expect(second).toContain(line);
        const addresses = second.map((line) => line.split(" ").at(-1));
        expect(new Set(addresses).size).toBe(sharing === "array" ? addresses.length / 2 : addresses.length);
      }),
      { seed: 4, numRuns: 300 },
    );
  });

  test("a kept address stays where it is even when another network would be its turn", () => {
    const planned = planPorts([array("x", 1, null, "A", "0,1")], two, [kept("x A 1 10.20.1.40")]);
    expect(lines(planned)).toEqual(["x A 0 left 10.20.1.2", "x A 1 left 10.20.1.40"]);
  });

  test("an address kept for an array that is gone stays taken", () => {
    expect(lines(planPorts([array("x", 1, null, "A", "1")], two, [kept("gone A 0 10.20.1.2")]))).toEqual(["x A 0 left 10.20.1.3"]);
  });
});

describe("what cannot stand is refused and named", () => {
  test.each([
    ["an array twice", [array("x"), array("X", 2)], two, [], /^arrays row 2 "X" stands in row 1 already/],
    ["a network twice", [array("x")], [two[0]!, { ...two[1]!, name: "left" }], [], /^networks row 2 "left" stands in row 1 already/],
    ["networks that overlap", [array("x")], [two[0]!, network("n", "10.20.0.0/16", null, 2)], [], /^networks row 2: 10\.20\.0\.0\/16 overlaps 10\.20\.1\.0\/26 in row 1/],
    ["no networks", [array("x")], [], [], /^networks has no rows/],
    ["a gateway outside", [array("x")], [network("n", "10.20.1.0/26", "10.20.2.1")], [], /^networks row 1: gateway 10\.20\.2\.1 is no host of 10\.20\.1\.0\/26/],
    ["a gateway that is the broadcast address", [array("x")], [network("n", "10.20.1.0/26", "10.20.1.63")], [], /gateway 10\.20\.1\.63 is no host/],
    ["a kept gateway", [array("x")], two, [kept("x A 0 10.20.1.1")], /^kept row 1 keeps 10\.20\.1\.1, which is reserved/],
    ["a kept address in no network", [array("x")], two, [kept("x A 0 10.20.3.1")], /^kept row 1 keeps 10\.20\.3\.1, which is in none of the networks/],
    ["a kept address of a family without networks", [array("x")], two, [kept("x A 0 fd00::1")], /^kept row 1 keeps fd00::1, which is in none/],
    ["an address kept twice", [array("x")], two, [kept("x A 0 10.20.1.9"), kept("x B 0 10.20.1.9", 2)], /^kept row 2 keeps 10\.20\.1\.9, which row 1 keeps already/],
    ["a port kept twice", [array("x")], two, [kept("x A 0 10.20.1.9"), kept("x A 0 10.20.1.10", 2)], /^kept row 2 is a second one for "x" port "0", after row 1/],
    ["controllers that share with two addresses", [array("x", 1, "array")], two, [kept("x A 0 10.20.1.9"), kept("x B 0 10.20.1.10", 2)], /^kept row 2 keeps 10\.20\.1\.10, but row 1/],
    ["one controller of those that share with two rows", [array("x", 1, "array")], two, [kept("x A 0 10.20.1.9"), kept("x A 0 10.20.1.9", 2)], /^kept row 2 is a second one/],
  ] as const)("%s", (_, arrays, networks, held, sentence) => {
    const problem = problemOf(() => planPorts(arrays, networks, held));
    expect(problem.sentence).toMatch(sentence);
    expect(problem.sentence.length).toBeLessThanOrEqual(160);
  });
});

describe("names of controllers and ports", () => {
  test.each([
    [2, ["A", "B"]],
    ["2", ["A", "B"]],
    ["A,B", ["A", "B"]],
    ["SP A, SP B", ["SP A", "SP B"]],
    ["A/B", ["A", "B"]],
  ])("controllers %p are %p", (text, names) => expect(parseControllerNames(text)).toEqual(names));

  test("after Z comes AA", () => expect(parseControllerNames(28).slice(25)).toEqual(["Z", "AA", "AB"]));

  test.each([
    [4, ["0", "1", "2", "3"]],
    ["0,1,2,3", ["0", "1", "2", "3"]],
    ["eth0, eth1", ["eth0", "eth1"]],
    ["0-3", ["0", "1", "2", "3"]],
    ["1 – 3, 8", ["1", "2", "3", "8"]],
    // A slot and its port are one name.
    ["1/1, 1/2", ["1/1", "1/2"]],
    ["eth-0", ["eth-0"]],
  ])("ports %p are %p", (text, names) => expect(parsePortNames(text)).toEqual(names));

  test.each([[0], [-1], [1.5], [1e9], ["1.5"], ["A,,B"], ["A,a"], [""], ["0-3,2"], ["0-9999"]])("%p is refused with what to write", (text) => {
    expect(problemOf(() => parsePortNames(text)).sentence).toMatch(/^ports .*Write a count such as 4/);
  });

  test("an array may have 1024 controllers or ports, and no more", () => {
    expect([parseControllerNames(1024), parsePortNames("0-1023")].map((names) => names.length)).toEqual([1024, 1024]);
    expect(parseControllerNames(1024).at(-1)).toBe("AMJ");
    expect(problemOf(() => parseControllerNames(1025)).sentence).toBe('controllers is 1025. Write a count such as 2, or names such as "A,B" (at most 1024).');
    expect(problemOf(() => parsePortNames("0-1024")).sentence).toBe('ports "0-1024" are 1025 names. Write a count such as 4, or names such as "0,1,2,3" (at most 1024).');
  });

  test("ports that run backwards are turned", () => {
    expect(problemOf(() => parsePortNames("3-0")).sentence).toBe('ports "3-0" runs backwards. Write 0-3.');
  });
});
