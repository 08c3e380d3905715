import fc from "fast-check";
import { addressAt, addressValue, carve, containsPrefix, formatAddress, formatPrefix, networkOf, overlaps, parsePrefix, parseRanges, type Need, type Prefix } from "../../../src/planning/addressing";
import { problemOf } from "../../support/sentence";

const whole = parsePrefix("10.20.0.0/22");

function need(name: string, hosts: number, kept: string | null = null, row = 1): Need {
  return { name, hosts, kept: kept === null ? null : parsePrefix(kept), row };
}

function carved(needs: readonly Need[], growth = 0, taken: readonly string[] = []): string[] {
  return carve(whole, needs, growth, parseRanges(taken, 4)).map(({ prefix }) => formatPrefix(prefix));
}

/** The slow twin: for each need try every aligned place from the lowest. Null where one finds none. */
function carvedSlowly(needs: readonly Need[], taken: readonly string[]): string[] | null {
  const used: Prefix[] = [...taken.map((text) => parsePrefix(text)), ...needs.flatMap(({ kept }) => (kept === null ? [] : [kept]))];
  const found: string[] = [];
  for (const { hosts, kept } of needs) {
    let length = 30;
    while (2 ** (32 - length) - 2 < hosts) length--;
    let place = kept;
    for (let value = addressValue(whole.first); place === null && length >= whole.length && value < addressValue(whole.first) + 1024n; value += 1n << BigInt(32 - length)) {
      const candidate = networkOf(addressAt(4, value), length);
      if (!used.some((one) => overlaps(one, candidate))) place = candidate;
    }
    if (place === null) return null;
    used.push(place);
    found.push(formatPrefix(place));
  }
  return found;
}

const someNeeds = fc.array(fc.integer({ min: 1, max: 200 }), { minLength: 1, maxLength: 10 }).map((list) => list.map((hosts, place) => need(`n${place}`, hosts, null, place + 1)));
const someTaken = fc.array(fc.tuple(fc.integer({ min: 0, max: 1023 }), fc.integer({ min: 25, max: 32 })), { maxLength: 4 }).map((list) =>
  list.map(([offset, length]) => formatPrefix(networkOf(addressAt(4, addressValue(whole.first) + BigInt(offset)), length))),
);

test("each need takes the first free aligned subnet, as trying every place does", () => {
  fc.assert(
    fc.property(someNeeds, someTaken, (needs, taken) => {
      const expected = carvedSlowly(needs, taken);
      if (expected === null) expect(problemOf(() => carved(needs, 0, taken)).kind).toBe("no-answer");
      else expect(carved(needs, 0, taken)).toEqual(expected);
    }),
    { seed: 4, numRuns: 500 },
  );
});

test("a need appended never moves an earlier one", () => {
  fc.assert(
    fc.property(someNeeds, someTaken, fc.integer({ min: 1, max: 100 }), (needs, taken, hosts) => {
      fc.pre(carvedSlowly([...needs, need("last", hosts)], taken) !== null);
      expect(carved([...needs, need("last", hosts)], 0, taken).slice(0, -1)).toEqual(carved(needs, 0, taken));
    }),
    { seed: 4, numRuns: 300 },
  );
});

test("what was carved can be kept: then every order and any appended need leave it where it is", () => {
  fc.assert(
    fc.property(someNeeds, fc.integer({ min: 1, max: 60 }), (needs, hosts) => {
      fc.pre(carvedSlowly([need("new", hosts), ...needs], []) !== null && carvedSlowly([...needs, need("new", hosts)], []) !== null);
      const kept = needs.map((one, place) => ({ ...one, kept: parsePrefix(carved(needs)[place]!) }));
      const again = carved([need("new", hosts), ...[...kept].reverse()]);
      expect(again.slice(1).reverse()).toEqual(carved(needs));
      expect(again.every((text) => containsPrefix(whole, parsePrefix(text)))).toBe(true);
    }),
    { seed: 4, numRuns: 200 },
  );
});

describe("sizes", () => {
  test.each([
    [1, 0, "10.20.0.0/30"],
    [2, 0, "10.20.0.0/30"],
    [3, 0, "10.20.0.0/29"],
    [6, 0, "10.20.0.0/29"],
    [7, 0, "10.20.0.0/28"],
    [254, 0, "10.20.0.0/24"],
    [255, 0, "10.20.0.0/23"],
    [1022, 0, "10.20.0.0/22"],
    [60, 0.03, "10.20.0.0/26"],
    [60, 0.04, "10.20.0.0/25"],
    [100, 0.1, "10.20.0.0/25"],
    [20, 0.1, "10.20.0.0/27"],
    [10, 0.4, "10.20.0.0/28"],
  ])("%i hosts with a growth of %f take %s", (hosts, growth, prefix) => expect(carved([need("n", hosts)], growth)).toEqual([prefix]));

  test("growth is exact: 10 hosts and 40 % are 14, not 15, so a /28 holds them", () => {
    expect(carved([need("n", 10)], 0.4)).toEqual(["10.20.0.0/28"]);
  });

  test("every IPv6 need is a /64", () => {
    const results = carve(parsePrefix("2001:db8::/56"), [need("a", 5), need("b", 100_000)], 0, parseRanges(["2001:db8:0:1::5"], 6));
    expect(results.map(({ prefix }) => formatPrefix(prefix))).toEqual(["2001:db8::/64", "2001:db8:0:2::/64"]);
  });
});

