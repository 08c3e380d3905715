import { buildJob, jobsOf, readCommissioningPlan } from "../../../src/planning/commissioning/build";
import { readPlannedTab } from "../../../src/planning/commissioning/tab";
import { listParts, partsMark, planPartsSheet, takeSerials } from "../../../src/planning/parts";
import { PlanModel } from "../../../src/planning/plan/model";
import type { TableRow, TableRows } from "../../../src/planning/plan/schema";
import { planSetUp } from "../../../src/planning/plan/set-up";
import type { WorkbookSnapshot } from "../../../src/sheet";
import { moment, smallPlan, step } from "../../support/commissioning-plan";
import { carryOut } from "../../support/plan-changes";
import { snapshotOf } from "../../support/plain-workbook";
import { lookFaults } from "../../support/sheet-look";

type Part = TableRow<"parts">;

/** A plan with one array of three drives, one of them with a row, a shelf, and a quote. */
const plan: TableRows = {
  ...smallPlan(),
  arrays: [{ ...smallPlan().arrays![0]!, serial: "", drives: 3 }],
  ports: [],
  shelves: [{ array: "n-1", shelf: "S1", bays: 12 }],
  drives: [{ array: "n-1", bay: 2, serial: "D-2", part: "X77" }],
  quote: [
    { item: "Prepared array", kind: "array", for: "n-1", quantity: 1 }, { item: "Rail kit", for: "North hall", quantity: 2 },
    { item: "Tray", for: "North hall", quantity: 2, optional: "yes" }, { item: "Installation", kind: "service", quantity: 1 },
  ],
};
const one: Part = { part: "Array", kind: "array", for: "n-1", quantity: 1 };
const workbookOf = (parts: readonly Part[], rows: TableRows = plan): WorkbookSnapshot => {
  const workbook = snapshotOf(planSetUp({ sheets: [] }, { ...rows, parts: [...parts, { part: "to be deleted" }] }));
  return carryOut(workbook, { writes: [{ sheet: "Parts", row: 4 + parts.length, column: 0, before: null, value: null }], growths: [] });
};
const partsOf = (workbook: WorkbookSnapshot): unknown[] =>
  new PlanModel(workbook).rows("parts").map(({ part, kind, for: goesTo, shelf, bay, quantity, serial }) =>
    [part, kind, goesTo, shelf, bay, quantity, serial].filter((cell) => cell !== "" && cell !== null).join(" "));
const listed = (parts: readonly Part[] = []): WorkbookSnapshot => {
  const workbook = workbookOf(parts);
  return carryOut(workbook, listParts(workbook));
};

describe("the list of parts", () => {
  test("has the array, its shelf, its drives bay by bay with the serials that the plan knows, its cords, and what is quoted beside arrays and services and not left to choose", () => {
    expect(partsOf(listed())).toEqual([
      "Elm 6 array n-1 1", "Shelf shelf n-1 S1 1", "Drive 4 TB drive n-1 1 1", "Drive 4 TB X77 drive n-1 2 1 D-2", "Drive 4 TB drive n-1 3 1", "Cable power cable North hall 2",
      "Rail kit other North hall 2",
    ]);
  });

  test("is not written a second time, whatever was typed beside it", () => {
    const workbook = listed([{ ...one, part: "Elm 6, ours", serial: "N-77", came: "2026-03-01", box: "1" }]);
    expect(listParts(workbook)).toEqual({ writes: [], growths: [] });
    expect(partsOf(workbook)[0]).toBe("Elm 6, ours array n-1 1 N-77");
  });

  test("brings the quantity of what is quoted up to date in its own row", () => {
    const workbook = workbookOf([{ part: "Rail kit", kind: "other", for: "North hall", quantity: 1, box: "3" }]);
    expect(listParts(workbook).writes.filter(({ before }) => before !== null)).toMatchObject([{ sheet: "Parts", row: 4, before: 1, value: 2 }]);
  });
});

test("what the quote has in two rows is one part, and stays so however often it is listed", () => {
  const quote: TableRows["quote"] = [{ item: "Rail kit", for: "North hall", quantity: 2 }, { item: "rail kit", for: "north hall", quantity: 3 }, { item: "Rail kit", for: "n-1", quantity: 1 }];
  const workbook = workbookOf([], { ...plan, quote });
  const once = carryOut(workbook, listParts(workbook));
  expect(partsOf(once).slice(-2)).toEqual(["Rail kit other North hall 5", "Rail kit other n-1 1"]);
  expect(listParts(once)).toEqual({ writes: [], growths: [] });
});

