import { layoutDrives, parseScheme } from "../../../src/planning/capacity";
import { buildLossChain, type ChainRates } from "../../../src/planning/durability";
import { hours, share } from "../../../src/planning/quantity";
import { problemOf } from "../../support/sentence";

const usual: ChainRates = { failureRate: 1e-5, sharedCause: share(0), repair: hours(24), wait: hours(4), unread: { happens: 0.25, fails: 0.75 } };
const build = (scheme: string, drives: number, rates: Partial<ChainRates> = {}) => buildLossChain(layoutDrives(parseScheme(scheme, "scheme"), drives), { ...usual, ...rates });

test("a group has a state for each number of failed drives, of which one fails at its rate", () => {
  const chain = build("RAID 60 8+2", 30);
  expect(chain).toHaveLength(3);
  chain.forEach(({ one, two }, failed) => {
    expect(one).toBeCloseTo((10 - failed) * 1e-5, 18);
    expect(two).toBe(0);
  });
});

test("fixed groups and one group copy a whole drive in every state", () => {
  for (const [scheme, drives] of [["RAID 60 8+2", 20], ["RAID 6", 10], ["mirror", 3]] as const) {
    const [whole, first, second] = build(scheme, drives);
    expect(whole!.repaired + whole!.unread).toBe(0);
    expect(first).toMatchObject({ repaired: 1 / 24, unread: 0 });
    expect(second!.repaired).toBeCloseTo(0.75 / 24, 16);
    expect(second!.unread).toBeCloseTo(0.25 / 24, 16);
  }
});

test("a spread code restores its critical stripes first, by all working drives, after the whole wait", () => {
  const chain = build("8+3", 60);
  expect(chain[1]!.repaired).toBeCloseTo(1 / 24, 15);
  expect(chain[2]!.repaired).toBeCloseTo(1 / (4 + (20 * (10 / 59) * 59) / 58), 14);
  expect(chain[3]!.repaired).toBeCloseTo(0.75 / (4 + (20 * (10 / 59) * (9 / 58) * 59) / 57), 14);
  expect(chain[2]!.unread).toBe(0);
});

test("a spread code as wide as its drives has all stripes critical, and fewer drives to restore them", () => {
  expect(build("8+2", 10, { unread: { happens: 0, fails: 1 } })[2]!.repaired).toBeCloseTo(1 / (4 + (20 * 9) / 8), 15);
});

test("with a shared cause each drive fails as often as without, some of them two at a time", () => {
  build("8+3", 60, { sharedCause: share(0.1) }).forEach(({ one, two }, failed) => {
    expect(one + 2 * two).toBeCloseTo((60 - failed) * 1e-5, 18);
    expect(two).toBeCloseTo(((60 - failed) * 1e-6) / 2, 18);
  });
});

test("the last drive has no second to take along", () => {
  const last = build("mirror", 3, { sharedCause: share(0.1) })[2]!;
  expect(last).toMatchObject({ one: 1e-5, two: 0 });
});

test("without redundancy there is one state and no repair", () => {
  expect(build("none", 4)).toEqual([{ one: 4e-5, two: 0, repaired: 0, unread: 0 }]);
});

test("a repair of next to nothing has a rate that a double holds", () => {
  expect(Number.isFinite(build("2+100", 100_000, { wait: hours(0) })[100]!.repaired)).toBe(true);
});

test("a hundred failures tolerated are the most", () => {
  expect(build("2+100", 102)).toHaveLength(101);
  expect(problemOf(() => build("2+101", 103))).toMatchObject({
    kind: "invalid",
    argument: "scheme",
    sentence: "scheme 2+101 survives 101 failures. Write one that survives at most 100.",
  });
});
