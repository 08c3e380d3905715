import fc from "fast-check";
import { buildJob, jobsOf, readCommissioningPlan, type JobBuild } from "../../../../src/planning/commissioning/build";
import { stepFields } from "../../../../src/planning/commissioning/record";
import { isSpent, readPlannedTab, readTab, type TabReading } from "../../../../src/planning/commissioning/tab";
import { at } from "../../../../src/planning/commissioning/tab/tab-columns";
import type { TableRows } from "../../../../src/planning/plan/schema";
import type { Scalar, SheetSnapshot } from "../../../../src/sheet";
import { jobName, moment, planWorkbook, smallPlan } from "../../../support/commissioning-plan";
import { columnOf, snagColumnOf } from "../../../support/tab-on-sheet";
import { tabSheet } from "../../../support/tab-workbook";

function build(rows: TableRows, ...tabs: SheetSnapshot[]): JobBuild {
  const workbook = planWorkbook(rows);
  const source = readCommissioningPlan({ sheets: [...workbook.sheets, ...tabs] });
  return buildJob(source, jobsOf(source)[0]!, () => "new", moment);
}

type Typed = Readonly<Record<string, Readonly<Record<string, Scalar>>>>;

/** A tab as people have filled it: `{"T-10/A0001": {found: "N-1"}}`. */
function filled({ tab }: JobBuild, typed: Typed, name = jobName): SheetSnapshot {
  const reading = readPlannedTab(tab);
  return tabSheet(
    tab,
    name,
    Object.entries(typed).flatMap(([key, cells]) => {
      const record = reading.steps.find((one) => one.key.endsWith(`/${key}`))!;
      return Object.entries(cells).map(([column, value]) => ({ row: record.row, column: columnOf(reading, column), value }));
    }),
  );
}

const read = (built: JobBuild): TabReading => readPlannedTab(built.tab);
const stepOf = (built: JobBuild, key: string) => read(built).steps.find((one) => one.key.endsWith(`/${key}`));
const small = smallPlan();
const withSerial = (serial: string): TableRows => ({ ...small, arrays: small.arrays!.map((row, index) => (index === 0 ? { ...row, serial } : row)) });
const withoutSecondArray: TableRows = { ...small, arrays: small.arrays!.slice(0, 1), ports: small.ports!.slice(0, 2) };
const seen = { found: "N-0001", by: "AB", done: 46_083, note: "+1 spare" };