describe("serials of parts that came", () => {
  const came = { came: "2026-03-01" };
  const taken = (parts: readonly Part[], rows = plan): PlanModel => {
    const workbook = workbookOf(parts, rows);
    return new PlanModel(carryOut(workbook, takeSerials(workbook)));
  };

  test("go into Arrays, Shelves and Drives, a drive whose bay has no row into a new one", () => {
    const model = taken([
      { ...one, ...came, serial: "N-77" }, { part: "Shelf", kind: "shelf", for: "N-1", shelf: "s1", ...came, serial: "S-9" },
      { part: "Drive", kind: "drive", for: "n-1", bay: 2, ...came, serial: "D-22" }, { part: "Drive", kind: "drive", for: "n-1", bay: 3, ...came, serial: "D-33" },
    ]);
    expect([model.rows("arrays")[0]!.serial, model.rows("shelves")[0]!.serial]).toEqual(["N-77", "S-9"]);
    expect(model.rows("drives").map(({ bay, serial }) => [bay, serial])).toEqual([[2, "D-22"], [3, "D-33"]]);
  });

  test("are what the tab of a job expects from then on", () => {
    const rows = { ...plan, steps: [step("T-10", "Arrays", { expect: "{{Array.Serial}}", record: "serial" })] };
    const workbook = workbookOf([{ ...one, ...came, serial: "N-77" }], rows);
    const expected = (book: WorkbookSnapshot): string[] => {
      const source = readCommissioningPlan(book);
      return readPlannedTab(buildJob(source, jobsOf(source)[0]!, () => "new", moment).tab).steps.map((record) => record.expected);
    };
    expect(expected(workbook)).toEqual([""]);
    expect(expected(carryOut(workbook, takeSerials(workbook)))).toEqual(["N-77"]);
  });

  test("are left out while the part has not come, has no serial, or is a cable", () => {
    const parts: Part[] = [{ ...one, serial: "N-77" }, { ...one, ...came }, { part: "Cable", kind: "cable", ...came, serial: "C-1" }];
    expect(takeSerials(workbookOf(parts))).toEqual({ writes: [], growths: [] });
  });

  test.each<[string, Part[], string]>([
    ["two parts", [{ ...one, ...came, serial: "N-77" },
      { part: "Drive", kind: "drive", for: "n-1", bay: 3, ...came, serial: "n-77" }], 'Serial "n-77" stands in Parts twice: n-1 and n-1 bay 3. Read both labels again.'],
    ["an array that is not there", [{ ...one, for: "n-9", ...came, serial: "N-77" }], '"n-9", for which serial N-77 came, is no array of the plan. Mend For.'],
    ["a drive without a bay", [{ part: "Drive", kind: "drive", for: "n-1", ...came, serial: "D-9" }], 'The drive "D-9" for n-1 has no bay. Write the bay it goes into.'],
    ["a shelf that is not there", [{ part: "Shelf", kind: "shelf", for: "n-1", shelf: "S9", ...came, serial: "S-9" }],
      'Shelf "S9" of n-1 is not in the table Shelves. Add it there, or mend the name.'],
    ["two arrays for one place", [{ ...one, ...came, serial: "N-77" }, { ...one, part: "Another", ...came, serial: "N-78" }],
      'Serials "N-77" and "N-78" have both come for n-1. Mend where one of them goes, or clear it.'],
    ["two drives for one bay", ["D-1", "D-2"].map((serial) => ({ part: "Drive", kind: "drive", for: "n-1", bay: 3, ...came, serial })),
      'Serials "D-1" and "D-2" have both come for n-1 bay 3. Mend where one of them goes, or clear it.'],
    ["a shelf without a name", [{ part: "Shelf", kind: "shelf", for: "n-1", ...came, serial: "S-9" }], 'The shelf "S-9" for n-1 has no name. Write it into Shelf, as the Shelves table names it.'],
  ])("of %s are refused with a sentence, and nothing is written", (_, parts, sentence) => {
    expect(() => takeSerials(workbookOf(parts))).toThrow(sentence);
  });

  test("of drives are refused with a sentence where the plan has no table for them", () => {
    expect(() => takeSerials(workbookOf([{ part: "Drive", kind: "drive", for: "n-1", bay: 3, ...came, serial: "D-33" }], { ...plan, drives: [] }))).toThrow(
      "Serials of drives have come (1), and the plan has no table for them. Add Drives in the Plan view, then choose this again.",
    );
  });
});

describe("the sheet of parts", () => {
  const parts: Part[] = [
    { ...one, came: "2026-03-01", serial: "N-77", box: "Box 10" }, { part: "Drive 4 TB", kind: "drive", for: "n-1", bay: 1, quantity: 1, came: "2026-03-02", serial: "D-1", box: "2" },
    { part: "Drive 4 TB", kind: "drive", for: "n-1", bay: 2, quantity: 1, came: "2026-03-02", serial: "D-2" }, { part: "Cable power", kind: "cable", for: "North hall", quantity: 12 },
  ];
  const sheet = planPartsSheet(new PlanModel(workbookOf(parts)), "2026-03-03 08:00");
  const sections = sheet.rows.flatMap((row) => (row[0]?.style === "section" ? [row[0].value] : []));

  test("can be read: every style is there and no text is faint", () => {
    expect(lookFaults(sheet)).toEqual([]);
    expect(sheet.rows[0]![0]!.value).toBe(partsMark);
  });

  test("says what is missing, what came, which serial the plan does not expect, what is in no box, and then box by box in their order", () => {
    expect(sections).toEqual([
      "Missing: 12 pieces in 1 row", "Come, but not the serial that the tab expects; choose Take serials: 2 pieces in 2 rows", "Come: 3 pieces in 3 rows", "In no box yet: 1 piece in 1 row",
      "Box 2: 1 piece in 1 row", "Box 10: 1 piece in 1 row",
    ]);
  });

  test("puts each box on a page of its own, with the caution about lifting", () => {
    const [first, second] = sheet.print!.breaksBefore;
    expect([sheet.rows[first!]![0]!.value, sheet.rows[second!]![0]!.value]).toEqual(["Box 2: 1 piece in 1 row", "Box 10: 1 piece in 1 row"]);
    expect(sheet.rows.filter((row) => row[0]?.style === "caution")).toHaveLength(2);
  });

  test("is refused with a sentence while Parts is empty", () => {
    expect(() => planPartsSheet(new PlanModel(workbookOf([])), "now")).toThrow("No part stands in Parts yet. Choose List parts first.");
  });
});
