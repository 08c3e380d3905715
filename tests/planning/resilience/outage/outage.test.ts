import fc from "fast-check";
import { parseScheme } from "../../../../src/planning/capacity";
import { outage, parseDomainCell, type Domain, type Loss, type Placement } from "../../../../src/planning/resilience";
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
    columns: fc.array(fc.array(fc.tuple(fc.nat(4), fc.nat(9)), { minLength: 14, maxLength: 14 }), { minLength: 1, maxLength: 4 }),
  })
  .map(({ scheme: chosen, size, columns }) => ({
    chosen,
    placement: {
      domains: columns.map((cells, column): Domain => ({
        name: `domain ${column}`,
        // Two of ten cells stand on two values, one on three.
        cells: cells.slice(0, size).map(([value, kind]) => {
          const values = kind < 2 ? [value, (value + 1) % 5] : kind === 2 ? [value, (value + 1) % 5, (value + 2) % 5] : [value];
          return values.map((one) => `v${one}`);
        }),
      })),
    },
    groups: Array.from({ length: size }, (_, member) => {
      const group = chosen.width === Infinity ? 0 : Math.floor(member / chosen.width);
      return chosen.width !== Infinity && (group + 1) * chosen.width > size ? -1 : group;
    }),
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
      sentence: "placement has 2 members; 8+2 takes at least 10. Give a row for every member, and no others.",
    });
  });

  test("refuses a cell that lacks a name beside its +", () => {
    expect(problemOf(() => parseDomainCell("A+", "placement row 3 Feed")).sentence).toBe(
      'placement row 3 Feed "A+" lacks a name beside its +. Write two names, such as A+B.',
    );
  });
});