describe("building again", () => {
  test("carries every typed cell to its step, text that looks like a formula included", () => {
    const again = build(small, filled(build(small), { "T-10/A0001": { ...seen, witness: "@EF", unit: "each" } }));
    expect(stepOf(again, "T-10/A0001")?.typed).toEqual({ ...seen, witness: "@EF", unit: "each", recheckedBy: null });
    expect(again.counts).toEqual({ carried: 1, orphaned: 0, again: 0 });
  });

  test("keeps who typed a filled print into a tab and where it went, with the build, and offers the line anew", () => {
    const first = build(small);
    const row = first.tab.rows.findIndex((line) => line[at.key]!.value === "#paper");
    const typed = tabSheet(first.tab, jobName, [{ row, column: at.step, value: "AB, 2026-03-04, binder 4" }]);
    const again = build(small, typed);
    const told = { from: "Build 1", text: "AB, 2026-03-04, binder 4", place: "On paper" };
    expect(read(again).elsewhere.map((one) => one.typed)).toEqual([told]);
    expect(again.remarks).toEqual([]);
    expect(again.tab.rows.find((line) => line[at.key]!.value === "#paper")!.slice(0, 3).map(({ value }) => value)).toEqual([undefined, "Build 2", undefined]);
    expect(read(build(small, tabSheet(again.tab, jobName))).elsewhere.map((one) => one.typed)).toEqual([told]);
  });

  test("shows the old expectation and asks to be seen again when it has changed since", () => {
    const again = build(withSerial("N-0009"), filled(build(small), { "T-10/A0001": seen }));
    expect(stepOf(again, "T-10/A0001")).toMatchObject({ expected: "N-0009", expectedBefore: "N-0001", typed: { found: "N-0001", recheckedBy: null } });
    expect(again.counts.again).toBe(1);
  });

  test("asks nothing where the expectation changed before anything was found", () => {
    expect(stepOf(build(withSerial("N-0009"), filled(build(small), { "T-10/A0001": { note: "later" } })), "T-10/A0001")).toMatchObject({ expectedBefore: "" });
  });

  test("keeps who has rechecked a record, and asks anew at the next change", () => {
    const changed = build(withSerial("N-0009"), filled(build(small), { "T-10/A0001": seen }));
    const looked = filled(changed, { "T-10/A0001": { recheckedBy: "CD" } });
    expect(stepOf(build(withSerial("N-0009"), looked), "T-10/A0001")).toMatchObject({ expectedBefore: "N-0001", typed: { recheckedBy: "CD" } });
    expect(stepOf(build(withSerial("N-0010"), looked), "T-10/A0001")).toMatchObject({ expectedBefore: "N-0009", typed: { recheckedBy: null } });
  });

  test("tells the expectation of the record through several changes, and nothing once it is back", () => {
    const twice = build(withSerial("N-0010"), filled(build(withSerial("N-0009"), filled(build(small), { "T-10/A0001": seen })), {}));
    expect(stepOf(twice, "T-10/A0001")).toMatchObject({ expectedBefore: "N-0001" });
    expect(stepOf(build(small, filled(twice, {})), "T-10/A0001")).toMatchObject({ expectedBefore: "", expected: "N-0001" });
  });

  test("keeps a record whose step is gone, and gives it back when the step returns", () => {
    const without = build(withoutSecondArray, filled(build(small), { "T-10/A0002": seen }));
    expect(read(without).orphans).toMatchObject([{ key: "J0001/T-10/A0002", typed: { found: "N-0001" } }]);
    expect(without.counts).toEqual({ carried: 0, orphaned: 1, again: 0 });
    const back = build(small, filled(without, {}));
    expect(read(back).orphans).toEqual([]);
    expect(stepOf(back, "T-10/A0002")).toMatchObject({ typed: seen });
  });

  test("keeps both records where a row was copied and changed", () => {
    const sheet = filled(build(small), { "T-10/A0001": seen });
    const tab = readTab(sheet)!;
    const row = tab.steps.find(({ key }) => key.endsWith("T-10/A0001"))!.row;
    const copy = sheet.values[row]!.map((cell, column) => (column === tab.places.columns.found ? "N-0002" : cell));
    const withCopy = <Row>(rows: readonly Row[], copied: Row): Row[] => [...rows.slice(0, row + 1), copied, ...rows.slice(row + 1)];
    const doubled = { ...sheet, values: withCopy(sheet.values, copy), formulas: withCopy(sheet.formulas, sheet.formulas[row]!) };
    const again = build(small, doubled);
    expect(stepOf(again, "T-10/A0001")?.typed.found).toBe("N-0001");
    expect(read(again).orphans.map(({ typed }) => typed.found)).toEqual(["N-0002"]);
  });

  test("finds records after rows were sorted, a column was added and the tab was renamed", () => {
    const sheet = filled(build(small), { "T-10/A0001": seen, "T-11/A0002": { found: 8 } });
    const tab = readTab(sheet)!;
    const rows = tab.steps.map(({ row }) => row);
    const order = new Map(rows.map((row, index) => [row, [...rows].reverse()[index]!]));
    const moved = sheet.values.map((_, row) => sheet.values[order.get(row) ?? row]!);
    const wider = moved.map((line, row) => [...line.slice(0, 4), row === tab.headerRow ? "My column" : null, ...line.slice(4)]);
    const again = build(small, { ...sheet, name: "North, mine", values: wider, formulas: [] });
    expect(stepOf(again, "T-10/A0001")?.typed).toMatchObject(seen);
    expect(stepOf(again, "T-11/A0002")?.typed.found).toBe(8);
    expect(again.remarks).toEqual([
      'The tab was called "North, mine". It has the job\'s name again.',
      "1 text stands under Found elsewhere, with the place: typed beside, between or over our cells.",
    ]);
  });

  test("takes the result of a formula and the text of an error, and says so", () => {
    const sheet = filled(build(small), { "T-11/A0001": { found: 4 } });
    const tab = readTab(sheet)!;
    const [withFormula, withError] = ["T-11/A0001", "T-11/A0002"].map((key) => tab.steps.find((one) => one.key.endsWith(key))!.row);
    const column = tab.places.columns.found!;
    const values = sheet.values.map((line, row) => (row === withError ? line.map((cell, at) => (at === column ? { error: "#REF!" } : cell)) : line));
    const formulas = sheet.formulas.map((line, row) => (row === withFormula ? line.map((cell, at) => (at === column ? "=2+2" : cell)) : line));
    const again = build(small, { ...sheet, values, formulas });
    expect(stepOf(again, "T-11/A0001")?.typed.found).toBe(4);
    expect(stepOf(again, "T-11/A0002")?.typed.found).toBe("#REF!");
    expect(again.remarks.map((remark) => /held a formula|shows #REF!/.test(remark))).toEqual([true, true]);
    for (const remark of again.remarks) expect(remark.length).toBeLessThanOrEqual(160);
  });

  test("takes a cell as long as a cell can be", () => {
    const note = "n".repeat(32_767);
    expect(stepOf(build(small, filled(build(small), { "T-01/site": { note } })), "T-01/site")?.typed.note).toBe(note);
  });

  test.each([
    ["as its sheet computed it", true],
    ["in a file that was saved without computing", false],
  ])("keeps a snag with its step %s, though the step has another number now", (_where, isComputed) => {
    const first = build(small);
    const tab = read(first);
    const about = tab.steps.find(({ key }) => key.endsWith("T-20/A0002.B.0"))!;
    const row = tab.places.snagsRow + 2;
    // What the sheet's own formulas answer for the snag: the key of its step.
    const computed = isComputed ? ([[snagColumnOf(tab, "key"), about.key]] as const) : [];
    const typed = [[snagColumnOf(tab, "about"), Number(about.no)], [snagColumnOf(tab, "foundWrong"), "Cable too short"], ...computed] as const;
    const sheet = tabSheet(first.tab, jobName, typed.map(([column, value]) => ({ row, column, value })));
    const fewer = build({ ...small, steps: small.steps!.filter(({ stepId }) => stepId !== "T-11") }, sheet);
    const [snag] = read(fewer).snags;
    expect(snag?.typed).toMatchObject({ foundWrong: "Cable too short", about: Number(about.no) - 2 });
    const gone = build(withoutSecondArray, sheet);
    expect(read(gone).snags[0]).toMatchObject({ key: about.key, typed: { about: "gone", foundWrong: "Cable too short" } });
  });

  test("keeps both of a snag and its copy that was filled otherwise, each with an id of its own, and uses no id twice", () => {
    const first = build(small);
    const tab = read(first);
    const row = tab.places.snagsRow + 2;
    const [id, wrong] = [snagColumnOf(tab, "id"), snagColumnOf(tab, "foundWrong")];
    const type = (...cells: (readonly [row: number, column: number, value: Scalar])[]) => tabSheet(first.tab, jobName, cells.map(([at, column, value]) => ({ row: at, column, value })));
    const copied = read(build(small, type([row, wrong, "Dent"], [row + 1, id, "S-1"], [row + 1, wrong, "Scratch"])));
    // The id S-2 was typed over: as far as anybody can tell, it was one's.
    expect(copied.snags.map(({ id: own, typed }) => [own, typed.foundWrong])).toEqual([["S-1", "Dent"], ["S-3", "Scratch"]]);
    // S-2 and S-3 were printed, filled, and their rows deleted: nobody else gets their ids.
    const sheet = type([row, wrong, "Dent"]);
    const without = <Line>(lines: readonly Line[]): Line[] => lines.filter((_, index) => index !== row + 1 && index !== row + 2);
    const again = build(small, { ...sheet, values: without(sheet.values), formulas: without(sheet.formulas) });
    expect(read(again).snags.map((snag) => snag.id)).toEqual(["S-1"]);
    expect(again.tab.rows[row + 1]![id]!.value).toBe("S-4");
  });

  test("takes over what was typed into an earlier tab while its successor was built, once", () => {
    const first = build(small);
    const early = filled(first, { "T-01/site": { found: "Yes" } });
    const second = build(small, early);
    const lateTyped = { ...filled(first, { "T-01/site": { found: "Yes" }, "T-30/A0001.cluster": { found: "192.0.2.250" } }, "North hall before 2"), visible: false };
    const third = build(small, filled(second, {}), lateTyped);
    expect(stepOf(third, "T-30/A0001.cluster")?.typed.found).toBe("192.0.2.250");
    expect(isSpent(readTab(lateTyped)!, read(third))).toBe(true);
    expect(isSpent({ ...readTab(lateTyped)!, attachments: 1 }, read(third))).toBe(false);
    // Cleared on purpose afterwards, it stays cleared.
    const cleared = filled(third, { "T-30/A0001.cluster": { found: null } });
    expect(stepOf(build(small, cleared, lateTyped), "T-30/A0001.cluster")?.typed.found).toBeNull();
  });
});

describe("no record is ever lost", () => {
  const keys = read(build(small)).steps.map(({ key }) => key.split("/").slice(1).join("/"));
  const value = fc.oneof(fc.string({ minLength: 1 }).filter((text) => text.trim() !== ""), fc.integer(), fc.constantFrom("=1+1", "@x", "-", "1-2"));
  const record = fc.dictionary(fc.constantFrom(...stepFields), value, { minKeys: 1, noNullPrototype: true });
  const typing = fc.dictionary(fc.constantFrom(...keys), record, { noNullPrototype: true });
  const edits: Readonly<Record<string, (rows: TableRows) => TableRows>> = {
    "drop an array": (rows) => ({ ...rows, arrays: rows.arrays!.slice(1), ports: rows.ports!.slice(2) }),
    "change a serial": (rows) => ({ ...rows, arrays: rows.arrays!.map((row) => ({ ...row, serial: `${String(row.serial)}X` })) }),
    "change a unit": (rows) => ({ ...rows, steps: rows.steps!.map((row) => ({ ...row, unit: row.unit === "TB" ? "TiB" : row.unit })) }),
    "drop a step": (rows) => ({ ...rows, steps: rows.steps!.filter(({ stepId }) => stepId !== "T-21") }),
    "turn the steps round": (rows) => ({ ...rows, steps: [...rows.steps!].reverse() }),
    "start again": () => small,
  };

  test("through random records and random changes of the plan", () => {
    fc.assert(
      fc.property(fc.array(fc.tuple(typing, fc.constantFrom(...Object.keys(edits))), { minLength: 1, maxLength: 4 }), (rounds) => {
        let rows: TableRows = small;
        let built = build(rows);
        const expected = new Map<string, Scalar>();
        for (const [typed, edit] of rounds) {
          const here = read(built);
          const possible = Object.fromEntries(Object.entries(typed).filter(([key]) => here.steps.some((one) => one.key.endsWith(`/${key}`))));
          for (const [key, cells] of Object.entries(possible)) if (cells.found !== undefined) expected.set(key, cells.found);
          const sheet = filled(built, possible);
          rows = edits[edit]!(rows === small ? small : rows.arrays!.length < 2 ? small : rows);
          built = build(rows, sheet);
          const after = read(built);
          for (const [key, found] of expected) {
            const holders = [...after.steps, ...after.orphans].filter((one) => one.key.endsWith(`/${key}`) && one.typed.found === found);
            expect(holders).toHaveLength(1);
          }
        }
      }),
      { seed: 11, numRuns: 150 },
    );
  });
});
