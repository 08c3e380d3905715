import fc from "fast-check";
import { parseScheme } from "../../../../src/planning/capacity";
import { outage, outageOfAny, parseDomainCell, type Domain, type Loss, type Placement } from "../../../../src/planning/resilience";
import { seededRandom } from "../../../support/seeded-random";
import { problemOf } from "../../../support/sentence";

function domain(name: string, ...cells: string[]): Domain {
  return { name, cells: cells.map((cell) => parseDomainCell(cell, name)) };
}

const scheme = (text: string) => parseScheme(text, "scheme");

/** Slow twin of one loss: members that go when all of `gone` (column and value) go, group by group. */
function lossOf(placement: Placement, groups: readonly number[], tolerance: readonly number[], gone: readonly (readonly [number, string])[]): Loss {
  const isGone = (column: number, value: string): boolean => gone.some(([other, name]) => other === column && name === value);
  const lostIn = tolerance.map(() => 0);
  let lost = 0;
  groups.forEach((group, member) => {
    if (!placement.domains.some(({ cells }, column) => cells[member]!.every((value) => isGone(column, value)))) return;
    lost += 1;
    if (group >= 0) lostIn[group]! += 1;
  });
  const slack = Math.min(...tolerance.map((most, group) => most - lostIn[group]!));
  return { lost, left: Math.max(0, slack), survives: slack >= 0 };
}

function worst(losses: readonly Loss[]): Loss {
  return losses.reduce((one, other) => {
    const order = Number(one.survives) - Number(other.survives) || one.left - other.left || other.lost - one.lost;
    return order > 0 ? other : one;
  });
}

const schemes = [
  { text: "RAID 6 3+2", width: 5, tolerance: 2 },
  { text: "RAID 10", width: 2, tolerance: 1 },
  { text: "4+3", width: Infinity, tolerance: 3 },
  { text: "3 copies", width: Infinity, tolerance: 2 },
  { text: "RAID 5", width: Infinity, tolerance: 1 },
  { text: "none", width: Infinity, tolerance: 0 },
];

const placements = fc
  .record({
    scheme: fc.constantFrom(...schemes),
    size: fc.integer({ min: 7, max: 14 }),
    columns: fc.array(
      // A column of one value holds every member, as a site does.
      fc.record({ values: fc.integer({ min: 1, max: 5 }), cells: fc.array(fc.tuple(fc.nat(4), fc.nat(9)), { minLength: 14, maxLength: 14 }) }),
      { minLength: 1, maxLength: 4 },
    ),
  })
  .map(({ scheme: chosen, size, columns }) => ({
    chosen,
    placement: {
      domains: columns.map(({ values, cells }, column): Domain => ({
        name: `domain ${column}`,
        // Two of ten cells stand on two values, one on three, and on fewer where those are the same.
        cells: cells.slice(0, size).map(([value, kind]) => {
          const standsOn = kind < 2 ? [value, value + 1] : kind === 2 ? [value, value + 1, value + 2] : [value];
          return standsOn.map((one) => `v${one % values}`);
        }),
      })),
    },
    groups: Array.from({ length: size }, (_, member) => {
      const group = chosen.width === Infinity ? 0 : Math.floor(member / chosen.width);
      return chosen.width !== Infinity && (group + 1) * chosen.width > size ? -1 : group;
    }),
  }));

/** Slow twin of spread pieces: the even stripes are those whose counts, the largest first, come first of all ways to lay a stripe over the cells. */
function evenStripes(counts: readonly number[], width: number): number[][] {
  const ways = (index: number, left: number): number[][] => {
    if (index === counts.length) return left === 0 ? [[]] : [];
    return Array.from({ length: Math.min(left, counts[index]!) + 1 }, (_, pieces) => ways(index + 1, left - pieces).map((rest) => [pieces, ...rest])).flat();
  };
  const shape = (stripe: readonly number[]): string => [...stripe].sort((a, b) => b - a).map((pieces) => String(pieces).padStart(2, "0")).join(" ");
  const all = ways(0, width);
  const least = all.map(shape).sort()[0];
  return all.filter((stripe) => shape(stripe) === least);
}

