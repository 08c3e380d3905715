import fc from "fast-check";
import { parseScheme } from "../../../../src/planning/capacity";
import { outage, placeMembers, type Room } from "../../../../src/planning/resilience";
import { problemOf } from "../../../support/sentence";

function names(count: number): string[] {
  return Array.from({ length: count }, (_, index) => `A${index + 1}`);
}

function roomsOf(sizes: readonly (number | null)[]): Room[] {
  return sizes.map((room, index) => ({ name: `R${index}`, room }));
}

function countsOf(placed: readonly string[], sizes: readonly unknown[]): number[] {
  return sizes.map((_, index) => placed.filter((one) => one === `R${index}`).length);
}

/** Slow twin: every way to share `left` members out over the rooms. */
function shares(left: number, rooms: readonly number[]): number[][] {
  const [room, ...others] = rooms;
  if (room === undefined) return left === 0 ? [[]] : [];
  return Array.from({ length: Math.min(left, room) + 1 }, (_, count) => shares(left - count, others).map((rest) => [count, ...rest])).flat();
}

interface Group {
  readonly size: number;
  readonly tolerance: number;
}

/** Slow twin of the aims: the best of all placements by slack, then fullest domain, then squares. */
function bestPlacement(groups: readonly Group[], rooms: readonly number[]): { slack: number; fullest: number; squares: number } | null {
  let best = null as [number, number, number] | null;
  const tryFrom = (index: number, left: readonly number[], slack: number): void => {
    if (index === groups.length) {
      const loads = rooms.map((room, domain) => room - left[domain]!);
      const outcome: [number, number, number] = [-slack, Math.max(...loads), loads.reduce((sum, load) => sum + load * load, 0)];
      if (best === null || outcome.some((value, place) => value < best![place]! && outcome.slice(0, place).every((other, at) => other === best![at]))) best = outcome;
      return;
    }
    const { size, tolerance } = groups[index]!;
    for (const counts of shares(size, left)) {
      tryFrom(index + 1, left.map((room, domain) => room - counts[domain]!), Math.min(slack, tolerance - Math.max(...counts)));
    }
  };
  tryFrom(0, rooms, Infinity);
  return best && { slack: -best[0], fullest: best[1], squares: best[2] };
}

/** What a placement came to, by the same aims. */
function outcomeOf(placed: readonly string[], groupOf: readonly number[], groups: readonly Group[], rooms: readonly number[]) {
  const loads = countsOf(placed, rooms);
  const slack = Math.min(
    ...groups.map(({ tolerance }, group) => tolerance - Math.max(...countsOf(placed.filter((_, member) => groupOf[member] === group), rooms))),
  );
  return { slack, fullest: Math.max(...loads), squares: loads.reduce((sum, load) => sum + load * load, 0) };
}

const roomSizes = fc.array(fc.integer({ min: 0, max: 6 }), { minLength: 1, maxLength: 4 });

describe("placeMembers without a scheme", () => {
  test("fills the fullest domain as little as can be, and each within its room", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 10 }), roomSizes, (members, sizes) => {
        fc.pre(sizes.reduce((sum, one) => sum + one, 0) >= members);
        const counts = countsOf(placeMembers(names(members), roomsOf(sizes)), sizes);
        expect(counts.reduce((sum, one) => sum + one, 0)).toBe(members);
        counts.forEach((count, index) => expect(count).toBeLessThanOrEqual(sizes[index]!));
        expect(Math.max(...counts)).toBe(Math.min(...shares(members, sizes).map((share) => Math.max(...share))));
      }),
      { seed: 20260507, numRuns: 1000 },
    );
  });

  test("domains with room left never differ by more than one member", () => {
    expect(countsOf(placeMembers(names(11), roomsOf([null, 2, null, 9])), [0, 0, 0, 0])).toEqual([3, 2, 3, 3]);
  });

  test("neighbours stand in different domains", () => {
    expect(placeMembers(names(5), roomsOf([null, null]))).toEqual(["R0", "R1", "R0", "R1", "R0"]);
  });

  test("says that there is no room, and how much there is", () => {
    const problem = problemOf(() => placeMembers(names(5), roomsOf([2, 1])));
    expect(problem).toMatchObject({ kind: "no-answer", argument: "domains", sentence: "domains have room for 3 of 5 members. Add a domain or more room." });
  });

  test("refuses a domain that stands twice", () => {
    const problem = problemOf(() => placeMembers(names(2), [{ name: "a", room: 2 }, { name: "A", room: 1 }]));
    expect(problem).toMatchObject({ kind: "invalid", argument: "domains", sentence: 'domains: "A" stands twice. Give each domain one row.' });
  });
});

const schemes = [
  { text: "RAID 10", size: 2, tolerance: 1 },
  { text: "RAID 5 2+1", size: 3, tolerance: 1 },
  { text: "RAID 60 2+2", size: 4, tolerance: 2 },
];