describe("the ends of what a prefix holds", () => {
  const everything = parsePrefix("0.0.0.0/0");
  const none = parseRanges([], 4);

  test("0.0.0.0/0 holds 4294967296 addresses (RFC 4632 section 3.1), so 4294967294 hosts and no more", () => {
    expect(carve(everything, [need("all", 4_294_967_294)], 0, none).map(({ prefix }) => formatPrefix(prefix))).toEqual(["0.0.0.0/0"]);
    const problem = problemOf(() => carve(everything, [need("all", 4_294_967_295, null, 7)], 0, none));
    expect([problem.kind, problem.sentence]).toEqual(["no-answer", 'prefix 0.0.0.0/0 has no room left for 4294967295 hosts of "all" in needs row 7.']);
  });

  test("an IPv6 prefix without room says that a /64 is wanted", () => {
    const two = parsePrefix("2001:db8::/63");
    const sentence = problemOf(() => carve(two, [need("a", 5), need("b", 5), need("c", 5, null, 4)], 0, parseRanges([], 6))).sentence;
    expect(sentence).toBe('prefix 2001:db8::/63 has no room left for a /64 of "c" in needs row 4.');
  });

  test("each need has the hosts between network and broadcast address (RFC 950)", () => {
    const [one] = carve(whole, [need("a", 100)], 0, none);
    expect([formatAddress(one!.firstHost), formatAddress(one!.lastHost)]).toEqual(["10.20.0.1", "10.20.0.126"]);
  });

  test("a kept /64 stands beside taken halves of its neighbours", () => {
    const taken = parseRanges(["2001:db8:0:0:8000::/65", "2001:db8:0:2::/65"], 6);
    const kept = carve(parsePrefix("2001:db8::/62"), [need("a", 5, "2001:db8:0:1::/64"), need("b", 5)], 0, taken);
    expect(kept.map(({ prefix }) => formatPrefix(prefix))).toEqual(["2001:db8:0:1::/64", "2001:db8:0:3::/64"]);
  });

  test("kept IPv6 subnets that meet what is taken, or one another, are named wherever they lie", () => {
    const refusal = (taken: readonly string[], ...kept: readonly string[]): string =>
      problemOf(() => carve(parsePrefix("2001:db8::/56"), kept.map((text, place) => need(`n${place}`, 5, text, place + 2)), 0, parseRanges(taken, 6))).sentence;
    expect(refusal(["2001:db8:0:1::/64", "2001:db8:0:2:8000::/65"], "2001:db8:0:2::/64")).toMatch(/^needs row 2: .* meets an address that is taken\./);
    expect(refusal([], "2001:db8::/64", "2001:db8:0:1::/64", "2001:db8:0:1::/64")).toMatch(/^needs row 4: .* meets 2001:db8:0:1::\/64 in row 3\./);
  });

  test("a kept IPv6 subnet longer than /64 is too small for interface identifiers of 64 bits (RFC 4291 section 2.5.1)", () => {
    const sentence = problemOf(() => carve(parsePrefix("2001:db8::/56"), [need("a", 5, "2001:db8::/65", 3)], 0, parseRanges([], 6))).sentence;
    expect(sentence).toBe('needs row 3: kept prefix 2001:db8::/65 for "a" is longer than /64. Clear it or give a larger one.');
    expect(problemOf(() => carved([need("a", 2, "10.20.1.0/31", 3)])).sentence).toMatch(/ is longer than \/30\./);
  });
});

describe("kept prefixes that cannot stand are named", () => {
  test.each([
    ["outside", [need("a", 5, "10.21.0.0/24", 2)], [], /^needs row 2: kept prefix 10\.21\.0\.0\/24 for "a" is not in 10\.20\.0\.0\/22/],
    ["too small", [need("a", 7, "10.20.1.0/29", 3)], [], /^needs row 3: .* holds 6 hosts, not 7/],
    ["taken", [need("a", 7, "10.20.1.0/24", 3)], ["10.20.1.77"], /^needs row 3: .* meets an address that is taken/],
    ["met by another", [need("a", 7, "10.20.1.0/24", 2), need("b", 7, "10.20.1.64/26", 3)], [], /^needs row 3: .* meets 10\.20\.1\.0\/24 in row 2/],
  ])("%s", (_, needs, taken, sentence) => expect(problemOf(() => carved(needs, 0, taken)).sentence).toMatch(sentence));
});