/** Slow twin of the losses where pieces are spread by domain: of values of two columns at most what each takes. */
function pieceLosses(placement: Placement, width: number, tolerance: number): (gone: readonly (readonly [number, string])[]) => Loss {
  const columns = placement.domains.map(({ cells }) => {
    const kindOf = cells.map((cell) => [...cell].sort().join("+"));
    const kinds = [...new Set(kindOf)];
    return { kindOf, kinds, stripes: evenStripes(kinds.map((kind) => kindOf.filter((one) => one === kind).length), width) };
  });
  return (gone) => {
    const members = new Set<number>();
    let taken = 0;
    columns.forEach(({ kindOf, kinds, stripes }, column) => {
      const names = gone.filter(([other]) => other === column).map(([, value]) => value);
      const isGone = (kind: string): boolean => kind.split("+").every((value) => names.includes(value));
      kindOf.forEach((kind, member) => {
        if (isGone(kind)) members.add(member);
      });
      taken += Math.max(...stripes.map((stripe) => stripe.reduce((sum, pieces, index) => sum + (isGone(kinds[index]!) ? pieces : 0), 0)));
    });
    const slack = tolerance - Math.min(taken, members.size);
    return { lost: members.size, left: Math.max(0, slack), survives: slack >= 0 };
  };
}

const spreadPlacements = fc
  .record({
    code: fc.constantFrom({ text: "2+1", width: 3, tolerance: 1 }, { text: "3+2", width: 5, tolerance: 2 }, { text: "3 copies", width: 3, tolerance: 2 }, { text: "4+3", width: 7, tolerance: 3 }),
    size: fc.integer({ min: 7, max: 10 }),
    columns: fc.array(fc.array(fc.tuple(fc.nat(3), fc.nat(9)), { minLength: 10, maxLength: 10 }), { minLength: 1, maxLength: 3 }),
  })
  .map(({ code, size, columns }) => ({
    ...code,
    placement: {
      domains: columns.map((cells, column): Domain => ({
        name: `domain ${column}`,
        cells: cells.slice(0, size).map(([value, kind]) => (kind < 2 ? [`v${value}`, `v${(value + 1) % 4}`] : [`v${value}`])),
      })),
    },
  }));

