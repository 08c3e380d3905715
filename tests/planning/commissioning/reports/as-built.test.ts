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
type Cells = Readonly<Record<string, Scalar>>;
type SnagCells = Readonly<Partial<Record<SnagField, Scalar>>>;

/** Lists what would be written into the plan, with a tab in which cells of steps, and snags about them, were typed. */
function changes(records: Readonly<Record<string, Cells>>, snags: readonly { readonly about: string; readonly cells: SnagCells }[] = [], rows = plan): unknown[] {
  const workbook = planWorkbook(rows);
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
  const { writes } = asBuiltChanges({ sheets }, again, jobsOf(again)[0]!, again.tabs[0]!);
  return writes.map(({ sheet: name, before, value }) => [name, before, value]);
}

/** Accepts by name what was found for some steps. */
const acceptedAll = (records: Readonly<Record<string, Cells>>) => Object.keys(records).map((about) => ({ about, cells: { closed: "Accepted", by: "EF" } }));

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
    expect(changes(records, acceptedAll(records))).toEqual(writes);
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
});

describe("what was found of the site goes back too", () => {
  const survey: TableRows = {
    ...plan,
    racks: [{ rack: "N1", site: "North hall", units: 42, numberedFrom: "bottom" }],
    steps: [
      step("T-70", "Start", { expect: "{{Site.Contact}}", record: "text" }),
      step("T-71", "Arrays", { expect: "{{Rack.Units}}", record: "number" }),
      step("T-72", "Arrays", { expect: "{{Rack.Depth mm}}", record: "number" }),
      step("T-73", "Arrays", { expect: "{{Rack.Numbered from}}", record: "text" }),
      step("T-74", "Arrays", { expect: "{{Used}}", record: "size", unit: "TB" }),
      step("T-75", "Arrays", { expect: "{{Feed A}}", record: "text" }),
      step("T-76", "Start", { expect: "{{Longest standstill s}}", record: "number", bound: "at most" }),
      step("T-77", "Arrays", { expect: "{{Rack.Rack}}", record: "text" }),
    ],
    jobs: plan.jobs!.map((row) => ({ ...row, longestStandstill: 30 })),
  };
  const back = (records: Readonly<Record<string, Cells>>) => changes(records, [], survey);

  test.each<[string, Readonly<Record<string, Cells>>, unknown[]]>([
    ["a measure that the plan had left open", { "T-72/A0001": { found: 1000 }, "T-72/A0002": { found: 1000 } }, [["Racks", null, 1000]]],
    ["space in use, with the unit that was seen", { "T-74/A0001": { found: 3.5, unit: "TiB" } }, [["Arrays", null, "3.5 TiB"]]],
    ["but nothing on which two subjects do not agree", { "T-72/A0001": { found: 1000 }, "T-72/A0002": { found: 1100 } }, []],
    ["but no measure taken against a limit", { "T-76/site": { found: 12 } }, []],
  ])("%s", (_, records, writes) => {
    expect(back(records)).toEqual(writes);
  });

  test.each<[string, Readonly<Record<string, Cells>>, unknown[]]>([
    ["whom to ask", { "T-70/site": { found: "Night desk" } }, [["Sites", "Desk", "Night desk"]]],
    ["the units of a rack", { "T-71/A0001": { found: 47 } }, [["Racks", 42, 47]]],
    ["a word that the column knows", { "T-73/A0001": { found: "top" } }, [["Racks", "bottom", "top"]]],
    ["but none that it does not know", { "T-73/A0001": { found: "left" } }, []],
    ["a row of another table", { "T-75/A0001": { found: "N-B" } }, [["Arrays", "N-A", "N-B"]]],
    ["but none that the plan does not have", { "T-75/A0001": { found: "N-C" } }, []],
    ["but no name by which rows are found", { "T-77/A0001": { found: "N9" } }, []],
  ])("where a snag about it was accepted by name: %s", (_, records, writes) => {
    expect(changes(records, acceptedAll(records), survey)).toEqual(writes);
  });
});

