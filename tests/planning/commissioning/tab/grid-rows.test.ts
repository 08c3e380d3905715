import { buildJob, jobsOf, readCommissioningPlan } from "../../../../src/planning/commissioning/build";
import { openItems, results } from "../../../../src/planning/commissioning/record";
import { progressOf } from "../../../../src/planning/commissioning/reports";
import { checkTabSeal, forgedCells, readTab, type TabReading } from "../../../../src/planning/commissioning/tab";
import { slotColumns } from "../../../../src/planning/commissioning/tab/tab-columns";
import type { TableRows } from "../../../../src/planning/plan/schema";
import { showCell, type CellValue, type SheetSnapshot } from "../../../../src/sheet";
import { gridPlan, jobName, moment, planWorkbook, smallPlan } from "../../../support/commissioning-plan";
import { builtTab, columnsOf, computed, withCells, type Written } from "../../../support/filled-tab";
import { sealed } from "../../../support/sealed-edits";
import { tabSheet } from "../../../support/tab-workbook";

const plan = gridPlan();
const read = (sheet: SheetSnapshot): TabReading => readTab(sheet)!;
const first = builtTab(plan);
const recordOf = (sheet: SheetSnapshot, key: string) => read(sheet).steps.find((step) => step.key === `J0001/${key}`)!;

/** Types into Found of steps, in lists and grids alike. */
function typed(sheet: SheetSnapshot, found: Readonly<Record<string, CellValue>>): SheetSnapshot {
  const tab = read(sheet);
  return computed(withCells(sheet, ...Object.entries(found).map(([key, value]): Written => {
    const { row, slot } = recordOf(sheet, key);
    return [row, tab.places.columns[slot === null ? "found" : slotColumns[slot.place]!.found]!, value];
  })));
}

/** Types into a column of the row of a step. */
function beside(sheet: SheetSnapshot, key: string, cells: Readonly<Record<string, CellValue>>): SheetSnapshot {
  const columns = columnsOf(read(sheet));
  return computed(withCells(sheet, ...Object.entries(cells).map(([column, value]): Written => [recordOf(sheet, key).row, columns[column]!, value])));
}

/** Builds the tab again over a filled one. */
function again(sheet: SheetSnapshot, rows: TableRows = plan): SheetSnapshot {
  const source = readCommissioningPlan({ sheets: [...planWorkbook(rows).sheets, sheet] });
  return computed(tabSheet(buildJob(source, jobsOf(source)[0]!, () => "new", moment).tab, jobName));
}

/** What people see in the rows from the title of a section to the next one, cell by cell without the blank ones. */
function seen(sheet: SheetSnapshot, title: string, rows: number): string[] {
  const at = sheet.values.findIndex(([cell]) => cell === title);
  return sheet.values.slice(at, at + rows).map((line) => line.slice(0, 14).map(showCell).filter((cell) => cell !== "").join(" | "));
}

const portA = { "T-20/A0001.A.0": "192.0.2.1", "T-21/A0001.A.0": 8972, "T-22/A0001.A.0": "none", "T-23/A0001.A.0": "Yes" };

