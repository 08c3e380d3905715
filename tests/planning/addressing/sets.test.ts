import fc from "fast-check";
import {
  addressAt,
  coverAsText,
  coverByPrefixes,
  findClashes,
  findFreeAddresses,
  findFreeSubnet,
  formatAddress,
  formatPrefix,
  mergeRanges,
  networkOf,
  overlaps,
  parsePrefix,
  parseRanges,
  rangesOfPrefixes,
  subtractRanges,
  uniteRanges,
  type Family,
} from "../../../src/planning/addressing";
import { problemOf } from "../../support/sentence";
import { fewestPrefixes, hostValues, valuesOf } from "./slow-sets";

/** Two spaces of 512 addresses, small enough for the slow twins; each straddles a word or an octet. */
const spaces = { 4: { whole: "10.255.254.0/23", base: 0x0aff_fe00n, bits: 32 }, 6: { whole: "2001:db8::1:ffff:fe00/119", base: (0x2001_0db8n << 96n) | 0x1_ffff_fe00n, bits: 128 } } as const;

const families: readonly Family[] = [4, 6];

/** Random prefixes inside the space of a family. */
function prefixesIn(family: Family, maxLength = 12): fc.Arbitrary<string[]> {
  const { base, bits } = spaces[family];
  const one = fc.tuple(fc.integer({ min: 0, max: 511 }), fc.integer({ min: bits - 8, max: bits })).map(([offset, length]) => formatPrefix(networkOf(addressAt(family, base + BigInt(offset)), length)));
  return fc.array(one, { maxLength });
}

/** Random ranges of up to 16 addresses on both sides of a place where a word or an octet is carried. */
function rangesIn(family: Family): fc.Arbitrary<string[]> {
  const base = family === 4 ? 0x0aff_fff0n : (0x2001_0db8n << 96n) | 0x1_ffff_fff0n;
  const address = (offset: number): string => formatAddress(addressAt(family, base + BigInt(offset)));
  const one = fc.tuple(fc.integer({ min: 0, max: 40 }), fc.integer({ min: 0, max: 15 })).map(([offset, more]) => `${address(offset)}-${address(offset + more)}`);
  return fc.array(one, { maxLength: 6 });
}

function merged(family: Family, texts: readonly string[]): string[] {
  return coverAsText(mergeRanges(parseRanges(texts, family)));
}

function gaps(family: Family, whole: string, taken: readonly string[]): string[] {
  return coverAsText(subtractRanges(rangesOfPrefixes(family, [parsePrefix(whole)]), parseRanges(taken, family)));
}

const settings = { seed: 4, numRuns: 150 };