describe("drives go back by bay", () => {
  const day = 46_085;

  test("into a new row where the plan has none for the bay", () => {
    const rows: TableRows = { ...plan, arrays: plan.arrays!.map((row) => ({ ...row, drives: 2 })) };
    expect(changes({ "T-40/A0001.bay-2": { found: "D-2", done: day } }, [], rows)).toEqual([["Drives", null, "n-1"], ["Drives", null, 2], ["Drives", null, "D-2"]]);
    // A job that installs has fitted it: the day is known.
    const procedures = rows.procedures!.map((row) => (row.section === "End" ? { ...row, forEach: "array" as const } : row));
    const installing = { ...rows, steps: [...rows.steps!, step("T-90", "End", { when: "Cluster act = create" })], procedures };
    expect(changes({ "T-40/A0001.bay-2": { found: "D-2", done: day } }, [], installing)).toContainEqual(["Drives", null, "2026-03-04"]);
  });

  test("or not at all, with a sentence, where the plan has no table for them", () => {
    const rows: TableRows = { ...plan, drives: [] };
    expect(() => changes({ "T-40/A0001.bay-1": { found: "D-1" } }, [], rows)).toThrow("The job recorded serial numbers of drives (1), and the plan has no table for them.");
    expect(changes({ "T-11/A0001": { found: 4 } }, [], rows)).toEqual([]);
  });

  test("with the day on which the earlier one was out, where the plan says that one was fitted", () => {
    const rows: TableRows = {
      ...plan,
      drives: [{ array: "n-1", bay: 1, serial: "D-1", firmware: "A1", fitted: "2025-01-02" }],
      steps: [...plan.steps!, step("T-41", "Drives", { expect: "{{Drive.Firmware}}", record: "text" })],
    };
    const swap = { "T-40/A0001.bay-1": { found: "D-7", done: day }, "T-41/A0001.bay-1": { found: "A2", done: day } };
    expect(changes(swap, acceptedAll(swap), rows)).toEqual([
      ["Drives", null, "2026-03-04"],
      ["Drives", null, "n-1"], ["Drives", null, 1], ["Drives", null, "D-7"], ["Drives", null, "A2"], ["Drives", null, "2026-03-04"],
    ]);
    expect(changes({ "T-40/A0001.bay-1": { found: "D-1", done: day } }, [], rows)).toEqual([]);
  });
});

describe("what a job read of arrays in use", () => {
  const yearly: TableRows = {
    ...plan,
    readings: [{ date: "2025-03-02", subject: "n-1", what: "used", value: 9, unit: "TB", source: "Last year" }],
    steps: [step("YCK-036", "Arrays", { record: "size", unit: "TB" }), step("YCK-037", "Arrays", { record: "size", unit: "TB" })],
  };
  const records = {
    "YCK-036/A0001": { found: 15.9, done: "2026-03-09" }, "YCK-037/A0001": { found: "10.5", done: "2026-03-09" },
    "YCK-037/A0002": { found: 9.5, unit: "TiB", done: "2026-03-10" },
  };
  const row = (subject: string, what: string, value: number, unit: string) => [["Readings", null, 46_091], ["Readings", null, subject], ["Readings", null, what], ["Readings", null, value],
    ["Readings", null, unit], ["Readings", null, jobName]];

  test("becomes rows of Readings below those that are there, all of the day of the last of them, each with the job as its source", () => {
    expect(changes(records, [], yearly)).toEqual([...row("n-1", "capacity", 15.9, "TB"), ...row("n-1", "used", 10.5, "TB"), ...row("n-2", "used", 9.5, "TiB")]);
  });

  test("is not written a second time, and not where nothing was read", () => {
    const there = { ...yearly, readings: [{ date: "2026-03-09", subject: "N-1", what: "used", value: 10.5, unit: "TB", source: jobName }] } as const;
    expect(changes({ "YCK-037/A0001": records["YCK-037/A0001"] }, [], there)).toEqual([]);
    expect(changes({ "YCK-037/A0001": { found: "Waived", note: "no page", by: "EF", done: "2026-03-09" } }, [], yearly)).toEqual([]);
  });

  test("is refused with a sentence where the plan has no table for it", () => {
    expect(() => changes(records, [], { ...yearly, readings: [] })).toThrow("The job read what is used (3), and the plan has no table for it. Add Readings in the Plan view, then choose this again.");
  });
});