describe("a section that is shown as a grid", () => {
  test("has a row a subject, under what its steps say, and one that signs for them", () => {
    const pairs = ["T-20", "Found", "T-21", "Found, bytes", "T-22", "Found", "T-23", "Found"];
    expect(seen(first, "Ports", 7)).toEqual([
      "Ports | T-20: Do T-20\nT-21: Do T-21\nT-22: Do T-22\nT-23: Do T-23",
      ["No.", "For", "Result", ...pairs, "Note"].join(" | "),
      "9 | T-20 | n-1 A0 | 192.0.2.1 | 8972 | none | Link up",
      "10 | T-20 | n-1 B0 | 192.0.2.2 | 8972 | none | Link up",
      "11 | T-20 | n-2 A0 | 192.0.2.3 | 8972 | none | Link up",
      "12 | T-20 | n-2 B0 | 192.0.2.4 | 8972 | none | Link up",
      "13 | sign | Sign for all rows above. | Ports | Every row filled",
    ]);
  });

  test("is read as one record a step, which no name signs; the row that signs asks for as many as the strictest of them", () => {
    const tab = read(first);
    expect(tab.faults).toEqual([]);
    const { row } = recordOf(first, "T-20/A0001.A.0");
    expect(tab.steps.filter((step) => step.row === row).map(({ key, stepId, step, kind, sign, plannedUnit, expected, no }) => [key, stepId, step, kind, sign, plannedUnit, expected, no])).toEqual([
      ["J0001/T-20/A0001.A.0", "T-20", "Do T-20", "address", "none", "", "192.0.2.1", "9"],
      ["J0001/T-21/A0001.A.0", "T-21", "Do T-21", "number", "none", "bytes", "8972", "9"],
      ["J0001/T-22/A0001.A.0", "T-22", "Do T-22", "text", "none", "", "none", "9"],
      ["J0001/T-23/A0001.A.0", "T-23", "Do T-23", "tick", "none", "", "Link up", "9"],
    ]);
    expect(recordOf(first, "sign/t-20+t-21+t-22+t-23")).toMatchObject({ sign: "two", required: true, slot: null });
    expect(recordOf(first, "sign/t-40")).toMatchObject({ sign: "one" });
  });

  test.each<[string, Readonly<Record<string, CellValue>>, string, number]>([
    ["nothing", {}, "", 0],
    ["a part as expected", { "T-20/A0001.A.0": "192.0.2.1" }, "", 0],
    ["all as expected", portA, "As expected", 1],
    ["one that differs, whatever is still open", { "T-21/A0001.A.0": 9000 }, "Differs: T-21", 0],
    ["two that differ, of which the first is named", { ...portA, "T-22/A0001.A.0": "some", "T-23/A0001.A.0": "No" }, "Differs: T-22", 0],
    ["one by eye and one that differs", { ...portA, "T-21/A0001.A.0": "8972 bytes", "T-23/A0001.A.0": "No" }, "Differs: T-23", 0],
    ["one by eye and one waived", { ...portA, "T-21/A0001.A.0": "8972 bytes", "T-20/A0001.A.0": "waived" }, "Compare by eye: T-21", 0],
    ["one that does not apply", { ...portA, "T-23/A0001.A.0": "Not applicable" }, "Not applicable: T-23", 0],
  ])("says of a row with %s the worst, and in which column", (_, found, result, settled) => {
    const sheet = typed(first, found);
    const columns = columnsOf(read(sheet));
    const line = sheet.values[recordOf(sheet, "T-20/A0001.A.0").row]!;
    expect([line[columns.result!], line[columns.settled!]]).toEqual([result, settled]);
    expect(forgedCells(sheet, read(sheet))).toEqual([]);
  });

  test("is counted by its rows, on the tab and in the progress of the jobs", () => {
    const sheet = typed(first, { ...portA, "T-21/A0001.B.0": 1, "T-20/A0001.B.0": "192.0.2.9" });
    const source = readCommissioningPlan({ sheets: [...planWorkbook(plan).sheets, sheet] });
    expect(progressOf(jobsOf(source)[0]!, read(sheet))).toMatchObject({ steps: 20, done: 1, open: 19, differ: 1, minutesLeft: 5 * (1 + 7 + 1 + 1) + 3 * 4 * 5 + 8 });
    expect(sheet.values[0]!.find((cell) => showCell(cell).includes("steps done"))).toBe("1 of 20 steps done, 19 required open, 1 differ, 0 to see again, 0 snags open");
  });

  test("keeps a job from closing slot by slot, and by the row that signs", () => {
    const sentences = openItems(read(typed(first, { ...portA, "T-23/A0001.A.0": "No" }))).map(({ sentence }) => sentence);
    expect(sentences.filter((sentence) => / (T-2|sign)/.test(sentence) && /No. (9|13) /.test(sentence))).toEqual([
      "No. 9 T-23 says Differs in a grid. Put it right, or build the tab again: it gets a row of its own.",
      "No. 13 sign is not done. Type what was found.",
    ]);
  });
});