describe.each(families)("sets of IPv%i prefixes", (family) => {
  test("merge finds the fewest prefixes, as joining halves does", () => {
    fc.assert(
      fc.property(prefixesIn(family), (texts) => {
        expect(merged(family, texts)).toEqual(fewestPrefixes(family, valuesOf(texts)));
      }),
      settings,
    );
  });

  test("merge is idempotent and does not mind the order", () => {
    fc.assert(
      fc.property(prefixesIn(family), fc.integer(), (texts, turn) => {
        const once = merged(family, texts);
        const shuffled = texts.map((text, place) => ({ text, key: Math.imul(place + 1, turn | 1) })).sort((a, b) => a.key - b.key);
        expect(merged(family, once)).toEqual(once);
        expect(merged(family, shuffled.map(({ text }) => text))).toEqual(once);
      }),
      settings,
    );
  });

  test("gaps are what is left one by one, and with what is taken they partition the prefix", () => {
    const { whole } = spaces[family];
    fc.assert(
      fc.property(prefixesIn(family), (taken) => {
        const free = gaps(family, whole, taken);
        const values = valuesOf(taken);
        const left = new Set([...valuesOf([whole])].filter((value) => !values.has(value)));
        expect(free).toEqual(fewestPrefixes(family, left));
        expect(merged(family, [...free, ...merged(family, taken)])).toEqual(merged(family, [whole, ...taken]));
        expect(findClashes(parseRanges([...free, ...merged(family, taken)], family)).total).toBe(0);
      }),
      { ...settings, numRuns: 100 },
    );
  });

  test("several sets united are one merged set of them all", () => {
    fc.assert(
      fc.property(fc.array(prefixesIn(family), { minLength: 1, maxLength: 4 }), (sets) => {
        const united = coverAsText(uniteRanges(sets.map((texts) => parseRanges(texts, family))));
        expect(united).toEqual(fewestPrefixes(family, valuesOf(sets.flat())));
      }),
      settings,
    );
  });

  test("what is left of several ranges is what is left of them one by one, wherever the taken ones begin and end", () => {
    fc.assert(
      fc.property(rangesIn(family), rangesIn(family), (whole, taken) => {
        const left = coverAsText(subtractRanges(parseRanges(whole, family), parseRanges(taken, family)));
        const values = valuesOf(taken);
        expect(left).toEqual(fewestPrefixes(family, new Set([...valuesOf(whole)].filter((value) => !values.has(value)))));
      }),
      { ...settings, numRuns: 300 },
    );
  });

  test("both ways of covering agree", () => {
    fc.assert(
      fc.property(prefixesIn(family), (texts) => {
        const ranges = mergeRanges(parseRanges(texts, family));
        expect(coverByPrefixes(ranges).map(formatPrefix)).toEqual(coverAsText(ranges));
      }),
      settings,
    );
  });

  test("clashes are the pairs that looking at every pair finds", () => {
    fc.assert(
      fc.property(prefixesIn(family, 20), (texts) => {
        const prefixes = texts.map((text) => parsePrefix(text));
        const pairs = prefixes.flatMap((a, first) => prefixes.flatMap((b, second) => (first < second && overlaps(a, b) ? [{ first, second }] : [])));
        expect(findClashes(parseRanges(texts, family))).toEqual({ pairs, total: pairs.length });
        const some = findClashes(parseRanges(texts, family), 3);
        expect(some.total).toBe(pairs.length);
        expect(some.pairs).toHaveLength(Math.min(3, pairs.length));
        expect(pairs).toEqual(expect.arrayContaining([...some.pairs]));
      }),
      settings,
    );
  });

  test("the next free subnet is the first aligned one that meets nothing taken", () => {
    const { whole, base, bits } = spaces[family];
    fc.assert(
      fc.property(prefixesIn(family), fc.integer({ min: bits - 9, max: bits }), (taken, length) => {
        const values = valuesOf(taken);
        const size = 1n << BigInt(bits - length);
        let expected: string | null = null;
        for (let first = base; expected === null && first < base + 512n; first += size) {
          let free = true;
          for (let value = first; value < first + size; value++) free &&= !values.has(value);
          if (free) expected = `${formatAddress(addressAt(family, first))}/${length}`;
        }
        const find = (): string => formatPrefix(findFreeSubnet(parsePrefix(whole), length, parseRanges(taken, family)));
        if (expected === null) expect(problemOf(find).kind).toBe("no-answer");
        else expect(find()).toBe(expected);
      }),
      settings,
    );
  });

  test("the next free addresses are the lowest hosts not taken", () => {
    const { whole } = spaces[family];
    const hosts = hostValues(parsePrefix(whole));
    fc.assert(
      fc.property(prefixesIn(family), fc.integer({ min: 1, max: 40 }), (taken, count) => {
        const values = valuesOf(taken);
        const expected = hosts.filter((value) => !values.has(value)).slice(0, count).map((value) => formatAddress(addressAt(family, value)));
        const find = (): string[] => findFreeAddresses(parsePrefix(whole), parseRanges(taken, family), count).map(formatAddress);
        if (expected.length < count) expect(problemOf(find).kind).toBe("no-answer");
        else expect(find()).toEqual(expected);
      }),
      settings,
    );
  });
});

describe("the ends of the address space", () => {
  test.each<[Family, string, string[]]>([
    [4, "0.0.0.0-255.255.255.255", ["0.0.0.0/0"]],
    [4, "0.0.0.1-255.255.255.255", ["0.0.0.1/32", "0.0.0.2/31"]],
    [4, "255.255.255.254-255.255.255.255", ["255.255.255.254/31"]],
    [6, "::-ffff:ffff:ffff:ffff:ffff:ffff:ffff:ffff", ["::/0"]],
    [6, "::ffff:ffff-::1:0:0", ["::ffff:ffff/128", "::1:0:0/128"]],
  ])("IPv%i %s", (family, text, first) => {
    expect(merged(family, [text]).slice(0, first.length)).toEqual(first);
  });

  test("addresses are neighbours where they differ by one, and not where they do so in their last words alone", () => {
    expect(merged(6, ["2001:db8::1", "2001:db9::2"])).toHaveLength(2);
    expect(merged(6, ["2001:db8::2", "2001:db8:1::3"])).toHaveLength(2);
    expect(merged(6, ["2001:db8::2", "2001:db8:0:0:0:1:0:3"])).toHaveLength(2);
    expect(merged(6, ["2001:db8::ffff:ffff:ffff:ffff", "2001:db8:0:1::"])).toHaveLength(2);
    expect(merged(6, ["2001:db8::2", "2001:db8::3"])).toEqual(["2001:db8::2/127"]);
    expect(merged(6, ["2001:db8::/64", "2001:db8:0:1::/64"])).toEqual(["2001:db8::/63"]);
  });

  test("the whole of a family without its two ends takes twice as many prefixes as it has bits, less two", () => {
    expect(gaps(4, "0.0.0.0/0", ["0.0.0.0", "255.255.255.255"])).toHaveLength(62);
    expect(gaps(6, "::/0", ["::", "ffff:ffff:ffff:ffff:ffff:ffff:ffff:ffff"])).toHaveLength(254);
  });

  test("nothing is left of a prefix that is taken past its end", () => {
    expect(gaps(4, "255.255.255.0/24", ["255.255.0.0/16"])).toEqual([]);
    expect(gaps(6, "ffff::/16", ["::/0"])).toEqual([]);
  });
});
