import fc from "fast-check";
import { layoutDrives, parseScheme, usableBytes, usableOfMixed } from "../../../src/planning/capacity";
import { bytes, share } from "../../../src/planning/quantity";

const mixed = (scheme: string, sizes: readonly number[], spares = 0, reserve = 0): bigint =>
  usableOfMixed(parseScheme(scheme, "scheme"), sizes.map((size) => bytes(BigInt(size))), spares, share(reserve));

describe("drives of unequal sizes", () => {
  test.each<[string, number[], number, bigint]>([
    ["RAID 6", [4, 4, 8, 8, 4], 0, 12n],
    ["RAID 6", [4, 4, 8, 8, 4], 1, 8n],
    ["RAID 10", [2, 8, 4, 8, 4], 1, 6n],
    ["2 copies", [2, 4, 4, 9], 1, 5n],
    ["none", [4, 2, 8], 0, 6n],
    ["mirror", [4, 2, 8], 0, 2n],
    ["RAID 10", [8, 4, 8, 4, 2], 0, 12n],
    ["RAID 5 2+1", [9, 3, 9, 3, 9, 3, 1], 0, 24n],
    ["2 copies", [10, 1, 1], 0, 2n],
    ["2 copies", [4, 4, 4], 0, 6n],
    ["3 copies", [9, 5, 4, 1], 0, 5n],
    ["2+1", [10, 10, 1, 1], 0, 4n],
  ])("%s over %p with %i spares gives %p", (scheme, sizes, spares, usable) => {
    expect(mixed(scheme, sizes, spares)).toBe(usable);
  });

  test("a depth that is no whole byte is rounded down once, at the end", () => {
    // T = 10/3, usable 2·T = 6.67.
    expect(mixed("2+1", [4, 3, 3])).toBe(6n);
    expect(mixed("2+1", [400, 300, 300], 0, 0.5)).toBe(300n);
  });

  test("equal drives give what the plain formula gives", () => {
    fc.assert(
      fc.property(fc.constantFrom("none", "RAID 10", "RAID 6", "RAID 60 4+2", "3 copies", "8+3"), fc.integer({ min: 14, max: 40 }), fc.bigInt({ min: 1n, max: 10n ** 13n }), (text, drives, size) => {
        const scheme = parseScheme(text, "scheme");
        const sizes = Array.from({ length: drives }, () => bytes(size));
        expect(usableOfMixed(scheme, sizes, 2, share(0.1))).toBe(usableBytes(layoutDrives(scheme, drives, 2), bytes(size), share(0.1)));
      }),
      { seed: 7, numRuns: 300 },
    );
  });
});

describe("no other grouping gives more", () => {
  const sizes = fc.array(fc.integer({ min: 1, max: 9 }), { minLength: 4, maxLength: 8 });

  test.each([
    ["RAID 10", 1, 1],
    ["RAID 5 2+1", 2, 1],
    ["RAID 6 2+2", 2, 2],
  ])("%s against every way of cutting the drives into groups", (scheme, data, redundancy) => {
    fc.assert(
      fc.property(sizes, (list) => {
        expect(mixed(scheme, list)).toBe(BigInt(data * bestGrouping(list, data + redundancy)));
      }),
      { seed: 8, numRuns: 150 },
    );
  });

  test.each([
    ["2 copies", 1, 1],
    ["3 copies", 1, 2],
    ["2+1", 2, 1],
    ["3+1", 3, 1],
  ])("%s against every way of laying stripes of one unit over distinct drives", (scheme, data, redundancy) => {
    const few = fc.array(fc.integer({ min: 1, max: 5 }), { minLength: 4, maxLength: 5 });
    fc.assert(
      fc.property(few, (list) => {
        const stripes = mostStripes(list, data + redundancy);
        const usable = Number(mixed(scheme, list));
        // Stripes of one unit each cannot use a part of a unit: they are the depth rounded down.
        expect(Math.floor(usable / data)).toBe(stripes);
      }),
      { seed: 9, numRuns: 150 },
    );
  });
});

/** The most that groups of `width` drives can hold a data drive, each group counting its smallest: every choice is tried. */
function bestGrouping(sizes: readonly number[], width: number): number {
  const search = (left: readonly number[], groups: number): number => {
    if (groups === 0) return 0;
    let best = 0;
    for (const group of subsets(left, width)) {
      best = Math.max(best, Math.min(...group.map((at) => left[at]!)) + search(left.filter((_, at) => !group.includes(at)), groups - 1));
    }
    return best;
  };
  return search(sizes, Math.floor(sizes.length / width));
}

/** The most stripes of one unit that can be laid, each on `width` distinct drives: every choice is tried. */
function mostStripes(sizes: readonly number[], width: number): number {
  const known = new Map<string, number>();
  const search = (room: readonly number[]): number => {
    const key = [...room].sort().join();
    const before = known.get(key);
    if (before !== undefined) return before;
    const open = room.map((left, at) => (left > 0 ? at : -1)).filter((at) => at >= 0);
    let best = 0;
    for (const chosen of subsets(open, width)) {
      const drives = chosen.map((at) => open[at]!);
      best = Math.max(best, 1 + search(room.map((left, at) => (drives.includes(at) ? left - 1 : left))));
    }
    known.set(key, best);
    return best;
  };
  return search(sizes);
}

/** Every choice of `count` positions of `list`. */
function subsets(list: readonly unknown[], count: number): number[][] {
  const choices: number[][] = [];
  const extend = (chosen: number[], from: number): void => {
    if (chosen.length === count) choices.push(chosen);
    else for (let at = from; at < list.length; at++) extend([...chosen, at], at + 1);
  };
  extend([], 0);
  return choices;
}
