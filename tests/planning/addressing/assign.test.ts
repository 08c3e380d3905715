import fc from "fast-check";
import { addressAt, assignAddresses, findFreeAddresses, formatAddress, parseAddress, parsePrefix, parseRanges, type KeptPair, type Named } from "../../../src/planning/addressing";
import { problemOf } from "../../support/sentence";
import { hostValues, valuesOf } from "./slow-sets";

const prefix = parsePrefix("10.20.0.0/26");

function named(names: readonly string[]): Named[] {
  return names.map((name, place) => ({ value: name, row: place + 1 }));
}

function keptPairs(pairs: readonly (readonly [string, string])[]): KeptPair[] {
  return pairs.map(([name, address], place) => ({ name, address: parseAddress(address), row: place + 1 }));
}

function assigned(names: readonly string[], kept: readonly (readonly [string, string])[] = [], reserved: readonly string[] = []): string[] {
  return assignAddresses(prefix, named(names), keptPairs(kept), parseRanges(reserved, 4)).map(formatAddress);
}

/** The slow twin: look through the hosts from the lowest for every name. */
function assignedSlowly(names: readonly string[], kept: readonly (readonly [string, string])[], reserved: readonly string[]): string[] {
  const used = valuesOf([...reserved, ...kept.map(([, address]) => address)]);
  const known = new Map(kept);
  return names.map((name) => {
    const own = known.get(name);
    if (own !== undefined) return own;
    const value = hostValues(prefix).find((host) => !used.has(host))!;
    used.add(value);
    return formatAddress(addressAt(4, value));
  });
}

const pool = Array.from({ length: 12 }, (_, place) => `port ${place}`);
const someNames = fc.subarray(pool, { minLength: 1 });
const someKept = fc
  .tuple(fc.subarray(pool), fc.uniqueArray(fc.integer({ min: 11, max: 62 }), { minLength: 12, maxLength: 12 }))
  .map(([names, hosts]) => names.map((name, place) => [name, `10.20.0.${hosts[place]!}`] as const));
const reserved = ["10.20.0.1", "10.20.0.4-10.20.0.6", "10.20.0.8/31"];

describe("assigning", () => {
  test("gives what looking through the hosts gives", () => {
    fc.assert(
      fc.property(someNames, someKept, (names, kept) => {
        expect(assigned(names, kept, reserved)).toEqual(assignedSlowly(names, kept, reserved));
      }),
      { seed: 4, numRuns: 500 },
    );
  });

  test("a kept pair never moves, whatever names come, go or change places", () => {
    fc.assert(
      fc.property(someNames, fc.shuffledSubarray(pool, { minLength: 1 }), (before, after) => {
        const kept = assigned(before).map((address, place) => [before[place]!, address] as const);
        const addresses = assigned(after, kept);
        after.forEach((name, place) => {
          const own = kept.find(([one]) => one === name);
          if (own !== undefined) expect(addresses[place]).toBe(own[1]);
        });
        expect(new Set(addresses).size).toBe(after.length);
        for (const [name, address] of kept) if (!after.includes(name)) expect(addresses).not.toContain(address);
      }),
      { seed: 4, numRuns: 300 },
    );
  });

  test("names differ by more than case and blanks around them", () => {
    expect(assigned(["Ctl-A"], [["ctl-a ", "10.20.0.20"]])).toEqual(["10.20.0.20"]);
  });
});