describe("placeMembers with a scheme", () => {
  test("survives the loss of any one domain wherever a placement can, on every scheme of pairs and small groups over three domains with room up to six", () => {
    const failing: string[] = [];
    let feasible = 0;
    for (const { text, size, tolerance } of schemes) {
      const scheme = parseScheme(text, "scheme");
      for (let count = scheme.leastDrives; count <= 8; count += 1) {
        const groups = Array.from({ length: Math.floor(count / size) }, () => ({ size, tolerance }));
        const outside = Array.from({ length: count % size }, () => ({ size: 1, tolerance: Infinity }));
        for (const rooms of [1, 2, 3, 4, 6].flatMap((a) => [1, 2, 4].flatMap((b) => [0, 1, 3].map((c) => [a, b, c])))) {
          const best = bestPlacement([...groups, ...outside], rooms);
          if (best === null) continue;
          const placed = placeMembers(names(count), roomsOf(rooms), { scheme });
          const groupOf = placed.map((_, member) => Math.floor(member / size));
          expect(outcomeOf(placed, groupOf, [...groups, ...outside], rooms)).toEqual(best);
          feasible += best.slack >= 0 ? 1 : 0;
          const { survives, left } = outage(scheme, { domains: [{ name: "Rack", cells: placed.map((one) => [one]) }] }).domains[0]!;
          if (survives !== best.slack >= 0 || left !== Math.max(0, best.slack)) failing.push(`${text} ${count} over ${rooms.join(", ")}`);
        }
      }
    }
    expect(failing).toEqual([]);
    expect(feasible).toBeGreaterThan(70);
  });

  // Worked out with the maximum flow of networkx.
  test.each([
    { text: "RAID 60 2+2", members: 12, rooms: [6, 3, 3], survives: true, left: 0, fullest: 6 },
    { text: "RAID 10", members: 6, rooms: [3, 2, 1], survives: true, left: 0, fullest: 3 },
    { text: "RAID 10", members: 6, rooms: [2, 4, 1], survives: true, left: 0, fullest: 3 },
    { text: "RAID 6 8+2", members: 20, rooms: [9, 9, 9, 9], survives: false, left: 0, fullest: 5 },
  ])("$members members of $text over rooms of $rooms: survives $survives, as a flow found elsewhere says", ({ text, members, rooms, survives, left, fullest }) => {
    const scheme = parseScheme(text, "scheme");
    const placed = placeMembers(names(members), roomsOf(rooms), { scheme });
    expect(outage(scheme, { domains: [{ name: "Rack", cells: placed.map((one) => [one]) }] }).domains[0]).toMatchObject({ survives, left });
    expect(Math.max(...countsOf(placed, rooms))).toBe(fullest);
  });

  test("meets every aim as the best of all placements does, with groups unlike each other", () => {
    const groupSizes = fc.array(fc.integer({ min: 2, max: 4 }), { minLength: 1, maxLength: 3 });
    fc.assert(
      fc.property(groupSizes, roomSizes, (sizes, rooms) => {
        const scheme = parseScheme("mirror", "scheme");
        const groups = sizes.map((size) => ({ size, tolerance: size - 1 }));
        const best = bestPlacement(groups, rooms);
        fc.pre(best !== null);
        const groupOf = sizes.flatMap((size, group) => Array.from({ length: size }, () => group));
        const placed = placeMembers(names(groupOf.length), roomsOf(rooms), { scheme, groups: groupOf.map((group) => `G${group}`) });
        expect(outcomeOf(placed, groupOf, groups, rooms)).toEqual(best);
      }),
      { seed: 20260512, numRuns: 300 },
    );
  });

  test("with a Group column and no scheme, no domain takes more of a group than it must", () => {
    const groups = ["x", "y", "x", "y", "x", "y"];
    const placed = placeMembers(names(6), roomsOf([2, 4, 1]), { groups });
    const groupOf = groups.map((name) => (name === "x" ? 0 : 1));
    const alike = [{ size: 3, tolerance: 0 }, { size: 3, tolerance: 0 }];
    expect(outcomeOf(placed, groupOf, alike, [2, 4, 1])).toEqual(bestPlacement(alike, [2, 4, 1]));
  });

  test("with a Group column and one domain, that takes them all", () => {
    expect(placeMembers(names(3), roomsOf([null]), { groups: ["x", "x", "y"] })).toEqual(["R0", "R0", "R0"]);
  });

  test("members of a group stand apart in turns, and the same question has the same answer", () => {
    const scheme = parseScheme("RAID 6", "scheme");
    const ask = () => placeMembers(names(8), roomsOf([null, 3, null]), { scheme });
    expect(ask()).toEqual(["R0", "R1", "R2", "R0", "R1", "R2", "R0", "R1"]);
    expect(ask()).toEqual(ask());
  });

  test("places a hundred thousand members", () => {
    const placed = placeMembers(names(100_000), roomsOf(Array.from({ length: 100 }, () => null)), { scheme: parseScheme("RAID 60 8+2", "scheme") });
    expect(new Set(countsOf(placed, Array.from({ length: 100 })))).toEqual(new Set([1000]));
  });

  test("500,000 ways from kinds of groups to domains are the most", () => {
    const scheme = parseScheme("RAID 10", "scheme");
    const domains = roomsOf(new Array<null>(500_001).fill(null));
    expect(placeMembers(names(4), domains.slice(1), { scheme }).sort()).toEqual(["R1", "R2", "R3", "R4"]);
    expect(problemOf(() => placeMembers(names(4), domains, { scheme }))).toMatchObject({
      kind: "no-answer",
      argument: "members",
      sentence: "members take too long to place over 500001 domains of such unlike room, in such groups. Give fewer members or domains.",
    });
  });

  test.each([
    ["too few members", "8+2", undefined, "members has 4 rows; 8+2 takes at least 10. Give a row for every member, and no others."],
    ["a group of the wrong size", "RAID 10", ["a", "a", "a", "b"], 'members: group "a" has 3 members; RAID 10 takes 2 a group. Mend the Group column.'],
  ])("refuses %s", (_, text, groups, sentence) => {
    const problem = problemOf(() => placeMembers(names(4), roomsOf([null, null]), { scheme: parseScheme(text, "scheme"), groups }));
    expect(problem).toMatchObject({ kind: "invalid", argument: "members", sentence });
  });
});