describe("a grid that is built again", () => {
  test("keeps what is as expected, and the note of the row", () => {
    const next = again(beside(typed(first, portA), "T-20/A0001.A.0", { note: "by lamp" }));
    expect(seen(next, "Ports", 3)[2]).toBe("9 | T-20 | n-1 A0 | As expected | 192.0.2.1 | 192.0.2.1 | 8972 | 8972 | none | none | Link up | Yes | by lamp");
    expect(read(next).elsewhere).toEqual([]);
  });

  test("gives what differs, is waived, has a snag or was found under another expectation a row of its own below", () => {
    const tab = read(first);
    const { columns, snagsRow } = tab.places;
    const other: TableRows = { ...plan, ports: plan.ports!.map((row) => (row.address === "192.0.2.4" ? { ...row, address: "192.0.2.44" } : row)) };
    const sheet = typed(first, { ...portA, "T-21/A0001.A.0": 1, "T-23/A0001.B.0": "Waived", "T-20/A0002.A.0": "192.0.2.3", "T-20/A0002.B.0": "192.0.2.4" });
    const about = Number(recordOf(sheet, "T-20/A0002.A.0").no);
    const next = again(computed(withCells(sheet, [snagsRow + 2, columns.stepId!, about], [snagsRow + 2, columns.step!, "Loose"])), other);
    expect(seen(next, "Ports", 12).slice(2)).toEqual([
      "9 | T-20 | In rows of their own below: T-21. | n-1 A0 | As expected | 192.0.2.1 | 192.0.2.1 | none | none | Link up | Yes",
      "10 | T-20 | In rows of their own below: T-23. | n-1 B0 | 192.0.2.2 | 8972 | none",
      "11 | T-21 | In rows of their own below: T-20. | n-2 A0 | 8972 | none | Link up",
      "12 | T-21 | In rows of their own below: T-20. | n-2 B0 | 8972 | none | Link up",
      "No. | Step id | Step | For | Result | Expected | Found | Unit | Before | Rechecked by | By | Witness | Done | Note",
      "13 | T-21 | n-1 A0 | Differs | 8972 | 1 | bytes",
      "14 | T-23 | n-1 B0 | Waived | Link up | Waived",
      "15 | T-20 | n-2 A0 | As expected | 192.0.2.3 | 192.0.2.3",
      "16 | T-20 | n-2 B0 | Check again | 192.0.2.44 | 192.0.2.4 | 192.0.2.4",
      "17 | sign | Sign for all rows above. | Ports | Every row filled",
    ]);
    expect(read(next).snags).toMatchObject([{ key: "J0001/T-20/A0002.A.0", typed: { about: 15 } }]);
  });

  test("keeps its signature under a new name and in another order, and asks for it again where its steps are others: the earlier one is kept", () => {
    const signKey = "sign/t-20+t-21+t-22+t-23";
    const signedSheet = beside(typed(first, { [signKey]: "Yes" }), signKey, { by: "AB", witness: "CD" });
    const renamed: TableRows = {
      ...plan,
      procedures: plan.procedures!.map((row) => (row.section === "Ports" ? { ...row, section: "Data ports" } : row)),
      steps: plan.steps!.map((row) => (row.section === "Ports" ? { ...row, section: "Data ports" } : row)).reverse(),
    };
    expect(recordOf(again(signedSheet, renamed), signKey)).toMatchObject({ subject: "Data ports", typed: { found: "Yes", by: "AB", witness: "CD" } });
    const fewer: TableRows = { ...plan, steps: plan.steps!.filter(({ stepId }) => stepId !== "T-23") };
    const asked = again(signedSheet, fewer);
    expect(recordOf(asked, "sign/t-20+t-21+t-22").typed.by).toBeNull();
    expect(read(asked).orphans.map(({ key, typed: { by } }) => [key, by])).toEqual([[`J0001/${signKey}`, "AB"]]);
    expect(recordOf(again(asked), signKey).typed).toMatchObject({ by: "AB", witness: "CD" });
  });

  test("takes the row back once it says no more than a pair of cells holds", () => {
    const differing = again(typed(first, { ...portA, "T-21/A0001.A.0": 1 }));
    expect(recordOf(differing, "T-21/A0001.A.0").slot).toBeNull();
    const back = again(typed(differing, { "T-21/A0001.A.0": 8972 }));
    expect(recordOf(back, "T-21/A0001.A.0")).toMatchObject({ slot: { place: 1 }, result: results.asExpected });
  });

  test("lists what a copied row says otherwise among what is kept, and takes sorted rows as they are", () => {
    const sheet = typed(first, portA);
    const { row } = recordOf(sheet, "T-20/A0001.A.0");
    const lines = <Line>(all: readonly Line[]): Line[] => [...all.slice(0, row), all[row + 1]!, all[row]!, all[row]!, ...all.slice(row + 2)];
    const copied = { ...sheet, values: lines(sheet.values), formulas: lines(sheet.formulas) };
    const next = again(computed(withCells(copied, [row + 2, columnsOf(read(sheet)).expectedBefore!, 77])));
    expect(seen(next, "Ports", 3)[2]).toBe(seen(again(sheet), "Ports", 3)[2]);
    expect(read(next).orphans.map(({ key, typed: { found } }) => [key, found])).toEqual([["J0001/T-21/A0001.A.0", 77]]);
  });

  test("holds every record of a tab of lists, each with its names, and gives them back when it is a list again", () => {
    const lists: TableRows = { ...plan, procedures: plan.procedures!.map((row) => ({ ...row, shownAs: null })) };
    const old = beside(typed(builtTab(lists), portA), "T-21/A0001.A.0", { by: "AB", done: 46_083 });
    const grid = again(old);
    expect(recordOf(grid, "T-21/A0001.A.0")).toMatchObject({ slot: null, typed: { found: 8972, by: "AB", done: 46_083 } });
    expect(recordOf(grid, "T-20/A0001.A.0")).toMatchObject({ slot: { place: 0 }, typed: { found: "192.0.2.1" } });
    const back = again(grid, lists);
    expect(Object.keys(portA).map((key) => recordOf(back, key).typed.found)).toEqual(Object.values(portA));
  });

  test("takes over a tab of the release before, which had no columns for grids", () => {
    const old = typed(builtTab(smallPlan()), { "T-20/A0001.A.0": "192.0.2.1", "T-21/A0001.A.0": 7 });
    const narrow = <Line>(all: readonly (readonly Line[])[]) => all.map((line) => line.slice(0, columnsOf(read(old)).digest! + 1));
    const long = old.values.map((line) => line.map((cell) => (cell === "Before" ? "Expected before" : cell)));
    const before = { ...old, values: narrow(long), formulas: narrow(old.formulas) };
    expect(read(before)).toMatchObject({ places: { layout: "lists" }, faults: [], elsewhere: [] });
    expect(checkTabSeal(sealed(before), read(sealed(before)))).toMatchObject({ holds: true });
    const next = again(before);
    expect(read(next)).toMatchObject({ places: { layout: "today" }, orphans: [], elsewhere: [] });
    expect(recordOf(next, "T-20/A0001.A.0")).toMatchObject({ slot: { place: 0 }, typed: { found: "192.0.2.1" } });
    expect(recordOf(next, "T-21/A0001.A.0")).toMatchObject({ slot: null, typed: { found: 7 } });
  });
});