describe("what cannot stand is refused and named", () => {
  test.each([
    ["a name twice", ["a", "b", "A"], [], [], /^names row 3 "A" stands in row 1 already/],
    ["outside the prefix", ["a"], [["a", "10.20.1.1"]], [], /^kept row 1 keeps 10\.20\.1\.1, which is not in 10\.20\.0\.0\/26/],
    ["the network itself", ["a"], [["a", "10.20.0.0"]], [], /^kept row 1 .*the address of the network itself/],
    ["the broadcast address", ["a"], [["a", "10.20.0.63"]], [], /^kept row 1 .*broadcast/],
    ["a reserved address", ["a"], [["a", "10.20.0.5"]], ["10.20.0.4-10.20.0.6"], /^kept row 1 .*reserved/],
    ["an address kept twice", ["a", "b"], [["a", "10.20.0.5"], ["b", "10.20.0.5"]], [], /^kept row 2 keeps 10\.20\.0\.5, which row 1 keeps already/],
    ["two addresses for one name", ["a"], [["a", "10.20.0.5"], ["a", "10.20.0.6"]], [], /^kept row 2 gives "a" a second address/],
    ["two addresses for a name not on the list", ["b"], [["a", "10.20.0.5"], ["a", "10.20.0.6"]], [], /^kept row 2 gives "a" a second address/],
    ["another family", ["a"], [["a", "2001:db8::1"]], [], /^kept row 1 .*not in/],
  ] as const)("%s", (_, names, kept, held, sentence) => expect(problemOf(() => assigned(names, kept, held)).sentence).toMatch(sentence));

  test("the last address of an IPv6 subnet is no broadcast address (RFC 4291 section 2) but a reserved anycast one (RFC 2526)", () => {
    const six = parsePrefix("2001:db8::/112");
    const kept = (address: string): string => problemOf(() => assignAddresses(six, named(["a"]), keptPairs([["a", address]]), parseRanges([], 6))).sentence;
    expect(kept("2001:db8::ffff")).toBe("kept row 1 keeps 2001:db8::ffff, which is reserved. Change or remove that row.");
    expect(kept("2001:db8::")).toBe("kept row 1 keeps 2001:db8::, the subnet-router anycast address. Change or remove that row.");
  });

  test("a kept address on the point-to-point link of a /31 is neither network nor broadcast address (RFC 3021)", () => {
    const link = parsePrefix("192.0.2.6/31");
    const kept = (address: string, reserved: readonly string[]): string[] =>
      assignAddresses(link, named(["a"]), keptPairs([["a", address]]), parseRanges(reserved, 4)).map(formatAddress);
    expect([kept("192.0.2.6", []), kept("192.0.2.7", [])]).toEqual([["192.0.2.6"], ["192.0.2.7"]]);
    expect(problemOf(() => kept("192.0.2.7", ["192.0.2.7"])).sentence).toMatch(/^kept row 1 keeps 192\.0\.2\.7, which is reserved\./);
  });

  test("a row is the argument that is refused", () => {
    expect(problemOf(() => assigned(["a", "A"])).argument).toBe("names row 2");
    expect(problemOf(() => assigned(["a"], [["a", "10.20.0.5"], ["a", "10.20.0.6"]])).argument).toBe("kept row 2");
    expect(problemOf(() => assigned(["a"], [["a", "10.20.1.1"]])).argument).toBe("kept row 1");
  });

  test("a full prefix is no answer", () => {
    const names = Array.from({ length: 63 }, (_, place) => `n${place}`);
    const problem = problemOf(() => assigned(names));
    expect([problem.kind, problem.argument, problem.received]).toEqual(["no-answer", "prefix", "n62"]);
    expect(problem.sentence).toBe('prefix 10.20.0.0/26 has no free address left for "n62" in names row 63. Give a larger one.');
  });
});

test("finding addresses in a /8 with a million taken does not look at the rest of it", () => {
  const taken = parseRanges(Array.from({ length: 1_000_000 }, (_, place) => formatAddress(addressAt(4, 0x0a00_0001n + BigInt(place)))), 4);
  expect(findFreeAddresses(parsePrefix("10.0.0.0/8"), taken, 2).map(formatAddress)).toEqual(["10.15.66.65", "10.15.66.66"]);
});

test("finding addresses in a /64 looks at no more than is taken", () => {
  expect(findFreeAddresses(parsePrefix("2001:db8::/64"), parseRanges(["2001:db8::1-2001:db8::ffff:ffff:ffff"], 6), 1).map(formatAddress)).toEqual(["2001:db8:0:0:1::"]);
});
