import fc from "fast-check";
import { placeMembers, type Room } from "../../../../src/planning/resilience";
import { problemOf } from "../../../support/sentence";

function names(count: number): string[] {
  return Array.from({ length: count }, (_, index) => `A${index + 1}`);
}

/** Slow twin: the least that the fullest domain can hold, by trying every way to place the members. */
function leastFullest(members: number, rooms: readonly number[]): number {
  if (members === 0) return 0;
  const tryFrom = (left: number, index: number): number => {
    if (index === rooms.length) return left === 0 ? 0 : Infinity;
    let least = Infinity;
    for (let count = 0; count <= Math.min(left, rooms[index]!); count += 1) least = Math.min(least, Math.max(count, tryFrom(left - count, index + 1)));
    return least;
  };
  return tryFrom(members, 0);
}

describe("placeMembers", () => {
  test("fills the fullest domain as little as can be, and each within its room", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 10 }), fc.array(fc.integer({ min: 0, max: 6 }), { minLength: 1, maxLength: 4 }), (members, sizes) => {
        fc.pre(sizes.reduce((sum, one) => sum + one, 0) >= members);
        const rooms = sizes.map((room, index): Room => ({ name: `R${index}`, room }));
        const placed = placeMembers(names(members), rooms);
        const counts = rooms.map(({ name }) => placed.filter((one) => one === name).length);
        expect(placed).toHaveLength(members);
        counts.forEach((count, index) => expect(count).toBeLessThanOrEqual(sizes[index]!));
        expect(Math.max(...counts)).toBe(leastFullest(members, sizes));
      }),
      { seed: 20260507, numRuns: 1000 },
    );
  });

  test("domains with room left never differ by more than one member", () => {
    const placed = placeMembers(names(11), [{ name: "a", room: null }, { name: "b", room: 2 }, { name: "c", room: null }, { name: "d", room: 9 }]);
    expect(["a", "b", "c", "d"].map((name) => placed.filter((one) => one === name).length)).toEqual([3, 2, 3, 3]);
  });

  test("neighbours stand in different domains", () => {
    expect(placeMembers(names(5), [{ name: "a", room: null }, { name: "b", room: null }])).toEqual(["a", "b", "a", "b", "a"]);
  });

  test("says that there is no room, and how much there is", () => {
    const problem = problemOf(() => placeMembers(names(5), [{ name: "a", room: 2 }, { name: "b", room: 1 }]));
    expect(problem).toMatchObject({ kind: "no-answer", sentence: "domains have room for 3 of 5 members. Add a domain or more room." });
  });

  test("refuses a domain that stands twice", () => {
    const problem = problemOf(() => placeMembers(names(2), [{ name: "a", room: 2 }, { name: "A", room: 1 }]));
    expect(problem).toMatchObject({ kind: "invalid", sentence: 'domains: "A" stands twice. Give each domain one row.' });
  });
});