describe("subjects that stand side by side, as the drives of two arrays in the same bay", () => {
  const serials = { "T-40/A0001.bay-1": "D-11", "T-40/A0002.bay-1": "D-21" };
  const asked = plan.steps!.map((row) => (row.stepId === "T-40" ? { ...row, expect: "{{Drive.Serial}}" } : row));
  const drives: TableRows = { ...plan, steps: asked, drives: [1, 2].flatMap((shelf) => [1, 2, 3, 4].map((bay) => ({ array: `n-${shelf}`, bay, serial: `D-${shelf}${bay}` }))) };
  const built = builtTab(drives);

  test("have a row a part, under the array that each pair of columns is of", () => {
    expect(seen(built, "Drives", 7)).toEqual([
      "Drives | T-40: Do T-40",
      "No. | For | Result | n-1 | Found | n-2 | Found | Note",
      "16 | T-40 | bay 1 | D-11 | D-21",
      "17 | T-40 | bay 2 | D-12 | D-22",
      "18 | T-40 | bay 3 | D-13 | D-23",
      "19 | T-40 | bay 4 | D-14 | D-24",
      "20 | sign | Sign for all rows above. | Drives | Every row filled",
    ]);
  });

  test("are read as records of their own, each about its own subject", () => {
    expect(recordOf(built, "T-40/A0001.bay-1")).toMatchObject({ subject: "n-1 bay 1", step: "Do T-40", expected: "D-11", slot: { place: 0, head: "n-1" } });
    expect(recordOf(built, "T-40/A0002.bay-1")).toMatchObject({ subject: "n-2 bay 1", step: "Do T-40", expected: "D-21", slot: { place: 1, head: "n-2" } });
  });

  test("are told apart by the array where one of them differs, on the sheet and by its twin", () => {
    const sheet = typed(built, { ...serials, "T-40/A0002.bay-1": "D-99" });
    const { row } = recordOf(sheet, "T-40/A0002.bay-1");
    expect(sheet.values[row]![columnsOf(read(sheet)).result!]).toBe("Differs: n-2");
    expect(forgedCells(sheet, read(sheet))).toEqual([]);
    expect(seen(again(sheet, drives), "Drives", 3)[2]).toContain("In rows of their own below: n-2.");
  });

  test("keep what was found when the job gets a third array, or has one left", () => {
    const filled = typed(built, serials);
    const found = (rows: TableRows) => Object.keys(serials).map((key) => read(again(filled, rows)).steps.find((one) => one.key === `J0001/${key}`)?.typed.found ?? null);
    expect(found({ ...drives, arrays: [...drives.arrays!, { ...drives.arrays![1]!, id: "A0003", array: "n-3", serial: "N-0003", bottomUnit: 20 }] })).toEqual(["D-11", "D-21"]);
    expect(found({ ...drives, arrays: [drives.arrays![0]!] })).toEqual(["D-11", null]);
  });

  test("stand in rows of their own where a row has no room for all of them", () => {
    const five = ["3", "4", "5"].map((n) => ({ ...drives.arrays![1]!, id: `A000${n}`, array: `n-${n}`, serial: `N-000${n}`, bottomUnit: 10 + 2 * Number(n) }));
    expect(recordOf(builtTab({ ...drives, arrays: [...drives.arrays!, ...five] }), "T-40/A0002.bay-1")).toMatchObject({ subject: "n-2 bay 1", slot: { place: 0, head: "" } });
  });
});

