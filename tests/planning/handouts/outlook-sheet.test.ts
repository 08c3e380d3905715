import { openHeadless } from "../../../src/headless/open-headless";
import { outlookMark, planOutlook } from "../../../src/planning/handouts";
import type { TableRows } from "../../../src/planning/plan/schema";
import type { SheetPlan } from "../../../src/sheet";
import { snapshotOf, withCell } from "../../support/plain-workbook";
import { modelOf } from "../../support/plan-model";
import { lookFaults } from "../../support/sheet-look";

const plan: TableRows = {
  pools: [{ pool: "Scans", fillLimit: 0.8 }],
  arrays: [{ array: "a-1", pool: "Scans", drives: 12, driveSize: "10 TB", scheme: "RAID 6", spares: 0 }],
  readings: ["2026-01-01", "2026-02-20", "2026-04-11"].map((date, at) => ({ date, subject: "Scans", what: "used", value: 30 + 10 * at, unit: "TB" })),
};
const sheet = planOutlook(modelOf(plan), "2026-04-12 09:00", null);
const rowOf = (label: string): number => sheet.rows.findIndex((row) => row[0]?.value === label);

describe("the outlook", () => {
  test("can be read: every style is there and no text is faint", () => {
    expect(lookFaults(sheet)).toEqual([]);
  });

  test("says of each subject what was read, what the limit is, and between which days it is reached", () => {
    expect(sheet.rows.slice(2, 5).map((row) => row[0]?.value)).toEqual([undefined, "Scans", "Full between 2026-09-08 and 2026-09-08, most likely about 2026-09-08."]);
    const facts: Readonly<Record<string, unknown>> = Object.fromEntries(sheet.rows.slice(5).map((row) => [String(row[0]?.value), row[1]?.value]));
    expect(facts).toMatchObject({
      "Readings that count": 3, "The first and the last": "2026-01-01 – 2026-04-11", "Begun anew": "never", "Used TB, read last": 50, "Capacity to hosts TB": 100, "Fill limit": 0.8,
      "Rise a year TB": 73.05, "Full from": "2026-09-08", "Years planned": 5,
    });
  });

  test("has beside it what to buy year by year, once the capacity bought at a time is written: at 146.1 % a year 50 TB are 123.05 after one, so steps of 50 TB are two", async () => {
    const { port, settle, dispose } = await openHeadless();
    try {
      await port.apply([{ kind: "add-sheet", plan: sheet }]);
      await settle();
      const shown = async () => (await port.read()).sheets.find(({ name }) => name === outlookMark)!.values;
      const at = rowOf("Readings that count");
      expect((await shown())[at]![3]).toBe("What to buy stands here once the yellow cells are filled");
      await port.apply([{ kind: "write", sheet: outlookMark, row: rowOf("Capacity bought at a time TB"), column: 1, cells: [[{ value: 50 }]] }]);
      await settle();
      const values = await shown();
      expect(values[at]!.slice(3, 8)).toEqual(["Year", "Demand TB", "Capacity TB", "Steps bought", "Fill"]);
      expect(values[at + 1]!.slice(3, 7)).toEqual([1, 123.05, 200, 2]);
      expect(values[at + 5]![3]).toBe(5);
    } finally {
      dispose();
    }
  });

  test("made anew keeps what was typed into the yellow cells of a subject, and follows the readings in those that nobody filled", () => {
    const [before] = snapshotOf([sheet]).sheets;
    const typed = withCell({ sheets: [before!] }, outlookMark, rowOf("Capacity bought at a time TB"), 1, 50);
    const yellow = (made: SheetPlan) => ["Growth a year, for the plan beside", "Capacity bought at a time TB", "Years planned"].map((label) => made.rows[rowOf(label)]![1]);
    const again = planOutlook(modelOf(plan), "2026-04-13 09:00", typed.sheets[0]!);
    expect(yellow(again)).toEqual([yellow(sheet)[0], { value: 50, style: "inputSize" }, { value: 5, style: "inputCount" }]);
    expect(yellow(again)[0]).toHaveProperty("formula");
    // A growth of one's own stands in the place of the formula.
    const own = withCell(typed, outlookMark, rowOf("Growth a year, for the plan beside"), 1, 0.1).sheets[0]!;
    const overtyped = { ...own, formulas: own.formulas.map((line) => line.map((formula, column) => (column === 1 ? null : formula))) };
    expect(yellow(planOutlook(modelOf(plan), "2026-04-14 09:00", overtyped))[0]).toEqual({ value: 0.1, style: "inputShare" });
  });

  test("is refused with a sentence while nothing was read", () => {
    expect(() => planOutlook(modelOf({ arrays: plan.arrays! }), "now", null)).toThrow("No reading of an array or a pool stands in the plan. Fill Readings: day, subject, used, value and unit.");
  });
});
