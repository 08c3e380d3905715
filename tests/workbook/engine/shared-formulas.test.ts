import { Direction, ICommandService, UndoCommand } from "@univerjs/core";
import { FormulaDependencyGenerator, Lexer } from "@univerjs/engine-formula";
import fc from "fast-check";
import { bootEngine } from "../../../src/headless/open-headless";
import type { SheetPlan } from "../../../src/sheet";
import { createBrowserPort } from "../../../src/workbook/engine/browser-port";
import { LiveWorkbook } from "../../../src/workbook/engine/live-workbook";
import { shareFormulas } from "../../../src/workbook/engine/shared-formulas";
import { emptyWorkbook } from "../../../src/workbook/engine/stored-sheet";
import { movedFormula } from "../../support/host-workbook/moved-formula";

const generator = FormulaDependencyGenerator.prototype as unknown as Record<"_registerFormulas", unknown>;
const alone = generator._registerFormulas;
shareFormulas();
const shared = generator._registerFormulas;

const rowCount = 12;

/** Formulas of the third row, in columns C to E: what they look at is typed in A and B, stands beside or above them, or on the other sheet. */
const formula = fc.constantFrom(
  "=A3+$B3", "=A$1*B3", "=SUM(A$1:B3)", "=SUM($A$1:$B$12)-A3", '=IF(A3>5,"more "&B3,A2)', "=COUNTIF(A$1:A$12,A3)", "=Other!A3*2", "=MATCH(A3,A$1:A$12,0)",
  "=INDEX(B$1:B$12,ROW())", "=ROW()+COLUMN()", "=IF(ISNUMBER(C2),C2,0)+1", '=SUM(INDIRECT("A"&ROW()))', "=SUM(OFFSET(A3,0,0,2,2))", "=SUM(A2:A4)", "=limit*A3",
  '=BAY.USABLE("RAID 6",A3+4,4)', '=IFERROR(1/(A3-3),"A3")', "=C2=C3",
);

/** Computes a workbook step by step, and writes down after each what all its cells show and which formulas they hold. */
async function story(formulas: readonly string[], typed: readonly number[], entry: number, line: number): Promise<unknown[]> {
  const univer = bootEngine(emptyWorkbook());
  const live = new LiveWorkbook(univer);
  const port = createBrowserPort(univer, live);
  const told: unknown[] = [];
  const tell = async () => told.push((await port.read()).sheets.map(({ values, formulas: written }) => [values, written]));
  try {
    const other: SheetPlan = { name: "Other", rows: typed.map((value) => [{ value: value * 10 }]), styles: {}, columnWidths: [] };
    await port.apply([{ kind: "add-sheet", plan: other }]);
    live.run("formula.mutation.set-defined-name", { id: "limit", name: "limit", formulaOrRefString: "Sheet1!$B$2" });
    const cells = Array.from({ length: rowCount }, (_, row) => [
      { value: typed[row]! }, { value: row + 1 }, ...formulas.map((text, column) => ({ formula: movedFormula(text, { row: 2, column: column + 2 }, { row: row + 2, column: column + 2 }) })),
    ]);
    await port.apply([{ kind: "write", sheet: "Sheet1", row: 2, column: 0, cells }]);
    await tell();
    await port.apply([{ kind: "write", sheet: "Sheet1", row: entry + 2, column: 0, cells: [[{ value: 99 }]] }]);
    await tell();
    await port.apply([{ kind: "write", sheet: "Sheet1", row: 2, column: 2, cells: [[{ value: 1 }]] }]);
    await tell();
    const subUnitId = live.workbook.getSheetBySheetName("Sheet1")!.getSheetId();
    const range = { startRow: line + 2, endRow: line + 2, startColumn: 0, endColumn: 25 };
    const run = (id: string, params: object) => univer.__getInjector().get(ICommandService).executeCommand(id, { unitId: live.workbook.getUnitId(), ...params });
    await run("sheet.command.insert-row-by-range", { subUnitId, range, direction: Direction.DOWN, cellValue: {} });
    await tell();
    await run("sheet.command.remove-row-by-range", { subUnitId, range: { ...range, startRow: range.startRow + 2, endRow: range.endRow + 2 } });
    await tell();
    await run(UndoCommand.id, {});
    await tell();
    return told;
  } finally {
    live.dispose();
  }
}

test("formulas that say the same of their own rows show and keep the same whether the engine reads each or one for all, through entries, rows that come and go, and undo", async () => {
  const place = fc.nat(rowCount - 3);
  await fc.assert(
    fc.asyncProperty(fc.array(formula, { minLength: 1, maxLength: 3 }), fc.array(fc.nat(9), { minLength: rowCount, maxLength: rowCount }), place, place, async (formulas, typed, entry, line) => {
      generator._registerFormulas = shared;
      const together = await story(formulas, typed, entry, line);
      expect(new Set(together.map((told) => JSON.stringify(told))).size).toBeGreaterThan(3);
      generator._registerFormulas = alone;
      expect(together).toEqual(await story(formulas, typed, entry, line));
    }),
    { seed: 20261127, numRuns: 5 },
  );
}, 300_000);

test.each([["together", shared, 1], ["each alone", alone, 50]])("fifty formulas that were filled down are read %s", async (_, register, times) => {
  generator._registerFormulas = register;
  const univer = bootEngine(emptyWorkbook());
  const live = new LiveWorkbook(univer);
  const read = jest.spyOn(univer.__getInjector().get(Lexer), "treeBuilder");
  try {
    const rows = Array.from({ length: 50 }, (__, row) => [{ value: row }, { formula: `=A${row + 1}*777` }]);
    await createBrowserPort(univer, live).apply([{ kind: "add-sheet", plan: { name: "Many", rows, styles: {}, columnWidths: [] } }]);
    await live.settle();
    expect(new Set(read.mock.calls.map(([text]) => text)).size).toBe(times);
  } finally {
    live.dispose();
  }
});
