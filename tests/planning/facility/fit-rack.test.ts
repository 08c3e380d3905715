import { kilograms } from "../../../src/planning/quantity";
import fc from "fast-check";
import { fitRack, type RackItem } from "../../../src/planning/facility";
import { problemOf } from "../../support/sentence";
import { Problem } from "../../../src/planning/text/problem";

function item(name: string, units: number, weight: number, bottomUnit: number | null = null): RackItem {
  return { name, units, kilograms: kilograms(weight), bottomUnit };
}

/** Slow twin: every way to stand the items, each at any free unit. */
function* everyFit(free: readonly boolean[], items: readonly RackItem[]): Generator<number[]> {
  const [first, ...rest] = items;
  if (first === undefined) {
    yield [];
    return;
  }
  for (let bottom = 1; bottom + first.units - 1 < free.length; bottom += 1) {
    if (!free.slice(bottom, bottom + first.units).every(Boolean)) continue;
    const left = free.map((one, unit) => one && (unit < bottom || unit >= bottom + first.units));
    for (const others of everyFit(left, rest)) yield [bottom, ...others];
  }
}

describe("fitRack", () => {
  test("stands the heaviest lowest, and answers in the order given", () => {
    const fit = fitRack(10, [item("light", 2, 5), item("heavy", 4, 60), item("middle", 1, 20)], []);
    expect(fit.items).toEqual([
      { name: "light", bottomUnit: 6, topUnit: 7 },
      { name: "heavy", bottomUnit: 1, topUnit: 4 },
      { name: "middle", bottomUnit: 5, topUnit: 5 },
    ]);
    expect(fit.kilograms).toBe(85);
  });

  test("keeps given positions and what is taken", () => {
    const fit = fitRack(10, [item("a", 2, 50), item("fixed", 2, 10, 2), item("b", 3, 30)], [{ bottomUnit: 5, units: 1 }]);
    expect(fit.items.map(({ bottomUnit }) => bottomUnit)).toEqual([6, 2, 8]);
  });

  test("lets the heaviest give way where the rest would find no room", () => {
    const fit = fitRack(8, [item("heavy", 3, 60), item("tall", 4, 10)], [{ bottomUnit: 5, units: 1 }]);
    expect(fit.items.map(({ bottomUnit }) => bottomUnit)).toEqual([6, 1]);
  });

  test("equals the search of every way: it fits when it can, the heaviest lowest first", () => {
    const racks = fc.record({
      units: fc.integer({ min: 3, max: 9 }),
      taken: fc.array(fc.integer({ min: 1, max: 9 }), { maxLength: 3 }),
      items: fc.array(fc.integer({ min: 1, max: 4 }), { minLength: 1, maxLength: 4 }),
    });
    fc.assert(
      fc.property(racks, ({ units, taken, items }) => {
        const inside = taken.filter((unit) => unit <= units);
        const free = Array.from({ length: units + 1 }, (_, unit) => unit > 0 && !inside.includes(unit));
        // Heaviest first, so that the first of all ways in order is the one wanted.
        const list = items.map((height, index) => item(`i${index}`, height, 100 - index));
        const [expected] = everyFit(free, list);
        const fit = (): number[] => fitRack(units, list, inside.map((bottomUnit) => ({ bottomUnit, units: 1 }))).items.map(({ bottomUnit }) => bottomUnit);
        if (expected === undefined) expect(fit).toThrow(Problem);
        else expect(fit()).toEqual(expected);
      }),
      { seed: 20260510, numRuns: 1000 },
    );
  });

  test.each([
    ["an item outside the rack", () => fitRack(10, [item("a", 3, 1, 9)], []), "invalid", "items", 'items "a": units 9 to 11 are outside a rack of 10. Write a lower bottom unit.'],
    ["an item on what is taken", () => fitRack(10, [item("a", 3, 1, 4)], [{ bottomUnit: 6, units: 2 }]), "invalid", "items",
      'items "a" at unit 4 meets what is taken in unit 6. Write another bottom unit.'],
    ["an item on another", () => fitRack(10, [item("a", 3, 1, 4), item("b", 1, 1, 5)], []), "invalid", "items", 'items "b" at unit 5 meets "a" in unit 5. Write another bottom unit.'],
    ["taken units outside the rack", () => fitRack(10, [item("a", 1, 1)], [{ bottomUnit: 10, units: 2 }]), "invalid", "taken",
      "taken: units 10 to 11 are outside a rack of 10. Write a lower bottom unit."],
    ["more than there is room for", () => fitRack(4, [item("a", 4, 1), item("b", 2, 1)], []), "no-answer", "items", "items need 6 rack units and 4 are free. Take a larger rack or fewer items."],
    ["an item no gap takes", () => fitRack(5, [item("a", 3, 1)], [{ bottomUnit: 3, units: 1 }]), "no-answer", "items",
      "items: 4 rack units are free, but not in one piece where they are needed. Move what is in the way."],
  ])("refuses %s", (_, work, kind, argument, sentence) => {
    expect(problemOf(work)).toMatchObject({ kind, argument, sentence });
  });

  test("what cannot fit is found out without trying every way: 15 items of 4 units into 14 gaps of 6", () => {
    const items = Array.from({ length: 15 }, (_, index) => item(`i${index}`, 4, 10 + index));
    const taken = Array.from({ length: 14 }, (_, index) => ({ bottomUnit: 7 * (index + 1), units: 1 }));
    expect(problemOf(() => fitRack(98, items, taken)).sentence).toContain("not in one piece");
  });

  test("gives up after a fixed number of tries, and says what would help: many small items into 9 gaps of 10 units, and a light one of 11 units", () => {
    const items = [...Array.from({ length: 28 }, (_, index) => item(`i${index}`, 1 + (index % 3), 50 - index)), item("tall", 11, 1)];
    const taken = Array.from({ length: 8 }, (_, index) => ({ bottomUnit: 11 * (index + 1), units: 1 }));
    expect(problemOf(() => fitRack(98, items, taken))).toMatchObject({
      kind: "no-answer",
      argument: "items",
      received: 29,
      sentence: "items could be stacked in too many ways to try. Give some of them a bottom unit.",
    });
  });

  test("of equally heavy items the tallest stands lowest", () => {
    expect(fitRack(10, [item("low", 1, 20), item("tall", 3, 20)], []).items.map(({ bottomUnit }) => bottomUnit)).toEqual([4, 1]);
  });

  test("a full rack of many small things is found at once", () => {
    const items = Array.from({ length: 60 }, (_, index) => item(`i${index}`, 1 + (index % 2), 10 + (index % 7)));
    expect(fitRack(90, items, []).items).toHaveLength(60);
  });
});
