import { Direction, ICommandService, UndoCommand } from "@univerjs/core";
import fc from "fast-check";
import { bootEngine } from "../../src/headless/open-headless";
import type { SheetPlan } from "../../src/sheet";
import { createBrowserPort } from "../../src/workbook/engine/browser-port";
import { LiveWorkbook } from "../../src/workbook/engine/live-workbook";
import { emptyWorkbook } from "../../src/workbook/engine/stored-sheet";
import { movedFormula } from "./host-workbook/moved-formula";

const rowCount = 12;

/** Formulas of the third row, in columns C to E: what they look at is typed in A and B, stands beside or above them, or on the other sheet. */
const formula = fc.constantFrom(
  "=A3+$B3", "=A$1*B3", "=SUM(A$1:B3)", "=SUM($A$1:$B$12)-A3", '=IF(A3>5,"more "&B3,A2)', "=COUNTIF(A$1:A$12,A3)", "=Other!A3*2", "=MATCH(A3,A$1:A$12,0)",
  "=INDEX(B$1:B$12,ROW())", "=ROW()+COLUMN()", "=IF(ISNUMBER(C2),C2,0)+1", '=SUM(INDIRECT("A"&ROW()))', "=SUM(OFFSET(A3,0,0,2,2))", "=SUM(A2:A4)", "=limit*A3",
  '=BAY.USABLE("RAID 6",A3+4,4)', '=IFERROR(1/(A3-3),"A3")', "=C2=C3", "=IF(A3>4,IF(B3>6,1/0,A2))", "=SUM(IF(A$1:A$12>4,B3,-1))",
);

/** Computes a workbook step by step, and writes down after each what all its cells show and which formulas they hold. */
async function formulaStory(formulas: readonly string[], typed: readonly number[], entry: number, line: number): Promise<unknown[]> {
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

const place = fc.nat(rowCount - 3);

/** Holds that stories go the same with the engine as we mend it, which `mended` turns on, and as it comes, which `anew` turns on. */
export async function expectSameStories(mended: () => void, anew: () => void, seed: number): Promise<void> {
  await fc.assert(
    fc.asyncProperty(storyArguments, async (told) => {
      mended();
      const ours = await formulaStory(...told);
      expect(new Set(ours.map((cells) => JSON.stringify(cells))).size).toBeGreaterThan(3);
      anew();
      expect(ours).toEqual(await formulaStory(...told));
    }),
    { seed, numRuns: 5 },
  );
}

/** What a story is told of: formulas, what is typed beside them, where an entry is made and where rows come and go. */
const storyArguments = fc.tuple(fc.array(formula, { minLength: 1, maxLength: 3 }), fc.array(fc.nat(9), { minLength: rowCount, maxLength: rowCount }), place, place);
