import { saysNone } from "../../../../src/planning/plan/model";
import type { TableRow, TableRows } from "../../../../src/planning/plan/schema";
import { modelOf } from "../../../support/plan-model";

const array = { array: "a1", drives: 12, driveSize: "4 TB", scheme: "RAID 6", spares: 1 } as const;
const tera = 10n ** 12n;

function capacityOf(more: TableRow<"arrays"> = {}, settings: TableRows["settings"] = []) {
  const model = modelOf({ settings, arrays: [{ ...array, ...more }] });
  const row = model.rows("arrays")[0]!;
  const [set] = model.capacity.setsOf(row);
  return { layout: model.capacity.layoutOf(set!), capacity: model.capacity.of(row), hours: model.capacity.rebuildHoursOf(row), again: model.capacity.layoutOf(set!) };
}

describe("the capacity of an array", () => {
  test("is broken down from drives, size, scheme, spares and reserve", () => {
    const { layout, capacity, again } = capacityOf({ reserve: "10%" });
    expect(layout).toMatchObject({ spares: 1, members: 11, redundancy: 2 });
    expect(again).toBe(layout);
    expect(capacity).toEqual({ raw: 48n * tera, spares: 4n * tera, outside: 0n, redundancy: 8n * tera, reserve: (36n * tera) / 10n, usable: (324n * tera) / 10n });
  });

  test("has no spares and no reserve where those are blank", () => {
    expect(capacityOf({ spares: null }).capacity).toMatchObject({ spares: 0n, reserve: 0n, usable: 40n * tera });
  });

  test.each([
    ["no scheme", { scheme: null }],
    ["no drives", { drives: null }],
    ["too few drives for the scheme", { drives: 4 }],
  ])("is not known with %s", (_, more) => {
    expect(capacityOf(more)).toEqual({ layout: null, capacity: null, hours: null, again: null });
  });

  test("is not known without a drive size, though the drives are laid out", () => {
    const { layout, capacity, hours } = capacityOf({ driveSize: null });
    expect(layout?.members).toBe(11);
    expect([capacity, hours]).toEqual([null, null]);
  });

  test("is rebuilt at the drive rate of the settings: 4 TB at 100 MB/s take 11.1 hours, at 50 twice as long", () => {
    expect(capacityOf().hours).toBeCloseTo(4e12 / 100e6 / 3600, 12);
    expect(capacityOf({}, [{ setting: "Drive rate MB/s", value: "50" }]).hours).toBeCloseTo(4e12 / 50e6 / 3600, 12);
  });

  test("has no time of rebuild where the scheme survives nothing", () => {
    expect(capacityOf({ scheme: "none", spares: 0 }).hours).toBeNull();
  });
});

describe("the pools of a plan", () => {
  const { capacity } = modelOf({
    settings: [{ setting: "Fill limit", value: "70%" }],
    pools: [
      {
        pool: "P", fillLimit: "85%", acrossArrays: "2 copies",
      }, { pool: "p", fillLimit: "50%" }, { pool: "Q", acrossArrays: "2 coypies" }, { pool: null, acrossArrays: "none" }, { pool: "R", acrossArrays: " None " },
    ],
    arrays: [
      { ...array, array: "a1", pool: "P", used: "5 TB" }, { ...array, array: "a2", pool: "q" }, { ...array, array: "a3", pool: "p", scheme: null }, { ...array, array: "a4", pool: "P" },
    ],
  });

  test("hold the arrays that name them, and among those the members whose capacity is known", () => {
    expect(capacity.pools().map(({ pool, arrays, members }) => [pool.row, arrays.map((one) => one.array), members.map(({ name, usable, used }) => [name, usable, used])])).toEqual([
      [4, ["a1", "a3", "a4"], [["a1", 36n * tera, 5n * tera], ["a4", 36n * tera, 0n]]],
      [6, ["a2"], [["a2", 36n * tera, 0n]]],
      [8, [], []],
    ]);
    expect(capacity.pools()[0]!.members[0]!.row.array).toBe("a1");
  });

  test("have the fill limit of their row, else that of the settings, and the scheme that can be read", () => {
    expect(capacity.pools().map(({ fillLimit, across }) => [fillLimit, across?.name ?? null])).toEqual([[0.85, "2 copies"], [0.7, null], [0.7, null]]);
  });

  test.each([["", true], ["none", true], ["NONE", true], ["2 copies", false]])("are laid over no scheme by %p: %p", (text, none) => {
    expect(saysNone(text)).toBe(none);
  });
});

describe("what hosts can store in a pool", () => {
  // RAID 6 of 12 drives of 4 TB with a spare leaves 9 x 4 = 36 TB, of 6 drives without one 16 TB.
  const small = { ...array, drives: 6, spares: 0 };
  const of = (acrossArrays: string, ...arrays: TableRow<"arrays">[]) => {
    const { capacity, ...model } = modelOf({ pools: [{ pool: "P", acrossArrays }], arrays: arrays.map((one, at) => ({ ...one, array: `a${at}`, pool: "P" })) });
    const contents = capacity.pools()[0]!;
    return { whole: capacity.toHosts(contents), part: capacity.partToHosts(contents, [model.plan.arrays!.rows[0]!]) };
  };

  test("is the sum of its arrays without a scheme, half of it with two copies over equal ones", () => {
    expect(of("none", array, small)).toEqual({ whole: 52n * tera, part: 36n * tera });
    expect(of("2 copies", array, array)).toEqual({ whole: 36n * tera, part: 18n * tera });
  });

  test("is no more than the smaller of two unequal arrays with two copies, and 2/3 of three equal ones with 2+1", () => {
    expect(of("2 copies", array, small).whole).toBe(16n * tera);
    expect(of("2+1", array, array, array).whole).toBe(72n * tera);
  });

  test("is not known where an array's capacity is not, the scheme cannot be read, or there are too few arrays for it", () => {
    expect(of("2 copies", array, { ...array, scheme: null })).toEqual({ whole: null, part: null });
    expect(of("2 coypies", array, array).whole).toBeNull();
    expect(of("3 copies", array, array).whole).toBeNull();
  });
});
