import type { Outlook } from "../../../../src/planning/plan/model";
import type { TableRow, TableRows } from "../../../../src/planning/plan/schema";
import { modelOf } from "../../../support/plan-model";

type Reading = TableRow<"readings">;

const array = { drives: 12, driveSize: "10 TB", scheme: "RAID 6", spares: 0 } as const;
/** Two arrays of 100 TB usable in a pool that may be filled to 80 %. */
const plan = (readings: readonly Reading[], acrossArrays = "none"): TableRows => ({
  pools: [{ pool: "Scans", fillLimit: 0.8, acrossArrays }],
  arrays: [{ array: "a-1", pool: "Scans", ...array }, { array: "a-2", pool: "Scans", ...array }, { array: "alone", ...array, used: "7 TB" }],
  readings: readings.map((one): Reading => ({ what: "used", unit: "TB", ...one })),
});
const read = (subject: string, days: readonly (readonly [date: string, value: number])[], more: Partial<Reading> = {}): Reading[] =>
  days.map(([date, value]) => ({ subject, date, value, ...more }));
const outlooks = (readings: readonly Reading[], acrossArrays?: string): readonly Outlook[] => modelOf(plan(readings, acrossArrays)).outlooks.all();

describe("an outlook", () => {
  test("names the day on which a steady rise reaches the fill limit of the capacity to hosts: 1 TB a day from 40 TB reach 160 TB after 120 days", () => {
    const [outlook] = outlooks(read("Scans", [["2026-01-01", 40], ["2026-01-31", 70], ["2026-03-02", 100]]));
    expect(outlook).toMatchObject({ subject: "Scans", capacity: 200_000_000_000_000n, begunAnew: null, verdict: "Full between 2026-05-01 and 2026-05-01, most likely about 2026-05-01." });
    expect(outlook!.yearlyRise! / 1e12).toBeCloseTo(365.25, 6);
  });

  test("gives a range of days around the likely one where the readings scatter, and begins it no earlier than the last reading", () => {
    const { reached } = outlooks(read("Scans", [["2026-01-01", 40], ["2026-01-31", 71], ["2026-03-02", 99], ["2026-04-01", 131], ["2026-04-20", 148]]))[0]!;
    expect(reached!.earliest < reached!.likely && reached!.likely < reached!.latest).toBe(true);
    expect(reached!.earliest >= "2026-04-20").toBe(true);
  });

  test.each<[string, readonly (readonly [string, number])[], string]>([
    ["two readings", [["2026-01-01", 40], ["2026-06-01", 60]], "2 of 3 readings, over 151 of 60 days: too few for a line. Read on."],
    ["three within a month", [["2026-01-01", 40], ["2026-01-11", 42], ["2026-01-31", 45]], "3 of 3 readings, over 30 of 60 days: too few for a line. Read on."],
    ["two of one day, of which the lower row counts", [["2026-01-01", 40], ["2026-06-01", 60], ["2026-06-01", 61]], "2 of 3 readings, over 151 of 60 days: too few for a line. Read on."],
    ["ever less", [["2026-01-01", 60], ["2026-02-01", 50], ["2026-04-01", 40]], "Not rising."],
    ["the same each time", [["2026-01-01", 60], ["2026-02-01", 60], ["2026-04-01", 60]], "Not rising."],
    ["up and down", [["2026-01-01", 60], ["2026-02-01", 90], ["2026-04-01", 76]], "Not rising, as far as these readings tell: they scatter more than they rise."],
    ["more than the limit", [["2026-01-01", 100], ["2026-02-01", 130], ["2026-04-01", 161]], "The limit of 160 TB is reached."],
  ])("of %s says so", (_, days, verdict) => {
    expect(outlooks(read("Scans", days))[0]).toMatchObject({ verdict, reached: null });
  });

  test("begins anew on the day from which another capacity was read, and not for what rounding shows", () => {
    const used = read("Scans", [["2026-01-01", 10], ["2026-02-01", 90], ["2026-03-01", 100], ["2026-04-01", 130], ["2026-05-15", 155]]);
    const rounded = read("a-1", [["2026-01-01", 100], ["2026-03-01", 100.4]], { what: "capacity" });
    expect(outlooks([...used, ...rounded])[0]).toMatchObject({ begunAnew: null });
    const grown = read("a-1", [["2026-01-01", 60], ["2026-03-01", 100]], { what: "capacity" });
    const [outlook] = outlooks([...used, ...grown]);
    expect(outlook).toMatchObject({ begunAnew: "2026-03-01" });
    expect(outlook!.readings.map(({ date }) => date)).toEqual(["2026-03-01", "2026-04-01", "2026-05-15"]);
  });

  test("of a pool adds up its arrays on the days on which all of them were read, and takes off what copies over them hold", () => {
    const first = read("a-1", [["2026-01-01", 20], ["2026-02-01", 30], ["2026-03-01", 99], ["2026-04-01", 40]]);
    const some = [...first, ...read("A-2", [["2026-01-01", 20], ["2026-02-01", 30], ["2026-04-01", 40]])];
    const sizes = (acrossArrays: string) => outlooks(some, acrossArrays)[0]!.readings.map(({ size }) => Number(size) / 1e12);
    expect(sizes("none")).toEqual([40, 60, 80]);
    expect(sizes("2 copies")).toEqual([20, 30, 40]);
    expect(outlooks(some, "2 copies")[0]!.capacity).toBe(100_000_000_000_000n);
  });

  test("says what is missing where the arrays of a pool were read on different days, or the capacity is not known", () => {
    const one = outlooks(read("a-1", [["2026-01-01", 20], ["2026-02-01", 30], ["2026-04-01", 40]]));
    expect(one[0]!.verdict).toBe("Its arrays were not all read on one day. Read them together, or write readings of the pool itself.");
    expect(outlooks(read("Scans", [["2026-01-01", 20], ["2026-02-01", 30], ["2026-04-01", 40]]), "nonsense")[0]!.verdict).toMatch(/^Its capacity is not known\./);
  });

  test("of an array in no pool is held against its own capacity and the fill limit of Settings", () => {
    expect(outlooks(read("alone", [["2026-01-01", 10], ["2026-02-10", 50], ["2026-03-02", 70]]))).toMatchObject([
      { subject: "alone", fillLimit: 0.8, verdict: "Full between 2026-03-12 and 2026-03-12, most likely about 2026-03-12." },
    ]);
  });

  test("is in the unit that was read", () => {
    expect(outlooks(read("Scans", [["2026-01-01", 1], ["2026-02-01", 2], ["2026-04-01", 3]], { unit: "TiB" }))[0]!.readings[0]!.size).toBe(1_099_511_627_776n);
  });
});

describe("the latest reading", () => {
  const usedOf = (readings: readonly Reading[]) => Number(modelOf(plan(readings)).find("arrays", "alone")!.used) / 1e12;

  test("counts before what Arrays says is used, wherever the plan is read", () => {
    expect(usedOf([])).toBe(7);
    expect(usedOf(read("ALONE", [["2026-03-01", 9], ["2026-02-01", 8]]))).toBe(9);
    expect(modelOf(plan(read("alone", [["2026-03-01", 9]]))).find("arrays", "alone")!.shown.Used).toBe("9 TB");
  });

  test("does not count without a day, a size or a word for what was read", () => {
    const one = (more: Partial<Reading>) => read("alone", [["2026-03-01", 9]], more);
    expect(usedOf([...one({ date: null }), ...one({ value: null }), ...one({ unit: "litres" }), ...one({ what: "capacity" })])).toBe(7);
  });
});
