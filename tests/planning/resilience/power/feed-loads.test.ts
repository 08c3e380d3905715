import fc from "fast-check";
import { watts } from "../../../../src/planning/quantity";
import { feedLoads, type Feed, type PoweredDevice } from "../../../../src/planning/resilience";
import { problemOf } from "../../../support/sentence";
import { addPhasors } from "./phasors";

function feed(name: string, more: Partial<Feed> = {}): Feed {
  return { name, volts: 230, breakerAmps: 16, phases: 1, continuousShare: 0.8, powerFactor: 1, ...more };
}

function device(name: string, power: number, ...feeds: string[]): PoweredDevice {
  return { name, watts: watts(power), feeds };
}

const round = (value: number): number => Number(value.toPrecision(12));

/** Slow twin: watts of each feed with the feeds in `lost` gone. */
function wattsWithout(devices: readonly PoweredDevice[], feeds: readonly Feed[], lost: string | null): number[] {
  return feeds.map(({ name }) =>
    devices.reduce((sum, one) => {
      const left = one.feeds.filter((other) => other !== lost);
      return sum + (one.watts * left.filter((other) => other === name).length) / Math.max(1, left.length);
    }, 0),
  );
}

describe("feedLoads", () => {
  test("shares equally, and what a lost feed carried goes to the supplies that are left", () => {
    const [a, b] = feedLoads([device("Array 1", 900, "A", "B"), device("Array 2", 600, "A")], [feed("A"), feed("B")]);
    expect(a).toMatchObject({ normalWatts: 1050, worstWatts: 1500, limitAmps: 12.8, ok: true });
    expect(b).toMatchObject({ normalWatts: 450, worstWatts: 900 });
    expect(round(a!.worstAmps)).toBe(round(1500 / 230));
    expect(round(a!.share)).toBe(round(1500 / 230 / 12.8));
  });

  test("equals the loss of each other feed worked out one by one", () => {
    const feeds = ["A", "B", "C", "D"].map((name) => feed(name));
    const devices = fc.array(
      fc.record({ watts: fc.integer({ min: 1, max: 2000 }), on: fc.array(fc.constantFrom("A", "B", "C", "D"), { minLength: 1, maxLength: 4 }) }),
      { minLength: 1, maxLength: 8 },
    );
    fc.assert(
      fc.property(devices, (list) => {
        const powered = list.map(({ watts, on }, index) => device(`D${index}`, watts, ...on));
        feedLoads(powered, feeds).forEach((load, index) => {
          expect(load.normalWatts).toBeCloseTo(wattsWithout(powered, feeds, null)[index]!, 8);
          const others = feeds.filter(({ name }) => name !== load.feed).map(({ name }) => wattsWithout(powered, feeds, name)[index]!);
          expect(load.worstWatts).toBeCloseTo(Math.max(load.normalWatts, ...others), 8);
        });
      }),
      { seed: 20260508, numRuns: 500 },
    );
  });

  test("the worst line of a three-phase feed counts, a named phase by itself", () => {
    const three = feed("A", { volts: 400, phases: 3, breakerAmps: 32 });
    const [load] = feedLoads([device("d1", 2300, "A/L1"), device("d2", 4600, "a / l2"), device("d3", 1150, "A/L3")], [three]);
    expect(load!.normalWatts).toBe(8050);
    expect(round(load!.worstAmps)).toBe(round(4600 / (400 / Math.sqrt(3))));
  });

  test("a device that names no phase is on the worst line, wholly", () => {
    const three = feed("A", { volts: 400, phases: 3, breakerAmps: 32 });
    const [load] = feedLoads([device("d1", 2300, "A/L1"), device("d2", 1000, "A")], [three]);
    expect(round(load!.worstAmps)).toBe(round(3300 / (400 / Math.sqrt(3))));
  });

  test("the line that is worst may be another one after a loss", () => {
    const feeds = [feed("A", { volts: 400, phases: 3 }), feed("B")];
    const [load] = feedLoads([device("d1", 1000, "A/L1"), device("d2", 1600, "A/L2", "B")], feeds);
    expect(load).toMatchObject({ normalWatts: 1800, worstWatts: 2600 });
    expect(round(load!.worstAmps)).toBe(round((1600 * Math.sqrt(3)) / 400));
  });

  test("a device between two lines draws through both, in either order of writing", () => {
    const three = feed("A", { volts: 208, phases: 3 });
    for (const on of ["A/L1-L2", "a / l2 - l1"]) {
      const [load] = feedLoads([device("d", 2000, on)], [three]);
      expect(load).toMatchObject({ normalWatts: 2000, worstWatts: 2000 });
      expect(round(load!.worstAmps)).toBe(round(2000 / 208));
    }
  });

  test("a device that names no phase is counted on each line by turns, beside what lies between lines", () => {
    const three = feed("A", { volts: 400, phases: 3, powerFactor: 0.9 });
    const [load] = feedLoads([device("d1", 1000, "A"), device("d2", 3000, "A/L2-L3"), device("d3", 500, "A/L1")], [three]);
    const lines = { L1: 0, L2: 0, L3: 0, "L1-L2": 0, "L2-L3": 3000, "L3-L1": 0 };
    const byTurns = [{ ...lines, L1: 1500 }, { ...lines, L1: 500, L2: 1000 }, { ...lines, L1: 500, L3: 1000 }];
    expect(round(load!.worstAmps)).toBe(round(Math.max(...byTurns.flatMap((watts) => addPhasors(watts, 400, 0.9)))));
  });

  test.each(["L1", "L2", "L3"])("a device that names no phase is on the worst line, which may be %s", (line) => {
    const three = feed("A", { volts: 400, phases: 3 });
    const [load] = feedLoads([device("d1", 1000, "A"), device("d2", 2000, `A/${line}`)], [three]);
    expect(round(load!.worstAmps)).toBe(round((3000 * Math.sqrt(3)) / 400));
  });

  test("power factor and continuous share are the feed's own", () => {
    const [load] = feedLoads([device("d", 1840, "A")], [feed("A", { powerFactor: 0.8, continuousShare: 1, breakerAmps: 10 })]);
    expect(load).toMatchObject({ worstAmps: 10, limitAmps: 10, share: 1, ok: true });
  });

  test("a feed over its limit says so", () => {
    expect(feedLoads([device("d", 3000, "A")], [feed("A")])[0]).toMatchObject({ ok: false });
  });

  test("two supplies on one feed are two shares there, and both go with it", () => {
    const [a, b] = feedLoads([device("d", 900, "A", "A", "B")], [feed("A"), feed("B")]);
    expect(a).toMatchObject({ normalWatts: 600, worstWatts: 900 });
    expect(b).toMatchObject({ normalWatts: 300, worstWatts: 900 });
  });

  test("a feed whose own name has a slash is found by it", () => {
    expect(feedLoads([device("d", 230, "PDU/L1")], [feed("PDU/L1")])[0]).toMatchObject({ normalWatts: 230, worstAmps: 1 });
  });

  test.each([
    ["an unknown feed", "C", 'supplies "d": feed "C" is not in feeds. Add it there or mend the name (A, A/L2, A/L1-L2).'],
    ["an unknown phase", "A/L4", 'supplies "d": feed "A/L4" is not in feeds. Add it there or mend the name (A, A/L2, A/L1-L2).'],
    ["a line with itself", "A/L1-L1", 'supplies "d": feed "A/L1-L1" is not in feeds. Add it there or mend the name (A, A/L2, A/L1-L2).'],
    ["lines of a feed that has one phase", "A/L3-L2", 'supplies "d": "A/L3-L2" names a phase, but the feed has one. Write the feed alone.'],
    ["a phase of a feed that has one", "A/L2", 'supplies "d": "A/L2" names a phase, but the feed has one. Write the feed alone.'],
  ])("refuses %s", (_, on, sentence) => {
    expect(problemOf(() => feedLoads([device("d", 1, on)], [feed("A")]))).toMatchObject({ kind: "invalid", argument: "supplies", sentence });
  });

  test("refuses a feed that stands twice", () => {
    const sentence = 'feeds: "a" stands twice. Give each feed one row.';
    expect(problemOf(() => feedLoads([], [feed("A"), feed("a")]))).toMatchObject({ kind: "invalid", argument: "feeds", sentence });
  });

  test("says where a device or a feed stands that it refuses, where that is known", () => {
    const [twice, unknown] = [{ ...feed("a"), at: "feeds row 3" }, { ...device("d", 1, "C"), at: "supplies row 4" }];
    expect(problemOf(() => feedLoads([], [feed("A"), twice])).sentence).toMatch(/^feeds row 3: "a" stands twice\./);
    expect(problemOf(() => feedLoads([unknown], [feed("A")])).sentence).toMatch(/^supplies row 4: feed "C" is not in feeds\./);
  });

  test("a feed that is loaded just to its limit is within it, whatever rounding says", () => {
    const limit = 12.8;
    for (let volts = 380; volts <= 420; volts++) {
      const [load] = feedLoads([device("d", (limit * volts) / Math.sqrt(3), "A/L1")], [feed("A", { volts, phases: 3 })]);
      expect([volts, load!.ok]).toEqual([volts, true]);
    }
  });
});