describe("outage", () => {
  test("equals the enumeration of every loss and every two losses, on 2000 random placements", () => {
    fc.assert(
      fc.property(placements, ({ chosen, placement, groups }) => {
        const tolerance = [...new Set(groups.filter((group) => group >= 0))].map(() => chosen.tolerance);
        const answer = outage(scheme(chosen.text), placement);
        const values = placement.domains.map(({ cells }, column) => [...new Set(cells.flat())].map((value) => [column, value] as const));
        answer.domains.forEach(({ domain: name, value, ...loss }, column) => {
          expect(name).toBe(placement.domains[column]!.name);
          expect(loss).toEqual(worst(values[column]!.map((one) => lossOf(placement, groups, tolerance, [one]))));
          expect(loss).toEqual(lossOf(placement, groups, tolerance, [[column, value]]));
        });
        const all = values.flat();
        const pairs = all.flatMap((one, index) => all.slice(index + 1).map((other) => lossOf(placement, groups, tolerance, [one, other])));
        if (pairs.length === 0) {
          expect(answer.pair).toBeNull();
          return;
        }
        const { values: named, ...loss } = answer.pair!;
        const columnOf = (name: string): number => placement.domains.findIndex((one) => one.name === name);
        expect(loss).toEqual(worst(pairs));
        expect(loss).toEqual(lossOf(placement, groups, tolerance, named.map(({ domain: name, value }) => [columnOf(name), value])));
      }),
      { seed: 20260506, numRuns: 2000 },
    );
  });

  test("says what a rack of a pool of arrays takes with it", () => {
    const placement = { domains: [domain("Array", "A1", "A2", "A3", "A4"), domain("Rack", "R1", "R1", "R2", "R3")] };
    expect(outage(scheme("2+2"), placement)).toEqual({
      domains: [
        { domain: "Array", value: "A1", lost: 1, left: 1, survives: true },
        { domain: "Rack", value: "R1", lost: 2, left: 0, survives: true },
      ],
      pair: { values: [{ domain: "Array", value: "A3" }, { domain: "Rack", value: "R1" }], lost: 3, left: 0, survives: false },
    });
  });

  test("a member on two feeds goes only with both, and the pair of feeds is tried", () => {
    const placement = { domains: [domain("Array", "A1", "A2", "A3"), domain("Feed", "A+B", "B + A", "a+b")] };
    const { domains, pair } = outage(scheme("2+1"), placement);
    expect(domains[1]).toEqual({ domain: "Feed", value: "A", lost: 0, left: 1, survives: true });
    expect(pair).toEqual({ values: [{ domain: "Feed", value: "A" }, { domain: "Feed", value: "B" }], lost: 3, left: 0, survives: false });
  });

  test.each([
    ["in order of the layout", undefined, false],
    ["as the Group column says", ["1", "2", "1", "2", "1", "2"], true],
  ])("members fall into groups %s", (_, groups, survives) => {
    const placement = { domains: [domain("Shelf", "S1", "S1", "S2", "S2", "S3", "S3")], ...(groups === undefined ? {} : { groups }) };
    expect(outage(scheme("RAID 5 2+1"), placement).domains[0]).toMatchObject({ lost: 2, survives });
  });

  test("pairs of striped mirrors can be named by the Group column", () => {
    const placement = { domains: [domain("Shelf", "S1", "S2", "S1", "S2")], groups: ["1", "1", "2", "2"] };
    expect(outage(scheme("RAID 10"), placement).domains[0]).toMatchObject({ lost: 2, left: 0, survives: true });
  });

  test("a member outside every group counts as lost and takes no data with it", () => {
    const placement = { domains: [domain("Shelf", "S1", "S2", "S3", "S4", "S4")] };
    expect(outage(scheme("RAID 5 3+1"), placement).domains[0]).toEqual({ domain: "Shelf", value: "S4", lost: 2, left: 0, survives: true });
  });

  test("eight and three pieces over ten racks put two into each at most: any rack may go, and any two", () => {
    const racks = Array.from({ length: 60 }, (_, member) => `R${member % 10}`);
    const placement = { domains: [domain("Rack", ...racks)] };
    expect(outage(scheme("8+3"), placement).domains[0]).toEqual({ domain: "Rack", value: "R0", lost: 6, left: 0, survives: false });
    const { domains, pair } = outage(scheme("8+3"), placement, "by domain");
    expect(domains).toEqual([{ domain: "Rack", value: "R0", lost: 6, left: 1, survives: true }]);
    // One rack of the ten has two pieces of a stripe, the others one: two racks take three.
    expect(pair).toEqual({ values: [{ domain: "Rack", value: "R0" }, { domain: "Rack", value: "R1" }], lost: 12, left: 0, survives: true });
  });

  test("where every value takes its members, the worst of each column is that of an enumeration, on 1000 random placements", () => {
    fc.assert(
      fc.property(placements, ({ chosen, placement: { domains }, groups }) => {
        const worstLosses = outageOfAny(scheme(chosen.text), domains);
        const tolerance = Array.from({ length: Math.max(...groups) + 1 }, () => chosen.tolerance);
        const lossOfAny = (column: number, gone: string): Loss => {
          // A member goes as soon as one of its values is the one that goes.
          const hit = domains[column]!.cells.map((cell) => (cell.includes(gone) ? ["gone"] : ["stays"]));
          return lossOf({ domains: [{ name: "hit", cells: hit }] }, groups, tolerance, [[0, "gone"]]);
        };
        expect(worstLosses.map(({ domain: name }) => name)).toEqual(domains.map(({ name }) => name));
        worstLosses.forEach(({ value, lost, left, survives }, column) => {
          const loss = { lost, left, survives };
          expect(loss).toEqual(worst([...new Set(domains[column]!.cells.flat())].map((one) => lossOfAny(column, one))));
          expect(loss).toEqual(lossOfAny(column, value));
        });
      }),
      { seed: 20261127, numRuns: 1000 },
    );
  });

  test("a column of which nothing is known is left out where every value takes its members, and case does not matter", () => {
    const cells = [["R1"], [], ["r1", "R2"]];
    expect(outageOfAny(scheme("2 copies"), [{ name: "Feed", cells: [[], [], []] }, { name: "Rack", cells }])).toEqual([{ domain: "Rack", value: "R1", lost: 2, left: 0, survives: false }]);
  });

  test("pieces spread by domain are those of an enumeration of all even stripes, on 1000 random placements", () => {
    fc.assert(
      fc.property(spreadPlacements, ({ text, width, tolerance, placement }) => {
        const answer = outage(scheme(text), placement, "by domain");
        const lossOfPieces = pieceLosses(placement, width, tolerance);
        const values = placement.domains.map(({ cells }, column) => [...new Set(cells.flat())].map((value) => [column, value] as const));
        answer.domains.forEach(({ domain: name, value, ...loss }, column) => {
          expect(name).toBe(placement.domains[column]!.name);
          expect(loss).toEqual(worst(values[column]!.map((one) => lossOfPieces([one]))));
          expect(loss).toEqual(lossOfPieces([[column, value]]));
        });
        const all = values.flat();
        const pairs = all.flatMap((one, index) => all.slice(index + 1).map((other) => lossOfPieces([one, other])));
        if (pairs.length === 0) return;
        const { values: named, ...loss } = answer.pair!;
        expect(loss).toEqual(worst(pairs));
        const columnOf = (name: string): number => placement.domains.findIndex((one) => one.name === name);
        expect(loss).toEqual(lossOfPieces(named.map(({ domain: name, value }) => [columnOf(name), value])));
      }),
      { seed: 20260511, numRuns: 1000 },
    );
  });

  test("pieces spread by domain group by group where the Group column says so", () => {
    const groups = ["1", "1", "1", "1", "2", "2", "2", "2"];
    const placement = { domains: [domain("Rack", "R1", "R2", "R3", "R4", "R1", "R1", "R2", "R3")], groups };
    // With 2+1 each group puts one piece into a rack at most. With 2+2 the second has but three racks for four pieces: two of them go into R1.
    expect(outage(scheme("2+1"), placement, "by domain").domains[0]).toEqual({ domain: "Rack", value: "R1", lost: 3, left: 0, survives: true });
    expect(outage(scheme("2+2"), placement, "by domain").domains[0]).toEqual({ domain: "Rack", value: "R1", lost: 3, left: 0, survives: true });
  });

  test("refuses pieces by domain for a scheme that is not spread", () => {
    expect(problemOf(() => outage(scheme("RAID 6"), { domains: [domain("Rack", "a", "b", "c", "d")] }, "by domain"))).toMatchObject({
      kind: "invalid",
      argument: "pieces",
      sentence: 'pieces "by domain" is for codes spread over all drives, such as 8+3; RAID 6 is none. Leave it out.',
    });
  });

  test.each([
    ["after the racks", ["Rack", "Site"]],
    ["before the racks", ["Site", "Rack"]],
  ])("a site that holds every member, %s, pairs with the rack that takes most with it", (_, columns) => {
    const cells = { Rack: ["R1", "R2", "R2", "R2", "R3", "R3"], Site: ["S", "S", "S", "S", "S", "S"] };
    const placement = { domains: columns.map((name) => domain(name, ...cells[name as keyof typeof cells])) };
    const { values, lost } = outage(scheme("4+2"), placement).pair!;
    expect(lost).toBe(6);
    expect(new Set(values.map(({ value }) => value))).toEqual(new Set(["S", "R2"]));
  });

  test("two sites are worse than the larger of them with its largest rack", () => {
    const placement = { domains: [domain("Rack", "R1", "R1", "R1", "R2", "R3", "R4"), domain("Site", "S1", "S1", "S1", "S1", "S2", "S2")] };
    const { values, lost } = outage(scheme("4+2"), placement).pair!;
    expect(values).toEqual([{ domain: "Site", value: "S1" }, { domain: "Site", value: "S2" }]);
    expect(lost).toBe(6);
  });

  // The pair A and B takes members; with C go none of either. What stands on three feeds goes with no two of them, and fills the groups up.
  test.each([
    ["a stripe has two pieces in either, but C takes more members", "2+2", "by domain", "A+B A+B C C C", { lost: 3, left: 0, survives: true }],
    ["no group loses more than two, but C takes more members", "RAID 6 2+2", "any", "A+B A+B x+y+z x+y+z C C x+y+z x+y+z C x+y+z x+y+z x+y+z", { lost: 3, left: 0, survives: true }],
    ["either takes two members, but C from one group", "RAID 5 2+1", "any", "A+B x+y+z x+y+z A+B x+y+z x+y+z C C x+y+z", { lost: 2, left: 0, survives: false }],
  ] as const)("C is tried beside feeds that take nothing alone: %s", (_, text, pieces, feeds, worstOfPairs) => {
    const { values, ...loss } = outage(scheme(text), { domains: [domain("Feed", ...feeds.split(" "))] }, pieces).pair!;
    expect(loss).toEqual(worstOfPairs);
    expect(values).toContainEqual({ domain: "Feed", value: "C" });
  });

  test("refuses hundreds of columns of which each takes other members, as every pair of them would have to be tried", () => {
    const random = seededRandom(20261126);
    const takes = Array.from({ length: 500 }, () => Array.from({ length: 400 }, () => random() < 0.5));
    // What stands on three values goes with no two of them.
    const columns = takes.map((taken, column) => domain(`domain ${column}`, ...taken.map((goes) => (goes ? "gone" : "a+b+c"))));
    expect(problemOf(() => outage(scheme("none"), { domains: columns }))).toMatchObject({
      kind: "no-answer",
      argument: "placement",
      sentence: "placement has too many domains that cut across each other for its worst pair. Give fewer columns or rows.",
    });
    const few = takes.slice(0, 100);
    const pairs = few.flatMap((one, index) => few.slice(index + 1).map((other) => one.filter((goes, member) => goes || other[member]).length));
    expect(outage(scheme("none"), { domains: columns.slice(0, 100) }).pair!.lost).toBe(Math.max(...pairs));
  });

  test("one value in all has no pair", () => {
    expect(outage(scheme("none"), { domains: [domain("Rack", "R1", "R1")] }).pair).toBeNull();
  });

  test.each([
    ["a group of the wrong size", "RAID 6 2+2", ["1", "1", "1", "2"], 'placement: group "1" has 3 members; RAID 6 2+2 takes 4 a group. Mend the Group column.'],
    ["a group that is too small", "RAID 6", ["1", "1", "1", "2"], 'placement: group "1" has 3 members; RAID 6 takes at least 4. Mend the Group column.'],
  ])("refuses %s", (_, text, groups, sentence) => {
    const problem = problemOf(() => outage(scheme(text), { domains: [domain("Rack", "a", "b", "c", "d")], groups }));
    expect(problem).toMatchObject({ kind: "invalid", sentence });
  });

  test("refuses fewer members than the scheme takes", () => {
    expect(problemOf(() => outage(scheme("8+2"), { domains: [domain("Rack", "a", "b")] }))).toMatchObject({
      kind: "invalid",
      sentence: "placement has 2 rows; 8+2 takes at least 10. Give a row for every member, and no others.",
    });
  });

  test("refuses a cell that lacks a name beside its +", () => {
    expect(problemOf(() => parseDomainCell("A+", "placement row 3 Feed")).sentence).toBe(
      'placement row 3 Feed "A+" lacks a name beside its +. Write two names, such as A+B.',
    );
  });
});
