import { openHeadless, type HeadlessWorkbook } from "../../../../../src/headless/open-headless";
import { setUp } from "../../../../../src/actions/set-up";
import { figureDiffers } from "../../../../../src/planning/checks/rules/capacity/figure-differs";
import { planSetUp } from "../../../../../src/planning/plan/set-up";
import type { Scalar } from "../../../../../src/sheet";
import { cells, found, sample, type EditableRows } from "../../../../support/plan-rows";

/** What the rule finds in a plan whose formulas were worked out, once something was typed over some cells by sheet, row and header. */
async function foundIn(rows: EditableRows, typed: readonly (readonly [sheet: string, row: number, header: string, value: Scalar])[] = []) {
  const workbook: HeadlessWorkbook = await openHeadless();
  try {
    await workbook.port.apply(planSetUp(await workbook.port.read(), rows).map((plan) => ({ kind: "add-sheet", plan })));
    await setUp(workbook.port);
    const headers = async (sheet: string) => (await workbook.port.read()).sheets.find(({ name }) => name === sheet)!.values[3]!;
    for (const [sheet, row, header, value] of typed) {
      await workbook.port.apply([{ kind: "write", sheet, row: row - 1, column: (await headers(sheet)).indexOf(header), cells: [[{ value }]] }]);
    }
    await workbook.settle();
    const read = await workbook.port.read();
    const shown = (sheet: string, row: number, header: string) => {
      const { values } = read.sheets.find(({ name }) => name === sheet)!;
      return values[row - 1]![values[3]!.indexOf(header)];
    };
    return { found: found(figureDiffers, read), shown };
  } finally {
    workbook.dispose();
  }
}

/** The sample with 2 copies over a pool of three arrays of 10 drives of 4, 8 and 10 TB under RAID 6: 32, 64 and 80 TB, of which hosts can store half of 176 TB. */
function withTwoCopies(): EditableRows {
  const rows = sample();
  rows.pools.push({ pool: "Trials", acrossArrays: "2 copies" });
  const trial = (array: string, driveSize: string) => ({ array, site: "Bindery", drives: 10, driveSize, scheme: "RAID 6", spares: 0, pool: "Trials" });
  rows.arrays.push(trial("trial-1", "4 TB"), trial("trial-2", "8 TB"), trial("trial-3", "10 TB"));
  rows.quote.push({ item: "Trials", for: "trial-1, trial-2", quantity: 2, kind: "array" });
  return rows;
}

test("figures that the formulas of a plan work out are what the plan gives, a scheme over arrays of three sizes among them", async () => {
  const rows = withTwoCopies();
  const { found: told, shown } = await foundIn(rows);
  expect(told).toEqual([]);
  const first = 4 + rows.arrays.length - 2;
  expect([0, 1, 2].map((at) => shown("Arrays", first + at, "To hosts"))).toEqual([16, 32, 40]);
  expect(shown("Quote", 4 + rows.quote.length, "To hosts TB")).toBe(48);
});

test("finds figures that were typed over, and one of an array of which the plan does not say enough", async () => {
  const rows = withTwoCopies();
  rows.arrays.push({ array: "trial-4", site: "Bindery" });
  const last = 4 + rows.arrays.length;
  const { found: told } = await foundIn(rows, [["Arrays", last - 1, "Usable", 88], ["Arrays", last, "Usable", 12.3456], ["Quote", 4 + rows.quote.length, "To hosts TB", 96]]);
  const way = "If it was typed over, copy the formula of another row here.";
  expect(told).toContain(`Arrays ${last - 1} Usable: Usable shows 88 TB, but the plan gives 80 TB. ${way}`);
  expect(told).toContain(`Arrays ${last} Usable: Usable shows 12.35 TB, but the plan does not say enough for that. ${way}`);
  expect(told).toContain(`Quote ${4 + rows.quote.length} To hosts TB: To hosts TB shows 96 TB, but the plan gives 48 TB. ${way}`);
});

test("an array whose drives stand in Drive sets leaves the sums and shares that it is part of blank, not too small, and finds none of them wrong", async () => {
  const rows = withTwoCopies();
  const last = 4 + rows.arrays.length;
  Object.assign(rows.arrays.at(-1)!, { drives: null, driveSize: null, scheme: null, spares: null });
  rows.driveSets.push({ array: "trial-3", set: "fast", drives: 10, driveSize: "10 TB", scheme: "RAID 6", spares: 0 });
  rows.quote.push({ item: "Site", for: "Bindery", quantity: 1, kind: "array" });
  const { found: told, shown } = await foundIn(rows);
  expect(told).toEqual([]);
  expect([last - 2, last - 1, last].map((row) => shown("Arrays", row, "To hosts"))).toEqual([null, null, null]);
  expect(shown("Drive sets", 5, "Usable")).toBe(80);
  expect(["Usable TB", "To hosts TB"].map((header) => shown("Quote", 4 + rows.quote.length, header))).toEqual([null, null]);
});

test("says nothing of figures that nobody worked out", () => {
  expect(cells(figureDiffers, withTwoCopies())).toEqual([]);
});
