import { buildJob, jobsOf, readCommissioningPlan } from "../../../../src/planning/commissioning/build";
import { snagFields, type SnagField } from "../../../../src/planning/commissioning/record";
import { asBuiltChanges } from "../../../../src/planning/commissioning/reports";
import { readPlannedTab } from "../../../../src/planning/commissioning/tab";
import type { TableRows } from "../../../../src/planning/plan/schema";
import type { Scalar } from "../../../../src/sheet";
import { jobName, moment, planWorkbook, smallPlan, step } from "../../../support/commissioning-plan";
import { columnOf, snagColumnOf } from "../../../support/tab-on-sheet";
import { tabSheet } from "../../../support/tab-workbook";

const plan: TableRows = {
  ...smallPlan(),
  arrays: smallPlan().arrays!.map((row) => ({ ...row, firmware: "2.0", drives: 1 })),
  drives: [{ array: smallPlan().arrays![0]!.array!, bay: 1, serial: "D-1" }],
  procedures: [...smallPlan().procedures!, { procedure: "Try out", section: "Drives", forEach: "drive" }],
  steps: [
    step("T-10", "Arrays", { expect: "{{Array.Serial}}", record: "serial" }),
    step("T-11", "Arrays", { expect: "{{Bottom unit}}", record: "number" }),
    step("T-13", "Arrays", { expect: "{{Firmware}}", record: "text" }),
    step("T-14", "Arrays", { expect: "{{Array.Model}}", record: "text" }),
    step("T-15", "Arrays", { expect: "Serial {{Array.Serial}}", record: "text" }),
    step("T-20", "Ports", { expect: "{{Address}}", record: "address" }),
    step("T-40", "Drives", { expect: "{{Drive.Serial}}", record: "serial" }),
    step("T-30", "Cluster", { expect: "{{Shared address}}", record: "address" }),
  ],
};
const workbook = planWorkbook(plan);

type Cells = Readonly<Record<string, Scalar>>;
type SnagCells = Readonly<Partial<Record<SnagField, Scalar>>>;

/** Lists what would be written into the plan, with a tab in which cells of steps, and snags about them, were typed. */
function changes(records: Readonly<Record<string, Cells>>, snags: readonly { readonly about: string; readonly cells: SnagCells }[] = []): unknown[] {
  const source = readCommissioningPlan(workbook);
  const { tab } = buildJob(source, jobsOf(source)[0]!, () => "new", moment);
  const reading = readPlannedTab(tab);
  const stepAt = (key: string) => reading.steps.find((one) => one.key.endsWith(`/${key}`))!;
  const cell = (row: number, column: string, value: Scalar) => ({ row, column: columnOf(reading, column), value });
  const sheet = tabSheet(tab, jobName, [
    ...Object.entries(records).flatMap(([key, cells]) => Object.entries(cells).map(([column, value]) => cell(stepAt(key).row, column, value))),
    ...snags.flatMap(({ about, cells }, index) => snagFields.flatMap((field) => {
      const value = { about: Number(stepAt(about).no), ...cells }[field];
      return value === undefined ? [] : [{ row: reading.places.snagsRow + 2 + index, column: snagColumnOf(reading, field), value }];
    })),
  ]);
  const sheets = [...workbook.sheets, sheet];
  const again = readCommissioningPlan({ sheets });
  const { writes, growths } = asBuiltChanges({ sheets }, again, jobsOf(again)[0]!);
  expect(growths).toEqual([]);
  return writes.map(({ sheet: name, before, value }) => [name, before, value]);
}

describe("what was accepted goes back to the plan", () => {
  const accepted: SnagCells = { closed: "Accepted", by: "EF" };

  test.each<[string, Readonly<Record<string, Cells>>, unknown[]]>([
    ["a serial number", { "T-10/A0001": { found: "N-0077" } }, [["Arrays", "N-0001", "N-0077"]]],
    ["the serial number of a drive", { "T-40/A0001.bay-1": { found: "D-7" } }, [["Drives", "D-1", "D-7"]]],
    ["a unit of the rack, as a number", { "T-11/A0002": { found: "9" } }, [["Arrays", 8, 9]]],
    ["a firmware version", { "T-13/A0001": { found: "2.1" } }, [["Arrays", "2.0", "2.1"]]],
    ["no unit that is no number", { "T-11/A0002": { found: "nine" } }, []],
    ["an address of a port", { "T-20/A0001.A.0": { found: "192.0.2.9" } }, [["Ports", "192.0.2.1", "192.0.2.9"]]],
    ["the shared address of a cluster", { "T-30/A0001.cluster": { found: "192.0.2.9" } }, [["Clusters", "192.0.2.250", "192.0.2.9"]]],
    ["no column that the plan alone decides", { "T-14/A0001": { found: "Oak 8" } }, []],
    ["no text around a field", { "T-15/A0001": { found: "Serial N-0077" } }, []],
  ])("where a snag about it was accepted by name: %s", (_, records, writes) => {
    expect(changes(records, Object.keys(records).map((about) => ({ about, cells: accepted })))).toEqual(writes);
  });

  test.each<[string, Readonly<Record<string, Cells>>]>([
    ["before anything is found", {}],
    ["in other capitals", { "T-10/A0001": { found: "n-0001" } }],
    ["that differs", { "T-10/A0001": { found: "N-0077" } }],
    ["that differs, whatever was typed over its Result", { "T-10/A0001": { found: "N-0077", result: "As expected" } }],
    ["that is to be seen again", { "T-10/A0001": { found: "N-0001", expectedBefore: "N-0000" } }],
    ["that does not apply", { "T-10/A0001": { found: "Not applicable", by: "AB", note: "n" } }],
    ["that is waived without a value", { "T-10/A0001": { found: "Waived", by: "AB", note: "n" } }],
  ])("but nothing %s", (_, records) => {
    expect(changes(records)).toEqual([]);
  });

  const found = { "T-10/A0001": { found: "N-0077" } };
  const about = "T-10/A0001";

  test.each<[string, { about: string; cells: SnagCells }[], string]>([
    ["by the retest of a snag that was accepted", [{ about, cells: { ...accepted, foundAgain: "N-0078" } }], "N-0078"],
    ["by the last retest", [{ about, cells: { foundAgain: "N-0078", closed: "Closed" } }, { about, cells: { ...accepted, foundAgain: "N-0079" } }], "N-0079"],
    ["by what was found first where a snag saw nothing again", [{ about, cells: { ...accepted, foundWrong: "Dent" } }], "N-0077"],
    ["by no snag about another step", [{ about, cells: accepted }, { about: "T-10/A0002", cells: { foundAgain: "N-0078", closed: "Closed" } }], "N-0077"],
  ])("%s", (_, snags, value) => {
    expect(changes(found, snags)).toEqual([["Arrays", "N-0001", value]]);
  });

  test("and nothing does where the job has no tab", () => {
    const source = readCommissioningPlan(workbook);
    expect(asBuiltChanges(workbook, source, jobsOf(source)[0]!)).toEqual({ writes: [], growths: [] });
  });
});