test("a tab that was built while headers were longer is read, held by its seal, and built again", () => {
  const old = typed(first, portA);
  const before = { ...old, values: old.values.map((line) => line.map((cell) => (cell === "Before" ? "Expected before" : cell))) };
  expect(read(before)).toMatchObject({ places: { layout: "grids" }, faults: [], elsewhere: [] });
  expect(checkTabSeal(sealed(before), read(sealed(before)))).toMatchObject({ holds: true });
  expect(Object.keys(portA).map((key) => recordOf(again(before), key).typed.found)).toEqual(Object.values(portA));
});

describe("a grid that somebody changed", () => {
  test("tells what was typed where no pair of cells is", () => {
    const typedBeside = beside(typed(first, portA), "T-40/A0001.bay-1", { witness: "AB" });
    expect(read(typedBeside).elsewhere).toMatchObject([{ typed: { text: "AB" } }]);
  });

  test("is refused by name where the headers of its columns, or its hidden key, are gone", () => {
    const tab = read(first);
    const columns = columnsOf(tab);
    const slotHeaders = slotColumns.slice(1).flatMap(({ low, high, compares }) => [low, high, compares]);
    expect(read(withCells(first, [tab.headerRow, columns.low3!, null])).faults).toMatchObject([expect.stringContaining('"Low 3"')]);
    expect(read(withCells(first, ...slotHeaders.map((key): Written => [tab.headerRow, columns[key]!, null]))).faults).toHaveLength(slotHeaders.length);
    expect(read(withCells(first, [recordOf(first, "T-20/A0001.A.0").row, columns.key!, "slots:[]"])).faults).toHaveLength(1);
  });
});
