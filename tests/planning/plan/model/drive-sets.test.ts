import { layoutCapacity } from "../../../../src/planning/drawings";
import type { TableRow, TableRows } from "../../../../src/planning/plan/schema";
import { lookupIn, JobSubjects } from "../../../../src/planning/plan/subjects";
import { missingValues } from "../../../../src/planning/plan/guided";
import { modelOf } from "../../../support/plan-model";

const tera = 10n ** 12n;
const tenths = (count: number): bigint => (BigInt(count) * tera) / 10n;
const site = "Mill";
const array = { id: "A0001", array: "a1", site, reserve: "10%", pool: "Bulk", used: "20 TB" } as const;
const driveSets: readonly TableRow<"driveSets">[] = [
  { array: "A1", set: "fast", drives: 6, driveSize: "4 TB", scheme: "RAID 10", pool: "Fast" },
  { array: "a1", set: "bulk", drives: 10, driveSize: "8 TB", scheme: "RAID 6", spares: 1 },
];
const rows = { sites: [{ site }], arrays: [array], driveSets, pools: [{ pool: "Fast" }, { pool: "Bulk" }], jobs: [{ id: "J0001", job: "j", site }] } satisfies TableRows;

function planOf(more: TableRows = {}) {
  const model = modelOf({ ...rows, ...more });
  return { model, row: model.rows("arrays")[0]!, pools: model.capacity.pools() };
}

// By hand: RAID 10 of 6 x 4 TB keeps 12; RAID 6 of 9 x 8 TB beside a spare keeps 7 x 8 = 56; a tenth of both stays free.
describe("an array of two drive sets", () => {
  test("holds what both hold, line by line", () => {
    const { model, row } = planOf();
    expect(model.capacity.of(row)).toEqual({ raw: 104n * tera, spares: 8n * tera, outside: 0n, redundancy: 28n * tera, reserve: tenths(68), usable: tenths(612) });
  });

  test("gives each pool what its sets hold, and what is used of it to the pool that the array names", () => {
    const { pools, model } = planOf();
    expect(pools.map(({ pool, members }) => [pool.pool, ...members.map(({ name, usable, used }) => [name, usable, used])])).toEqual([
      ["Fast", ["a1", tenths(108), 0n]], ["Bulk", ["a1", tenths(504), 20n * tera]],
    ]);
    expect(pools.map((contents) => model.capacity.toHosts(contents))).toEqual([tenths(108), tenths(504)]);
    expect(pools.map((contents) => model.capacity.partToHosts(contents, model.rows("arrays")))).toEqual([tenths(108), tenths(504)]);
  });

  test("without a pool of its own has what is used in that of its first set", () => {
    const { pools } = planOf({ arrays: [{ ...array, pool: null }] });
    expect(pools.map(({ members }) => members.map(({ used }) => used))).toEqual([[20n * tera], []]);
  });

  test("stands in the picture of each pool with its part, and with what is in no pool", () => {
    const { model } = planOf({ driveSets: [driveSets[0]!, { ...driveSets[1]!, pool: "Nowhere" }] });
    expect(layoutCapacity(model).map(({ pool, raw, usable, used }) => [pool, raw, usable, used])).toEqual([
      ["Fast", 24n * tera, tenths(108), 0n], ["Bulk", 0n, 0n, 20n * tera], ["No pool", 80n * tera, tenths(504), 0n],
    ].filter(([, raw]) => raw !== 0n));
  });

  test("is not known as a whole where one set is not; the pool of the other is", () => {
    const { model, row, pools } = planOf({ driveSets: [driveSets[0]!, { ...driveSets[1]!, scheme: null }] });
    expect(model.capacity.of(row)).toBeNull();
    expect(pools.map((contents) => model.capacity.toHosts(contents))).toEqual([tenths(108), null]);
  });

  // 4 TB and 8 TB at 100 MB/s: 11.1 and 22.2 hours.
  test("is rebuilt as long as the set that takes longest", () => {
    const { model, row } = planOf();
    expect(model.capacity.rebuildHoursOf(row)).toBeCloseTo(8e12 / 1e8 / 3600, 6);
  });

  test("has the drives and spares of both, and size and scheme where they agree", () => {
    expect(planOf().row).toMatchObject({ drives: 16, spares: 1, driveSize: null, scheme: null });
    const alike = planOf({ driveSets: driveSets.map((set) => ({ ...set, driveSize: "4 TB", scheme: "RAID 6" })) }).row;
    expect([alike.driveSize, alike.scheme?.name]).toEqual([4n * tera, "RAID 6"]);
    expect(planOf({ driveSets: [driveSets[0]!, { ...driveSets[1]!, drives: null }] }).row.drives).toBeNull();
  });

  test("counts by its rows, whatever its own columns say", () => {
    const { model, row } = planOf({ arrays: [{ ...array, drives: 99, driveSize: "1 TB", scheme: "RAID 5", spares: 9 }] });
    expect(row).toMatchObject({ drives: 16, spares: 1, scheme: null });
    expect(model.capacity.of(row)?.usable).toBe(tenths(612));
  });

  test("names both sizes and schemes in steps, and has nothing missing", () => {
    const { model } = planOf();
    const [job] = model.rows("jobs");
    const [subject] = new JobSubjects(model, model.places.of(job!), job!).list("array");
    const field = lookupIn(subject!.scope, "Do");
    expect(["Drives", "Drive size", "Scheme", "Spares", "Usable"].map(field)).toEqual(["16", "4 TB, 8 TB", "RAID 10, RAID 6", "1", "61.2 TB"]);
    const missing = missingValues(model).map(({ table, header }) => `${table} ${header}`);
    expect(missing.filter((one) => /Drives|Drive size|Scheme|Spares/.test(one))).toEqual(["Drive sets Spares"]);
  });
});

test("an array without rows there is one set of its own columns", () => {
  const { model, row } = planOf({ driveSets: [driveSets[0]!].map((set) => ({ ...set, array: "another" })), arrays: [{ ...array, drives: 10, driveSize: "8 TB", scheme: "RAID 6", spares: 1 }] });
  expect(model.capacity.setsOf(row)).toMatchObject([{ at: { table: "arrays", row: row.row }, label: "a1", pool: "Bulk", drives: 10 }]);
  expect(model.capacity.of(row)?.usable).toBe(tenths(504));
});
