import { checkTabSeal, forgedCells, readTab, reopenBlocks, sealBlocks } from "../../../../src/planning/commissioning/tab";
import { slotColumns, tabColumns } from "../../../../src/planning/commissioning/tab/tab-columns";
import { showCell, type CellValue, type SheetSnapshot } from "../../../../src/sheet";
import { smallPlan } from "../../../support/commissioning-plan";
import { builtTab, columnsOf, computed, withBlocks, withCells } from "../../../support/filled-tab";
import { act, editSealedTab, filledTab, sealed } from "../../../support/sealed-edits";
import { seededRandom } from "../../../support/seeded-random";

const tab = sealed(filledTab());
const reading = readTab(tab)!;
const columns = columnsOf(reading);
const check = (sheet: SheetSnapshot) => checkTabSeal(sheet, readTab(sheet)!)!;
const labels = (sheet: SheetSnapshot): string[] => check(sheet).changed.map(({ label }) => label);

describe("a sealed tab", () => {
  test("names a hold point that was made none, one that was added, and a visit that was called otherwise", () => {
    const rows = smallPlan();
    const steps = rows.steps!.map((row) => (row.stepId === "T-01" ? { ...row, holdPoint: "yes" as const } : row));
    const procedures = rows.procedures!.map((row, index) => ({ ...row, visit: index === 0 ? "Set-up" : "Tests" }));
    const held = sealed(builtTab({ ...rows, steps, procedures }));
    const { steps: [first, second], places: { columns: at } } = readTab(held)!;
    const heading = held.values.findIndex(([no]) => no === "Visit 2 of 2: Tests");
    const changedIn = (row: number, column: number, value: string): readonly unknown[] => check(withCells(held, [row, column, value])).changed.map((cell) => [cell.row, cell.column]);
    expect(held.values[first!.row]![at.rule!]).toBe("required one tick hold");
    expect(check(held)).toMatchObject({ holds: true, changed: [] });
    expect(changedIn(first!.row, at.rule!, "required one tick")).toEqual([[first!.row, at.rule!]]);
    expect(changedIn(second!.row, at.rule!, `${showCell(held.values[second!.row]![at.rule!])} hold`)).toEqual([[second!.row, at.rule!]]);
    expect(changedIn(heading, at.no!, "Visit 2 of 2: Test")).toEqual([[heading, at.no!]]);
  });

  test("holds as it was sealed", () => {
    expect(reading.faults).toEqual([]);
    expect(check(tab)).toEqual({ code: expect.stringMatching(/^([A-Z2-7]{4}-){4}[A-Z2-7]{4}$/) as string, reopened: false, holds: true, changed: [] });
  });

  test("shows every cell that is edited, cleared, or turned into a formula or a text, each in turn", () => {
    const { tried, missed } = editSealedTab(7);
    expect(missed).toEqual([]);
    expect(tried).toBeGreaterThan(400);
  });

  test("shows rows and columns that were added, copied, moved to another row or deleted", () => {
    const cut = (sheet: SheetSnapshot, row: number, rows: number, ...put: readonly (readonly [readonly CellValue[], readonly (string | null)[]])[]): SheetSnapshot => ({
      ...sheet,
      values: [...sheet.values.slice(0, row), ...put.map(([values]) => values), ...sheet.values.slice(row + rows)],
      formulas: [...sheet.formulas.slice(0, row), ...put.map(([, formulas]) => formulas), ...sheet.formulas.slice(row + rows)],
    });
    const { row } = reading.steps[4]!;
    const same = [[...tab.values[row]!], [...tab.formulas[row]!]] as const;
    expect(labels(cut(tab, row, 1))).toContain(`Row ${row + 1}, as it was sealed, is gone`);
    expect(labels(computed(cut(tab, row + 1, 0, [same[0], same[1]])))).toContain("No. 5 T-10 n-2 stands twice");
    expect(labels(cut(tab, row, 0, [[null, null, "mine"], []]))).toContain(`Step of row ${row + 1} is new`);
    const width = tab.values[4]!.length;
    expect(labels(withCells(tab, [1, width, "Added"], [row, width, "x"]))).toEqual(["Added of row 2", "Added of No. 5 T-10 n-2"]);
    expect(labels({ ...tab, values: tab.values.map((line) => line.slice(0, columns.digest! + 1)) }).length).toBeGreaterThan(0);
  });

  test("names one cell where one was typed far beside the rest, with a formula that nobody computed in it too", () => {
    const { row } = reading.steps[4]!;
    for (const [value, formula] of [["x"], [null, "=A1"]] as const) expect(labels(withCells(tab, [row, 60, value, formula]))).toEqual(["Column BI of No. 5 T-10 n-2"]);
  });

  test("says that a row has lost a cell beside it where the column of that has no header, and blames none of those to its right", () => {
    const width = columns.compares4! + 1;
    expect([tab.values[4]![width + 1], tab.values[4]![width + 2]]).toEqual([12.5, "6"]);
    expect(labels(withCells(tab, [4, width + 1, null]))).toEqual(["Row 5 has lost a cell beside it"]);
    expect(labels(withCells(tab, [4, width + 2, null]))).toEqual(["Row 5 has lost a cell beside it"]);
    expect(labels(withCells(tab, [reading.steps[0]!.row, width, null]))).toEqual(["Mine of No. 1 T-01 North hall"]);
  });

  test("shows a text under its line or beside it, stays closed by it, and has none of it for a seal", () => {
    const { row } = reading.seals[0]!;
    for (const column of [columns.step!, columns.subject!, columns.stepId!, columns.found!, columns.note!]) {
      const under = withCells(tab, [row + 1, column, "a note"]);
      expect(readTab(under)!.seals).toHaveLength(1);
      expect(labels(under)).toEqual([`${tabColumns[Object.entries(columns).find(([, at]) => at === column)![0] as "step"].header} of row ${row + 2} is new`]);
    }
    expect(labels(withCells(tab, [row, columns.note!, "a reason without a name"]))).toEqual([`Note of the seal in row ${row + 1} is new`]);
    for (const column of ["key", "step", "digest"]) {
      const without = withCells(tab, [row, columns[column]!, null]);
      expect(readTab(without)!.seals).toHaveLength(1);
      expect(check(without).holds).toBe(false);
    }
  });

  test("is refused once the line of its seal is gone, emptied or deleted, and open to a check where its code was written back", () => {
    const { row, typed } = reading.seals[0]!;
    const gone = 'A line of the seals of "North hall" is gone. Undo that, or write day, code and name back from the signed page.';
    const emptied = withCells(tab, ...tab.values[row]!.map((_, column) => [row, column, null] as const));
    const deleted = { ...tab, values: tab.values.filter((_, at) => at !== row), formulas: tab.formulas.filter((_, at) => at !== row) };
    for (const sheet of [emptied, deleted]) expect(readTab(sheet)!.faults).toEqual([gone]);
    const back = withCells(emptied, [row, columns.stepId!, typed.sealed], [row, columns.step!, typed.code], [row, columns.subject!, typed.by]);
    expect([readTab(back)!.faults, labels(back)]).toEqual([[], ["Hidden cells of the seal"]]);
    // Nor does the line before it pass for the last one.
    const again = sealed(computed(withBlocks(tab, reopenBlocks(reading, { by: "EF", date: "2026-04-01", reason: "A drive was changed" }))));
    const second = readTab(again)!.seals[1]!.row;
    expect(readTab(withCells(again, ...again.values[second]!.map((_, column) => [second, column, null] as const)))!.faults).toEqual([gone]);
  });

  test("holds where the sealing broke off before it counted its line, and shows a count that was typed over", () => {
    expect(check(withCells(tab, [reading.markRow, columns.retest!, 0])).holds).toBe(true);
    for (const value of [null, "1"]) expect(check(withCells(tab, [reading.markRow, columns.retest!, value])).holds).toBe(false);
    expect(readTab(withCells(tab, [reading.markRow, columns.retest!, 2]))!.faults).toHaveLength(1);
  });

  test("names a cell of a grid by the header of its own column", () => {
    const slot = reading.steps.find(({ stepId }) => stepId === "T-22")!;
    const { expected, found } = slotColumns[slot.slot!.place]!;
    const named = (column: number): string => labels(computed(withCells(tab, [slot.row, column, "edited"])))[0]!;
    expect([named(columns[expected]!), named(columns[found]!)].map((label) => label.split(" of ")[0])).toEqual(["Expected T-22", "Found T-22"]);
  });

  test("names the step id of a grid's row that was typed over, and not its result", () => {
    const bad = reading.steps.find(({ slot, result }) => slot?.place === 0 && result === "Differs")!;
    const shown = withCells(tab, [bad.row, columns.stepId!, "T-99"]);
    expect(check(shown).changed.map(({ row, column }) => [row, column])).toEqual([[bad.row, columns.stepId]]);
    expect(forgedCells(shown, readTab(shown)!)).toEqual([]);
  });

  test("is not disturbed by what other programs do: roundings, spaces, rich text, formulas as they write them, what was not computed", () => {
    const random = seededRandom(5);
    const other = (value: CellValue, formula: string | null): CellValue => {
      if (formula !== null) return random() < 0.5 ? value : null;
      if (typeof value === "number") return Number(value.toPrecision(15));
      if (value === null) return random() < 0.5 ? "" : null;
      return typeof value === "string" && random() < 0.5 ? value.replaceAll("\n", "\r\n").normalize("NFD") : value;
    };
    const width = tab.values.reduce((most, line) => Math.max(most, line.length), 0);
    // A formula of people's own is computed, as it says what it says by its result.
    const isOurs = (column: number): boolean => column <= columns.digest!;
    for (let round = 0; round < 10; round += 1) {
      const saved: SheetSnapshot = {
        ...tab, name: "Saved elsewhere", attachments: round, visible: round % 2 === 0,
        values: tab.values.map((line, row) => Array.from({ length: width + 2 }, (_, column) => other(line[column] ?? null, isOurs(column) ? (tab.formulas[row]?.[column] ?? null) : null))),
        formulas: tab.formulas.map((line) => line.map((formula) => (formula === null ? null : `=(${formula.slice(1)})`))),
      };
      expect(labels({ ...saved, formulas: saved.formulas.map((line, row) => line.map((formula, column) => (isOurs(column) ? formula : (tab.formulas[row]?.[column] ?? null)))) })).toEqual([]);
    }
  });

  test("is not disturbed by rows that are sorted, and by empty rows and columns", () => {
    const rows = [...new Set(reading.steps.map(({ row }) => row))];
    const order = new Map(rows.map((row, index) => [row, rows[rows.length - 1 - index]!]));
    const turned = { ...tab, values: tab.values.map((line, row) => tab.values[order.get(row) ?? row] ?? line), formulas: tab.formulas.map((line, row) => tab.formulas[order.get(row) ?? row] ?? line) };
    expect(labels(computed(turned))).toEqual([]);
    const spaced = [...tab.values.slice(0, rows[2]), [], ...tab.values.slice(rows[2])].map((line) => [...line.slice(0, 4), null, ...line.slice(4)]);
    const formulas = [...tab.formulas.slice(0, rows[2]), [], ...tab.formulas.slice(rows[2])].map((line) => [...line.slice(0, 4), null, ...line.slice(4)]);
    expect(labels(computed({ ...tab, values: spaced, formulas }))).toEqual([]);
  });

  test("is reopened by a day, a name and a reason, and holds still for what it was", () => {
    const reopened = computed(withBlocks(tab, reopenBlocks(reading, { by: "EF", date: "2026-04-01", reason: "A drive was changed" })));
    expect(check(reopened)).toMatchObject({ reopened: true, holds: true, changed: [] });
    const again = sealed(reopened);
    expect(readTab(again)!.seals).toHaveLength(2);
    expect(check(again)).toMatchObject({ reopened: false, holds: true });
    expect(check(again).code).not.toBe(check(tab).code);
    // What was reopened is part of what is sealed then.
    expect(labels(computed(withCells(again, [reading.seals[0]!.row, columns.note!, "another reason"])))).toEqual([`Note of the seal in row ${reading.seals[0]!.row + 1}`]);
  });

  test("covers a cell that was accepted as it is, and shows when it says something else again", () => {
    const { row } = reading.steps[0]!;
    const forge = (sheet: SheetSnapshot, value: CellValue): SheetSnapshot => withCells(sheet, [row, columns.result!, value, '="As expected"']);
    const before = forge(filledTab(), "As expected");
    const asForged = (value: CellValue): SheetSnapshot => forge(computed(withBlocks(before, sealBlocks(before, readTab(before)!, act))), value);
    expect(labels(asForged("As expected"))).toEqual([]);
    expect(labels(asForged("Waived"))).toEqual(["Result of No. 1 T-01 North hall"]);
  });
});
